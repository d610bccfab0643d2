/** Helpers of the bench: stacks of blocks, the sine bar, balls and rolls, temperature, distributions. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chiSquareTail, normalQuantile, twoSidedTail } from '../../../src/engine/belief/distributions.ts';
import { BLOCK_SETS, type BlockSet, metresOf } from '../../../src/engine/gauging/blockSets.ts';
import { fewest, MOST_BLOCKS, stackFor } from '../../../src/engine/gauging/blockStack.ts';
import { bestPair, deepestOf, triedBalls, triedRolls } from '../../../src/engine/gauging/choice.ts';
import { cosineError, trueTravel } from '../../../src/engine/gauging/cosineError.ts';
import { angleOfStack, stackOfAngle } from '../../../src/engine/gauging/sineBar.ts';
import { atReference, correctionUncertainty } from '../../../src/engine/gauging/temperature.ts';
import { INCH_TOOLS, METRIC_TOOLS } from '../../../src/engine/gauging/tooling.ts';
import { between, DEG, doubleCone, MM } from './pairs.ts';

const set = (name: string) => BLOCK_SETS.find((s) => s.name === name)!;

/** The fewest blocks by trying every choice, one count after another. */
function fewestByTrying({ blocks }: BlockSet, sum: number, most: number): number {
  const reach = (from: number, left: number, count: number): boolean => {
    if (count === 0) return left === 0;
    for (let i = from; i < blocks.length; i++)
      if (blocks[i]! <= left && reach(i + 1, left - blocks[i]!, count - 1)) return true;
    return false;
  };
  for (let count = 1; count <= most; count++) if (reach(0, sum, count)) return count;
  return Number.POSITIVE_INFINITY;
}

describe('stacks of gauge blocks', () => {
  test('exact, of blocks the set has, each once', () => {
    fc.assert(
      fc.property(fc.constantFrom(...BLOCK_SETS), fc.integer({ min: 1, max: 4000 }), (of, k) => {
        const steps = k * (of.system === 'metric' ? 500 : 40);
        const found = fewest(of, steps);
        if (!found) return;
        expect(found.reduce((a, b) => a + b, 0)).toBe(steps);
        expect(new Set(found).size).toBe(found.length);
        expect(found.every((block) => of.blocks.includes(block))).toBe(true);
      }),
      { seed: 31, numRuns: 300 },
    );
  });

  test.each(['M47/1', 'M47/2'])('%s: none has fewer blocks', (name) => {
    const of = set(name);
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 20_000 }), (k) => {
        const sum = k * 100; // 5 µm
        const found = fewest(of, sum);
        expect(found?.length ?? Number.POSITIVE_INFINITY).toBe(fewestByTrying(of, sum, found ? found.length : 4));
      }),
      { seed: 32, numRuns: 40 },
    );
  });

  test('0.05 µm and 25 µin are counted whole; what is no sum of the set is missed by what is told', () => {
    const fine = stackFor(set('M112'), 30.0005 * MM);
    expect(fine).toMatchObject({ kind: 'stack', error: 0 });
    // M87 goes by micrometres: half of one is missed
    const coarse = stackFor(set('M87'), 30.0005 * MM);
    if (coarse.kind !== 'stack') throw new Error('no stack');
    expect(Math.abs(coarse.error)).toBeCloseTo(0.5e-6, 15);
    expect(coarse.blocks.reduce((a, b) => a + b, 0) - 30.0005 * MM).toBeCloseTo(coarse.error, 15);
    const inch = stackFor(set('81'), 1.23465 * 0.0254);
    if (inch.kind !== 'stack') throw new Error('no stack');
    expect(Math.abs(inch.error)).toBeCloseTo(0.00005 * 0.0254, 15);
  });

  test('wear blocks are part of the height', () => {
    const bare = stackFor(set('M112'), 26.345 * MM);
    const worn = stackFor(set('M112'), 30.345 * MM, 4 * MM);
    expect(worn).toEqual(bare);
  });

  test('out of reach: what the set can do', () => {
    expect(stackFor(set('M47/2'), 0.2 * MM)).toMatchObject({ kind: 'outOfReach', least: 1 * MM });
    const high = stackFor(set('M47/2'), 2);
    if (high.kind !== 'outOfReach') throw new Error('a stack of two metres');
    expect(high.greatest).toBeCloseTo((100 + 75 + 50 + 25 + 24 + 23) * MM, 12);
    expect(MOST_BLOCKS).toBe(6);
  });

  test('every set adds up to its name', () => {
    for (const of of BLOCK_SETS) {
      expect(of.blocks).toHaveLength(Number(/\d+/.exec(of.name)![0]));
      expect(new Set(of.blocks).size).toBe(of.blocks.length);
      expect(of.blocks.every(Number.isInteger)).toBe(true);
    }
    expect(metresOf(set('M112'), 20_010)).toBe(0.0010005);
  });
});

