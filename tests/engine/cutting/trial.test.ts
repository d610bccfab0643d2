/**
 * Trials: the estimate against the least of its own sum of squares found otherwise, how far it may be off against drawn
 * pairs, and what a remaining plan is made of.
 */
import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { describe, expect, it, vi } from 'vitest';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { leftToCut } from '../../../src/engine/cutting/leftToCut.ts';
import { pairsDrawn } from '../../../src/engine/cutting/pairsDrawn.ts';
import { planCut } from '../../../src/engine/cutting/plan.ts';
import { remaining, remainingFaces, type Trial, trialsOf, type Updated } from '../../../src/engine/cutting/trial.ts';
import { believed } from '../../../src/engine/cutting/trialReadings.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { LONG } from '../../long.ts';
import { evenDoubt, filmsInDoubt, MM, pair, rad, UM } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 60_000 });

const seats = pair(0.0164, 0.008);
const DOUBT = 3 * UM;
const FIRM = evenDoubt(2, DOUBT);
const bare: Trial = { taken: [], thickness: 2 * UM };

function updated(trials: Trial[], doubt = DOUBT) {
  const result = trialsOf({ seats }, trials, evenDoubt(2, doubt)).at(-1)!;
  if (result.status !== 'updated') throw new Error(result.status);
  return result;
}

describe('a stand-off', () => {
  it('of one cone is a measurement of its film: s = z·sin a, with the known weights', () => {
    const one = [seats[1]!];
    const z = -7 * UM;
    const sigma = 2 * UM;
    const [result] = trialsOf({ seats: one }, [{ ...bare, standOff: { value: z, sigma } }], evenDoubt(1, DOUBT));
    if (result!.status !== 'updated') throw new Error('not updated');
    const gain = -1 / Math.sin(rad(45));
    const expected = solveFit(one, 0).firstPosition!;
    const variance = 1 / (1 / DOUBT ** 2 + gain ** 2 / sigma ** 2);
    expect(result!.sigmas[0]! ** 2).toBeCloseTo(variance, 20);
    expect(result!.films[0]).toBeCloseTo((variance * gain * (z - expected)) / sigma ** 2, 14);
    expect(result!.touched).toEqual([1]);
  });

  it('is the least of the sum of squares, whichever seat touched', () => {
    // lines of one half angle: the seat k touches at -(film_k + e_k)/sin a_k, and the foremost of these is read
    const films = pair(0.0085, 0.008).map((s) => (s.bush.radius - s.journal.radius) * Math.cos(s.bush.halfAngle));
    const sines = [rad(3), rad(45)].map(Math.sin);
    const doubt = 10 * UM;
    for (const told of [[-12], [-8], [-4], [0], [5], [-9, -4], [-2, -6, -7]]) {
      const reads = told.map((x) => ({ value: x * UM, sigma: 1.5 * UM }));
      const result = trialsOf(
        { seats: pair(0.0085, 0.008) },
        reads.map((standOff) => ({ ...bare, standOff })),
        evenDoubt(2, doubt),
      ).at(-1)!;
      if (result.status !== 'updated') throw new Error('not updated');
      const cost = (e: readonly number[]) => {
        const first = Math.max(...e.map((x, k) => -(films[k]! + x) / sines[k]!));
        return (
          e.reduce((sum, x) => sum + (x / doubt) ** 2, 0) +
          reads.reduce((sum, read) => sum + ((read.value - first) / read.sigma) ** 2, 0)
        );
      };
      // a net over all that could be, drawn closer about its best
      let best = [0, 0];
      for (let width = 3 * doubt; width > 1e-12; width *= 0.7) {
        const about = best;
        for (let i = -10; i <= 10; i++)
          for (let j = -10; j <= 10; j++) {
            const e = [about[0]! + (i * width) / 10, about[1]! + (j * width) / 10];
            if (cost(e) < cost(best)) best = e;
          }
      }
      expect(cost(result.films)).toBeLessThan(cost(best) * (1 + 1e-6) + 1e-9);
    }
  });

  it('that agrees moves nothing, however often, and makes it surer each time', () => {
    for (const seats of [pair(0.0164, 0.008), pair(0.0006, 0.008), pair(0.0164, 0.003)]) {
      const value = solveFit(seats, 0).firstPosition!;
      const results = trialsOf(
        { seats },
        Array.from({ length: 5 }, (): Trial => ({ ...bare, standOff: { value, sigma: UM } })),
        FIRM,
      );
      let before = Number.POSITIVE_INFINITY;
      for (const result of results) {
        if (result.status !== 'updated') throw new Error(result.status);
        for (const e of result.films) expect(Math.abs(e)).toBeLessThan(1e-15);
        const surest = Math.min(...result.sigmas);
        expect(surest).toBeLessThanOrEqual(before);
        before = surest;
      }
    }
  });

  it('by chance off to either side moves the estimate as far to either side', () => {
    const value = solveFit(seats, 0).firstPosition!;
    const moved = [1, -1].map(
      (side) => updated([{ ...bare, standOff: { value: value + side * 2 * UM, sigma: UM } }]).films[1]!,
    );
    expect(moved[0]).toBeCloseTo(-moved[1]!, 16);
    expect(Math.abs(moved[0]!)).toBeGreaterThan(UM);
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
    const without = trialsOf({ seats: close }, [{ ...bare, standOff: read }], FIRM)[0]!;
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
      FIRM,
    )[0]!;
    if (without.status !== 'updated' || looked.status !== 'updated') throw new Error('not updated');
    expect(without.touched![0]).toBeGreaterThan(0.05);
    expect(without.touched![0]).toBeLessThan(0.95);
    expect(looked.touched).toEqual([1, 0]);
    // the steep one stands clear by more than the blue there
    const film = solveFit(looked.seats, solveFit(looked.seats, 0).firstPosition!).seats[1]!.leastFilm!;
    expect(film).toBeGreaterThan(1.999 * UM);
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
      FIRM,
    )[0]!;
    if (both.status !== 'updated') throw new Error('not updated');
    for (const { leastFilm } of solveFit(both.seats, -4.5 * UM).seats) {
      expect(leastFilm).toBeGreaterThan(-UM);
      expect(leastFilm).toBeLessThan(2 * UM);
    }
    for (const i of [0, 1]) expect(both.sigmas[i]!).toBeLessThan(0.8 * DOUBT);
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
        FIRM,
      ),
    ).toEqual([{ status: 'contradiction' }]);
  });
});

