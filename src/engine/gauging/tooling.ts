/**
 * What a shop has in its drawers, metric or inch: balls, rolls, the sine bar, the set of blocks, and the steps in which
 * things are set up. All m.
 *
 * Balls: by half millimetres from 1 to 60 mm; inch balls by 1/32 in from 1/16 to 1 in and by 1/16 in to 2 in, as makers
 * list them. Rolls (needle and cylindrical rollers, dowels): by whole millimetres from 2 to 20 mm; inch ones by 1/32 in
 * from 1/16 to 1/4 in, by 1/16 in to 1/2 in and by 1/8 in to 3/4 in. Sine bar: 100 mm; 5 in. Steps of set-ups.
 * @source ISO3290 (balls); practice (all else)
 */
import { MICROMETRE, metres } from '../../design/dimension.ts';
import { INCH as INCH_IN_MM } from '../../design/units.ts';
import { BLOCK_SETS, type BlockSet } from './blockSets.ts';

const INCH = metres(INCH_IN_MM);

export interface Tooling {
  system: BlockSet['system'];
  balls: readonly number[];
  rolls: readonly number[];
  /** length of the sine bar between its rolls */
  bar: number;
  blocks: BlockSet;
  /** stations and travels are set to this */
  place: number;
  /** stacks are made to this */
  stack: number;
}

/** `count` sizes from `first`, each `step` more than the one before. */
const sizes = (first: number, step: number, count: number) => Array.from({ length: count }, (_, k) => first + k * step);
/** Thirty-seconds of an inch. */
const thirtySeconds = (...series: (readonly [first: number, step: number, count: number])[]) =>
  series.flatMap(([first, step, count]) => sizes(first, step, count).map((n) => (n / 32) * INCH));

const setNamed = (name: string) => BLOCK_SETS.find((set) => set.name === name)!;

export const METRIC_TOOLS: Tooling = {
  system: 'metric',
  balls: sizes(2, 1, 119).map((half) => metres(half / 2)),
  rolls: sizes(2, 1, 19).map(metres),
  bar: 0.1,
  blocks: setNamed('M112'),
  place: 1e-5,
  stack: MICROMETRE,
};

export const INCH_TOOLS: Tooling = {
  system: 'inch',
  balls: thirtySeconds([2, 1, 31], [34, 2, 16]),
  rolls: thirtySeconds([2, 1, 7], [10, 2, 4], [20, 4, 2]),
  bar: 5 * INCH,
  blocks: setNamed('81'),
  place: 0.0005 * INCH,
  stack: 0.0001 * INCH,
};

export const TOOLS: Record<Tooling['system'], Tooling> = { metric: METRIC_TOOLS, inch: INCH_TOOLS };
