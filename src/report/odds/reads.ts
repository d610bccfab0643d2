/**
 * What it would gain to read what nobody has read: the chance with the doubt of a surface brought to what its reading
 * leaves, each in turn, and all of them. Two diameters tell a line, one a line whose half angle is known.
 */
import type { Part } from '../../design/definition.ts';
import type { Prior } from '../../engine/gauging/linearise.ts';
import { boughtInTurn } from '../../engine/odds/buy.ts';
import type { ReadsReport } from './definition.ts';
import type { State } from './drawn.ts';

/** m: what a radius is read to, half of what a diameter is. @source practice */
const RADIUS = 1e-6;
/** Surfaces that are told of. */
const MOST = 8;

type Named = NonNullable<State['linear']>;

interface Unread {
  seat: number;
  part: Part;
  /** whether its half angle is unread too */
  line: boolean;
}

export function readsOf(
  seats: readonly { name: string }[],
  named: Named,
  unread: readonly Prior[],
  wish: Omit<Parameters<typeof boughtInTurn>[0], 'linear'>,
): ReadsReport {
  const surfaces = surfacesOf(unread).slice(0, MOST);
  if (surfaces.length === 0) return [];
  const each = surfaces.map((surface) => known(named.linear, surface));
  const all = surfaces.length > 1 ? [new Map(each.flatMap((set) => [...set]))] : [];
  const { inputs } = boughtInTurn({ ...wish, linear: named.linear }, [...each, ...all]);
  return inputs.map(({ chance, gain, uncertainty }, i) => ({
    surfaces: (i < surfaces.length ? [surfaces[i]!] : surfaces).map(({ seat, part, line }) => ({
      seat: seats[seat]!.name,
      part,
      line,
    })),
    ...chance,
    gain,
    uncertainty,
  }));
}

function surfacesOf(unread: readonly Prior[]): Unread[] {
  const of = (what: Prior['of'], seat: number, part: Part) =>
    unread.some((prior) => prior.of === what && prior.seat === seat && prior.part === part);
  return unread
    .filter((prior) => prior.of === 'radius')
    .map(({ seat, part }) => ({ seat, part, line: of('halfAngle', seat, part) }));
}

/** What the spreads of a surface's own numbers are multiplied by once it is read. */
function known({ sources, factor, seats }: Named['linear'], { seat, part, line }: Unread): Map<number, number> {
  const { from, to } = seats[seat]![part];
  const left = { radius: RADIUS, halfAngle: (Math.SQRT2 * RADIUS) / Math.max(to - from, RADIUS) };
  return new Map(
    sources.flatMap((source, i): [number, number][] => {
      if (source.seat !== seat || source.part !== part) return [];
      if (source.of !== 'radius' && !(source.of === 'halfAngle' && line)) return [];
      const now = Math.hypot(...factor[i]!);
      const read = left[source.of];
      return now === 0 ? [] : [[i, read / Math.hypot(read, now)]];
    }),
  );
}
