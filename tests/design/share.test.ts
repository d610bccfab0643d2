/** A share is typed as one says it: percent, so many in so many, a fraction, a plain number. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantityAt } from '../../src/design/place.ts';
import { typedQuantity } from '../../src/design/quantity.ts';

const accuracy = quantityAt('odds.accuracy')!;
const typed = (text: string) => typedQuantity(accuracy, text, 'metric');

test('the same share however it is typed', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100 }), (thousandths) => {
      const share = thousandths / 1000;
      for (const text of [`${share}`, `${thousandths / 10} %`, `${thousandths / 10}%`, `${thousandths} in 1000`])
        expect((typed(text) as { value: number }).value).toBeCloseTo(share, 12);
      expect((typed(`${thousandths}/1000`) as { value: number }).value).toBeCloseTo(share, 12);
    }),
  );
});

test('nothing else is, and its bounds hold in every way of saying it', () => {
  for (const text of ['1 mm', 'one', '% 1', '1 in', '50 %', '1 in 2', '1 in 0', '']) expect(typed(text).ok).toBe(false);
});
