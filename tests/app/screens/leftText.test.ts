/** How long a run of pairs still takes, by how long what is done took. */
import { expect, test } from 'vitest';
import { leftText } from '../../../src/app/screens/odds/leftText.ts';

test('as long again for each that is left', () => {
  expect(leftText(0, 40, 5000)).toBe('The first answer comes in some seconds.');
  expect(leftText(10, 40, 10_000)).toBe('About 30 s left.');
  expect(leftText(1, 40, 10_000)).toBe('About 7 min left.');
  expect(leftText(40, 40, 41_000)).toBe('About 1 s left.');
});
