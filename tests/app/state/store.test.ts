/** The shared state: one step a drag, what ends a drag, what is kept on the device and when. */
import { expect, test } from 'vitest';
import { createWork } from '../../../src/app/state/store.ts';
import type { Design } from '../../../src/design/definition.ts';
import { createKeeper } from '../../../src/jobs/keeper.ts';
import { device } from '../../jobs/device.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (title: string): Design => ({
  conepair: 1,
  title,
  seats: [{ name: 'seat', journal: surface, bush: surface }],
});

test('a drag is one step to undo and is kept once, at its end', async () => {
  const here = device();
  const keeper = createKeeper(here.window().device, () => true);
  const work = createWork(design('a'), keeper, await keeper.start());
  work.moveTo(0);
  await keeper.flush();
  const before = here.writes.length;
  work.dragStart();
  for (const position of [0.001, 0.002, 0.003]) work.moveTo(position);
  await keeper.flush();
  expect(here.writes.length).toBe(before);
  work.dragEnd();
  await keeper.flush();
  expect(here.writes.length).toBe(before + 1);
  expect(work.store.getState().design.position).toBe(0.003);
  work.undo();
  expect(work.store.getState().design.position).toBe(0);
  work.redo();
  expect(work.store.getState().design.position).toBe(0.003);
});

test('a value told once more after a drag is no step of its own', () => {
  const work = createWork(design('a'));
  work.dragStart();
  for (const position of [0.001, 0.002]) work.moveTo(position);
  work.dragEnd();
  work.moveTo(0.002);
  work.undo();
  expect(work.store.getState().design.position).toBeUndefined();
});

test('opening a file ends a drag that goes on; undo is of the job that is open', () => {
  const work = createWork(design('a'));
  work.dragStart();
  work.moveTo(0.01);
  work.open('b', { ok: true, design: design('b') });
  expect(work.dragging()).toBe(false);
  expect(work.store.getState()).toMatchObject({ design: { title: 'b' }, steps: { back: 0, forth: 0 } });
  work.undo();
  expect(work.store.getState().design.title).toBe('b');
});

test('two hundred steps and more go back one by one, and forward again', () => {
  const work = createWork(design('a'));
  for (let i = 1; i <= 300; i++) {
    work.dragStart();
    work.moveTo(i / 1000);
    work.dragEnd();
  }
  expect(work.store.getState().steps).toEqual({ back: 300, forth: 0 });
  for (let i = 299; i >= 1; i--) {
    work.undo();
    expect(work.store.getState().design.position).toBe(i / 1000);
  }
  work.undo();
  expect(work.store.getState().design).toEqual(design('a'));
  expect(work.store.getState().steps).toEqual({ back: 0, forth: 300 });
  for (let i = 0; i < 300; i++) work.redo();
  expect(work.store.getState().design.position).toBe(0.3);
});

test('a change that makes no valid design is refused whole', () => {
  const work = createWork(design('a'));
  const before = work.store.getState().design;
  expect(work.change((d) => ({ ...d, position: Number.NaN }))).not.toEqual([]);
  expect(work.store.getState().design).toBe(before);
  work.moveTo(0.02);
  expect(work.store.getState().design.position).toBe(0.02);
});

test('going back to a state of before gives back what was assumed of it then, and is one step', () => {
  const bore = 'seats[0].bush.diameter';
  const before: Design = { ...design('a'), assumed: [bore] };
  const work = createWork(before);
  work.change((now) => ({
    ...now,
    seats: now.seats.map((seat) => ({ ...seat, bush: { ...seat.bush, diameter: 22.01 } })),
  }));
  expect(work.store.getState().design.assumed).toBeUndefined();
  const typed = work.store.getState().design;
  work.backTo(before);
  expect(work.store.getState().design).toEqual(before);
  work.undo();
  expect(work.store.getState().design).toEqual(typed);
});
