/** The story of a job: the cuts as its backbone, days and stages between them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { byDate, lastBy, lastStage, storyOf } from '../../../src/report/record/story.ts';
import { notebookDemo } from '../measure/notebooks.ts';

const demo: Design = { ...notebookDemo(), readings: [] };
const reading = (more: object) =>
  ({ kind: 'diameter', seat: 'steep', part: 'journal', value: 24, sigma: 0.001, station: 2, ...more }) as const;
const job = (readings: object[], trials: object[] = [], record: object[] = []): Design =>
  ({ ...demo, readings: readings.map(reading), cut: { allow: [], trials }, record }) as Design;
const told = (design: Design) => storyOf(design).map(({ of, index }) => `${of} ${index}`);

describe('order', () => {
  test('what was made after a cut stands after it, whatever its day', () => {
    const design = job([{ after: 1 }, {}, { after: 2 }], [{}, {}], [{ note: 'x', after: 1 }]);
    expect(told(design)).toEqual(['reading 1', 'trial 0', 'reading 0', 'record 0', 'trial 1', 'reading 2']);
  });

  test('between two cuts by day, then by stage', () => {
    const days = [
      { date: '2026-03-02' },
      { date: '2026-03-01', stage: 'pressed' },
      { date: '2026-03-01', stage: 'received' },
      { date: '2026-03-01T09:00' },
    ];
    expect(told(job(days))).toEqual(['reading 3', 'reading 2', 'reading 1', 'reading 0']);
    // Of one day with times it is the time that counts, zones and all.
    const times = [{ date: '2026-03-01T12:00+02:00' }, { date: '2026-03-01T11:00Z' }, { date: '2026-03-01T09:00Z' }];
    expect(told(job(times))).toEqual(['reading 2', 'reading 0', 'reading 1']);
  });

  test('without days by stage; what has no day keeps its place among those that have', () => {
    expect(told(job([{ stage: 'lapped' }, { stage: 'received' }, {}]))).toEqual([
      'reading 2',
      'reading 1',
      'reading 0',
    ]);
    expect(told(job([{ date: '2026-03-02' }, {}, { date: '2026-03-01' }]))).toEqual([
      'reading 2',
      'reading 1',
      'reading 0',
    ]);
  });

  test('every entry once, and never before a cut it was made after', () => {
    const day = fc.constantFrom(undefined, '2026-03-01', '2026-03-02', '2026-03-01T10:00');
    const entry = (trials: number) =>
      fc.record({
        after: fc.integer({ min: 0, max: trials }),
        date: day,
        stage: fc.constantFrom(undefined, 'received', 'x'),
      });
    fc.assert(
      fc.property(
        fc
          .integer({ min: 0, max: 4 })
          .chain((n) =>
            fc.tuple(
              fc.array(fc.record({ date: day }), { minLength: n, maxLength: n }),
              fc.array(entry(n), { maxLength: 6 }),
              fc.array(entry(n), { maxLength: 4 }),
            ),
          ),
        ([trials, readings, notes]) => {
          const story = storyOf(
            job(
              readings,
              trials,
              notes.map((n) => ({ ...n, note: 'x' })),
            ),
          );
          expect(new Set(story.map(({ of, index }) => `${of} ${index}`)).size).toBe(
            trials.length + readings.length + notes.length,
          );
          let done = 0;
          for (const { of, index, after } of story) {
            expect(after).toBe(done);
            if (of === 'trial') expect(index).toBe(done++);
          }
        },
      ),
      { seed: 14, numRuns: 200 },
    );
  });
});

describe('days', () => {
  test('a day alone and a time of it cannot be told apart; times can', () => {
    expect(byDate('2026-03-01', '2026-03-01T10:00')).toBe(0);
    expect(byDate('2026-03-01', undefined)).toBe(0);
    expect(byDate('2026-03-01T10:00', '2026-03-01T09:59:59')).toBe(1);
    expect(byDate('2026-02-28', '2026-03-01')).toBe(-1);
  });

  test('a day that its place among the cuts denies is told', () => {
    const design = job(
      [{ date: '2026-03-05' }, { after: 1, date: '2026-03-01' }, { after: 1, date: '2026-03-03' }],
      [{ date: '2026-03-03' }],
    );
    const odds = storyOf(design).map(({ of, index, atOddsWith }) => [of, index, atOddsWith]);
    expect(odds).toEqual([
      ['reading', 0, 1],
      ['trial', 0, undefined],
      ['reading', 1, 1],
      ['reading', 2, undefined],
    ]);
  });
});

test('what is offered for the next entry: the last hand, and the stage since the last cut', () => {
  const design = job(
    [
      { by: 'Ada', stage: 'received' },
      { after: 1, stage: 'ground' },
    ],
    [{ by: 'Bo' }],
  );
  expect(lastBy(design)).toBe('Bo');
  expect(lastStage(design)).toBe('ground');
  expect(lastStage(job([{ stage: 'received' }], [{}]))).toBeUndefined();
  expect(lastBy(job([]))).toBeUndefined();
});
