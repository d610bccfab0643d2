/** The record of a job in the design file: what is taken, and what is said of what is not. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { isRealDate } from '../../src/design/recordRules.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { notebookDemo } from '../report/measure/notebooks.ts';

const demo = notebookDemo();
const taken = { seat: 'steep', part: 'journal' as const, normal: 0.001 };
const reading = {
  kind: 'diameter' as const,
  seat: 'steep',
  part: 'journal' as const,
  value: 24,
  sigma: 0.001,
  station: 2,
};
const errorsOf = (design: unknown) => {
  const result = validateDesign(design);
  return result.ok ? [] : result.errors.map(({ path, message }) => `${path}: ${message}`);
};
const withReading = (more: object) => errorsOf({ ...demo, readings: [{ ...reading, ...more }] });
const withTrial = (more: object) => errorsOf({ ...demo, cut: { allow: [], trials: [{ taken: [taken], ...more }] } });
const withEntry = (entry: object) => errorsOf({ ...demo, record: [entry] });

describe('entries', () => {
  const entered = { date: '2026-03-31', by: 'Ada', stage: 'pressed', note: 'warm' };

  test('readings, trials and notes take a day, a hand, a stage and a note', () => {
    expect(withReading(entered)).toEqual([]);
    expect(withTrial({ ...entered, stage: 'stoned by hand' })).toEqual([]);
    expect(withEntry(entered)).toEqual([]);
    expect(withEntry({ photograph: '1764257' })).toEqual([]);
  });

  test.each([
    ['31.3.2026', 'it must be a date such as 2026-03-31'],
    ['2026-3-31', 'it must be a date such as 2026-03-31'],
    ['2026-02-30', 'there is no such day or time'],
    ['2026-03-31T25:00', 'there is no such day or time'],
    ['2026-13-01T10:00:00Z', 'there is no such day or time'],
  ])('the date %s is refused, with what is allowed', (date, why) => {
    for (const errors of [withReading({ date }), withTrial({ date }), withEntry({ date, note: 'x' })]) {
      expect(errors).toHaveLength(1);
      expect(errors[0]).toMatch(/^(readings|cut\.trials|record)\[0\]\.date: /);
      expect(errors[0]).toContain(date);
      expect(errors[0]).toContain(why);
    }
  });

  test('days of the calendar, leap years too', () => {
    for (const day of ['2024-02-29', '2000-02-29', '0099-12-31', '2026-03-31T23:59:59.5+01:00'])
      expect(isRealDate(day)).toBe(true);
    for (const day of ['2026-02-29', '1900-02-29', '2026-00-10', '2026-04-31', '2026-03-31T12:60'])
      expect(isRealDate(day)).toBe(false);
  });

  test('words that say nothing, or too much', () => {
    expect(withReading({ by: '  ' })).toEqual(['readings[0].by: found "  "; it must hold something other than spaces']);
    expect(withReading({ stage: 'x'.repeat(41) })[0]).toMatch(/^readings\[0\]\.stage: found 41 .* at most 40/);
    expect(withReading({ note: 'x'.repeat(2_001) })[0]).toMatch(/^readings\[0\]\.note: .* at most 2000/);
  });

  test('an entry of the record needs a note or a photograph, and a place in the history', () => {
    expect(withEntry({ by: 'Ada' })).toEqual([
      'record[0]: found neither a note nor a photograph; an entry needs one of the two',
    ]);
    expect(withEntry({ note: ' ' })).toHaveLength(1);
    expect(withEntry({ note: 'x', after: 1 })).toEqual(['record[0].after: found 1, but no trial is written down']);
    expect(withEntry({ photograph: '../x' })[0]).toContain('letters, figures and hyphens');
  });
});

describe('the hard case and the shop', () => {
  const withCase = (caseDepth: number): Design => ({
    ...demo,
    seats: demo.seats.map((seat) => ({ ...seat, journal: { ...seat.journal, caseDepth } })),
  });
  test('a depth above nought', () => {
    expect(errorsOf(withCase(0.5))).toEqual([]);
    expect(errorsOf(withCase(0))[0]).toMatch(/^seats\[0\]\.journal\.caseDepth: found 0 mm; it must be above 0 mm/);
    expect(errorsOf(withCase(21))[0]).toContain('at most 20');
  });

  test('tools of the shop', () => {
    expect(errorsOf({ ...demo, shop: { tools: 'inch', balls: [6, 8], rolls: [3.175] } })).toEqual([]);
    expect(errorsOf({ ...demo, shop: { tools: 'imperial' } })[0]).toContain('"metric" or "inch"');
    expect(errorsOf({ ...demo, shop: { balls: [0] } })[0]).toMatch(/^shop\.balls\[0\]/);
    expect(errorsOf({ ...demo, shop: { balls: [] } })[0]).toMatch(/^shop\.balls/);
  });
});
