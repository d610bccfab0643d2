/** Expansion coefficients as tables print them. */
import { expect, test } from 'vitest';
import { quantityText, typedQuantity } from '../../src/design/quantity.ts';

const AT = {
  title: 'Expansion',
  description: '',
  quantity: 'expansion',
  unit: '1/K',
  bounds: [{ side: 'greatest', value: 1e-3, inclusive: true }],
  optional: false,
} as const;
const typed = (text: string, system: 'metric' | 'inch' = 'metric') =>
  typedQuantity({ ...AT, bounds: [...AT.bounds] }, text, system);

test('steel is 11.3 millionths a kelvin, 6.278 a degree Fahrenheit', () => {
  expect(quantityText('expansion', 11.3e-6, 'metric')).toBe('11.3 µm/(m·K)');
  expect(quantityText('expansion', 11.3e-6, 'inch')).toBe('6.2778 µin/(in·°F)');
  expect(quantityText('expansion', 0, 'metric')).toBe('0 µm/(m·K)');
});

test.each([
  ['11.3', 'metric', 11.3e-6],
  ['11,5 ppm/K', 'inch', 11.5e-6],
  ['10', 'inch', 18e-6],
  ['10 uin/in.F', 'metric', 18e-6],
  ['11.3e-6 1/K', 'inch', 11.3e-6],
  ['0', 'metric', 0],
] as const)('%s on a %s screen', (text, system, value) => {
  expect(typed(text, system)).toEqual({ ok: true, value });
});

test('what is typed is what the file keeps, exactly', () => {
  for (const tenths of [1, 55, 113, 115, 180, 239])
    expect(typed(`${tenths / 10}`)).toEqual({ ok: true, value: Number(`${tenths / 10}e-6`) });
});

test('a number per kelvin without saying so is asked about; so is what is no unit', () => {
  expect(typed('11.3e-6')).toMatchObject({ ok: false, message: expect.stringMatching(/write 11\.3e-6 1\/K/) });
  expect(typed('11 mm')).toMatchObject({ ok: false, message: expect.stringMatching(/unit "mm" is not known/) });
  expect(typed('steel')).toMatchObject({ ok: false });
  expect(typed('2000')).toMatchObject({ ok: false, message: 'found 2000 µm/(m·K); it must be at most 1000 µm/(m·K)' });
});

test('a difference of temperatures has no nought of its own', () => {
  expect(quantityText('warmer', 2, 'metric')).toBe('2 °C');
  expect(quantityText('warmer', 2, 'inch')).toBe('3.6 °F');
  expect(
    typedQuantity(
      { title: '', description: '', quantity: 'warmer', unit: 'K', bounds: [], optional: false },
      '9',
      'inch',
    ),
  ).toEqual({ ok: true, value: 5 });
});

test('a bare number is asked about below a thousandth, and no sooner', () => {
  expect(typed('0.002')).toEqual({ ok: true, value: 2e-9 });
  expect(typed('0.0009').ok).toBe(false);
});
