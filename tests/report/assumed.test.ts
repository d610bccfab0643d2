/** What nobody has measured stands first, and nothing is told to be cut by it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { numbersUnder, withAssumed, withKnown } from '../../src/design/assumed.ts';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import {
  asAssumed,
  assumedCount,
  knownFirst,
  measuredFirst,
  partsAre,
  unreadSurfaces,
} from '../../src/report/assumed.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { placeName } from '../../src/report/placeName.ts';
import { purposeOf } from '../../src/report/sheet/purpose.ts';

const read = parseDesign(
  readFileSync(new URL('../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('demo');
const known: Design = read.design;
const bushes = withAssumed(known, [...numbersUnder(known, 'seats[0].bush'), ...numbersUnder(known, 'seats[1].bush')]);
const good = { tone: 'good' as const, headline: 'All is well.', sentences: ['One.'] };
const first = (design: Design, tone: 'mend' | 'stop' = 'mend') =>
  measuredFirst(asAssumed(good, design, ['seats']), design, tone);

test('the surfaces that nobody measured are named, and the rest is said under that condition', () => {
  const verdict = first(bushes);
  expect(verdict.tone).toBe('mend');
  expect(verdict.headline).toBe('Measure all bores: nobody has. Or assemble it for a trial, which needs no gauge.');
  expect(verdict.sentences[0]).toMatch(/^Assumed, never measured: 10 numbers of the seats, marked/);
  expect(verdict.sentences.slice(1)).toEqual(['If they are as assumed: All is well.', 'One.']);
  expect(first(bushes, 'stop').tone).toBe('stop');
  expect(measuredFirst(good, known, 'stop')).toBe(good);
});

test.each([
  [['seats[1].bush.diameter'], 'Measure the steep bore: nobody has. Or assemble it for a trial, which needs no gauge.'],
  [
    ['seats[0].journal.halfAngle', 'seats[1].bush.station'],
    'Measure the steep bore and the shallow journal: of angle and place not all is known. Or assemble it for a trial, which needs no gauge.',
  ],
  [
    ['seats[0].journal.diameter', 'seats[1].journal.diameter'],
    'Measure all journals: nobody has. Or assemble it for a trial, which needs no gauge.',
  ],
])('%j', (paths, headline) => {
  expect(first(withAssumed(known, paths)).headline).toBe(headline);
});

test('ends, films and what stands in other sections hold nothing up; a straight seat has no station to know', () => {
  const ends = withAssumed(known, [
    'seats[0].bush.from',
    'seats[1].journal.to',
    'seats[0].film.target',
    'cut.allow[0].limit',
  ]);
  expect(unreadSurfaces(ends)).toEqual([]);
  const [shallow, steep] = known.seats;
  const straight: Design = {
    ...known,
    seats: [{ ...shallow!, journal: { ...shallow!.journal, halfAngle: 0 } }, steep!],
  };
  expect(unreadSurfaces(withAssumed(straight, ['seats[0].journal.station']))).toEqual([]);
  expect(unreadSurfaces(withAssumed(known, ['seats[0].journal.station']))).toHaveLength(1);
});

test('what was read and not taken over wants that alone', () => {
  const one = withAssumed(known, ['seats[1].bush.diameter']);
  const noted: Design = {
    ...one,
    readings: [1, 2].map((station) => ({
      ...{ kind: 'diameter', seat: 'steep', part: 'bush', value: 24, sigma: 0.001 },
      station,
    })),
  };
  expect(first(noted).headline).toMatch(/^Take over first, in Measure, what was read of the steep bore/);
  // One place does not tell a cone: there is nothing to take over yet.
  for (const places of [noted.readings!.slice(0, 1), [noted.readings![0]!, noted.readings![0]!]])
    expect(first({ ...noted, readings: places }).headline).toMatch(/^Read the steep bore at a second place/);
  // Another surface that nobody read comes before.
  expect(first(withAssumed(noted, ['seats[0].bush.diameter'])).headline).toBe(
    'Measure the shallow bore: nobody has. Or assemble it for a trial, which needs no gauge.',
  );
});

test('each count says what it is of', () => {
  const both = withAssumed(bushes, ['cut.allow[0].limit']);
  expect(assumedCount(both, ['seats', 'cut'])).toBe('10 numbers of the seats and 1 number of the cut');
  expect(assumedCount(both, ['seats'])).toBe('10 numbers of the seats');
});

test('a sheet of parts that nobody measured is no work order, however good the plan; measured it is', () => {
  const of = (design: Design) => purposeOf(design, cutSection(design)!, 'metric');
  expect(of(known).kind).toBe('work');
  const guessed = of(bushes);
  expect(guessed).toMatchObject({
    kind: 'refused',
    tone: 'stop',
    headline: 'Measure all bores: nobody has. Or assemble it for a trial, which needs no gauge.',
  });
  const measured = bushes.assumed!.filter((path) => !/from|to$/.test(path)).reduce(withKnown, bushes);
  expect(of(measured)).toMatchObject({ kind: 'work' });
});

describe('what runs leans on speed, oil and load too', () => {
  const running: Design = { ...known, run: { speed: 600, oil: { grade: 10 }, load: { y: -50, station: 20 } } };
  const runs = (design: Design) => knownFirst(asAssumed(good, design, ['seats', 'run']), design);

  test.each([
    [['run.speed'], 'Type speed first: nobody has.'],
    [['run.oil.grade', 'run.load.y'], 'Type ISO grade and load upward first: nobody has.'],
    [
      ['run.speed', 'seats[1].bush.diameter'],
      'Measure the steep bore: nobody has. Or assemble it for a trial, which needs no gauge.',
    ],
  ])('%j', (paths, headline) => {
    const verdict = runs(withAssumed(running, paths));
    expect(verdict).toMatchObject({ tone: 'mend', headline });
    expect(verdict.sentences[0]).toMatch(/^Assumed, never measured: /);
    expect(verdict.sentences.slice(1)).toEqual(['If they are as assumed: All is well.', 'One.']);
  });

  test('known, or assumed of another section, it stands as it is', () => {
    expect(runs(running)).toEqual(good);
    expect(runs(withAssumed(running, ['cut.allow[0].limit']))).toEqual(good);
    expect(runs(withAssumed(running, ['seats[0].film.target'])).headline).toBe(good.headline);
  });
});

test('what is assumed of a cut is named with the surface it is of', () => {
  const [{ seat, part }] = known.cut!.allow as [{ seat: string; part: string }];
  expect(placeName(known, 'cut.allow[0].limit')).toBe(`limit of the ${seat} ${part}`);
});

test('a title within a sentence keeps what is always written large', () => {
  const oil: Design = { ...known, run: { speed: 600, oil: { grade: 10, index: 95 } } };
  expect(placeName(oil, 'run.oil.grade')).toBe('ISO grade');
  expect(placeName(oil, 'run.speed')).toBe('speed');
});

test('parts are as measured, as drawn or as assumed, by the least sure of them', () => {
  expect(partsAre(known)).toBe('drawn');
  expect(partsAre({ ...known, readings: [{ kind: 'standOff', value: 0, sigma: 0.001 }] })).toBe('drawn');
  const read: Design = {
    ...known,
    readings: [{ kind: 'diameter', seat: 'steep', part: 'bush', value: 24, sigma: 0.001, station: 2 }],
  };
  expect(partsAre(read)).toBe('drawn, in part measured');
  const all = known.seats.flatMap(({ name }) =>
    (['journal', 'bush'] as const).map((part) => ({ ...read.readings![0]!, seat: name, part })),
  ) as Design['readings'];
  expect(partsAre({ ...known, readings: all })).toBe('measured');
  expect(partsAre(withAssumed(read, ['seats[0].bush.diameter']))).toBe('assumed');
});