describe('the sine bar', () => {
  test('stack and angle are each other’s inverse', () => {
    fc.assert(
      fc.property(between(-1.5, 1.5), between(0.05, 0.3), (angle, bar) => {
        expect(angleOfStack(stackOfAngle(angle, bar), bar)).toBeCloseTo(angle, 7);
      }),
      { seed: 33 },
    );
    expect(angleOfStack(0.11, 0.1)).toBeNull();
  });
});

describe('balls and rolls', () => {
  test('the pair of balls touches nearest to a tenth from either end; the others say why not', () => {
    const tried = triedBalls(doubleCone(), 0, METRIC_TOOLS.balls);
    const [rear, nose] = bestPair(tried)!;
    expect([rear.diameter, nose.diameter]).toEqual([0.0195, 0.0215].map((d) => expect.closeTo(d, 10)));
    expect(rear.share).toBeGreaterThan(0);
    expect(nose.share).toBeLessThan(1);
    expect(tried.filter((t) => t.fault === null).every((t) => t.diameter > 0.0194 && t.diameter < 0.0221)).toBe(true);
    expect(tried.find((t) => Math.abs(t.diameter - 0.01) < 1e-9)!.fault).toMatchObject({ what: 'falls' });
    expect(tried.find((t) => Math.abs(t.diameter - 0.05) < 1e-9)!.fault).not.toBeNull();
    expect(deepestOf(rear, 'rearward')).toBeCloseTo(rear.centre! - 0.00975, 12);
  });

  test('inch balls, and rolls at the stations given', () => {
    expect(bestPair(triedBalls(doubleCone(), 1, INCH_TOOLS.balls))?.every((t) => t.fault === null) ?? true).toBe(true);
    const rolls = triedRolls(doubleCone(), 0, METRIC_TOOLS.rolls, [-24 * MM, -8 * MM]);
    expect(rolls).toHaveLength(2 * METRIC_TOOLS.rolls.length);
    const [rear, nose] = bestPair(rolls)!;
    expect(rear.station!).toBeLessThan(nose.station!);
    expect(bestPair([])).toBeNull();
  });
});

