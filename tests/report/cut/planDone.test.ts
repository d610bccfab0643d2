/** The plan taken as done: films as wanted, rooms less by what came off, the history kept and closed. */
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { designWithPlanDone, takenBeyond } from '../../../src/report/cut/planDone.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { trialText } from '../../../src/report/cut/trialText.ts';
import { fitSection } from '../../../src/report/fit/section.ts';

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
  cut: {
    allow: [
      { seat: 'steep', part: 'journal', limit: 0.2 },
      { seat: 'shallow', part: 'bush', cleanup: 0.003, limit: 0.02, renew: true },
    ],
    faces: [{ name: 'spacer', part: 'bush', seats: ['steep'], moves: 'noseward', limit: 0.05 }],
    work: { done: ['cut 0', 'manual'], order: ['guards'] },
    trials: [
      {
        note: 'with the old blue',
        standOff: { value: -0.004, sigma: 0.001 },
        blue: [{ seat: 'steep', prints: true }],
        taken: [{ seat: 'steep', part: 'journal', normal: 0 }],
      },
    ],
  },
};

test('films come out as wanted, and what is left to cut is nothing', () => {
  const plan = cutSection(design)!;
  expect(plan.status).toBe('planned');
  const done = designWithPlanDone(design, plan);
  expect(validateDesign(done).ok).toBe(true);
  for (const seat of fitSection(done).seats) expect(seat.leastFilm).toBeCloseTo(0.0025, 9);
  const again = cutSection(done)!;
  expect(again.status).toBe('planned');
  expect(again.total).toBeLessThan(1e-9);
});

test('cleanup and limit are less by what came off, a renewed line is renewed, ticks and order are gone', () => {
  const plan = cutSection(design)!;
  const { cut } = designWithPlanDone(design, plan);
  for (const [i, entry] of design.cut!.allow.entries()) {
    const off = plan.steps.find(({ seat, part }) => seat === entry.seat && part === entry.part)?.normal ?? 0;
    expect(cut!.allow[i]!.limit).toBeCloseTo(entry.limit! - off, 12);
    if (off > 0) expect(cut!.allow[i]!.renew).toBeUndefined();
  }
  expect(cut!.allow[1]!.cleanup).toBe(0);
  const off = plan.faces.find(({ name }) => name === 'spacer')?.off ?? 0;
  expect(cut!.faces![0]!.limit).toBeCloseTo(0.05 - off, 12);
  expect(cut!.work).toBeUndefined();
});

test('trials, which told of the parts before, stay in the history, and count no more; so does what came off since', () => {
  const plan = cutSection(design)!;
  const done = designWithPlanDone(design, plan);
  const [first, last, ...others] = done.cut!.trials!;
  expect(others).toEqual([]);
  expect(first).toEqual({ ...design.cut!.trials![0]!, inShapes: true });
  expect(last).toMatchObject({
    inShapes: true,
    taken: plan.steps.map(({ seat, part, normal }) => ({ seat, part, normal })),
  });
  expect(last!.faces ?? []).toMatchObject(plan.faces.map(({ name, off }) => ({ name, off })));
  // a twentieth of it and half a division of the dial, square to the surface
  for (const { seat, part, normal, sigma } of last!.taken!) {
    const { halfAngle } = design.seats.find(({ name }) => name === seat)![part];
    expect(sigma).toBeCloseTo(Math.hypot(0.05 * normal, 0.0025 * Math.cos((halfAngle * Math.PI) / 180)), 6);
  }
  expect(last!.taken!.map(({ part, renewed }) => [part, renewed])).toEqual(
    plan.steps.map(({ part }) => [part, part === 'bush' ? true : undefined]),
  );
  const again = cutSection(done)!;
  expect(again.trials).toBeUndefined();
  expect(again.remaining).toBeUndefined();
});

test('of what a trial took already only the rest came off since; the first cut to a new line says that it was', () => {
  const taken = [
    { seat: 'steep', part: 'journal' as const, normal: 0.01 },
    { seat: 'shallow', part: 'bush' as const, normal: 0.001 },
  ];
  const tried: Design = { ...design, cut: { ...design.cut!, trials: [{ taken }] } };
  const plan = cutSection(tried)!;
  const { trials } = designWithPlanDone(tried, plan).cut!;
  for (const { seat, part, normal } of plan.steps) {
    const all = trials!.flatMap((trial) => trial.taken ?? []).filter((t) => t.seat === seat && t.part === part);
    expect(all.reduce((sum, t) => sum + t.normal, 0)).toBeCloseTo(normal, 12);
    expect(all.map(({ renewed }) => renewed ?? false)).toEqual([part === 'bush', false].slice(0, all.length));
  }
  expect(takenBeyond(tried, plan)).toEqual([]);
  const beyond: Design = {
    ...tried,
    cut: { ...tried.cut!, trials: [{ taken: [{ seat: 'steep', part: 'bush', normal: 0.004 }] }] },
  };
  expect(takenBeyond(beyond, cutSection(beyond)!)).toEqual([{ seat: 'steep', part: 'bush', more: 0.004 }]);
});

test('a trial in one line, in the units a person likes; an empty one says so', () => {
  expect(
    trialText(
      {
        taken: [{ seat: 'steep', part: 'journal', normal: 0.00254 }],
        shake: { value: 0.0254, sigma: 0.001, indicator: 30, position: 0.00508, direction: 0 },
      },
      'inch',
    ),
  ).toBe('1.00 tenths off the steep journal; shake 10.00 tenths at position 2.00 tenths');
  expect(trialText({}, 'metric')).toBe('Nothing was written down.');
  expect(trialText({ note: 'x'.repeat(2000), standOff: { value: 0, sigma: 0.001 } }, 'metric').length).toBe(2000);
});
