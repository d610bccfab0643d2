/** What is out of sight stands still while a hand moves something, and loses nothing of it. */
import { expect, test, vi } from 'vitest';
import { followedAsSeen } from '../../../src/app/state/AsSeen.tsx';
import { OPENING } from '../../../src/app/state/opening.ts';
import { createWork } from '../../../src/app/state/store.ts';

function setUp() {
  const work = createWork(OPENING.design);
  const followed = followedAsSeen(work);
  const told = vi.fn();
  const leave = followed.work.store.subscribe(told);
  const shown = () => followed.work.store.getState().design.position;
  return { work, followed, told, leave, shown };
}

test('in sight it follows every move', () => {
  const { work, told, shown } = setUp();
  work.dragStart();
  work.moveTo(0.01);
  expect(shown()).toBe(0.01);
  work.moveTo(0.02);
  expect(shown()).toBe(0.02);
  expect(told).toHaveBeenCalledTimes(2);
});

test('out of sight it stands while a hand moves, and follows once the hand lets go', () => {
  const { work, followed, told, shown } = setUp();
  const before = shown();
  followed.see(false);
  work.dragStart();
  work.moveTo(0.01);
  work.moveTo(0.02);
  expect(shown()).toBe(before);
  expect(told).not.toHaveBeenCalled();
  work.dragEnd();
  expect(shown()).toBe(0.02);
  expect(told).toHaveBeenCalledOnce();
  const [now, last] = told.mock.calls[0]!;
  expect([now.design.position, last.design.position]).toEqual([0.02, before]);
});

test('brought into sight in the middle of a move it shows what stands now', () => {
  const { work, followed, told, shown } = setUp();
  followed.see(false);
  work.dragStart();
  work.moveTo(0.01);
  followed.see(true);
  expect(told).toHaveBeenCalledOnce();
  expect(shown()).toBe(0.01);
  work.moveTo(0.02);
  expect(told).toHaveBeenCalledTimes(2);
});

test('out of sight with no hand on anything it follows as well', () => {
  const { work, followed, told, leave, shown } = setUp();
  followed.see(false);
  work.moveTo(0.01);
  expect(shown()).toBe(0.01);
  expect(told).toHaveBeenCalledOnce();
  leave();
  work.moveTo(0.02);
  expect(told).toHaveBeenCalledOnce();
});

test('what is asked of it goes to the work itself', () => {
  const { work, followed } = setUp();
  followed.see(false);
  work.dragStart();
  followed.work.moveTo(0.03);
  expect(work.store.getState().design.position).toBe(0.03);
});
