/** Long work: told point by point, and stopped between two. */
import { expect, test } from 'vitest';
import { drive } from '../../src/worker/longWork.ts';

function* count(to: number): Generator<number, string> {
  for (let i = 1; i <= to; i++) yield i;
  return 'counted';
}

test('tells every point and gives the result', async () => {
  const told: number[] = [];
  const ended = await drive(count(3), {
    tell: (point) => told.push(point),
    stopped: () => false,
    breathe: async () => {},
  });
  expect(told).toEqual([1, 2, 3]);
  expect(ended).toEqual({ status: 'done', result: 'counted' });
});

test('stops between two points, and no further work is done', async () => {
  const told: number[] = [];
  let worked = 0;
  function* work(): Generator<number, void> {
    for (;;) {
      worked++;
      yield worked;
    }
  }
  const ended = await drive(work(), {
    tell: (point) => told.push(point),
    stopped: () => told.length >= 2,
    breathe: async () => {},
  });
  expect(ended).toEqual({ status: 'cancelled' });
  expect(told).toEqual([1, 2]);
  expect(worked).toBe(2);
});

test('breathes after every point, so that a stop can arrive', async () => {
  let breaths = 0;
  await drive(count(4), {
    tell: () => {},
    stopped: () => false,
    breathe: async () => {
      breaths++;
    },
  });
  expect(breaths).toBe(4);
});
