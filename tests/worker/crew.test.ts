/** Pieces shared out among hands: each done once, each hand one at a time, stopped together. */
import { expect, test } from 'vitest';
import { shareOut } from '../../src/worker/crew.ts';

/** A turn of the loop, or several. */
const turns = async (count: number) => {
  for (let i = 0; i < count; i++) await Promise.resolve();
};
const pieces = Array.from({ length: 10 }, (_, i) => i);

test('every piece once, each hand one at a time, whoever is free takes the next', async () => {
  const done: number[] = [];
  const by = new Map<number, number[]>();
  const busy = new Set<number>();
  await shareOut(
    pieces,
    3,
    async (piece, hand) => {
      expect(busy.has(hand)).toBe(false);
      busy.add(hand);
      by.set(hand, [...(by.get(hand) ?? []), piece]);
      // The first piece takes longest.
      await turns(piece === 0 ? 100 : 2);
      busy.delete(hand);
      return 10 * piece;
    },
    (result) => done.push(result),
  );
  expect(done.toSorted((a, b) => a - b)).toEqual(pieces.map((piece) => 10 * piece));
  expect(done.at(-1)).toBe(0);
  expect([...by.keys()].toSorted()).toEqual([0, 1, 2]);
  expect(by.get(0)).toEqual([0]);
});

test('no more hands than pieces', async () => {
  const hands = new Set<number>();
  await shareOut(
    [1, 2],
    8,
    async (_, hand) => void hands.add(hand),
    () => {},
  );
  expect(hands.size).toBe(2);
  await shareOut(
    [],
    8,
    async () => expect.fail(),
    () => {},
  );
});

test('ends with the first failure: no further piece is begun', async () => {
  const begun: number[] = [];
  const work = shareOut(
    pieces,
    2,
    async (piece) => {
      begun.push(piece);
      await turns(3);
      if (piece === 1) throw new Error('broken');
    },
    () => {},
  );
  await expect(work).rejects.toThrow('broken');
  await turns(50);
  expect(begun.length).toBeLessThan(5);
});

test('stops at the signal, with its reason', async () => {
  const control = new AbortController();
  const begun: number[] = [];
  const work = shareOut(
    pieces,
    2,
    async (piece) => {
      begun.push(piece);
      await turns(2);
    },
    () => {
      if (begun.length >= 4) control.abort(new Error('enough'));
    },
    control.signal,
  );
  await expect(work).rejects.toThrow('enough');
  expect(begun.length).toBeLessThan(6);
});
