/** A film and its limit are told with digits enough to see on which side it is. */
import { expect, test } from 'vitest';
import { besideText } from '../../src/design/units.ts';

test('as ever where they differ so, else with digits more', () => {
  expect(besideText(0.0009, 0.001, 'metric')).toEqual(['0.90 µm', '1.00 µm']);
  expect(besideText(0.000998, 0.001, 'metric')).toEqual(['0.998 µm', '1.000 µm']);
  expect(besideText(0.00100004, 0.001, 'metric')).toEqual(['1.00004 µm', '1.00000 µm']);
  expect(besideText(0.001, 0.001, 'metric')).toEqual(['1.00 µm', '1.00 µm']);
  expect(besideText(0.001 - 1e-13, 0.001, 'metric')).toEqual(['just under 1.00 µm', '1.00 µm']);
  expect(besideText(0.002538, 0.00254, 'inch')).toEqual(['0.999 tenths', '1.000 tenths']);
});

test('never the same figure on the two sides of a limit', () => {
  for (let k = 4; k < 400; k++) {
    const [film, limit] = besideText(0.001 + ((k % 2 ? 1 : -1) * k * k) / 1e10, 0.001, 'metric');
    expect(film).not.toBe(limit);
    const figure = (text: string) => Number.parseFloat(text);
    expect(figure(film) < figure(limit)).toBe(k % 2 === 0);
  }
});
