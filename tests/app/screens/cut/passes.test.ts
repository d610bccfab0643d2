/** Passes are told as the person's own dial counts them, on the screen as on the sheet. */
import { expect, test } from 'vitest';
import { leastSet, passesText } from '../../../../src/app/screens/cut/Steps.tsx';

const onDiameter = (radius: number) => `${(2000 * radius).toFixed(2)} µm`;

test('one, two and many', () => {
  expect(passesText({ count: 22, depth: 0.005, last: 0.003235 }, onDiameter, 0.001)).toBe(
    '21 passes of 10.00 µm and one of 6.47 µm',
  );
  expect(passesText({ count: 2, depth: 0.005, last: 0.001 }, onDiameter, 0.001)).toBe(
    '1 pass of 10.00 µm and one of 2.00 µm',
  );
  expect(passesText({ count: 1, depth: 0.002, last: 0.002 }, onDiameter, 0.001)).toBe('one pass of 4.00 µm');
});

test('what is less than can be set is left to the gauge', () => {
  expect(leastSet({ dial: 'diameter', division: 0.005 })).toBe(0.00125);
  expect(leastSet({ division: 0.005 })).toBe(0.0025);
  expect(passesText({ count: 4, depth: 0.005, last: 0.0009 }, onDiameter, 0.001)).toBe(
    '3 passes of 10.00 µm and the last 1.80 µm by the gauge',
  );
  expect(passesText({ count: 1, depth: 0.0009, last: 0.0009 }, onDiameter, 0.001)).toBe('1.80 µm, by the gauge');
});
