/** What is assumed: named in the file, followed through the lists, ended by another value. */
import { expect, test } from 'vitest';
import { assumedAfter, isAssumed, numbersUnder, withAssumed, withKnown } from '../../src/design/assumed.ts';
import type { Design, Surface } from '../../src/design/definition.ts';
import { withValue } from '../../src/design/place.ts';
import { withSeatsRenamed } from '../../src/design/seatNames.ts';
import {
  goesWithSeat,
  NEW_SEATS,
  type NewSeat,
  withoutSeat,
  withSeatAdded,
  withSeatCopied,
  withSeatMoved,
} from '../../src/design/seats.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { measureSection } from '../../src/report/measure/section.ts';
import { designWithTold } from '../../src/report/measure/withMeasured.ts';

const cone = (halfAngle: number, diameter: number, from: number, to: number): Surface => ({
  halfAngle,
  diameter,
  station: to,
  from,
  to,
});
const pair: Design = {
  conepair: 1,
  seats: [
    { name: 'rear', journal: cone(0, 18, -60, -40), bush: cone(0, 18.005, -60, -40) },
    { name: 'shallow', journal: cone(3, 22, -26, 0), bush: cone(3, 22.005, -25, -1) },
    { name: 'steep', journal: cone(45, 30, 1, 4), bush: cone(45, 30.007, 1, 4) },
  ],
  readings: [{ kind: 'diameter', seat: 'rear', part: 'journal', value: 18, sigma: 0.001, station: -50 }],
  cut: {
    allow: [
      { seat: 'rear', part: 'journal', limit: 0.05 },
      { seat: 'steep', part: 'journal', limit: 0.1 },
    ],
    faces: [{ name: 'collar', part: 'bush', seats: ['rear'], moves: 'noseward' }],
    trials: [{ faces: [{ name: 'collar', off: 0.01 }], blue: [{ seat: 'rear', prints: true }] }],
  },
};
const errorsOf = (design: unknown) => {
  const result = validateDesign(design);
  return result.ok ? [] : result.errors;
};

test('what is named as assumed must be a number that stands there, under its own name, once', () => {
  expect(errorsOf({ ...pair, assumed: ['seats[1].bush.halfAngle', 'cut.allow[0].limit'] })).toEqual([]);
  for (const wrong of [
    'seats[7].bush.halfAngle',
    'seats[1].name',
    'seats[1]..bush.diameter',
    'seats.length',
    'seats[0].journal',
    '__proto__',
    'constructor.name',
    'position',
    '',
  ])
    expect(errorsOf({ ...pair, assumed: [wrong] }), wrong).toEqual([
      { path: 'assumed[0]', message: expect.stringMatching(/no number of the design stands there/) },
    ]);
  expect(errorsOf({ ...pair, assumed: ['seats[0].bush.from', 'seats[0].bush.from'] })).toEqual([
    { path: 'assumed[1]', message: expect.stringMatching(/a second time/) },
  ]);
});

const steep = 'seats[2].bush.diameter';
const guessed = withAssumed(pair, [steep, 'seats[0].journal.diameter', 'cut.allow[1].limit']);

test('it follows its seat when others are moved, removed or renamed, and goes with it', () => {
  const after = (edit: (design: Design) => Design) => assumedAfter(guessed, edit(guessed)).assumed;
  expect(after((d) => withoutSeat(d, 0))).toEqual(['seats[1].bush.diameter', 'cut.allow[0].limit']);
  expect(after((d) => withoutSeat(d, 2))).toEqual(['seats[0].journal.diameter']);
  expect(after((d) => withSeatMoved(d, 2, -1))).toEqual([
    'seats[1].bush.diameter',
    'seats[0].journal.diameter',
    'cut.allow[1].limit',
  ]);
  expect(after((d) => withSeatsRenamed(d, new Map([[2, 'thrust']])))).toEqual(guessed.assumed);
  expect(errorsOf(assumedAfter(guessed, withoutSeat(guessed, 0)))).toEqual([]);
});

test('another value ends it, the same one does not, metal worked leaves it', () => {
  const typed = (value: number) => withValue(guessed, steep, value);
  expect(isAssumed(assumedAfter(guessed, typed(30.01)), steep)).toBe(false);
  expect(isAssumed(assumedAfter(guessed, typed(30.007)), steep)).toBe(true);
  expect(isAssumed(assumedAfter(guessed, typed(30.01), true), steep)).toBe(true);
  expect(isAssumed(withKnown(guessed, steep), steep)).toBe(false);
  const { assumed: _, ...none } = guessed;
  expect(assumedAfter(guessed, none)).not.toHaveProperty('assumed');
  // What is the last to be known leaves no list behind.
  const one = withAssumed(pair, [steep]);
  expect(withKnown(one, steep)).toEqual(pair);
});

