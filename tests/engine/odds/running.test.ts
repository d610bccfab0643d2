/** The odds of a run: each pair drawn is run as it would be alone, and what is put together counts rightly. */
import { describe, expect, it } from 'vitest';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { type FilmSeat, newGrids } from '../../../src/engine/film/films.ts';
import { constantOil, oilOfGrade } from '../../../src/engine/film/oil.ts';
import { steadyState, warmUp } from '../../../src/engine/heat/warmUp.ts';
import { chanceOf } from '../../../src/engine/odds/limits.ts';
import { drawer } from '../../../src/engine/odds/odds.ts';
import { answerOne } from '../../../src/engine/odds/oneByOne.ts';
import { columnsOf, roomFor } from '../../../src/engine/odds/outcomes.ts';
import {
  gridError,
  runningOf as oddsOfRun,
  type RunningAsk,
  runDraws,
  runSpreadOf,
  type Setting,
  withSettings,
} from '../../../src/engine/odds/running.ts';
import { checkedOf } from '../../../src/engine/odds/runningGrid.ts';
import {
  coldNear,
  ended,
  type RunDrawn,
  type RunEnd,
  runDrawn,
  withPair,
} from '../../../src/engine/odds/runningOne.ts';
import { linearSampler, type Source, standard } from '../../../src/engine/odds/sampler.ts';
import { coldRun, type Running, warmingOf } from '../../../src/engine/run/running.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { rigidSeat } from '../../../src/engine/spindle/rigid.ts';
import { at, lobed as withLobes } from '../film/bearings.ts';
import { runningOf } from '../run/spindles.ts';
import { doubleCone } from './pairs.ts';

const GRID = { rows: 6, columns: 16 };
const seats = doubleCone();
const filmSeats = (pair: readonly SeatInput[]): FilmSeat[] => pair.map((seat) => ({ ...rigidSeat(seat), grooves: [] }));

/** The double cone held a little off the axis: no pose to be sought, so that a draw is quick. */
const held = (over: Partial<Running> = {}): Running =>
  runningOf({}, { seats: filmSeats(seats), load: null, pose: at({ y: -5e-7 }), ...over });

const sources: Source[] = seats.flatMap((_, seat) =>
  (['journal', 'bush'] as const).map((part) => ({ seat, part, of: 'radius' as const })),
);
const SIGMA = 2e-7;
const sampler = linearSampler(
  seats,
  sources,
  sources.map((_, i) => sources.map((__, k) => (i === k ? SIGMA ** 2 : 0))),
);
const question = { position: 0, friction: 0.12 };
const ask: RunningAsk = { running: held(), sampler, middle: seats, question, at: 'set', settings: [], seed: 3 };

const pairOf = (draw: number) => {
  const u = drawer(sampler, ask.seed)(0);
  return sampler.shape(Float64Array.from(u, (column) => column[draw]!))!;
};

