/**
 * Pairs drawn as everything known allows, against plain rejection: pairs of the prior, each kept as often as what was
 * read at the trials is likely with it, by contact worked out here from the lines alone.
 */
import { sum } from 'd3-array';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { describe, expect, it, vi } from 'vitest';
import { atEnds } from '../../../src/engine/belief/filmsBelieved.ts';
import { valuesOf } from '../../../src/engine/belief/quantities.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { type PairsDrawn, pairsDrawn } from '../../../src/engine/cutting/pairsDrawn.ts';
import type { Trial } from '../../../src/engine/cutting/trial.ts';
import { believe } from '../../../src/engine/gauging/believe.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { LONG } from '../../long.ts';
import { filmsInDoubt, MM, pair, UM } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 1_800_000 });

const seats = pair(0.0164, 0.008);
const DOUBT = 5 * UM;
const BLUE = 4 * UM;
const bare: Trial = { taken: [], thickness: BLUE };
const shake = { indicator: 30 * MM, direction: 0, free: ['x', 'y', 'tiltX', 'tiltY'] as const };

function knownOf(doubt = DOUBT, of = seats) {
  const belief = believe(of, [], [], doubt, 0);
  return {
    belief,
    input: { seats: of },
    errors: [],
    films: atEnds({ belief, design: of, position: 0, places: [], doubt }),
  };
}

function random(seed: number) {
  const rng = mersenne(seed);
  const uniform = () => 1 - uniformFloat64(rng);
  return { uniform, normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()) };
}

/** A pair with every number that nobody has read off by its own doubt. */
function truthOf(normal: () => number, doubt = DOUBT): SeatInput[] {
  const truth = seats.map((seat) => ({ ...seat }));
  for (const { seat, part, of, sigma } of believe(seats, [], [], doubt, 0).unread) {
    const surface = truth[seat]![part];
    truth[seat]![part] = { ...surface, [of]: surface[of] + sigma * normal() };
  }
  return truth;
}

/** The film of a straight cone at a position: by the ends that both lines have, in plain numbers. */
function filmAt({ journal, bush }: SeatInput, position: number): number {
  const cos = Math.cos(bush.halfAngle);
  const slope = (s: SeatInput['journal']) => Math.tan(s.halfAngle);
  const bushAt = (z: number) => bush.radius + (z - bush.station) * slope(bush);
  // Normal to the bush, from each end of either line: where it meets the other line.
  const films: number[] = [];
  for (const z of [bush.from, bush.to]) {
    // r_j(z + h·sin - p) = r_b(z) - h·cos
    const at = journal.radius + (z - position - journal.station) * slope(journal);
    const h = (bushAt(z) - at) / (cos + slope(journal) * Math.sin(bush.halfAngle));
    const foot = z + h * Math.sin(bush.halfAngle) - position;
    if (foot >= journal.from && foot <= journal.to) films.push(h);
  }
  for (const z of [journal.from, journal.to]) {
    const r = journal.radius + (z - journal.station) * slope(journal);
    const h = (bushAt(z + position) - r) / (cos + slope(bush) * Math.sin(bush.halfAngle));
    const foot = z + position - h * Math.sin(bush.halfAngle);
    if (foot >= bush.from && foot <= bush.to) films.push(h);
  }
  return Math.min(...films);
}

