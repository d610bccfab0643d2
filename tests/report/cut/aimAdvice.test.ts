/** Which of two plans is advised: never one that must not run, nor one whose room the set-up is likely to use up. */
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { aimAdvice } from '../../../src/report/cut/aimAdvice.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import type { Verdict } from '../../../src/report/fit/verdict.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -26, to: 0 };
const design: Design = {
  conepair: 1,
  seats: [{ name: 'steep', journal: surface, bush: surface, film: { target: 0.003, tolerance: 0.001 } }],
};
const aim = (name: 'target' | 'tolerance', total: number, film: number, good = true): CutReport['aims'][number] => ({
  aim: name,
  chosen: name === 'target',
  feasible: good && name === 'target',
  inTolerance: good,
  total,
  position: 0,
  films: { steep: film },
  stock: [],
  faces: [],
});
const cut = (likely: number, target = aim('target', 0.02, 0.003), least = aim('tolerance', 0.015, 0.0038)) =>
  ({
    aims: [target, least],
    budget: { contributions: [], seats: [{ seat: 'steep', sum: likely, likely }] },
  }) as unknown as CutReport;
const stop: Verdict = { tone: 'stop', headline: 'Metal runs on metal.', sentences: [] };
const advised = (of: CutReport, runs: Parameters<typeof aimAdvice>[2] = {}) => aimAdvice(design, of, runs, 'metric');

test('the least metal where its films leave room for the errors of the set-up, else the films just as wanted', () => {
  // the film stands 0.8 µm off its target, so 0.2 µm of the tolerance are left
  expect(advised(cut(0.00019))).toEqual({ aim: 'tolerance', why: expect.stringMatching(/5\.00 µm of metal are kept/) });
  expect(advised(cut(0.00021))).toEqual({
    aim: 'target',
    why: expect.stringMatching(/miss the steep film by 0\.21 µm.*only 0\.20 µm/),
  });
});

test('what must not run is never advised, whatever it saves', () => {
  expect(advised(cut(0.00019), { tolerance: stop, target: null })?.aim).toBe('target');
  expect(advised(cut(0.1), { target: stop, tolerance: null })?.aim).toBe('tolerance');
  expect(advised(cut(0.00019), { target: stop, tolerance: stop })).toBeNull();
  expect(advised(cut(0.00019), { target: null, tolerance: null })?.aim).toBe('tolerance');
});

test('nothing is advised where there is nothing to choose', () => {
  expect(advised(cut(0, aim('target', 0.015, 0.003)))).toBeNull();
  expect(advised(cut(0, undefined, aim('tolerance', 0.015, 0.0048, false)))).toBeNull();
  expect(advised({ ...cut(0), aims: [aim('target', 0.02, 0.003)] })).toBeNull();
  expect(advised(cut(0.1, aim('target', 0.02, 0.006, false)))?.aim).toBe('tolerance');
});
