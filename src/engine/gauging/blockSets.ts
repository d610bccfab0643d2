/**
 * Sets of gauge blocks, in whole steps of each set's own unit so that sums are exact: 0.05 µm for metric sets,
 * 25 microinches for inch sets.
 * @source BS4311; ISO3650; GGG-G-15 (the 81-piece set); practice (the 36-piece set)
 */
import { metres, millimetres } from '../../design/dimension.ts';
import { INCH } from '../../design/units.ts';

export interface BlockSet {
  name: string;
  system: 'metric' | 'inch';
  /** the step in which blocks are counted is `over`/`under` metres */
  over: number;
  under: number;
  /** in steps, each block once, rising */
  blocks: readonly number[];
}

/** Steps of 0.05 µm in a millimetre, of 25 µin in an inch. */
const PER_MM = 20_000;
const PER_INCH = 40_000;

/** A number of steps in metres. */
export const metresOf = ({ over, under }: BlockSet, steps: number): number => (steps * over) / under;

/** `count` blocks from `first`, each `step` more than the one before, in ten-thousandths of mm or inch. */
type Series = readonly [first: number, step: number, count: number];

function set(name: string, system: BlockSet['system'], series: readonly Series[]): BlockSet {
  const perTenThousandth = (system === 'metric' ? PER_MM : PER_INCH) / 10_000;
  const blocks = series
    .flatMap(([first, step, count]) => Array.from({ length: count }, (_, k) => (first + k * step) * perTenThousandth))
    .sort((a, b) => a - b);
  return system === 'metric'
    ? { name, system, over: 1, under: PER_MM * millimetres(1), blocks }
    : { name, system, over: metres(INCH), under: PER_INCH, blocks };
}

export const BLOCK_SETS: readonly BlockSet[] = [
  set('M112', 'metric', [
    [10_005, 0, 1],
    [10_010, 10, 9],
    [10_100, 100, 49],
    [5_000, 5_000, 49],
    [250_000, 250_000, 4],
  ]),
  set('M87', 'metric', [
    [10_010, 10, 9],
    [10_100, 100, 49],
    [5_000, 5_000, 19],
    [100_000, 100_000, 10],
  ]),
  set('M47/1', 'metric', [
    [10_050, 0, 1],
    [10_100, 100, 19],
    [12_000, 1_000, 8],
    [10_000, 10_000, 9],
    [100_000, 100_000, 10],
  ]),
  set('M47/2', 'metric', [
    [10_050, 0, 1],
    [10_100, 100, 9],
    [11_000, 1_000, 9],
    [10_000, 10_000, 24],
    [250_000, 250_000, 4],
  ]),
  set('81', 'inch', [
    [1_001, 1, 9],
    [1_010, 10, 49],
    [500, 500, 19],
    [10_000, 10_000, 4],
  ]),
  set('36', 'inch', [
    [500, 0, 1],
    [1_001, 1, 9],
    [1_010, 10, 9],
    [1_100, 100, 9],
    [1_000, 1_000, 5],
    [10_000, 10_000, 2],
    [40_000, 0, 1],
  ]),
];
