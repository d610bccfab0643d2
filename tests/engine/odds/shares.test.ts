import { expect, test } from 'vitest';
import { answeredOf } from '../../../src/engine/odds/outcomes.ts';
import { type Linear, linearSampler, type Source } from '../../../src/engine/odds/sampler.ts';
import { sharesOf, slopesOf } from '../../../src/engine/odds/shares.ts';
import { doubleCone, surface } from './pairs.ts';

const settings = { blocks: 4, seed: 2 };
const question = { position: 2e-5, friction: 0.12 };
const radius = (seat: number, part: 'journal' | 'bush'): Source => ({ seat, part, of: 'radius' });
/** The column of a quantity. */
const columnOf = (linear: Linear, of: string, seat?: number): number =>
  answeredOf(linear.seats).findIndex((a) => a.of === of && (seat === undefined || ('seat' in a && a.seat === seat)));
const diagonal = (sigmas: readonly number[]) => sigmas.map((s, i) => sigmas.map((_, k) => (i === k ? s * s : 0)));

test('a film follows radii evenly: its shares are exact', () => {
  const sources = [radius(1, 'journal'), radius(1, 'bush'), radius(0, 'bush')];
  const { linear } = linearSampler(doubleCone(), sources, diagonal([1e-7, 2e-7, 1e-6]));
  const found = sharesOf(linear, question, columnOf(linear, 'film', 1), settings);
  expect(found.method).toBe('linear');
  expect(found.groups.map(({ first }) => first.share)).toEqual([
    expect.closeTo(0.2, 6),
    expect.closeTo(0.8, 6),
    expect.closeTo(0, 9),
  ]);
  expect(found.groups.map(({ sources }) => sources)).toEqual([[0], [1], [2]]);
  // cos 45° of the radii.
  expect(found.linearSd! / (Math.hypot(1e-7, 2e-7) * Math.SQRT1_2)).toBeCloseTo(1, 6);
  expect(Math.abs(found.sampledSd / found.linearSd! - 1)).toBeLessThan(0.01);
  expect(found.left).toBeLessThan(1e-6);
  const gradient = slopesOf(linear, question, columnOf(linear, 'film', 1));
  expect([...gradient]).toEqual([-Math.SQRT1_2, Math.SQRT1_2, 0].map((g) => expect.closeTo(g, 6)));
});

test('inputs that go together stand in one group, and each by itself adds up', () => {
  const angle: Source = { seat: 0, part: 'journal', of: 'halfAngle' };
  const sources = [radius(0, 'journal'), angle, radius(1, 'bush')];
  const sd = [3e-7, 1e-5, 4e-7];
  const covariance = diagonal(sd);
  covariance[0]![1] = covariance[1]![0] = 0.6 * sd[0]! * sd[1]!;
  // The journal wider by half a minute of arc: it bears at the nose, however drawn.
  const seats = doubleCone();
  seats[0]!.journal.halfAngle += 1.5e-4;
  const { linear } = linearSampler(seats, sources, covariance);
  const column = columnOf(linear, 'relation');
  const found = sharesOf(linear, question, column, settings);
  expect(found.method).toBe('linear');
  expect(found.groups.map((g) => g.sources)).toEqual([[0, 1], [2]]);
  const g = slopesOf(linear, question, column);
  const whole = [0, 1, 2].map((i) => [0, 1, 2].reduce((sum, k) => sum + covariance[i]![k]! * g[k]!, 0));
  const variance = whole.reduce((sum, c, i) => sum + c * g[i]!, 0);
  expect(found.linearSd).toBeCloseTo(Math.sqrt(variance), 12);
  expect(found.groups[0]!.each).toEqual([0, 1].map((i) => expect.closeTo((g[i]! * whole[i]!) / variance, 9)));
  expect(found.groups[0]!.first.share).toBeCloseTo((g[0]! * whole[0]! + g[1]! * whole[1]!) / variance, 9);
  expect(found.groups.reduce((sum, { first }) => sum + first.share, 0)).toBeCloseTo(1, 9);
});

/** Two seats, either of which may be first: of max(X, Y), equal normals, the straight line says all is X. */
test('where another seat may touch first the straight line is given up, and said to be', () => {
  const seats = [0, 1].map((i) => ({
    name: `${i}`,
    journal: surface(45, 24, 0, 0, 5),
    bush: { ...surface(45, 24, 0, 0.2, 4.8), radius: 0.012 + (i === 0 ? 0 : 1e-9) },
  }));
  const sources = [radius(0, 'journal'), radius(1, 'journal')];
  const { linear } = linearSampler(seats, sources, diagonal([1e-6, 1e-6]));
  const found = sharesOf(linear, question, columnOf(linear, 'firstPosition'), { blocks: 8, seed: 2 });
  expect(found.method).toBe('indices');
  // Var max = 1 - 1/π; the straight line has 1.
  expect(found.linearSd! / 1e-6).toBeCloseTo(1, 6);
  expect(found.sampledSd / 1e-6).toBeCloseTo(Math.sqrt(1 - 1 / Math.PI), 2);
  expect(found.left).toBeGreaterThan(0.1);
  for (const { first, total, each } of found.groups) {
    // Alone: the variance of E[max | X] = x·Φ(x) + φ(x), over 1 - 1/π; by quadrature 0.4498.
    expect(Math.abs(first.share - ALONE)).toBeLessThan(0.01);
    expect(Math.abs(total.share - (1 - ALONE))).toBeLessThan(0.01);
    expect(each).toBeNull();
  }
});

/** Var(X·Φ(X) + φ(X))/(1 - 1/π), by the trapezoidal rule over ±10. */
const ALONE = (() => {
  let [first, square] = [0, 0];
  let under = 0;
  const step = 1e-4;
  for (let x = -10; x <= 10; x += step) {
    const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    under += density * step;
    const value = x * (under - (density * step) / 2) + density;
    first += value * density * step;
    square += value * value * density * step;
  }
  return (square - first * first) / (1 - 1 / Math.PI);
})();

test('a chance goes by indices, and what does not matter has none', () => {
  const sources = [radius(1, 'journal'), radius(0, 'bush'), { seat: 1, part: 'bush', of: 'to' } as const];
  const { linear } = linearSampler(doubleCone(), sources, diagonal([5e-7, 5e-7, 1e-6]));
  const found = sharesOf(linear, question, 'inBandAtBest', settings);
  expect(found.method).toBe('indices');
  expect([found.linearSd, found.left]).toEqual([null, null]);
  expect(found.groups[2]!.total.share).toBeLessThan(1e-9);
  expect(found.groups[0]!.total.share).toBeGreaterThan(found.groups[0]!.first.share);
});
