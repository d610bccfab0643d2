/** Trials: the update against sampling of the same model, and what a remaining plan is made of. */
import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { describe, expect, it, vi } from 'vitest';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { planCut } from '../../../src/engine/cutting/plan.ts';
import { believed, remaining, remainingFaces, type Trial, trialsOf } from '../../../src/engine/cutting/trial.ts';
import { truncated } from '../../../src/engine/cutting/truncated.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { MM, pair, rad, UM } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 60_000 });

const seats = pair(0.0164, 0.008);
const DOUBT = 3 * UM;
const bare: Trial = { taken: [], thickness: 2 * UM };

function updated(trials: Trial[], doubt = DOUBT) {
  const result = trialsOf({ seats }, trials, doubt).at(-1)!;
  if (result.status !== 'updated') throw new Error(result.status);
  return result;
}

describe('a truncated normal', () => {
  it.each([
    [0, 1, -1, 2],
    [3, 2, 0, Number.POSITIVE_INFINITY],
    [-1, 0.5, Number.NEGATIVE_INFINITY, -1.2],
    [0, 1, 2, 3],
  ])('mean %d, deviation %d, between %d and %d: as by quadrature', (m, s, low, high) => {
    const [a, b] = [Math.max(low, m - 12 * s), Math.min(high, m + 12 * s)];
    const n = 200_000;
    let [mass, first, second] = [0, 0, 0];
    for (let i = 0; i < n; i++) {
      const x = a + ((i + 0.5) * (b - a)) / n;
      const w = Math.exp(-((x - m) ** 2) / (2 * s * s));
      mass += w;
      first += w * x;
      second += w * x * x;
    }
    const found = truncated(m, s, low, high);
    expect(found.probability).toBeCloseTo((mass * (b - a)) / n / (s * Math.sqrt(2 * Math.PI)), 8);
    expect(found.mean).toBeCloseTo(first / mass, 7);
    expect(found.variance).toBeCloseTo(second / mass - (first / mass) ** 2, 7);
  });

  it('is contradicted far out', () => {
    expect(truncated(0, 1, 8, 9).probability).toBeLessThan(1e-9);
  });
});

describe('a stand-off', () => {
  it('of one cone is a measurement of its film: s = z·sin a, with the known weights', () => {
    const one = [seats[1]!];
    const z = -7 * UM;
    const sigma = 2 * UM;
    const [result] = trialsOf({ seats: one }, [{ ...bare, standOff: { value: z, sigma } }], DOUBT);
    if (result!.status !== 'updated') throw new Error('not updated');
    const gain = -1 / Math.sin(rad(45));
    const expected = solveFit(one, 0).firstPosition!;
    const variance = 1 / (1 / DOUBT ** 2 + gain ** 2 / sigma ** 2);
    expect(result!.estimate.covariance[0]![0]).toBeCloseTo(variance, 20);
    expect(result!.estimate.mean[0]).toBeCloseTo((variance * gain * (z - expected)) / sigma ** 2, 14);
    expect(result!.touched).toEqual([1]);
  });

  it('agrees with drawing pairs and keeping those that read so', () => {
    const read = { value: -8 * UM, sigma: 1.5 * UM };
    const doubt = 10 * UM;
    const result = trialsOf({ seats: pair(0.0085, 0.008) }, [{ ...bare, standOff: read }], doubt)[0]!;
    if (result.status !== 'updated') throw new Error('not updated');
    // the same model by importance sampling: lines of one half angle, P = (e₀ - film₀ - e)/sin a in closed form
    const films = pair(0.0085, 0.008).map((s) => (s.bush.radius - s.journal.radius) * Math.cos(s.bush.halfAngle));
    const sines = [rad(3), rad(45)].map(Math.sin);
    const rng = mersenne(5);
    const uniform = () => 1 - uniformFloat64(rng);
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let [mass, shallow] = [0, 0];
    const sums = [0, 0];
    const squares = [0, 0];
    for (let i = 0; i < 400_000; i++) {
      const e = [doubt * normal(), doubt * normal()];
      const at = e.map((x, k) => -(films[k]! + x) / sines[k]!);
      const first = Math.max(...at);
      const w = Math.exp(-((read.value - first) ** 2) / (2 * read.sigma ** 2));
      mass += w;
      if (at[0]! > at[1]!) shallow += w;
      for (const k of [0, 1]) {
        sums[k]! += w * e[k]!;
        squares[k]! += w * e[k]! ** 2;
      }
    }
    for (const k of [0, 1]) {
      const mean = sums[k]! / mass;
      const sd = Math.sqrt(squares[k]! / mass - mean * mean);
      expect(Math.abs(result.estimate.mean[k]! - mean)).toBeLessThan(0.03 * doubt);
      expect(Math.abs(Math.sqrt(result.estimate.covariance[k]![k]!) - sd)).toBeLessThan(0.03 * doubt);
    }
    expect(Math.abs(result.touched![0]! - shallow / mass)).toBeLessThan(0.03);
  });

  it('says by itself which seat touched where only one can have', () => {
    const result = updated([{ ...bare, standOff: { value: -4 * UM, sigma: UM } }]);
    expect(result.touched![1]).toBeGreaterThan(0.99);
  });
});

