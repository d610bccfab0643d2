/** What differs between two states: forward and backward it gives the other one, and is as small as the change. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { backward, forward, onlyPlace, patchBetween, same } from '../../src/jobs/patch.ts';

const key = fc.constantFrom('a', 'b', 'seats', 'profile');
const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    fc.oneof(fc.integer({ min: -2, max: 2 }), fc.constantFrom('x', 'y'), fc.boolean(), fc.constant(null)),
    fc.array(tie('tree'), { maxLength: 4 }),
    fc.dictionary(key, tie('tree'), { maxKeys: 4 }),
  ),
}));

test('a patch leads from each state to the other, also once it was kept as text', () => {
  fc.assert(
    fc.property(tree, tree, (a, b) => {
      const patch = patchBetween(a, b);
      const kept = JSON.parse(JSON.stringify(patch));
      expect(forward(a, patch)).toEqual(b);
      expect(backward(b, patch)).toEqual(a);
      expect(forward(a, kept)).toEqual(b);
      expect(backward(b, kept)).toEqual(a);
      expect(patch.length === 0).toBe(same(a, b));
    }),
    { numRuns: 2000 },
  );
});

test('whether two states say the same does not hang on the order of keys, nor on keys that hold nothing', () => {
  fc.assert(
    fc.property(fc.dictionary(key, tree), (group) => {
      const turned = Object.fromEntries([...Object.entries(group).reverse(), ['nothing', undefined]]);
      expect(same(group, turned)).toBe(true);
      expect(patchBetween(group, turned)).toEqual([]);
      expect(same(group, { ...group, more: 1 })).toBe(false);
    }),
  );
});

test('one number of a long profile is a patch of one number; a line put in is that line', () => {
  const profile = Array.from({ length: 2000 }, (_, i) => [i, i / 1e6]);
  const was = { seats: [{ name: 's', bush: { profile } }], run: { speed: 900 } };
  const number = structuredClone(was);
  number.seats[0]!.bush.profile[700]![1] = 5;
  expect(patchBetween(was, number)).toEqual([{ at: ['seats', 0, 'bush', 'profile', 700, 1], was: 700 / 1e6, is: 5 }]);
  const line = structuredClone(was);
  line.seats[0]!.bush.profile.splice(10, 1, [10.5, 0], [11, 0]);
  expect(patchBetween(was, line)).toEqual([
    {
      at: ['seats', 0, 'bush', 'profile'],
      from: 10,
      out: [[10, 10 / 1e6]],
      put: [
        [10.5, 0],
        [11, 0],
      ],
    },
  ]);
  // What was not touched stays the same object, so that what was worked out of it still holds.
  expect(forward(was, patchBetween(was, number)).run).toBe(was.run);
});

test('only what sets one number or word has a place of its own', () => {
  expect(onlyPlace(patchBetween({ a: 1 }, { a: 2 }))).toBe('["a"]');
  expect(onlyPlace(patchBetween({}, { a: 2 }))).toBe('["a"]');
  expect(onlyPlace(patchBetween({ a: 1, b: 1 }, { a: 2, b: 2 }))).toBeNull();
  expect(onlyPlace(patchBetween({}, { a: { b: 1 } }))).toBeNull();
  expect(onlyPlace(patchBetween({ a: [1] }, { a: [1, 2] }))).toBeNull();
});
