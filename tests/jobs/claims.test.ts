/** Where the browser has no locks the windows ask each other: one has a job, the others wait. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { askedClaims, type Channel, type Claim } from '../../src/jobs/claims.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

interface Window {
  claim(): Claim;
  said: string[];
}

function windows(...names: string[]) {
  const hearers = new Map<string, ((word: unknown) => void)[]>();
  const channelOf = (name: string): Channel => ({
    post: (word) => {
      for (const [other, hear] of hearers) if (other !== name) for (const one of hear) one(word);
    },
    listen: (hear) => void hearers.set(name, [...(hearers.get(name) ?? []), hear]),
  });
  return names.map((name) => {
    const claims = askedClaims(channelOf(name), name);
    const said: string[] = [];
    const claim = () => claims('job', { granted: () => said.push('granted'), lost: () => said.push('lost') });
    return { claim, said };
  }) as unknown as [Window, Window, Window];
}

test('the first has it, the next has it once the first lets go', async () => {
  const [a, b] = windows('a', 'b');
  const first = a.claim();
  await vi.advanceTimersByTimeAsync(200);
  b.claim();
  await vi.advanceTimersByTimeAsync(1000);
  expect([a.said, b.said]).toEqual([['granted'], []]);
  first.release();
  await vi.advanceTimersByTimeAsync(200);
  expect(b.said).toEqual(['granted']);
});

test('of those that ask at once exactly one has it; it can be taken from it', async () => {
  const [b, a, c] = windows('b', 'a', 'c');
  b.claim();
  a.claim();
  const third = c.claim();
  await vi.advanceTimersByTimeAsync(1000);
  expect([a.said, b.said, c.said]).toEqual([['granted'], [], []]);
  third.seize();
  await vi.advanceTimersByTimeAsync(1000);
  expect([a.said, b.said, c.said]).toEqual([['granted', 'lost'], [], ['granted']]);
  third.release();
  await vi.advanceTimersByTimeAsync(1000);
  expect(a.said.length + b.said.length).toBe(3);
});

test('one that no longer waits is not given it', async () => {
  const [a, b] = windows('a', 'b');
  const first = a.claim();
  await vi.advanceTimersByTimeAsync(200);
  const second = b.claim();
  await vi.advanceTimersByTimeAsync(200);
  second.release();
  first.release();
  await vi.advanceTimersByTimeAsync(1000);
  expect(b.said).toEqual([]);
});