test('a seat copied or added is assumed, every number of it, and fits behind the others', () => {
  const copied = withSeatCopied(pair, 2, 'metric');
  expect(copied.assumed).toEqual(numbersUnder(copied, 'seats[3]'));
  expect(copied.assumed).toHaveLength(10);
  for (const kind of Object.keys(NEW_SEATS) as NewSeat[]) {
    const added = withSeatAdded(withSeatAdded(pair, kind, 'metric'), kind, 'metric');
    expect(errorsOf(added), kind).toEqual([]);
    const [, , , first, second] = added.seats;
    expect(first!.name).not.toBe(second!.name);
    expect(first!.journal.halfAngle).toBe(NEW_SEATS[kind]);
    for (const part of ['journal', 'bush'] as const) {
      expect(first![part].to).toBeLessThan(pair.seats[0]![part].from);
      expect(second![part].to).toBeLessThan(first![part].from);
    }
    expect(added.assumed).toHaveLength(20);
  }
});

test('what goes with a seat is told before, and is all that goes', () => {
  expect(goesWithSeat(pair, 0)).toEqual([
    '1 reading',
    '1 surface that may be cut',
    '1 face or spacer',
    '1 entry of metal off a face',
    '1 blue print read',
  ]);
  expect(goesWithSeat(pair, 1)).toEqual([]);
  // Metal off a face that is gone would name no face.
  expect(errorsOf(withoutSeat(pair, 0))).toEqual([]);
});

test('what is taken from readings is assumed no more; what they leave open still is', () => {
  const readings: Design['readings'] = [-24, -13, -2].map((station) => ({
    kind: 'diameter',
    seat: 'shallow',
    part: 'bush',
    station,
    value: 22.006 + 2 * (station + 1) * Math.tan((3.002 * Math.PI) / 180),
    sigma: 0.0005,
  }));
  const before = withAssumed({ ...pair, readings }, numbersUnder(pair, 'seats[1].bush'));
  const after = assumedAfter(before, designWithTold(before, measureSection(before, 'metric')!));
  expect(after.seats[1]!.bush.diameter).toBeCloseTo(22.006, 6);
  // A line that is told whole is known wherever its diameter is said.
  expect(after.assumed).toEqual(['seats[1].bush.from', 'seats[1].bush.to']);
  // One reading tells no angle: where that diameter stands along the line is not known either.
  const one = { ...before, readings: readings!.slice(0, 1) };
  const less = assumedAfter(one, designWithTold(one, measureSection(one, 'metric')!));
  expect(less.assumed).toEqual(expect.arrayContaining(['seats[1].bush.halfAngle', 'seats[1].bush.station']));
  // Read as it was assumed, it is read all the same.
  const same = after.seats[1]!.bush;
  const again = withAssumed({ ...after, assumed: [] }, numbersUnder(after, 'seats[1].bush'));
  expect(designWithTold(again, measureSection(again, 'metric')!).assumed).toEqual(after.assumed);
  expect(again.seats[1]!.bush).toEqual(same);
});

test('the surfaces a cut is planned for follow the change of what may be cut', () => {
  const design = withAssumed(pair, ['cut.allow[0].limit', 'cut.allow[1].limit']);
  const allow = design.cut!.allow;
  const after = assumedAfter(design, { ...design, cut: { ...design.cut!, allow: [allow[1]!] } });
  expect(after.assumed).toEqual(['cut.allow[0].limit']);
});

test('a seat added in inches has the sizes an inch drawing has', () => {
  for (const kind of Object.keys(NEW_SEATS) as NewSeat[]) {
    const { journal, bush } = withSeatAdded(pair, kind, 'inch').seats[3]!;
    for (const mm of [journal.diameter, journal.from, journal.to, bush.diameter])
      expect((mm / 25.4) * 1e5, kind).toBeCloseTo(Math.round((mm / 25.4) * 1e5), 5);
    for (const mm of [journal.diameter, journal.to])
      expect((mm / 25.4) * 200, kind).toBeCloseTo(Math.round((mm / 25.4) * 200), 6);
  }
});
