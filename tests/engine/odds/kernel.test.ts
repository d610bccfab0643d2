import { expect, test } from 'vitest';
import { leastFilm } from '../../../src/engine/contact/film.ts';
import { type SeatInput, seatLines, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { kernelOf } from '../../../src/engine/odds/kernel.ts';
import { columnsOf, type Question } from '../../../src/engine/odds/outcomes.ts';
import { linearSampler, type Source } from '../../../src/engine/odds/sampler.ts';
import { ODD, seatColumns, straightSeat } from '../../../src/engine/odds/straight.ts';
import { LONG } from '../../long.ts';
import { anyPair, chance, doubleCone, inStep, surface } from './pairs.ts';

const NUMBERS = ['halfAngle', 'radius', 'station', 'from', 'to'] as const;
const everyNumber = (seats: readonly SeatInput[]): Source[] =>
  seats.flatMap((_, seat) =>
    (['journal', 'bush'] as const).flatMap((part) => NUMBERS.map((of) => ({ seat, part, of }) as const)),
  );
const sigmaOf = ({ of }: Source) => ({ halfAngle: 2e-5, radius: 1e-6, station: 2e-6, from: 1e-4, to: 1e-4 })[of];
const diagonal = (sources: readonly Source[]) =>
  sources.map((s, i) => sources.map((_, k) => (i === k ? sigmaOf(s) ** 2 : 0)));

test('drawn by the thousand, a pair has the answers of the fit itself, to 1e-15 m', () => {
  const random = chance(7);
  let compared = 0;
  const holding = [0, 0];
  for (let pair = 0; pair < 60 * LONG; pair++) {
    const any = anyPair(random, 2 + (pair % 3));
    const seats = pair % 2 === 0 ? any : inStep(any, random);
    const sources = everyNumber(seats);
    const sampler = linearSampler(seats, sources, diagonal(sources));
    const question: Question = { position: 1e-4 * random(), friction: 0.3 };
    const u = sources.map(() => Float64Array.from({ length: 8 }, random));
    const fast = kernelOf(sampler, seats, question, 8)(u);
    // Without saying that it is linear, the same pairs go one by one through contact/.
    const slow = kernelOf({ dimensions: sampler.dimensions, shape: sampler.shape }, seats, question, 8)(u);
    const at = columnsOf(seats.length);
    expect([fast.first, fast.holds, fast.inBand, fast.inBandAtBest]).toEqual([
      slow.first,
      slow.holds,
      slow.inBand,
      slow.inBandAtBest,
    ]);
    for (const holds of fast.holds) holding[holds]!++;
    fast.values.forEach((column, c) => {
      // Of the position that is searched for, to what the search is good for; a miss is told in tolerances.
      const close = c === at.worstMiss ? 1e-7 : c >= at.bestPosition && c < at.relations ? 3e-15 : 1e-15;
      for (let k = 0; k < 8; k++) {
        const [one, other] = [column[k]!, slow.values[c]![k]!];
        if (Number.isFinite(other)) compared++;
        if (Number.isFinite(other)) expect(Math.abs(one - other), JSON.stringify(fast.answered[c])).toBeLessThan(close);
        else expect(one, JSON.stringify(fast.answered[c])).toBe(other);
      }
    });
  }
  expect(compared).toBeGreaterThan(3000);
  for (const times of holding) expect(times).toBeGreaterThan(20);
});

/**
 * Worst miss in tolerances over a fine walk of positions, and the position: no formula of the engine but the film's.
 */
function walked(seats: readonly SeatInput[], from: number, to: number): { miss: number; at: number } {
  const lines = seats.map(seatLines);
  const missAt = (p: number) =>
    Math.max(
      ...lines.map(({ gap }, i) => Math.abs((leastFilm(gap, p) ?? 1) - seats[i]!.target!) / seats[i]!.tolerance!),
    );
  let [low, high] = [from, to];
  let best = { miss: Number.POSITIVE_INFINITY, at: Number.NaN };
  for (let round = 0; round < 5; round++) {
    const step = (high - low) / 200;
    for (let i = 0; i <= 200; i++) {
      const at = low + i * step;
      const miss = missAt(at);
      if (miss < best.miss) best = { miss, at };
    }
    [low, high] = [Math.max(from, best.at - 2 * step), Math.min(to, best.at + 2 * step)];
  }
  return best;
}

test('at the best position no other has a lesser worst miss, within reach and clear of metal', () => {
  const random = chance(21);
  let bounded = 0;
  for (let pair = 0; pair < 40 * LONG; pair++) {
    // Without the straight seat; the last one closing noseward in every other pair.
    const all = anyPair(random, 4).filter((_, i) => i !== 2 && (i !== 3 || pair % 2 === 0));
    const seats = inStep(all, random);
    const sampler = linearSampler(seats, [], []);
    const free = kernelOf(sampler, seats, { position: 0, friction: 0.1 }, 1)([]);
    const at = columnsOf(seats.length);
    const stops = solveFit(seats, 0);
    const rear = stops.firstPosition!;
    const nose = rear + (stops.endPlay ?? 2e-3);
    const reach = pair % 3 === 0 ? { from: rear + 1e-5, to: rear + 4e-5 } : undefined;
    const found = kernelOf(sampler, seats, { position: 0, friction: 0.1, ...(reach && { reach }) }, 1)([]);
    const best = found.values[at.bestPosition]![0]!;
    const [low, high] = reach ? [reach.from, Math.min(reach.to, nose)] : [rear, nose];
    if (low > high) {
      expect(best).toBeNaN();
      expect(found.inBandAtBest[0]).toBe(0);
      continue;
    }
    const oracle = walked(seats, low, high);
    expect(Math.abs(best - oracle.at)).toBeLessThan(2e-9);
    expect(found.values[at.worstMiss]![0]!).toBeLessThan(oracle.miss + 1e-9);
    if (best !== free.values[at.bestPosition]![0]) bounded++;
    // In band together just where the fit has positions for it.
    if (!reach) expect(found.inBandAtBest[0] === (1 << seats.length) - 1).toBe(stops.permitted !== null);
  }
  expect(bounded).toBeGreaterThan(5);
});

test('both films in band at best just where the fit finds a position that is permitted', () => {
  const seats = doubleCone();
  const sources = [0, 1].map((seat): Source => ({ seat, part: 'bush', of: 'radius' }));
  const sampler = linearSampler(seats, sources, [
    [2.5e-13, 0],
    [0, 2.5e-13],
  ]);
  const random = chance(5);
  const u = sources.map(() => Float64Array.from({ length: 300 }, random));
  const { inBandAtBest } = kernelOf(sampler, seats, { position: 0, friction: 0.1 }, 300)(u);
  const permitted = inBandAtBest.map((_, k) =>
    solveFit(sampler.shape(Float64Array.from(u, (column) => column[k]!))!, 0).permitted === null ? 0 : 1,
  );
  expect(inBandAtBest.map((bits) => (bits === 3 ? 1 : 0))).toEqual(permitted);
  const times = permitted.reduce((sum, x) => sum + x, 0);
  expect(Math.abs(times - 150)).toBeLessThan(130);
});

test('of a profile the answers are those of its line, best position too', () => {
  const seats = doubleCone().map((seat, i) => ({
    ...seat,
    bush: {
      ...seat.bush,
      profile: [0, 0.3, 0.6, 1].map(
        (t, n) => [seat.bush.from + t * (seat.bush.to - seat.bush.from), (n % 2) * 2e-7] as const,
      ),
    },
    journal: { ...seat.journal, radius: seat.journal.radius + i * 3e-7 },
  }));
  const found = kernelOf(linearSampler(seats, [], []), seats, { position: 1e-6, friction: 0.1 }, 1)([]);
  const at = columnsOf(2);
  const whole = solveFit(seats, 1e-6);
  expect(found.values[at.firstPosition]![0]).toBe(whole.firstPosition);
  expect(found.values[at.film]![0]).toBe(whole.seats[0]!.leastFilm);
  expect(found.values[at.relations]![0]).toBe(whole.relation!.error);
  const oracle = walked(seats, whole.firstPosition!, whole.firstPosition! + 1e-3);
  expect(Math.abs(found.values[at.bestPosition]![0]! - oracle.at)).toBeLessThan(2e-9);
  expect(Math.abs(found.values[at.worstMiss]![0]! - oracle.miss)).toBeLessThan(1e-4);
});

test('no shape is no answer, and a straight seat does not choose the position', () => {
  const seats = doubleCone();
  const sampler = linearSampler(seats, [{ seat: 1, part: 'bush', of: 'radius' }], [[1]]);
  const found = kernelOf(sampler, seats, { position: 0, friction: 0.1 }, 2)([Float64Array.of(0.01, 0.5)]);
  expect([...found.first]).toEqual([-2, 1]);
  expect(found.values.every((column) => Number.isNaN(column[0]!))).toBe(true);
  expect([...found.inBand]).toEqual([0, 3]);
  const straight: SeatInput = {
    name: 'rear',
    journal: surface(0, 20, 0, -60, -30),
    bush: surface(0, 20.02, 0, -60, -30),
    target: 2e-6,
    tolerance: 5e-7,
  };
  const three = [...seats, straight];
  const with3 = kernelOf(linearSampler(three, [], []), three, { position: 0, friction: 0.1 }, 1)([]);
  expect(Math.abs(with3.values[columnsOf(3).bestPosition]![0]!)).toBeLessThan(2e-9);
  expect(with3.inBandAtBest[0]).toBe(3);
});

/** tan 1e-4 leans a line of 30 mm by 3 µm: of lines less than that apart some radius is in common, of others none. */
test('a straight bearing that leans both ways closes where its lines have a radius in common, and else nowhere', () => {
  const line = surface(0, 20, -45, -60, -30);
  const closes = (apart: number) => {
    const out = seatColumns(1);
    const bush = { ...line, halfAngle: 1e-4, radius: line.radius + apart };
    straightSeat({ name: 'rear', journal: { ...line, halfAngle: -1e-4 }, bush }, { journal: {}, bush: {} }, 1)(out);
    return out.closes[0]!;
  };
  expect([4e-6, 2e-6, -2e-6, -4e-6].map(closes)).toEqual([0, ODD, ODD, 0]);
});
