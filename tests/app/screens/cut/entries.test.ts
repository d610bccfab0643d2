/** Changes of the `cut` section: each leaves a valid design, and does what its button says. */
import { expect, test } from 'vitest';
import {
  plausibleCut,
  withAllowed,
  withFace,
  withFaceSeat,
  withLap,
  withLimitLetGo,
  withMoved,
  withoutFace,
  withoutLap,
  withoutTrial,
  withTick,
  withTrial,
  withUsualOrder,
} from '../../../../src/app/screens/cut/entries.ts';
import { draftFor, draftOf, trialOf } from '../../../../src/app/screens/cut/trialDraft.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { validateDesign } from '../../../../src/design/validate.ts';
import { cutSection } from '../../../../src/report/cut/section.ts';

const surface = (halfAngle: number, diameter: number, from: number, to: number) => ({
  halfAngle,
  diameter,
  station: from,
  from,
  to,
});
const design: Design = {
  conepair: 1,
  seats: [
    {
      name: 'shallow',
      journal: surface(3, 20, -20, 0),
      bush: surface(3, 20.012, -20, 0),
      film: { target: 0.0025, tolerance: 0.0005 },
    },
    {
      name: 'steep',
      journal: surface(45, 24, 1, 4),
      bush: surface(45, 24.008, 1, 4),
      film: { target: 0.0025, tolerance: 0.0005 },
    },
  ],
  position: 0.02,
};
const valid = (d: Design): Design => {
  const result = validateDesign(d);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.design;
};
const planned = valid({ ...design, cut: { allow: plausibleCut(design, 'metric') } });

test('the plausible list is enough for this pair, and names only surfaces whose film is wanted', () => {
  expect(planned.cut!.allow.map(({ seat, part }) => `${seat} ${part}`)).toEqual(['shallow journal', 'steep journal']);
  expect(cutSection(planned)!.status).toBe('planned');
});

test('a surface is let and forbidden; ticks of steps go, those of the shop stay', () => {
  const ticked = withTick(withTick(planned, 'cut 1 journal', true), 'manual', true);
  const forbidden = valid(withAllowed(ticked, 'steep', 'journal', false, 'metric'));
  expect(forbidden.cut!.allow.length).toBe(1);
  expect(forbidden.cut!.work!.done).toEqual(['manual']);
  expect(withTick(ticked, 'manual', false).cut!.work!.done).toEqual(['cut 1 journal']);
  expect(
    withAllowed(withAllowed(planned, 'steep', 'bush', true, 'metric'), 'steep', 'bush', true, 'inch').cut!.allow.length,
  ).toBe(3);
});

test('an item moves by one place and no further; the usual order comes back', () => {
  const ids = ['a', 'b', 'c'];
  expect(withMoved(planned, ids, 'b', 1).cut!.work!.order).toEqual(['a', 'c', 'b']);
  expect(withMoved(planned, ids, 'a', -1)).toBe(planned);
  expect(withUsualOrder(withMoved(planned, ids, 'b', -1)).cut!.work!.order).toBeUndefined();
});

test('faces get names of their own and keep a seat to move', () => {
  const two = valid(withFace(withFace(planned, 'metric'), 'metric'));
  expect(two.cut!.faces!.map(({ name }) => name)).toEqual(['spacer 1', 'spacer 2']);
  expect(withFaceSeat(two, 0, 'steep', false).cut!.faces![0]!.seats).toEqual(['steep']);
  expect(withFaceSeat(two, 0, 'shallow', true).cut!.faces![0]!.seats).toEqual(['shallow', 'steep']);
  expect(withoutFace(two, 0).cut!.faces!.map(({ name }) => name)).toEqual(['spacer 2']);
});