describe('a pair drawn', () => {
  it('is the pair of the odds, run as it would be alone', () => {
    const drawn = runDraws(ask, GRID)(0, 3);
    for (const k of [0, 2]) {
      const pair = pairOf(k);
      const running = held({ seats: filmSeats(pair) });
      const warming = { ...warmingOf(running), grids: newGrids(running.seats, GRID) };
      const films = pair.map(() => Number.POSITIVE_INFINITY);
      const way = warmUp(warming, running.duration, (_, state) => {
        for (const [i, seat] of state.seats.entries()) films[i] = Math.min(films[i]!, seat.least.film);
        return true;
      });
      const steady = steadyState(warming, way.last);
      if (steady.status !== 'solved') throw new Error(steady.status);
      for (const [i, seat] of steady.seats.entries()) films[i] = Math.min(films[i]!, seat.least.film);
      expect(drawn[k]!.end).toBe('runs');
      for (const [i, film] of films.entries()) expect(drawn[k]!.films[i]! / film).toBeCloseTo(1, 6);
      expect(drawn[k]!.hottest).toBeCloseTo(Math.max(steady.journal, steady.bush, ...steady.oil), 3);
      expect(drawn[k]!.power / steady.total.power).toBeCloseTo(1, 4);
    }
    expect(drawn[0]!.films).not.toEqual(drawn[1]!.films);
  });

  it('is the same in whatever blocks it is asked for', () => {
    const [one, other] = [runDraws(ask, GRID), runDraws(ask, GRID)];
    const late = other(2, 2);
    expect([...other(0, 2), ...late]).toEqual(one(0, 4));
  });

  it('stands where its films suit it best, or where the question has it', () => {
    const pair = pairOf(1);
    const room = roomFor(seats, 1);
    answerOne(pair, seats, question, room, 0);
    const best = room.values[columnsOf(seats.length).bestPosition]![0]!;
    const [drawn] = runDraws({ ...ask, at: 'best' }, GRID)(1, 1);
    expect(drawn).toEqual(runDrawn(withPair(held(), pair, best), GRID));
    expect(drawn!.films).not.toEqual(runDraws(ask, GRID)(1, 1)[0]!.films);
    const moved = runDraws({ ...ask, question: { ...question, position: 3e-6 } }, GRID)(1, 1)[0]!;
    expect(moved).toEqual(runDrawn(withPair(held(), pair, 3e-6), GRID));
    // Set 3 µm further: the steep film opens by sin 45° of it, the shallow one by sin 3°; a warm one less by its heat.
    const steep = moved.films[1]! - runDraws(ask, GRID)(1, 1)[0]!.films[1]!;
    expect(Math.abs(steep / (3e-6 * Math.SQRT1_2) - 1)).toBeLessThan(0.2);
  });

  it('begins its search with the middle pair, which changes nothing but the way there', () => {
    const loaded = runningOf(
      {},
      {
        seats: filmSeats(seats),

        load: loadAt(0, -20, -5, -0.01),
        adjusted: true,
      },
    );
    const near = coldNear(loaded, GRID);
    expect(near).not.toBeNull();
    const running = withPair(loaded, pairOf(0), 0);
    const [with_, without] = [runDrawn(running, GRID, near), runDrawn(running, GRID)];
    expect(with_.end).toBe('runs');
    for (const [i, film] of with_.films.entries()) expect(film / without.films[i]!).toBeCloseTo(1, 3);
  });

  it('tells why it does not run', () => {
    expect(runDrawn(held({ run: coldRun(filmSeats(seats), null, 0, 0.01, 1e9) }), GRID).end).toBe('standing');
    expect(runDrawn(held({ pose: at({ y: -4e-6 }) }), GRID)).toEqual(ended('shut', 2));
    // The journal alone grows, and on thick oil it soon fills its bush.
    const thick = constantOil(1);
    const warms = held({ oil: thick, duration: 1e5, run: coldRun(filmSeats(seats), null, 120, 1, 1e9) });
    const [journal, bush] = [warms.journal, { ...warms.bush, expansion: 0 }];
    expect(runDrawn({ ...warms, journal, bush }, GRID).end).toBe('seizes');
  });
});

describe('what else is in doubt', () => {
  const lobed = held({
    seats: filmSeats(seats).map((seat) =>
      withLobes(
        seat,
        [
          { count: 3, amplitude: 2e-7, phase: 0 },
          { count: 5, amplitude: 1e-7, phase: 0 },
        ],
        'bush',
      ),
    ),
    oil: oilOfGrade(10, 95),
  });
  const lobe: Setting = { of: 'lobeAmplitude', seat: 1, part: 'bush', lobe: 0, sigma: 1e-7, shape: 'normal' };
  const setting = (of: 'temperature' | 'speed' | 'position'): Setting => ({ of, sigma: 1, shape: 'normal' });
  const amplitudes = ({ seats: all }: Running) =>
    all.map(({ parts }) => parts.bush.lobes!.map(({ amplitude }) => amplitude));

  it('changes what it is of, and nothing else', () => {
    const changed = withSettings(
      lobed,
      [lobe, setting('temperature'), setting('speed'), setting('position')],
      [5e-8, 7, -3, 4e-6],
    );
    expect(amplitudes(changed)).toEqual([
      [2e-7, 1e-7],
      [2.5e-7, 1e-7],
    ]);
    expect(changed.ambient).toBe(27);
    expect(changed.run.viscosity).toEqual([lobed.oil.viscosity(27), lobed.oil.viscosity(27)]);
    expect(changed.run.omega).toBe(117);
    expect(changed.position).toBe(4e-6);
    expect(changed.pose).toEqual({ ...lobed.pose, z: lobed.pose.z + 4e-6 });
    expect(withSettings(lobed, [], [])).toBe(lobed);
  });

  it('an amplitude never falls below nothing', () => {
    expect(amplitudes(withSettings(lobed, [lobe], [-9e-7]))[1]).toEqual([0, 1e-7]);
  });

  it('is drawn in dimensions of its own, after those of the pair', () => {
    const ofSpeed: Setting = { of: 'speed', sigma: 5, shape: 'rectangular' };
    const [drawn] = runDraws({ ...ask, settings: [ofSpeed] }, GRID)(1, 1);
    const u = drawer({ dimensions: sampler.dimensions + 1, shape: () => null }, ask.seed)(0)[sampler.dimensions]![1]!;
    const { run } = held();
    const turned = held({ run: { ...run, omega: run.omega + 5 * standard(u, 'rectangular') } });
    expect(drawn!.films[0]! / runDrawn(withPair(turned, pairOf(1), 0), GRID).films[0]!).toBeCloseTo(1, 6);
  });
});

