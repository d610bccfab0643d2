/** A field at rest shows no more digits than mean something, and never nothing for something. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantityText, restingText } from '../../src/design/quantity.ts';

test.each([
  ['fine', -0.0109319, 'metric', '−10.93 µm'],
  ['fine', 0, 'metric', '0.00 µm'],
  ['fine', 0.0000034, 'metric', '0.0034 µm'],
  ['fine', 0.02, 'metric', '20.00 µm'],
  ['length', 22.0061234, 'metric', '22.0061 mm'],
  ['length', 22, 'metric', '22.000 mm'],
  ['length', 22, 'inch', '0.86614 in'],
  ['angle', 2.862405, 'metric', '2.8624°'],
  ['mass', 0.8, 'inch', '1.764 lb'],
  ['force', -60, 'inch', '−13.49 lbf'],
  ['temperature', 20, 'inch', '68 °F'],
  // 7,199.6 psi rounded ends in noughts that count.
  ['pressure', 49.6396, 'inch', '7200 psi'],
  ['count', 123456, 'metric', '123456'],
] as const)('%s %f in %s is %s', (quantity, value, system, text) => {
  expect(restingText(quantity, value, system)).toBe(text);
});

test('it is the figure of the field, rounded: never by more than a thousandth of it, or the finest that is told', () => {
  const number = (text: string) =>
    Number(
      text
        .replace('−', '-')
        .replace(/^(\S+).*$/, '$1')
        .replace('°', ''),
    );
  fc.assert(
    fc.property(
      fc.constantFrom('fine', 'length', 'angle', 'mass', 'force', 'pressure'),
      fc.double({ min: -500, max: 500, noNaN: true }),
      fc.constantFrom('metric', 'inch'),
      (quantity, value, system) => {
        const [exact, rest] = [quantityText(quantity, value, system), restingText(quantity, value, system)];
        fc.pre(!/e/.test(exact));
        expect(rest.length).toBeLessThanOrEqual(exact.length);
        const off = Math.abs(number(rest) - number(exact));
        expect(off).toBeLessThanOrEqual(Math.max(0.00501 * Math.abs(number(exact)), 1e-12));
        if (number(exact) !== 0) expect(number(rest)).not.toBe(0);
      },
    ),
  );
});
