/** Changes of the design's `run` that swap several keys at once. */
import { numbersUnder, withAssumed } from '../../../design/assumed.ts';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { oilKnown } from '../../../report/film/oils.ts';
import { AMBIENT } from '../../../report/film/toSpindle.ts';
import { plausibleRun } from './plausibleRun.ts';

type Run = NonNullable<Design['run']>;
type Oil = Run['oil'];
type Groove = NonNullable<Run['supply']>[number];

export const OILS = [
  { value: 'grade', text: 'ISO grade' },
  { value: 'measured', text: 'measured at two temperatures' },
  { value: 'viscosity', text: 'the same at every temperature' },
] as const;

export const oilKind = (design: Design): string => {
  const oil = design.run?.oil;
  return oil?.viscosity !== undefined ? 'viscosity' : oil?.measured !== undefined ? 'measured' : 'grade';
};

const tidy = (value: number) => Number(value.toPrecision(3));

/** Another way to state the oil, with values of the oil it was, so that little changes until they are written over. */
export function withOilKind(design: Design, kind: string): Design {
  const run = design.run!;
  const { oil } = run;
  if (kind === oilKind(design)) return design;
  const density = oil.density === undefined ? {} : { density: oil.density };
  const ambient = run.ambient ?? AMBIENT;
  const known = oilKnown(oil, ambient);
  const next: Record<string, Oil> = {
    viscosity: { viscosity: tidy(known.viscosity(ambient)), ...density },
    grade: { grade: tidy(known.at40), ...density },
    measured: {
      measured: [
        [40, tidy(known.at40)],
        [100, tidy(known.at100)],
      ],
      ...density,
    },
  };
  const changed = { ...design, run: { ...run, oil: next[kind] ?? oil } };
  // Made of what was assumed, it is assumed too.
  const guessed = design.assumed?.some((path) => path.startsWith('run.oil.')) ?? false;
  return guessed ? withAssumed(changed, numbersUnder(changed, 'run.oil')) : changed;
}

export const STANDS = [
  { value: 'load', text: 'carries a load' },
  { value: 'pose', text: 'held where I put it' },
] as const;

/** With neither a pose nor a load the journal is held on its axis. */
export const isPosed = ({ load, loads }: Run) => load === undefined && loads === undefined;
export const standKind = (design: Design): string => (isPosed(design.run!) ? 'pose' : 'load');

/** What a run carried before it was held by hand. */
export type Loads = Pick<Run, 'load' | 'loads'>;

/**
 * To a pose held by hand: where the axis was found, so that nothing jumps; to a load: the one it carried before, or a
 * plausible one.
 */
export function withStand(
  design: Design,
  kind: string,
  found: { x: number; y: number; z: number; tiltX: number; tiltY: number } | null,
  before: Loads | null,
  system: System,
): Design {
  const { pose: _, load: __, loads: ___, ...rest } = design.run!;
  if (kind === standKind(design)) return design;
  if (kind === 'load')
    return { ...design, run: { ...rest, ...(before ?? { load: plausibleRun(design, system).load! }) } };
  const { x, y, z, tiltX, tiltY } = found ?? { x: 0, y: 0, z: design.position ?? 0, tiltX: 0, tiltY: 0 };
  const fine = (value: number) => Number(value.toFixed(9));
  return {
    ...design,
    run: { ...rest, pose: { x: fine(x), y: fine(y), z: fine(z), tiltX: fine(tiltX), tiltY: fine(tiltY) } },
  };
}

/** One more groove: along most of the longest seat, on top or where there is none yet, drained or fed by a drip. */
export function withGroove(design: Design): Design {
  const longest = design.seats.reduce((a, b) => (b.bush.to - b.bush.from > a.bush.to - a.bush.from ? b : a));
  const { from, to, diameter } = longest.bush;
  const taken = (design.run!.supply ?? [])
    .filter(({ seat }) => seat === longest.name)
    .map(({ angle }) => ((angle % 360) + 360) % 360);
  const angle = [90, 270, 0, 180, 45, 225, 135, 315].find((free) => !taken.includes(free)) ?? 90;
  const groove: Groove = {
    seat: longest.name,
    angle,
    from: tidy(from + 0.1 * (to - from)),
    to: tidy(to - 0.1 * (to - from)),
    width: tidy(Math.max(0.5, diameter / 12)),
    pressure: 0,
  };
  return { ...design, run: { ...design.run!, supply: [...(design.run!.supply ?? []), groove] } };
}

/** Without an entry of a list of the run; without the list when that was its last. */
export function withoutEntry(design: Design, list: 'supply' | 'loads', index: number): Design {
  const { [list]: entries = [], ...rest } = design.run!;
  const left = (entries as readonly unknown[]).filter((_, i) => i !== index);
  return { ...design, run: (left.length === 0 ? rest : { ...rest, [list]: left }) as Run };
}

/** One more load: a belt's pull at the rear end. */
export function withFurtherLoad(design: Design): Design {
  const run = design.run!;
  const rear = Math.min(...design.seats.map(({ journal }) => journal.from));
  return {
    ...design,
    run: {
      ...run,
      ...(run.load ? {} : { load: {} }),
      loads: [...(run.loads ?? []), { x: 0, y: 20, z: 0, station: tidy(rear - 15) }],
    },
  };
}
