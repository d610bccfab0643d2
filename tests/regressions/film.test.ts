/** Spindles on which the work once went on for minutes: it is counted, given up, and what was not reached is said. */
import { expect, test } from 'vitest';
import { effortOf } from '../../src/engine/film/effort.ts';
import { whirl } from '../../src/engine/film/whirl.ts';
import { warmUp } from '../../src/engine/heat/warmUp.ts';
import { MOST_EFFORT, warmingOf } from '../../src/engine/run/running.ts';
import { report } from '../../src/report/definition.ts';
import { filmSection } from '../../src/report/film/section.ts';
import { toRunning } from '../../src/report/film/toSpindle.ts';
import { filmVerdict } from '../../src/report/film/verdict.ts';
import { regression } from './read.ts';

const lobed = regression('warm-up-without-end');
const MILLION = { pose: 1e6, whirl: 1e6, warmUp: 1e6, steady: 1e6, backOff: 1e6 };

function running(design: typeof lobed) {
  const { run } = design;
  if (!run) throw new Error('it does not run');
  return { ...design, run };
}

test('the warm-up ends when its effort is spent, with what was reached, at the same place every time', {
  tags: ['long'],
}, () => {
  const design = running(lobed);
  const spend = (most: number) => {
    const effort = effortOf(most);
    const found = warmUp({ ...warmingOf(toRunning(design)), effort }, 3600);
    return { found, spent: effort.spent };
  };
  const { found, spent } = spend(9e7);
  expect(found.end).toBe('givenUp');
  expect(found.points.length).toBeGreaterThan(1);
  expect(found.points[found.points.length - 1]!.time).toBeLessThan(3600);
  // No more than a step's work beyond what was allowed.
  expect(spent).toBeLessThan(1.1 * 9e7);
  expect(spend(5e6)).toEqual(spend(5e6));
});

test('the pose given up: nothing is told that hangs on it, and the verdict says so', () => {
  const film = filmSection(lobed, MILLION)!;
  expect(film).toMatchObject({
    status: 'givenUp',
    unreached: ['pose'],
    warmUpEnd: 'none',
    steady: null,
    leastFilm: expect.any(Number),
  });
  expect(report.shape.film.safeParse(film).success).toBe(true);
  expect(filmVerdict(lobed, film, 'metric')).toEqual({
    tone: 'stop',
    headline: 'Where this spindle runs takes more work to find than is spent on one design, and was given up.',
    sentences: [],
  });
});

test('the pose found, the rest given up: each is named, and cold films are no promise of warm ones', () => {
  const film = filmSection(lobed, { ...MILLION, pose: MOST_EFFORT.pose })!;
  expect(film.status).toBe('stopped');
  expect(film.unreached).toEqual(['whirl', 'warmUp', 'steady']);
  expect(film.warmUpEnd).toBe('givenUp');
  const { tone, headline, sentences } = filmVerdict(lobed, film, 'metric');
  expect(tone).not.toBe('good');
  expect(headline).toMatch(/^Cold, the spindle runs on oil everywhere, .* once warm was not worked out\.$/);
  expect(sentences.at(-1)).toBe(
    'Not worked out to the end, for the work it takes: from what speed on it whirls, the rest of its warm-up and where it ends once warm.',
  );
});

/** Seats whose film is a number and not a film: the search for eigenvalues went on for ever. */
test('a pose held with a film thinner than an atom touches metal', () => {
  const seat = (film: number) => ({
    name: 'a',
    journal: { halfAngle: 0, diameter: 20 - 2 * film, station: 0, from: -10, to: 10 },
    bush: { halfAngle: 0, diameter: 20, station: 0, from: -10, to: 10 },
  });
  const design = (film: number) => ({
    conepair: 1 as const,
    seats: [seat(film)],
    run: { speed: 1000, oil: { viscosity: 0.01 }, pose: {} },
  });
  const touching = filmSection(design(5e-8), MILLION)!;
  expect(touching).toMatchObject({ status: 'contact', contact: { seat: 'a' } });
  expect(filmVerdict(design(5e-8), touching, 'metric').headline).toMatch(
    /^Held there, the a journal touches its bush at station/,
  );
  expect(filmSection(design(5e-6), MILLION)!.status).toBe('held');
});

test('a rotor that weighs nothing has no whirl that could be told', () => {
  const five = (value: number) =>
    Array.from({ length: 5 }, (_, i) => Array.from({ length: 5 }, (__, j) => (i === j ? value : 0)));
  expect(whirl(five(1e-320), five(1e5), five(1e9))).toBeNull();
  expect(whirl(five(1), five(Number.NaN), five(1))).toBeNull();
  expect(whirl(five(1), five(0.1), five(1))).toMatchObject({ stable: true });
});