describe('shake', () => {
  const shake = {
    indicator: 30 * MM,
    position: 0,
    direction: 0,
    sigma: 0.2 * UM,
    free: ['x', 'y', 'tiltX', 'tiltY'] as const,
  };

  it('moves the films toward what it shows, and settles where the forward model reads it', () => {
    const truth = believed(seats, [1.5 * UM, 1.5 * UM]);
    const value = predict({ kind: 'shake', ...shake, value: 0 }, truth).value!;
    const before = predict({ kind: 'shake', ...shake, value: 0 }, seats).value!;
    const result = updated([{ ...bare, shake: { ...shake, value } }]);
    const after = predict({ kind: 'shake', ...shake, value: 0 }, result.seats).value!;
    expect(Math.abs(after - value)).toBeLessThan(0.05 * Math.abs(before - value));
    for (const i of [0, 1]) expect(result.sigmas[i]!).toBeLessThanOrEqual(DOUBT * (1 + 1e-12));
  });

  it('where the parts do not fit at that position there is no model', () => {
    expect(trialsOf({ seats }, [{ ...bare, shake: { ...shake, value: UM, position: -MM } }], FIRM)).toEqual([
      { status: 'noModel' },
    ]);
  });
});

describe('trials in turn', () => {
  it('stock taken opens the film by itself and adds its doubt', () => {
    const result = updated([{ ...bare, taken: [{ seat: 1, part: 'journal', normal: 20 * UM, sigma: UM }] }]);
    expect(result.seats[1]!.journal.radius).toBeCloseTo(seats[1]!.journal.radius - (20 * UM) / Math.cos(rad(45)), 15);
    expect(result.films).toEqual([0, 0]);
    expect(result.sigmas[1]! ** 2).toBeCloseTo(DOUBT ** 2 + UM ** 2, 20);
    expect(result.touched).toBeNull();
  });

  it('never know less than before, and end with the first that cannot be', () => {
    const trials = Array.from(
      { length: 4 },
      (_, i): Trial => ({ ...bare, standOff: { value: (-4 - i / 10) * UM, sigma: UM } }),
    );
    const results = trialsOf({ seats }, trials, FIRM);
    const doubts = results.map((r) => (r.status === 'updated' ? r.sigmas[1]! : Number.NaN));
    for (let i = 1; i < doubts.length; i++) expect(doubts[i]!).toBeLessThan(doubts[i - 1]!);
    const broken = trialsOf(
      { seats },
      [trials[0]!, { ...bare, standOff: { value: -500 * UM, sigma: UM } }, trials[1]!],
      FIRM,
    );
    expect(broken.map((r) => r.status)).toEqual(['updated', 'contradiction']);
  });

  it('bounds are kept, doubts are above nothing and no more than they were, likelihoods add up to one', () => {
    const micrometres = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => x * UM);
    fc.assert(
      fc.property(micrometres(-8, 2), micrometres(0.3, 5), fc.boolean(), (value, sigma, prints) => {
        const [result] = trialsOf(
          { seats: pair(0.0006, 0.008) },
          [{ ...bare, standOff: { value, sigma }, blue: [{ seat: 1, prints }] }],
          FIRM,
        );
        if (result!.status !== 'updated') return;
        for (const s of result!.sigmas) {
          expect(s).toBeGreaterThan(0);
          expect(s).toBeLessThan(2 * DOUBT);
        }
        expect(result!.touched!.reduce((x, y) => x + y)).toBeCloseTo(1, 12);
        const { firstPosition, seats: fitted } = solveFit(result!.seats, 0);
        const steep = solveFit(result!.seats, firstPosition!).seats[1]!.leastFilm!;
        expect(fitted.length).toBe(2);
        if (prints) expect(steep).toBeLessThan(2.001 * UM);
        else expect(steep).toBeGreaterThan(1.999 * UM);
      }),
      { seed: 9, numRuns: 200 },
    );
  });

  it('a face taken off moves its seats, and what is left of it is less', () => {
    const faces = [
      {
        name: 'spacer',
        part: 'bush' as const,
        seats: [1],
        moves: -1 as const,
        cleanup: 5 * UM,
        limit: 200 * UM,
        add: 30 * UM,
      },
    ];
    const trial: Trial = { ...bare, faces: [{ face: 0, off: 50 * UM, sigma: 2 * UM }] };
    const [result] = trialsOf({ seats, faces }, [trial], FIRM);
    if (result!.status !== 'updated') throw new Error(result!.status);
    expect(result!.seats[1]!.bush.station).toBeCloseTo(seats[1]!.bush.station - 50 * UM, 15);
    expect(result!.sigmas[1]! ** 2).toBeCloseTo(DOUBT ** 2 + 2 * UM ** 2, 20);
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
      FIRM,
    );
    const last = results[1]!;
    if (last.status !== 'updated') throw new Error(last.status);
    expect(last.seats[0]!.bush.profile).toEqual([]);
    expect(last.seats[0]!.bush.radius - worn[0]!.bush.radius).toBeCloseTo((20 * UM) / Math.cos(rad(3)), 14);
  });

  it('what is left: the plan of the parts as believed, with the rooms that are left', () => {
    const allow = [{ seat: 1, part: 'journal' as const, cleanup: 5 * UM, limit: 100 * UM }];
    const trial: Trial = {
      ...bare,
      taken: [{ seat: 1, part: 'journal', normal: 60 * UM, sigma: 0 }],
      standOff: { value: -88 * UM, sigma: 0.01 * UM },
    };
    expect(remaining(allow, [trial])).toEqual([{ ...allow[0], cleanup: 0, limit: 40 * UM }]);
    const result = updated([trial], 0.3 * UM);
    const verdict = planCut({ seats: result.seats, position: 0, allow: remaining(allow, [trial]) });
    if (verdict.status !== 'planned') throw new Error(verdict.status);
    // so sure of the films that the shallow one is not doubted; the first plan was 76.532 µm; the parts stood off 88 µm
    // where 60 µm off should have made 88.85
    expect(verdict.plan.total / UM).toBeCloseTo(76.532 - 60 + (88.853 - 88) * Math.sin(rad(45)), 2);
  });
});