describe('put together', () => {
  const drawn = (end: RunEnd, films: number[], hottest = 40, calm = true): RunDrawn => ({
    ...ended(end, 2),
    ...(end === 'runs' && { films, hottest, power: 5, stop: -2, calm }),
  });
  const needed = held().needed;
  const good = [2 * needed, 3 * needed];
  const draws = [
    drawn('runs', good),
    drawn('runs', [2 * needed, 0.9 * needed], 30),
    drawn('runs', good, 95),
    drawn('runs', good, 40, false),
    drawn('shut', []),
    drawn('seizes', []),
    drawn('unsettled', []),
    drawn('noShape', []),
  ];
  const blocks = [
    { from: 0, draws: draws.slice(0, 3) },
    { from: 3, draws: draws.slice(3) },
  ];

  it('counts each as it ends; what was not found and what is no pair not at all', () => {
    const answer = oddsOfRun(ask, blocks);
    expect(answer).toMatchObject({ draws: 6, unsettled: 1, noShape: 1 });
    expect(answer.ends.runs).toEqual(chanceOf(4, 6));
    expect(answer.ends.shut).toEqual(chanceOf(1, 6));
    expect(answer.ends.seizes).toEqual(chanceOf(1, 6));
    expect(answer.ends.standing).toEqual(chanceOf(0, 6));
    expect(answer.parted.each).toEqual([chanceOf(4, 6), chanceOf(3, 6)]);
    expect(answer.parted.all).toEqual(chanceOf(3, 6));
    expect(answer.cool).toEqual(chanceOf(3, 6));
    expect(answer.calm).toEqual(chanceOf(3, 6));
    expect(answer.well).toEqual(chanceOf(1, 6));
    expect(answer.hottest).toMatchObject({ count: 4, mean: (40 + 30 + 95 + 40) / 4 });
    expect(answer.films[1]!.mean).toBeCloseTo((0.9 * needed + 9 * needed) / 4, 15);
    expect(answer.stop!.mean).toBe(-2);
    expect(answer.power!.sd).toBe(0);
  });

  it('in any order the same', () => {
    expect(oddsOfRun(ask, blocks.toReversed())).toEqual(oddsOfRun(ask, blocks));
  });

  it('a list of few pairs tells no more than it holds; nothing run tells nothing', () => {
    const few = { ...ask, sampler: { ...sampler, effective: 3 } };
    expect(oddsOfRun(few, blocks).ends.runs).toEqual(chanceOf((4 / 6) * 3, 3));
    const none = oddsOfRun(ask, [{ from: 0, draws: [drawn('shut', []), drawn('noShape', [])] }]);
    expect(none).toMatchObject({ draws: 1, films: [null, null], hottest: null, power: null, stop: null });
    expect(none.ends.shut.share).toBe(1);
  });

  it('spreads: moments and quantiles', () => {
    expect(runSpreadOf([3, 1, 2, 5, 4])).toEqual({ count: 5, mean: 3, sd: Math.sqrt(2.5), p05: 1.2, p50: 3, p95: 4.8 });
    expect(runSpreadOf([7])).toEqual({ count: 1, mean: 7, sd: 0, p05: 7, p50: 7, p95: 7 });
    expect(runSpreadOf([])).toBeNull();
  });
});

describe('the error of the small grid', () => {
  const on = (films: number[], hottest: number): RunDrawn => ({ ...ended('runs', 2), films, hottest });

  it('is the mean, and twice the root of the mean square, of what both grids run', () => {
    const small = [on([3, 4], 40), ended('shut', 2), on([1, 1], 30), ended('shut', 2)];
    const fine = [on([2, 2], 39), ended('shut', 2), on([1, 0], 33), on([1, 1], 30)];
    expect(gridError(small, fine)).toEqual({
      checked: 2,
      otherwise: 1,
      film: { bias: 1, error: 2 * Math.sqrt(6 / 4) },
      hottest: { bias: -1, error: 2 * Math.sqrt(5) },
    });
    expect(gridError([], [])).toMatchObject({ checked: 0, film: { bias: 0, error: 0 } });
  });

  it('is looked for in one draw of 32, 24 at most', () => {
    expect([1, 32, 33, 1000].map(checkedOf)).toEqual([1, 1, 2, 24]);
  });
});