function touchOf(seat: SeatInput): number {
  let [low, high] = [-2 * MM, 2 * MM];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (filmAt(seat, middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const cutBy = (parts: readonly SeatInput[], { taken }: Trial, errors: readonly number[]): SeatInput[] =>
  parts.map((seat, i) => {
    const off = taken.map(({ seat: of, normal }, k) => (of === i ? normal + errors[k]! : 0));
    const radius = seat.journal.radius - sum(off) / Math.cos(seat.journal.halfAngle);
    return { ...seat, journal: { ...seat.journal, radius } };
  });

/** Every pair of the prior, with its weight: how likely all that was read is. */
function byRejection(trials: readonly Trial[], count: number, seed: number, doubt = DOUBT): PairsDrawn {
  const { normal } = random(seed);
  const pairs: SeatInput[][] = [];
  const raw: number[] = [];
  for (let k = 0; k < count; k++) {
    let now = truthOf(normal, doubt);
    let log = 0;
    for (const trial of trials) {
      now = cutBy(
        now,
        trial,
        trial.taken.map(({ sigma }) => sigma * normal()),
      );
      const at = Math.max(...now.map(touchOf));
      if (trial.standOff) log -= ((trial.standOff.value - at) / trial.standOff.sigma) ** 2 / 2;
      for (const { seat, prints } of trial.blue ?? [])
        if (filmAt(now[seat]!, at) < trial.thickness !== prints) log = Number.NEGATIVE_INFINITY;
      if (trial.shake && log > -12) {
        const { value } = predict({ kind: 'shake', ...trial.shake }, now);
        log -= value === null ? Number.POSITIVE_INFINITY : ((trial.shake.value - value) / trial.shake.sigma) ** 2 / 2;
      }
    }
    // Those a thousand times less likely than the best are as good as rejected.
    if (log < -12) continue;
    pairs.push(now);
    raw.push(Math.exp(log));
  }
  const all = raw.reduce((a, b) => a + b, 0);
  const weights = raw.map((w) => w / all);
  return { pairs, weights, effective: 1 / weights.reduce((sum, w) => sum + w * w, 0) };
}

/** Mean and standard deviation of everything the fit tells: relation, first touch, touches, films. */
function momentsOf({ pairs, weights }: PairsDrawn): { mean: number; sd: number }[] {
  const values = pairs.map((shape) => valuesOf(shape, 0));
  return values[0]!.map((_, k) => {
    const mean = values.reduce((sum, of, i) => sum + weights[i]! * of[k]!, 0);
    return { mean, sd: Math.sqrt(values.reduce((sum, of, i) => sum + weights[i]! * (of[k]! - mean) ** 2, 0)) };
  });
}

function expectSame(one: PairsDrawn, other: PairsDrawn) {
  expect(other.effective).toBeGreaterThan(80);
  expect(one.effective).toBeGreaterThan(150);
  const [a, b] = [momentsOf(one), momentsOf(other)];
  for (const [k, { mean, sd }] of a.entries()) {
    // of two samples that count so many: four standard deviations of each figure
    const doubt = Math.hypot(1 / Math.sqrt(one.effective), 1 / Math.sqrt(other.effective));
    const most = Math.max(sd, b[k]!.sd);
    expect(Math.abs(mean - b[k]!.mean)).toBeLessThan(4 * doubt * most);
    expect(Math.abs(sd - b[k]!.sd)).toBeLessThan(4 * doubt * most);
  }
}

const first = valuesOf(seats, 0)[1]!;
const standOff = { value: first + 3 * UM, sigma: 2 * UM };
const blue = [
  { seat: 0, prints: false },
  { seat: 1, prints: true },
];

describe('is what plain rejection leaves', () => {
  const COUNT = 1500;
  const PRIOR = 3000 * LONG;

  it('with nothing read', () => {
    expectSame(pairsDrawn({ ...knownOf(), trials: [] }, COUNT, 1), byRejection([], PRIOR, 2));
  });

  it('of a stand-off', () => {
    const trials = [{ ...bare, standOff }];
    expectSame(pairsDrawn({ ...knownOf(), trials }, COUNT, 1), byRejection(trials, PRIOR, 3));
  });

  it('of a stand-off that either seat may have made, whatever the ends', () => {
    const near = [{ ...bare, standOff: { value: -60 * UM, sigma: 60 * UM } }];
    expectSame(pairsDrawn({ ...knownOf(20 * UM), trials: near }, COUNT, 1), byRejection(near, 2 * PRIOR, 4, 20 * UM));
  });

  it('of the blue', () => {
    const trials = [{ ...bare, blue }];
    expectSame(pairsDrawn({ ...knownOf(), trials }, COUNT, 1), byRejection(trials, PRIOR, 5));
  });

  it('of a shake', () => {
    const at = { ...shake, position: 20 * UM, value: 0, sigma: 3 * UM };
    const value = predict({ kind: 'shake', ...at }, seats).value! + 2 * UM;
    const trials = [{ ...bare, shake: { ...at, value } }];
    expectSame(pairsDrawn({ ...knownOf(2 * UM), trials }, 500, 1), byRejection(trials, 700 * LONG, 6, 2 * UM));
  });

  it('of all together, after a cut whose amount is in doubt', () => {
    const taken = [{ seat: 1, part: 'journal' as const, normal: 10 * UM, sigma: 2 * UM }];
    const trials = [
      { ...bare, standOff, blue },
      { ...bare, taken, standOff: { value: first - 12 * UM, sigma: 3 * UM }, blue },
    ];
    expectSame(pairsDrawn({ ...knownOf(), trials }, COUNT, 1), byRejection(trials, PRIOR, 7));
  });
});

describe('the normal case', () => {
  it('of one cone whose film alone is in doubt is the closed form: s = z·sin a with the known weights', () => {
    const one = [seats[1]!];
    const sigma = 2 * UM;
    const trials = [{ ...bare, standOff: { value: -9 * UM, sigma } }];
    const drawn = pairsDrawn({ ...filmsInDoubt(one, DOUBT), input: { seats: one }, trials }, 4000, 1);
    const [sin, film] = [Math.sin(Math.PI / 4), valuesOf(one, 0)[3]!];
    const variance = 1 / (1 / DOUBT ** 2 + 1 / (sigma * sin) ** 2);
    const mean = variance * (film / DOUBT ** 2 + (9 * UM * sin) / (sigma * sin) ** 2);
    const found = momentsOf(drawn)[3]!;
    expect(drawn.effective / drawn.pairs.length).toBeGreaterThan(0.8);
    expect(Math.abs(found.mean - mean)).toBeLessThan((4 * Math.sqrt(variance)) / Math.sqrt(drawn.effective));
    expect(Math.abs(found.sd / Math.sqrt(variance) - 1)).toBeLessThan(0.08);
  });
});

describe('a shop without gauges', () => {
  it('knows the relation of its cones better with each trial, and nothing that could be is left out', () => {
    const { normal } = random(21);
    const spreads = [0, 0, 0];
    const PAIRS = 12 * LONG;
    for (let job = 0; job < PAIRS; job++) {
      const truth = truthOf(normal);
      const trials: Trial[] = [];
      let now = truth;
      for (let k = 0; k <= 2; k++) {
        const drawn = pairsDrawn({ ...knownOf(), trials }, 300, 1);
        spreads[k]! += momentsOf(drawn)[0]!.sd / PAIRS;
        const taken = k === 0 ? [] : [{ seat: 1, part: 'journal' as const, normal: 20 * UM, sigma: UM }];
        now = cutBy(
          now,
          { ...bare, taken },
          taken.map(({ sigma }) => sigma * normal()),
        );
        const at = Math.max(...now.map(touchOf));
        trials.push({
          ...bare,
          taken,
          standOff: { value: at + UM * normal(), sigma: UM },
          blue: now.map((seat, i) => ({ seat: i, prints: filmAt(seat, at) < BLUE })),
        });
      }
    }
    expect(spreads[1]).toBeLessThan(0.95 * spreads[0]!);
    expect(spreads[2]).toBeLessThan(spreads[1]!);
  });

  it('19 in 20 holds as often as it says', () => {
    const { normal } = random(31);
    const JOBS = LONG > 1 ? 2000 : 80;
    let [told, within] = [0, 0];
    for (let job = 0; job < JOBS; job++) {
      const truth = truthOf(normal);
      const at = Math.max(...truth.map(touchOf));
      const seen = truth.map((seat, i) => ({ seat: i, prints: filmAt(seat, at) < BLUE }));
      const trials = [{ ...bare, standOff: { value: at + UM * normal(), sigma: UM }, blue: seen }];
      const drawn = pairsDrawn({ ...knownOf(), trials }, 500, job);
      const values = drawn.pairs.map((shape, i) => ({ value: valuesOf(shape, 0)[4]!, weight: drawn.weights[i]! }));
      const film = filmAt(truth[0]!, 0);
      const below = values.reduce((sum, { value, weight }) => sum + (value < film ? weight : 0), 0);
      told++;
      if (below > 0.025 && below < 0.975) within++;
    }
    const [least, most] = JOBS === 2000 ? [1867, 1931] : [told * 0.95 - 3.3 * Math.sqrt(told * 0.0475), told];
    expect(within).toBeGreaterThanOrEqual(least);
    expect(within).toBeLessThanOrEqual(most);
  });
});

describe('trials with their shakes, one after the other', () => {
  const JOBS = LONG > 1 ? 60 : 3;

  it('leave pairs enough that count, whatever was drawn first, and the true film among them', () => {
    const { normal } = random(41);
    let within = 0;
    for (let job = 0; job < JOBS; job++) {
      let now = truthOf(normal, 3 * UM);
      const trials: Trial[] = [];
      for (const normalOff of [0, 30 * UM, 20 * UM]) {
        const taken = normalOff === 0 ? [] : [{ seat: 1, part: 'journal' as const, normal: normalOff, sigma: UM }];
        now = cutBy(
          now,
          { ...bare, taken },
          taken.map(() => UM * normal()),
        );
        const at = Math.max(...now.map(touchOf));
        const felt = { ...shake, position: at + 10 * UM, value: 0, sigma: UM };
        trials.push({
          ...bare,
          taken,
          standOff: { value: at + UM * normal(), sigma: UM },
          shake: { ...felt, value: predict({ kind: 'shake', ...felt }, now).value! + UM * normal() },
        });
      }
      const [one, other] = [1, 2].map((seed) => pairsDrawn({ ...knownOf(3 * UM), trials }, 500, seed));
      expectAlike(one!, other!);
      const film = filmAt(now[0]!, 0);
      const { mean, sd } = momentsOf(one!)[4]!;
      if (Math.abs(film - mean) < 2.5 * sd) within++;
    }
    expect(within).toBeGreaterThanOrEqual(JOBS - 1 - Math.floor(JOBS / 20));
  });

  function expectAlike(one: PairsDrawn, other: PairsDrawn) {
    expect(Math.min(one.effective, other.effective)).toBeGreaterThan(100);
    const [a, b] = [momentsOf(one), momentsOf(other)];
    const doubt = Math.hypot(1 / Math.sqrt(one.effective), 1 / Math.sqrt(other.effective));
    for (const [k, { mean, sd }] of a.entries()) {
      expect(Math.abs(mean - b[k]!.mean)).toBeLessThan(4 * doubt * Math.max(sd, b[k]!.sd));
      expect(Math.abs(sd / b[k]!.sd - 1)).toBeLessThan(4 * doubt);
    }
  }
});
