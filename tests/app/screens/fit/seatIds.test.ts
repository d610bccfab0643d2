/** A seat's number goes with it: moved, renamed, measured, added to, taken away and brought back. */
import { expect, test } from 'vitest';
import { following } from '../../../../src/app/screens/fit/useSeatIds.ts';
import { ARRANGEMENTS } from '../../../../src/app/screens/new/arrangements.ts';
import { newDesign } from '../../../../src/app/screens/new/newDesign.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { withSeatsRenamed } from '../../../../src/design/seatNames.ts';
import { withoutSeat, withSeatCopied, withSeatMoved } from '../../../../src/design/seats.ts';

const start = newDesign(ARRANGEMENTS[0]!, { typed: {}, film: null, pitch: null, title: '' }, 'metric');
function idsAfter(...steps: ((design: Design) => Design)[]): readonly number[] {
  let [design, known] = [start, { seats: start.seats, ids: [0, 1, 2] as readonly number[], next: 3 }];
  for (const step of steps) {
    design = step(design);
    known = following(known, design.seats);
  }
  return known.ids;
}

test('moved it keeps its number, there and back', () => {
  expect(idsAfter((d) => withSeatMoved(d, 0, 1))).toEqual([1, 0, 2]);
  // As it is once it is checked: every seat made anew.
  expect(idsAfter((d) => structuredClone(withSeatMoved(d, 1, 1)))).toEqual([0, 2, 1]);
  expect(
    idsAfter(
      (d) => withSeatMoved(d, 0, 1),
      (d) => withSeatMoved(d, 1, 1),
      () => start,
    ),
  ).toEqual([0, 1, 2]);
});

test('changed or renamed in its place it is the same', () => {
  const wider = (d: Design): Design => ({
    ...d,
    seats: d.seats.map((s, i) => (i === 1 ? { ...s, film: { target: 0.004 } } : s)),
  });
  expect(idsAfter(wider)).toEqual([0, 1, 2]);
  expect(idsAfter((d) => withSeatsRenamed(d, new Map([[2, 'nose']])))).toEqual([0, 1, 2]);
});

test('one that comes has a number of its own, and the others keep theirs', () => {
  const more = (d: Design) => withSeatCopied(d, 0, 'metric');
  const ids = idsAfter(more);
  expect([...ids].sort()).toEqual([0, 1, 2, 3]);
  expect(idsAfter((d) => withoutSeat(d, 1))).toEqual([0, 2]);
  expect(
    idsAfter(
      (d) => withoutSeat(d, 1),
      () => start,
    ),
  ).toEqual([0, 3, 2]);
});