describe('blue', () => {
  it('decides which seat touched', () => {
    const close = pair(0.00045, 0.008);
    const read = { value: -5 * UM, sigma: 2 * UM };
    const without = trialsOf({ seats: close }, [{ ...bare, standOff: read }], DOUBT)[0]!;
    const looked = trialsOf(
      { seats: close },
      [
        {
          ...bare,
          standOff: read,
          blue: [
            { seat: 0, prints: true },
            { seat: 1, prints: false },
          ],
        },
      ],
      DOUBT,
    )[0]!;
    if (without.status !== 'updated' || looked.status !== 'updated') throw new Error('not updated');
    expect(without.touched![0]).toBeGreaterThan(0.05);
    expect(without.touched![0]).toBeLessThan(0.95);
    expect(looked.touched).toEqual([1, 0]);
    // the steep one stands clear by more than the blue there
    const film = solveFit(looked.seats, read.value).seats[1]!.leastFilm!;
    expect(film).toBeGreaterThan(2 * UM);
  });

  it('on both seats holds both films within the blue', () => {
    const close = pair(0.00045, 0.008);
    const both = trialsOf(
      { seats: close },
      [
        {
          ...bare,
          standOff: { value: -4.5 * UM, sigma: UM },
          blue: [
            { seat: 0, prints: true },
            { seat: 1, prints: true },
          ],
        },
      ],
      DOUBT,
    )[0]!;
    if (both.status !== 'updated') throw new Error('not updated');
    for (const { leastFilm } of solveFit(both.seats, -4.5 * UM).seats) {
      expect(leastFilm).toBeGreaterThan(-UM);
      expect(leastFilm).toBeLessThan(2 * UM);
    }
    for (const i of [0, 1]) expect(Math.sqrt(both.estimate.covariance[i]![i]!)).toBeLessThan(DOUBT / 2);
  });

  it('that nothing printed contradicts a touch', () => {
    expect(
      trialsOf(
        { seats },
        [
          {
            ...bare,
            standOff: { value: -4 * UM, sigma: UM },
            blue: [
              { seat: 0, prints: false },
              { seat: 1, prints: false },
            ],
          },
        ],
        DOUBT,
      ),
    ).toEqual([{ status: 'contradiction' }]);
  });
});

describe('shake', () => {
  const shake = { indicator: 30 * MM, position: 0, direction: 0, sigma: 0.2 * UM, free: ['x', 'y', 'tiltX', 'tiltY'] as const };

  it('moves the films toward what it shows, and settles where the forward model reads it', () => {
    const truth = believed(seats, [1.5 * UM, 1.5 * UM]);
    const value = predict({ kind: 'shake', ...shake, value: 0 }, truth).value!;
    const before = predict({ kind: 'shake', ...shake, value: 0 }, seats).value!;
    const result = updated([{ ...bare, shake: { ...shake, value } }]);
    const after = predict({ kind: 'shake', ...shake, value: 0 }, result.seats).value!;
    expect(Math.abs(after - value)).toBeLessThan(0.05 * Math.abs(before - value));
    for (const i of [0, 1]) expect(result.estimate.covariance[i]![i]!).toBeLessThanOrEqual(DOUBT ** 2 * (1 + 1e-12));
  });

  it('where the parts do not fit at that position there is no model', () => {
    expect(trialsOf({ seats }, [{ ...bare, shake: { ...shake, value: UM, position: -MM } }], DOUBT)).toEqual([{ status: 'noModel' }]);
  });
});

