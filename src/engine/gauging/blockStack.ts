/**
 * A stack of gauge blocks for a height: the fewest blocks of a set whose sum is exact, every block used once.
 *
 * All sums are whole numbers of the set's step. Sums of one, two and three blocks are tabled once for a set; a stack of
 * up to six is two entries of the tables that share no block, sought with the fewest first, so that none with fewer
 * exists. Of several the one with the thickest blocks is taken, since thin ones bend. Where the height is no sum of the
 * set, the nearest that is, and by how much it misses.
 * @source derived (the search); practice (thick blocks)
 */
import { type BlockSet, metresOf } from './blockSets.ts';

export type Stack =
  | {
      kind: 'stack' /** m, rising, wear blocks first and last not among them */;
      blocks: number[] /** m: stack with wear blocks, less the height wanted */;
      error: number;
    }
  /** no stack of up to six blocks comes within a hundred of the set's finest steps */
  | {
      kind: 'outOfReach' /** m: thinnest and thickest that any stack has, wear blocks included */;
      least: number;
      greatest: number;
    };

export const MOST_BLOCKS = 6;
const FARTHEST = 100;

/** The stack for a height (m); `wear` the sum (m) of the wear blocks wrung on besides, 0 without. */
export function stackFor(set: BlockSet, height: number, wear = 0): Stack {
  const wearSteps = stepsOf(set, wear);
  const target = stepsOf(set, height) - wearSteps;
  const grid = set.blocks.reduce(greatestDivisor);
  const nearest = Math.round(target / grid) * grid;
  for (let k = 0; k <= FARTHEST; k++) {
    const sums =
      k === 0
        ? [nearest]
        : [nearest - k * grid, nearest + k * grid].sort((a, b) => Math.abs(a - target) - Math.abs(b - target));
    for (const sum of sums) {
      const found = fewest(set, sum);
      if (found)
        return {
          kind: 'stack',
          blocks: found.map((steps) => metresOf(set, steps)),
          error: metresOf(set, sum - target),
        };
    }
  }
  const thickest = set.blocks.slice(-MOST_BLOCKS).reduce((sum, b) => sum + b, 0);
  return {
    kind: 'outOfReach',
    least: metresOf(set, set.blocks[0]! + wearSteps),
    greatest: metresOf(set, thickest + wearSteps),
  };
}

/** A length in steps, whole where it is whole but for rounding. */
function stepsOf({ over, under }: BlockSet, length: number): number {
  const steps = (length * under) / over;
  return Math.abs(steps - Math.round(steps)) < 1e-6 ? Math.round(steps) : steps;
}

function greatestDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** The fewest blocks (steps, rising) with exactly this sum; null where up to six do not make it. */
export function fewest(set: BlockSet, sum: number): number[] | null {
  if (sum <= 0) return null;
  const { sums } = tablesOf(set);
  let thinnest = 0;
  for (let count = 1; count <= MOST_BLOCKS; count++) {
    thinnest += set.blocks[count - 1]!;
    if (thinnest > sum) return null;
    const small = Math.floor(count / 2);
    const found = small === 0 ? (sums[1]!.get(sum)?.[0] ?? null) : joined(sums[small]!, sums[count - small]!, sum);
    if (found) return [...found].sort((a, b) => a - b);
  }
  return null;
}

/**
 * Two entries, one of each table, that make the sum and share no block; of several the one whose thinnest block is
 * thickest.
 */
function joined(small: Sums, large: Sums, sum: number): number[] | null {
  let best: number[] | null = null;
  for (const [part, choices] of small) {
    const rest = large.get(sum - part);
    if (!rest) continue;
    for (const a of choices) {
      for (const b of rest) {
        if (a.some((block) => b.includes(block))) continue;
        const both = [...a, ...b];
        if (!best || Math.min(...both) > Math.min(...best)) best = both;
      }
    }
  }
  return best;
}

/** Sum → every choice of blocks that makes it. */
type Sums = Map<number, number[][]>;

const tables = new WeakMap<BlockSet, { sums: Sums[] }>();

function tablesOf(set: BlockSet): { sums: Sums[] } {
  const known = tables.get(set);
  if (known) return known;
  const { blocks } = set;
  const sums: Sums[] = [new Map(), new Map(), new Map(), new Map()];
  const add = (choice: number[]) => {
    const table = sums[choice.length]!;
    const sum = choice.reduce((a, b) => a + b, 0);
    const others = table.get(sum);
    if (others) others.push(choice);
    else table.set(sum, [choice]);
  };
  for (let i = 0; i < blocks.length; i++) {
    add([blocks[i]!]);
    for (let j = i + 1; j < blocks.length; j++) {
      add([blocks[i]!, blocks[j]!]);
      for (let k = j + 1; k < blocks.length; k++) add([blocks[i]!, blocks[j]!, blocks[k]!]);
    }
  }
  const made = { sums };
  tables.set(set, made);
  return made;
}
