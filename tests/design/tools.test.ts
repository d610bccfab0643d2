/** Tools keep the names their makers gave them. */
import { describe, expect, test } from 'vitest';
import { blocksText, inchFraction, stackText, toolText } from '../../src/design/tools.ts';

const INCH = 25.4;

describe('a size as it is engraved', () => {
  test.each([
    [0.25 * INCH, '1/4 in'],
    [0.375 * INCH, '3/8 in'],
    [0.6875 * INCH, '11/16 in'],
    [(33 / 32) * INCH, '1 1/32 in'],
    [2 * INCH, '2 in'],
    [5 * INCH, '5 in'],
    [0.107 * INCH, '0.107 in'],
    [16, '16 mm'],
    [17.5, '17.5 mm'],
    [100, '100 mm'],
  ])('%f mm on a screen of inches: %s', (mm, text) => {
    expect(toolText(mm, 'inch')).toBe(text);
  });

  test('a metric shop reads its own in millimetres, an inch ball by its fraction', () => {
    expect(toolText(16, 'metric')).toBe('16 mm');
    expect(toolText(4.02, 'metric')).toBe('4.02 mm');
    expect(toolText(0.6875 * INCH, 'metric')).toBe('11/16 in');
    // half an inch is 12.7 mm: made in both, so told in the person's own
    expect(toolText(12.7, 'metric')).toBe('12.7 mm');
    expect(toolText(12.7, 'inch')).toBe('1/2 in');
  });

  test('what nobody makes is told in the units of the screen', () => {
    expect(toolText(17.46283, 'metric')).toBe('17.46283 mm');
    expect(toolText(17.46283, 'inch')).toBe('0.687513 in');
    expect(inchFraction(10)).toBeNull();
    expect(inchFraction(0)).toBeNull();
  });
});

test('a stack is never translated', () => {
  const metric = [1.0005, 1.04, 1.3, 5, 50];
  expect(blocksText(metric, 'metric')).toBe('1.0005 + 1.04 + 1.3 + 5 + 50 mm');
  expect(
    blocksText(
      [0.1002, 0.126, 0.75, 3].map((block) => block * INCH),
      'inch',
    ),
  ).toBe('0.1002 + 0.126 + 0.750 + 3.000 in');
  expect(stackText(5.234, 'metric', 'inch')).toBe('5.234 mm (0.206063 in)');
  expect(stackText(5.234, 'metric', 'metric')).toBe('5.234 mm');
});