describe('trials in turn', () => {
  it('stock taken opens the film by itself and adds its doubt', () => {
    const result = updated([{ ...bare, taken: [{ seat: 1, part: 'journal', normal: 20 * UM, sigma: UM }] }]);
    expect(result.seats[1]!.journal.radius).toBeCloseTo(seats[1]!.journal.radius - (20 * UM) / Math.cos(rad(45)), 15);
    expect(result.estimate.mean).toEqual([0, 0]);
    expect(result.estimate.covariance[1]![1]).toBeCloseTo(DOUBT ** 2 + UM ** 2, 20);
    expect(result.touched).toBeNull();
  });

  it('never know less than before, and end with the first that cannot be', () => {
    const trials = Array.from({ length: 4 }, (_, i): Trial => ({ ...bare, standOff: { value: (-4 - i / 10) * UM, sigma: UM } }));
    const results = trialsOf({ seats }, trials, DOUBT);
    const doubts = results.map((r) => (r.status === 'updated' ? r.estimate.covariance[1]![1]! : Number.NaN));
    for (let i = 1; i < doubts.length; i++) expect(doubts[i]!).toBeLessThan(doubts[i - 1]!);
    const broken = trialsOf({ seats }, [trials[0]!, { ...bare, standOff: { value: -500 * UM, sigma: UM } }, trials[1]!], DOUBT);
    expect(broken.map((r) => r.status)).toEqual(['updated', 'contradiction']);
  });

  it('the covariance stays symmetric and positive', () => {
    const micrometres = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => x * UM);
    fc.assert(
      fc.property(micrometres(-8, 2), micrometres(0.3, 5), fc.boolean(), (value, sigma, prints) => {
        const [result] = trialsOf({ seats: pair(0.0006, 0.008) }, [{ ...bare, standOff: { value, sigma }, blue: [{ seat: 1, prints }] }], DOUBT);
        if (result!.status !== 'updated') return;
        const [[a, b], [c, d]] = result!.estimate.covariance as [[number, number], [number, number]];
        expect(b).toBeCloseTo(c, 25);
        expect(Math.min(a, d)).toBeGreaterThan(0);
        expect(a * d - b * c).toBeGreaterThan(-1e-30);
        expect(result!.touched!.reduce((x, y) => x + y)).toBeCloseTo(1, 12);
      }),
      { seed: 9, numRuns: 200 },
    );
  });

  it('a face taken off moves its seats, and what is left of it is less', () => {
    const faces = [{ name: 'spacer', part: 'bush' as const, seats: [1], moves: -1 as const, cleanup: 5 * UM, limit: 200 * UM, add: 30 * UM }];
    const trial: Trial = { ...bare, faces: [{ face: 0, off: 50 * UM, sigma: 2 * UM }] };
    const [result] = trialsOf({ seats, faces }, [trial], DOUBT);
    if (result!.status !== 'updated') throw new Error(result!.status);
    expect(result!.seats[1]!.bush.station).toBeCloseTo(seats[1]!.bush.station - 50 * UM, 15);
    expect(result!.estimate.covariance[1]![1]).toBeCloseTo(DOUBT ** 2 + 2 * UM ** 2, 20);
    expect(solveFit(result!.seats, 0).firstPosition).toBeCloseTo(solveFit(seats, 0).firstPosition! - 50 * UM, 13);
    expect(remainingFaces(faces, [trial])[0]).toMatchObject({ cleanup: 0, limit: 150 * UM, add: 80 * UM });
  });

  it('stock off a surface that is cut to a new line leaves that line', () => {
    const worn = [
      {
        ...seats[0]!,
        bush: {
          ...seats[0]!.bush,
          profile: [
            [-25 * MM, 0],
            [-0.5 * MM, -12 * UM],
          ] as const,
        },
      },
      seats[1]!,
    ];
    const allow = [{ seat: 0, part: 'bush' as const, cleanup: 0, limit: 100 * UM, renew: rad(3) }];
    const taken = [{ seat: 0, part: 'bush' as const, normal: 10 * UM, sigma: 0 }];
    const results = trialsOf(
      { seats: worn, allow },
      [
        { ...bare, taken },
        { ...bare, taken },
      ],
      DOUBT,
    );
    const last = results[1]!;
    if (last.status !== 'updated') throw new Error(last.status);
    expect(last.seats[0]!.bush.profile).toEqual([]);
    expect(last.seats[0]!.bush.radius - worn[0]!.bush.radius).toBeCloseTo((20 * UM) / Math.cos(rad(3)), 14);
  });

  it('what is left: the plan of the parts as believed, with the rooms that are left', () => {
    const allow = [{ seat: 1, part: 'journal' as const, cleanup: 5 * UM, limit: 100 * UM }];
    const trial: Trial = { ...bare, taken: [{ seat: 1, part: 'journal', normal: 60 * UM, sigma: 0 }], standOff: { value: -88 * UM, sigma: 0.01 * UM } };
    expect(remaining(allow, [trial])).toEqual([{ ...allow[0], cleanup: 0, limit: 40 * UM }]);
    const result = updated([trial], 0.3 * UM);
    const verdict = planCut({ seats: result.seats, position: 0, allow: remaining(allow, [trial]) });
    if (verdict.status !== 'planned') throw new Error(verdict.status);
    // so sure of the films that the shallow one is not doubted; the first plan was 76.532 µm; the parts stood off 88 µm where 60 µm off should have made 88.85
    expect(verdict.plan.total / UM).toBeCloseTo(76.532 - 60 + (88.853 - 88) * Math.sin(rad(45)), 2);
  });
});
