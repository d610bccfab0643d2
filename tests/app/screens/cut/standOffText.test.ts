/** What the next trial should read: one doubt, in the form in which the metal has it. */
import { expect, test } from 'vitest';
import { standOffText } from '../../../../src/app/screens/cut/Trials.tsx';

type Remaining = Parameters<typeof standOffText>[0];
const remaining = (limits: [number, number] | undefined, safe = -0.02): Remaining =>
  ({
    standOff: { now: -0.005, safe, all: -0.077, sigma: 0.028 },
    steps: [{ seat: 'steep', part: 'journal', normal: 0.051, ...(limits && { limits }) }],
  }) as unknown as Remaining;

test('with ± where the metal has that, with its limits along the axis where it has limits', () => {
  expect(standOffText(remaining(undefined), 'metric')).toMatch(/: 72 ± 55 µm short, which is the same doubt/);
  // 7 to 51 of 51 µm of metal are 9.9 to 72 of 72 µm.
  expect(standOffText(remaining([0.007, 0.051]), 'metric')).toMatch(/: 72 \(10 to 72\) µm short, which is the same/);
});

test('nothing safe is nothing to be told of', () => {
  expect(standOffText(remaining(undefined), 'metric')).toMatch(/ at −20\.00 µm with the safe part off,/);
  expect(standOffText(remaining(undefined, -0.005), 'metric')).not.toMatch(/safe part/);
});
