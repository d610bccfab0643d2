/** What to hold to for a wanted chance: the spreads that give it at least difficulty. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { spreadsFor } from '../../engine/odds/buy.ts';
import { samplerOf } from '../../engine/odds/sampler.ts';
import { degrees, millimetres } from '../convert.ts';
import type { HoldReport } from './definition.ts';
import type { State } from './drawn.ts';
import { inputsOf } from './matters.ts';

/** Blocks of draws it is sought with. */
const BLOCKS = 2;

/** Null where no spread is small enough, and where spreads alone do not tell what is in doubt. */
export function holdReport(
  design: Design,
  { linear: named, question, middle }: State,
  seed: number,
): HoldReport | null {
  if (!named || middle.every(({ target }) => target === undefined)) return null;
  const { linear, names } = named;
  const straight = linear.seats.every(({ journal, bush }) => journal.profile.length + bush.profile.length === 0);
  if (!straight || !samplerOf(linear).varied) return null;
  const inputs = inputsOf(names, linear.factor);
  const wanted = design.odds?.wanted ?? defaultAt('odds.wanted');
  const found = spreadsFor(
    {
      linear,
      question,
      asked: 'inBandAtBest',
      inputs: inputs.map(({ sources }) => sources),
      draws: { blocks: BLOCKS, seed },
    },
    wanted,
  );
  if (!found) return null;
  const { share, low, high } = found.chance;
  return {
    wanted,
    share,
    low,
    high,
    inputs: inputs.map(({ name, sources }, i) => {
      const multiplier = found.multipliers[i]!;
      return { ...name, multiplier, numbers: numbersOf({ linear, names }, sources, multiplier) };
    }),
  };
}

type Named = NonNullable<State['linear']>;
type Held = HoldReport['inputs'][number]['numbers'][number];

/** A number that has several sources of doubt is told once; so is a face, which moves several. */
function numbersOf({ linear, names }: Named, sources: readonly number[], multiplier: number): Held[] {
  const told = new Map<Held['of'], Held>();
  for (const source of sources) {
    const { of } = names[source]!;
    const before = told.get(of);
    if (before && of === 'face') continue;
    const own = inFile(linear, source, of);
    const now = Math.hypot(before?.now ?? 0, own);
    told.set(of, { of, now, hold: multiplier * now, shape: before ? 'normal' : shapeOf(linear, source) });
  }
  return [...told.values()];
}

/** The shape of a source that has one dimension to itself; several together are taken as normal. */
function shapeOf({ factor, marginals }: Named['linear'], source: number): Held['shape'] {
  const own = marginals.filter((_, d) => factor[source]![d] !== 0);
  return own.length === 1 ? own[0]! : 'normal';
}

/** One standard deviation as the file has it: a diameter is twice the radius, stock is told square to the surface. */
function inFile({ factor, sources, seats }: Named['linear'], source: number, of: Held['of']): number {
  const sigma = Math.hypot(...factor[source]!);
  const { seat, part } = sources[source]!;
  if (of === 'halfAngle') return degrees(sigma);
  if (of === 'stock') return millimetres(sigma) * Math.cos(seats[seat]![part].halfAngle);
  return of === 'diameter' ? 2 * millimetres(sigma) : millimetres(sigma);
}