describe('what a shop has in its drawers', () => {
  const inches = (m: number) => m / 0.0254;

  test('inch balls and rolls are fractions down to thirty-seconds, metric ones whole half millimetres', () => {
    for (const size of [...INCH_TOOLS.balls, ...INCH_TOOLS.rolls])
      expect(Math.abs(32 * inches(size) - Math.round(32 * inches(size)))).toBeLessThan(1e-9);
    for (const size of [...METRIC_TOOLS.balls, ...METRIC_TOOLS.rolls])
      expect(Math.abs(2000 * size - Math.round(2000 * size))).toBeLessThan(1e-9);
    for (const wanted of [1 / 16, 1 / 4, 3 / 8, 11 / 16, 1, 2])
      expect(INCH_TOOLS.balls.some((ball) => Math.abs(inches(ball) - wanted) < 1e-12)).toBe(true);
    for (const wanted of [1 / 16, 1 / 8, 1 / 4, 3 / 4])
      expect(INCH_TOOLS.rolls.some((roll) => Math.abs(inches(roll) - wanted) < 1e-12)).toBe(true);
    for (const { balls, rolls } of [METRIC_TOOLS, INCH_TOOLS])
      for (const list of [balls, rolls]) expect([...list].sort((a, b) => a - b)).toEqual(list);
  });

  test('the bar is 5 in or 100 mm, the blocks are of the same system', () => {
    expect(inches(INCH_TOOLS.bar)).toBeCloseTo(5, 12);
    expect(METRIC_TOOLS.bar).toBe(0.1);
    for (const tools of [METRIC_TOOLS, INCH_TOOLS]) expect(tools.blocks.system).toBe(tools.system);
    expect(INCH_TOOLS.blocks.name).toBe('81');
  });

  test('the inch set of 36 makes what its blocks can', () => {
    const stack = stackFor(set('36'), 1.3762 * 0.0254);
    expect(stack).toMatchObject({ kind: 'stack', error: 0 });
    if (stack.kind === 'stack')
      expect(stack.blocks.reduce((sum, block) => sum + block, 0)).toBeCloseTo(1.3762 * 0.0254, 12);
  });
});

describe('temperature and cosine', () => {
  test('part and standard of one material at one temperature need no correction; bronze read with steel blocks does', () => {
    const steel = { expansion: 11.5e-6, temperature: 23 };
    expect(atReference(0.1, steel, steel)).toBe(0.1);
    const bronze = { expansion: 18e-6, temperature: 23 };
    // 100 mm · 6.5e-6 · 3 K
    expect(atReference(0.1, bronze, steel) - 0.1).toBeCloseTo(-1.95e-6, 9);
    const sigma = { part: { expansion: 1e-6, temperature: 0.2 }, standard: { expansion: 0.5e-6, temperature: 0.1 } };
    const step = (k: number, by: number) =>
      atReference(
        0.1,
        { expansion: bronze.expansion + (k === 0 ? by : 0), temperature: bronze.temperature + (k === 1 ? by : 0) },
        { expansion: steel.expansion + (k === 2 ? by : 0), temperature: steel.temperature + (k === 3 ? by : 0) },
      );
    const terms = [1e-6, 0.2, 0.5e-6, 0.1].map((s, k) => step(k, s) - step(k, 0));
    expect(correctionUncertainty(0.1, bronze, steel, sigma) / Math.hypot(...terms)).toBeCloseTo(1, 3);
  });

  test('a leaning stylus shows too much', () => {
    expect(trueTravel(100e-6, 30 * DEG)).toBeCloseTo(86.6025e-6, 9);
    expect(cosineError(trueTravel(100e-6, 30 * DEG), 30 * DEG)).toBeCloseTo(100e-6 - 86.6025e-6, 9);
  });
});

describe('distributions', () => {
  // scipy.stats 1.17 (chi2.sf, norm.sf, norm.ppf), another implementation
  test.each([
    [0.5, 1, 0.47950012218695337],
    [3.84, 1, 0.05004352124870519],
    [10, 3, 0.01856613546304325],
    [30, 33, 0.617257426473625],
    [200, 150, 0.003973185970821635],
    [80, 33, 8.871358148307173e-6],
  ])('chi-square %f of freedom %i', (value, freedom, tail) => {
    expect(Math.abs(chiSquareTail(value, freedom) - tail)).toBeLessThan(1e-9);
  });

  test('the normal, and no freedom at all', () => {
    expect(twoSidedTail(1.959963984540054)).toBeCloseTo(0.05, 10);
    expect(twoSidedTail(-3)).toBeCloseTo(0.0026997960632601866, 10);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 10);
    expect(chiSquareTail(3, 0)).toBe(1);
  });
});
