/** One belief of every surface: what is read, what is stated, and what nobody has read. */
import { describe, expect, it } from 'vitest';
import { uncertaintyOf, unit } from '../../../src/engine/belief/decomposition.ts';
import { beyondFilms, filmsBelieved } from '../../../src/engine/belief/filmsBelieved.ts';
import { believe } from '../../../src/engine/gauging/believe.ts';
import { estimate } from '../../../src/engine/gauging/estimate.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { MM, pair, surface, UM, withFilm } from '../cutting/pairs.ts';
import { disturbed, doubleCone, notebook } from './pairs.ts';

const DOUBT = 5 * UM;
const seats = pair(0.0164, 0.008);
const filmsOf = (belief: ReturnType<typeof believe>, of = seats, position = 0) =>
  filmsBelieved({ belief, design: of, position, places: [], doubt: DOUBT });

describe('of parts that nobody has read', () => {
  it('every number is as drawn, and every film is in the doubt that is stated, each by itself', () => {
    const straight = withFilm({
      name: 'rear',
      journal: surface(0, 20, 0, -90, -60),
      bush: surface(0, 20.01, 0, -88, -62),
    });
    const all = [...seats, straight];
    const belief = believe(all, [], [], DOUBT, 0);
    expect(belief.seats).toEqual(all);
    expect(belief.unread).toHaveLength(10);
    const { mean, covariance } = filmsOf(belief, all);
    expect(mean).toEqual([0, 0, 0]);
    for (const [i, row] of covariance.entries())
      for (const [j, c] of row.entries()) expect(c).toBeCloseTo(i === j ? DOUBT ** 2 : 0, 20);
  });

  it('what the person states of a number takes the place of the default, and of no other', () => {
    const prior = { seat: 0, part: 'bush' as const, of: 'radius' as const, sigma: 1 * UM };
    const belief = believe(seats, [], [prior], DOUBT, 0);
    expect(belief.unread).toHaveLength(7);
    const place = belief.unknowns.list.findIndex((u) => u.seat === 0 && u.part === 'bush' && u.of === 'radius');
    expect(uncertaintyOf(belief.decomposition, unit(belief.unknowns.list.length, place))).toBeCloseTo(UM, 15);
  });
});

describe('of parts that were read', () => {
  const truth = disturbed(doubleCone(), [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
  const readings = notebook(doubleCone(), truth).filter(({ kind }) => kind !== 'standOff' && kind !== 'shake');

  it('it is the estimate itself where all is told', () => {
    const belief = believe(doubleCone(), readings, [], DOUBT, 0);
    const found = estimate(doubleCone(), readings);
    if (found.kind !== 'estimate') throw new Error(found.kind);
    expect(belief.unread).toEqual([]);
    expect(belief.seats).toEqual(found.seats);
    expect(Array.from(belief.numbers)).toEqual(Array.from(found.numbers));
  });

  it('what no reading tells has its doubt, and is named; what is read keeps what the readings tell', () => {
    const without = readings.filter((r) => !('seat' in r) || r.seat !== 1 || r.part !== 'bush');
    const belief = believe(doubleCone(), without, [], DOUBT, 0);
    expect(belief.unread.map(({ seat, part, of }) => `${seat} ${part} ${of}`)).toEqual([
      '1 bush halfAngle',
      '1 bush radius',
    ]);
    const [whole, part] = [filmsOf(believe(doubleCone(), readings, [], DOUBT, 0)), filmsOf(belief)];
    expect(part.covariance[0]![0]).toBeCloseTo(whole.covariance[0]![0]!, 18);
    // about half of the doubt of a seat that nobody has read, root of squares, and what the journal was read to
    const sd = Math.sqrt(part.covariance[1]![1]!);
    expect(sd).toBeGreaterThan((0.9 * DOUBT) / Math.SQRT2);
    expect(sd).toBeLessThan(Math.hypot(DOUBT / Math.SQRT2, Math.sqrt(whole.covariance[1]![1]!)) * 1.05);
  });

  it('a stand-off by itself leaves every surface unread, and ties their sizes together', () => {
    const standOff = { kind: 'standOff' as const, value: -8 * UM, sigma: 0.1 * UM };
    const belief = believe(seats, [standOff], [], DOUBT, 0);
    expect(belief.unread).toHaveLength(8);
    // The steep seat touches first, so its film at that position is nothing.
    const { mean, covariance } = filmsOf(belief, seats, -8 * UM);
    const drawn = predict({ kind: 'standOff', value: 0, sigma: UM }, belief.seats).value!;
    expect(drawn).toBeCloseTo(-8 * UM, 8);
    expect(Math.sqrt(covariance[1]![1]!)).toBeLessThan(0.2 * UM);
    expect(Math.abs(mean[0]!)).toBeLessThan(0.2 * DOUBT);
  });
});

describe('what a value leans on beyond the films', () => {
  it('is nothing of a film itself, and something of a shake, which leans on both ends of every line', () => {
    const belief = believe(seats, [], [], DOUBT, 0);
    const films = filmsOf(belief);
    const beyond = beyondFilms(belief, films)!;
    const radius = { seat: 1, part: 'bush' as const, by: 'radius' as const, station: 2.6 * MM, rate: 1 };
    const alone = beyond([radius], belief.seats);
    expect(alone).toBeGreaterThan(0);
    const place = belief.unknowns.list.findIndex((u) => u.seat === 1 && u.part === 'bush' && u.of === 'radius');
    expect(alone).toBeLessThan(2 * uncertaintyOf(belief.decomposition, unit(belief.unknowns.list.length, place))! ** 2);
    const at = { kind: 'shake' as const, indicator: 30 * MM, position: 20 * UM, direction: 0, value: 0, sigma: UM };
    const { influences } = predict({ ...at, free: ['x', 'y', 'tiltX', 'tiltY'] }, belief.seats);
    expect(Math.sqrt(beyond(influences, belief.seats))).toBeGreaterThan(UM);
    expect(beyond([], belief.seats)).toBe(0);
  });
});