describe('what is left to cut', () => {
  const allow = [{ seat: 1, part: 'journal' as const, cleanup: 0, limit: 300 * UM }];
  const input = { seats, position: 0, allow };
  const value = solveFit(seats, 0).firstPosition!;
  const shake = {
    indicator: 30 * MM,
    position: 0,
    direction: 0,
    sigma: UM,
    free: ['x', 'y', 'tiltX', 'tiltY'] as const,
  };
  const agreeing: Trial = {
    ...bare,
    standOff: { value, sigma: UM },
    shake: { ...shake, value: predict({ kind: 'shake', ...shake, value: 0 }, seats).value! },
    blue: [
      { seat: 0, prints: false },
      { seat: 1, prints: true },
    ],
  };
  const known = (trials: Trial[], { parts, films, clashes }: Updated, doubt = DOUBT, pairs = 4000) => ({
    parts,
    films,
    clashes: clashes.length > 0,
    risk: 1 / 40,
    drawn: pairsDrawn({ ...filmsInDoubt(seats, doubt), input: { seats }, trials }, pairs, 1),
  });
  const risking = (risk: number) =>
    leftToCut({ ...input, allow: remaining(allow, [agreeing]) }, { ...known([agreeing], updated([agreeing])), risk });
  const left = (trials: Trial[], doubt = DOUBT) =>
    leftToCut({ ...input, allow: remaining(allow, trials) }, known(trials, updated(trials, doubt), doubt));

  it('what is safe leaves room for the dial as well, root of squares, and only that', () => {
    const trials = [agreeing, agreeing, agreeing];
    const [plain] = left(trials).amounts;
    const sigma = (plain!.amount - plain!.safe) / 4;
    const withDial = leftToCut(
      { ...input, allow: remaining(allow, trials) },
      { ...known(trials, updated(trials)), dial: () => sigma },
    ).amounts[0]!;
    expect(withDial).toMatchObject({ amount: plain!.amount, sigma: plain!.sigma });
    const z = 1.959963984540054;
    const room = Math.hypot(plain!.amount - plain!.safe, z * sigma);
    expect(withDial.safe).toBeCloseTo(Math.max(0, plain!.amount - room), 12);
    expect(withDial.safe).toBeGreaterThan(0);
    expect(withDial.safe).toBeLessThan(plain!.safe);
    // What is less than half a division is not set on the dial, and needs no room for it.
    const coarse = leftToCut(
      { ...input, allow: remaining(allow, trials) },
      { ...known(trials, updated(trials)), dial: () => 2 * plain!.safe },
    ).amounts[0]!;
    expect(coarse.safe).toBeCloseTo(plain!.safe, 12);
  });

  it('a trial that agrees with the plan leaves it where it was; told twice it is surer and no other', () => {
    const planned = planCut(input);
    if (planned.status !== 'planned') throw new Error(planned.status);
    const [once, twice] = [left([agreeing]), left([agreeing, agreeing])];
    for (const found of [once, twice, left([{ ...bare, standOff: agreeing.standOff! }])])
      expect(found.amounts[0]!.amount).toBeCloseTo(planned.plan.total, 14);
    expect(twice.amounts[0]!.sigma).toBeLessThan(once.amounts[0]!.sigma);
    expect(once.amounts[0]!.safe).toBeLessThan(once.amounts[0]!.amount);
    expect(twice.amounts[0]!.safe).toBeGreaterThan(once.amounts[0]!.safe);
  });

  it('tells where the journal should touch next: as the fit of the parts with that much off', () => {
    const { standOff, amounts } = left([agreeing]);
    expect(standOff.now).toBeCloseTo(value, 14);
    expect(standOff.safe).toBeCloseTo(value - amounts[0]!.safe / Math.sin(rad(45)), 12);
    expect(standOff.all).toBeCloseTo(value - amounts[0]!.amount / Math.sin(rad(45)), 12);
  });

  it('without bounds in the way the safe amount is the most likely less 1.96 standard deviations', () => {
    const [{ amount, sigma, safe }] = left([agreeing]).amounts as [ReturnType<typeof left>['amounts'][number]];
    // one pair in 40 lies lower; so many pairs tell the place to a tenth of a deviation
    expect(Math.abs(safe - (amount - 1.96 * sigma))).toBeLessThan(0.2 * sigma);
  });

  it('who allows more risk may take more, and none but what is most likely left', () => {
    const safe = [0.01, 1 / 40, 0.16, 0.25].map((risk) => risking(risk).amounts[0]!);
    for (const [k, { safe: own, amount, sigma }] of safe.entries()) {
      if (k > 0) expect(own).toBeGreaterThan(safe[k - 1]!.safe);
      expect(own).toBeLessThan(amount);
      // of a normal spread: 2.33, 1.96, 0.99 and 0.67 standard deviations
      expect(Math.abs((amount - own) / sigma - [2.326, 1.96, 0.994, 0.674][k]!)).toBeLessThan(k === 0 ? 0.4 : 0.2);
    }
  });

  it('what its limit holds is as much in doubt as without it, and no more of it is safe', () => {
    const FINE = 0.5 * UM;
    const [free] = left([agreeing], FINE).amounts as [ReturnType<typeof left>['amounts'][number]];
    const limited = (limit: number) =>
      leftToCut({ ...input, allow: [{ ...allow[0]!, limit }] }, known([agreeing], updated([agreeing], FINE), FINE))
        .amounts[0]!;
    // Just short of what is most likely: half of the pairs need less.
    const short = limited(free.amount - 0.1 * UM);
    expect(short.amount).toBeCloseTo(free.amount - 0.1 * UM, 12);
    expect(Math.abs(short.safe - free.safe)).toBeLessThan(0.1 * free.sigma);
    // The lesser half of a normal spread, about its end: 1/√2 of the whole.
    expect(Math.abs(short.sigma / free.sigma - Math.SQRT1_2)).toBeLessThan(0.08);
    // Where next to all pairs need more than the limit it may all be taken, and is hardly in doubt.
    const far = limited(free.amount - 4 * free.sigma);
    expect(far.safe).toBeCloseTo(far.amount, 12);
    expect(far.sigma).toBeLessThan(0.05 * free.sigma);
  });

  it('a seat that was only seen to stand clear leaves its film, and so the stock, in doubt: it is said which', () => {
    const [found] = left([{ ...bare, standOff: agreeing.standOff! }]).amounts;
    expect(found!.doubted).toBe(0);
    // the stock follows the shallow film by sin 45°/sin 3°
    expect(found!.sigma).toBeGreaterThan((0.95 * DOUBT * Math.sin(rad(45))) / Math.sin(rad(3)));
    // so unsure that nothing may be taken, until the blue says that it stands clear: by 5 µm of the 7.98 at the touch
    const [unseen, seen] = [false, true].map(
      (looked) =>
        left(
          [{ ...bare, thickness: 5 * UM, standOff: agreeing.standOff!, ...(looked && { blue: agreeing.blue! }) }],
          20 * UM,
        ).amounts[0]!,
    );
    expect(unseen!.safe).toBe(0);
    expect(seen!.safe).toBeGreaterThan(30 * UM);
    expect(seen!.amount).toBeCloseTo(unseen!.amount, 14);
  });

  it('of pairs drawn from the doubt, at most about 1 in 40 lose too much by the safe amount', () => {
    const rng = mersenne(11);
    const uniform = () => 1 - uniformFloat64(rng);
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let [drawn, overshot, within] = [0, 0, 0];
    const draws = 50 * LONG;
    for (let i = 0; i < draws; i++) {
      const truth = believed(seats, [DOUBT * normal(), DOUBT * normal()]);
      const wanted = planCut({ ...input, seats: truth });
      const at = solveFit(truth, 0).firstPosition!;
      const films = solveFit(truth, at).seats.map((s) => s.leastFilm!);
      const read = predict({ kind: 'shake', ...shake, value: 0 }, truth).value;
      if (wanted.status !== 'planned' || read === null) continue;
      const blue = films.map((film, seat) => ({ seat, prints: film < 2 * UM }));
      const trial: Trial = {
        ...bare,
        standOff: { value: at + UM * normal(), sigma: UM },
        shake: { ...shake, value: read + UM * normal() },
        blue,
      };
      const [result] = trialsOf({ seats }, [trial], FIRM);
      if (result!.status !== 'updated') continue;
      drawn++;
      const { amounts } = leftToCut(input, known([trial], result!, DOUBT, 200));
      const found = amounts[0] ?? { amount: 0, safe: 0, sigma: 0 };
      if (found.safe > wanted.plan.total + 1e-12) overshot++;
      if (Math.abs(found.amount - wanted.plan.total) <= found.sigma) within++;
    }
    expect(drawn).toBeGreaterThan(0.7 * draws);
    // so many by chance at most, once in a thousand such tests
    expect(overshot).toBeLessThanOrEqual(drawn / 40 + 3.1 * Math.sqrt(drawn / 41));
    // nor never: that would be too little by far; seen where there are enough of them
    if (LONG > 1) expect(overshot).toBeGreaterThan(0);
    // 68 in 100, give or take what so few tell
    expect(Math.abs(within / drawn - 0.683)).toBeLessThan(3.3 * Math.sqrt(0.22 / drawn));
  });

  it('where too much is off already nothing is safe to take', () => {
    const trial: Trial = {
      ...agreeing,
      taken: [{ seat: 1, part: 'journal', normal: 200 * UM, sigma: 0 }],
      standOff: { value: value - (200 * UM) / Math.sin(rad(45)), sigma: UM },
      blue: [],
    };
    const { shake: _, ...plain } = trial;
    const result = updated([plain]);
    expect(
      leftToCut({ ...input, allow: remaining(allow, [plain]) }, known([plain], result)).amounts.every(
        ({ safe, amount }) => safe >= 0 && safe <= amount,
      ),
    ).toBe(true);
  });
});
