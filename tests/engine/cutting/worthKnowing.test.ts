/** What one more thing known would leave in doubt, against closed forms of normal variables. */
import { describe, expect, it } from 'vitest';
import { standardNormals } from '../../../src/engine/belief/draws.ts';
import { type Foreseen, spreadOnceKnown } from '../../../src/engine/cutting/worthKnowing.ts';

const COUNT = 2000;
const normals = standardNormals(7, 2 * COUNT);

/** An amount of spread 1, a reading that follows it (rho) and something else, and which side it is of. */
const drawn = (rho: number, sees: (amount: number) => string = () => ''): Foreseen[] =>
  Array.from({ length: COUNT }, (_, k) => {
    const [amount, other] = [normals[2 * k]!, normals[2 * k + 1]!];
    return { weight: 1 / COUNT, amount, reads: [rho * amount + Math.sqrt(1 - rho * rho) * other], sees: sees(amount) };
  });

describe('what a reading would leave', () => {
  it.each([
    [0, 0.5],
    [0.6, 0.5],
    [0.9, 0.3],
    [1, 0.4],
  ])('of normal variables with correlation %f and noise %f: √(1 - ρ²/(1 + σ²))', (rho, sigma) => {
    const wanted = Math.sqrt(1 - (rho * rho) / (1 + sigma * sigma));
    expect(Math.abs(spreadOnceKnown(drawn(rho), [sigma])!.mean - wanted)).toBeLessThan(0.06);
  });

  it('is all there is where it tells nothing, and less the finer it is read', () => {
    const pairs = drawn(0.95);
    const [coarse, fine, finest] = [5, 0.5, 0.1].map((sigma) => spreadOnceKnown(pairs, [sigma])!.mean);
    expect(Math.abs(coarse! - 1)).toBeLessThan(0.08);
    expect(fine).toBeLessThan(coarse!);
    expect(finest).toBeLessThan(fine!);
  });

  it('finer than pairs lie it is told wider, not as nothing', () => {
    expect(spreadOnceKnown(drawn(1), [1e-9])!.mean).toBeGreaterThan(0);
    expect(spreadOnceKnown(drawn(1), [1e-9])!.mean).toBeLessThan(0.05);
  });

  it('what is seen parts the pairs: of a normal variable the half that is seen has √(1 - 2/π) of its spread', () => {
    const seen = drawn(0, (amount) => (amount > 0 ? 'x' : 'o')).map((pair) => ({ ...pair, reads: [] }));
    expect(Math.abs(spreadOnceKnown(seen, [])!.mean - Math.sqrt(1 - 2 / Math.PI))).toBeLessThan(0.03);
  });

  it('pairs of more weight count for more', () => {
    const pairs = drawn(0).map((pair) => ({ ...pair, reads: [], weight: pair.amount > 0 ? 1.9 / COUNT : 0.1 / COUNT }));
    // nearly all of it is the upper half then
    expect(spreadOnceKnown(pairs, [])!.mean).toBeLessThan(0.85);
  });

  it('is told about what is most likely, which may lie off the mean: √(s² + off²)', () => {
    const [rho, sigma, off] = [0.9, 0.3, 0.7];
    const mean = (read: number) => (rho * read) / (1 + sigma * sigma);
    const left = 1 - (rho * rho) / (1 + sigma * sigma);
    const told = (of: number) => spreadOnceKnown(drawn(rho), [sigma], { after: ([read]) => mean(read!) + of })!.mean;
    expect(Math.abs(told(off) - Math.hypot(Math.sqrt(left), off))).toBeLessThan(0.06);
    expect(Math.abs(told(0) - Math.sqrt(left))).toBeLessThan(0.06);
  });

  it('of the cases in which something is asked, and nothing where none is', () => {
    // above nought known to 0.1 by what is seen, below it not at all
    const pairs = drawn(0, (amount) => (amount > 0 ? 'x' : 'o')).map((pair) => ({ ...pair, reads: [] }));
    const half = spreadOnceKnown(pairs, [], { after: (_, sees) => (sees === 'x' ? Math.sqrt(2 / Math.PI) : null) });
    expect(Math.abs(half!.mean - Math.sqrt(1 - 2 / Math.PI))).toBeLessThan(0.03);
    expect(spreadOnceKnown(pairs, [], { after: () => null })).toBeNull();
  });

  it('tells the best quarter beside the mean where cases differ: known well in four of ten, not at all else', () => {
    const pairs = drawn(0, (amount) => (amount > 0.2533 ? 'x' : 'o')).map((pair) => ({
      ...pair,
      amount: pair.sees === 'x' ? 0.01 * pair.amount : pair.amount,
      reads: [],
    }));
    const { mean, quarter } = spreadOnceKnown(pairs, [])!;
    expect(quarter).toBeLessThan(0.01);
    expect(mean).toBeGreaterThan(0.3);
    // and is the mean where none differs
    const alike = spreadOnceKnown(drawn(0.8), [0.3])!;
    expect(alike.quarter / alike.mean).toBeGreaterThan(0.85);
    expect(alike.quarter).toBeLessThanOrEqual(alike.mean);
  });
});
