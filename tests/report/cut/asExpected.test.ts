/** What is read at a trial is remarked on where it is further from what is expected than chance brings it. */
import { expect, test } from 'vitest';
import { expectedShakeText, expectedText } from '../../../src/report/cut/asExpected.ts';

const expected = { value: 0.04, low: 0.04 - 1.96 * 0.003, high: 0.04 + 1.96 * 0.003 };
const read = (value: number, sigma = 0.004) => expectedText(expected, { value, sigma }, 'metric');

test('only beyond what both doubts together allow 19 times in 20', () => {
  expect(expectedText(expected, null, 'metric')).toBe('Expected: 40.0 ± 5.9 µm noseward of the datum.');
  // 1.96 times 5 µm
  for (const value of [0.0303, 0.04, 0.0497])
    expect(read(value)).toBe('Expected: 40.0 ± 5.9 µm noseward of the datum.');
  expect(read(0.0301)).toMatch(/ What is typed is further rearward than that allows 19 times in 20: read it again/);
  expect(read(0.0499)).toMatch(/ is further noseward than that allows/);
  expect(read(0.0499, 0.01)).not.toMatch(/typed/);
  expect(
    expectedText(
      { value: -0.0063, low: -0.0063 - 1.96 * 0.0016, high: -0.0063 + 1.96 * 0.0016 },
      { value: -0.0161, sigma: 0.001 },
      'metric',
    ),
  ).toMatch(/^Expected: 6\.3 ± 3\.1 µm rearward of the datum\. What is typed is further rearward than/);
});

test('where another seat may be the first, each side by itself', () => {
  const touch = { value: 0.0023, low: -0.009, high: 0.11 };
  const of = (value: number | null) => expectedText(touch, value === null ? null : { value, sigma: 0.001 }, 'metric');
  expect(of(null)).toBe(
    'Expected: about 2.30 µm noseward of the datum, 19 times in 20 between 9.00 µm rearward of the datum and 110.0 µm noseward of the datum.',
  );
  expect(of(0.075)).toBe(of(null));
  expect(of(-0.012)).toMatch(/further rearward than that allows/);
});

test('of a shake each side by itself', () => {
  const shake = { value: 0.06, low: 0.029, high: 0.068 };
  const of = (value: number | null) =>
    expectedShakeText(shake, value === null ? null : { value, sigma: 0.001 }, 'metric');
  expect(of(null)).toBe('Expected: about 60.00 µm, 19 times in 20 between 29.00 µm and 68.00 µm.');
  expect(of(0.029)).toBe(of(null));
  expect(of(0.028)).toMatch(/ is less than that allows/);
  expect(of(0.069)).toMatch(/ is more than that allows/);
});
