import { expect, test } from 'vitest';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { isOwn, MARKS, markOf, OPENING } from '../../../src/app/state/opening.ts';

test('every example has its mark, and there is no other', () => {
  expect([...MARKS].sort()).toEqual(DEMOS.map(({ design }) => markOf(design)).sort());
});

test('the page opens with the first of them', () => {
  expect(OPENING).toEqual(DEMOS[0]);
});

test.each(DEMOS)('$file is nobody’s own, moved or not, until anything else of it is changed', ({ design }) => {
  expect(isOwn(design)).toBe(false);
  expect(isOwn({ ...design, position: 0.0123 })).toBe(false);
  expect(isOwn({ ...design, title: `${design.title} ` })).toBe(true);
  const [first, ...rest] = design.seats;
  expect(isOwn({ ...design, seats: [{ ...first!, journal: { ...first!.journal } }, ...rest] })).toBe(false);
});
