/** The shared state: one step a drag, what ends a drag, what is kept on the device and when. */
import { expect, test } from 'vitest';
import { createWork } from '../../../src/app/state/store.ts';
import type { Design } from '../../../src/design/definition.ts';
import { createKeeper } from '../../../src/jobs/keeper.ts';
import { browser } from '../../jobs/browser.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (title: string): Design => ({
  conepair: 1,
  title,
  seats: [{ name: 'seat', journal: surface, bush: surface }],
});

test('a drag is one step to undo and is kept once, at its end', () => {
  const { tab, texts } = browser();
  const keeper = () => createKeeper(tab().device, () => true);
  const work = createWork(design('a'), keeper());
  work.dragStart();
  for (const position of [0.001, 0.002, 0.003]) work.moveTo(position);
  expect(texts.size).toBe(0);
  work.dragEnd();
  expect(work.store.getState().design.position).toBe(0.003);
  expect(createWork(design('b'), keeper()).store.getState().design).toMatchObject({ title: 'a', position: 0.003 });
  work.undo();
  expect(work.store.getState().design.position).toBeUndefined();
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

test('opening a file ends a drag that goes on, and the file is one more step', () => {
  const work = createWork(design('a'));
  work.dragStart();
  work.moveTo(0.01);
  work.open('b', { ok: true, design: design('b') });
  expect(work.dragging()).toBe(false);
  expect(work.store.getState().design.title).toBe('b');
  work.undo();
  expect(work.store.getState().design).toMatchObject({ title: 'a', position: 0.01 });
});

test('a change that makes no valid design is refused whole', () => {
  const work = createWork(design('a'));
  const before = work.store.getState().design;
  expect(work.change((d) => ({ ...d, position: Number.NaN }))).not.toEqual([]);
  expect(work.store.getState().design).toBe(before);
  work.moveTo(0.02);
  expect(work.store.getState().design.position).toBe(0.02);
});
