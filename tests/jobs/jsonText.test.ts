/** Text of a state to be kept: that of JSON.stringify, whatever it holds, the first time and every other. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonText } from '../../src/jobs/jsonText.ts';

const anything = fc.anything({
  maxDepth: 5,
  values: [fc.string(), fc.double(), fc.boolean(), fc.constant(null), fc.constant(undefined)],
});

test('any value: as JSON.stringify has it', () => {
  fc.assert(
    fc.property(anything, (value) => {
      const whole = { value, list: [value, value], '"': value };
      for (let time = 0; time < 2; time++) expect(jsonText(whole)).toBe(JSON.stringify(whole));
    }),
    { numRuns: 500 },
  );
});

test('long lists, also within seats, and another list of the same length in their place', () => {
  const profile = (slope: number) => Array.from({ length: 300 }, (_, i) => [i / 7, slope * i]);
  const state = (slope: number) => ({
    seats: [{ journal: { profile: profile(slope) } }, { bush: {} }],
    none: undefined,
  });
  const first = state(1e-7);
  for (const one of [first, first, state(2e-7), { ...first, position: 0.1 }])
    expect(jsonText(one)).toBe(JSON.stringify(one));
});