test('a trial starts empty, holds only what was typed, is corrected in its place, and goes', () => {
  const report = cutSection(planned)!;
  const empty = draftOf(report, planned, 'metric');
  expect(empty.taken.map(({ seat, part, normal }) => [seat, part, normal])).toEqual(
    report.steps.map(({ seat, part }) => [seat, part, null]),
  );
  expect(trialOf(empty, planned, 'metric')).toEqual({});
  const typed = {
    ...empty,
    standOff: -0.004,
    shake: 0.012,
    blue: { steep: true },
    taken: empty.taken.map((entry, k) => ({ ...entry, normal: k === 0 ? 0.01 : null })),
  };
  const trial = trialOf(typed, planned, 'metric');
  expect(trial).toEqual({
    taken: [{ seat: report.steps[0]!.seat, part: 'journal', normal: 0.01 }],
    standOff: { value: -0.004, sigma: 0.001 },
    shake: { value: 0.012, sigma: 0.001, indicator: 4, position: 0.02, direction: 0 },
    blue: [{ seat: 'steep', prints: true }],
  });
  expect(trialOf(typed, planned, 'inch').standOff).toEqual({ value: -0.004, sigma: 0.00127 });
  const d = valid(withTrial(valid(withTrial(planned, { note: 'first' })), trial));
  expect(d.cut!.trials).toHaveLength(2);
  // Correcting begins with what was written, and keeps it.
  const again = draftOf(report, d, 'metric', trial);
  expect(trialOf(again, d, 'metric')).toEqual(trial);
  // What nobody typed is still not typed; in another shop it is what was read with then.
  expect([again.standOffSigma, again.shakeSigma, again.indicator, again.position, again.direction]).toEqual([
    null,
    null,
    null,
    null,
    null,
  ]);
  expect(draftOf(report, { ...d, position: 0.5 }, 'inch', trial)).toMatchObject({
    standOffSigma: 0.001,
    position: 0.02,
    direction: null,
  });
  expect(valid(withTrial(d, { note: 'again' }, 0)).cut!.trials).toEqual([{ note: 'again' }, trial]);
  expect(withoutTrial(withoutTrial(d, 0), 0).cut!.trials).toBeUndefined();
  // Readings stay after the same trials.
  const reading = { kind: 'standOff' as const, value: 0, sigma: 0.001 };
  const read = { ...d, readings: [reading, { ...reading, after: 1 }, { ...reading, after: 2 }] };
  expect(withoutTrial(read, 0).readings!.map(({ after }) => after)).toEqual([undefined, 0, 1]);
  expect(withoutTrial(read, 1).readings!.map(({ after }) => after)).toEqual([undefined, 1, 1]);
});

test('lapping is asked for and left', () => {
  expect(cutSection(valid(withLap(planned)))!.lap).toBeTruthy();
  expect(cutSection(withoutLap(withLap(planned)))!.lap).toBeUndefined();
});

test.each<[string, NonNullable<Design['cut']>]>([
  ['a limit too small', { allow: [{ seat: 'steep', part: 'journal', limit: 0.01 }] }],
  ['nothing allowed', { allow: [] }],
  ['a cleanup too large', { allow: [{ seat: 'steep', part: 'journal', cleanup: 0.09, limit: 0.2 }] }],
  ['no reach', { allow: [{ seat: 'steep', part: 'journal', limit: 0.2 }], reach: { from: -0.01 } }],
  [
    'a spacer that may not be thicker',
    { allow: [], faces: [{ name: 'collar', part: 'bush', seats: ['steep'], moves: 'noseward', limit: 0 }] },
  ],
])('with %s, any one limit let go as offered makes a plan', (_, cut) => {
  const tight = valid({ ...design, cut });
  const { status, limits } = cutSection(tight)!;
  expect(status).toBe('infeasible');
  const offered = limits.filter(({ needed }) => needed !== null);
  expect(offered.length).toBeGreaterThan(0);
  for (const limit of offered)
    expect(cutSection(valid(withLimitLetGo(tight, limit)))!.status, JSON.stringify(limit)).toBe('planned');
});

test('a trial that is being written loses what its seats have lost, and nothing moves to another seat', () => {
  const half = {
    ...draftOf({ steps: [], faces: [] }, planned, 'metric'),
    taken: design.seats.map(({ name }, i) => ({ seat: name, part: 'journal' as const, normal: (i + 1) / 1000 })),
    blue: Object.fromEntries(design.seats.map(({ name }) => [name, true])),
  };
  const [gone, ...left] = design.seats;
  const kept = draftFor(half, { ...planned, seats: left });
  expect(kept.taken).toEqual(half.taken.filter(({ seat }) => seat !== gone!.name));
  expect(Object.keys(kept.blue)).toEqual(left.map(({ name }) => name));
  expect(draftFor(half, planned)).toEqual(half);
});
