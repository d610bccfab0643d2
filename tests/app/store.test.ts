/** The shared state: one step a drag, what ends a drag, what is kept on the device and when. */
import { expect, test } from 'vitest';
import { createWork } from '../../src/app/store.ts';
import type { Design } from '../../src/design/definition.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (title: string): Design => ({ conepair: 1, title, seats: [{ name: 'seat', journal: surface, bush: surface }] });

function device(full = false) {
  const kept = new Map<string, string>();
  let writes = 0;
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => {
      if (full) throw new Error('no room');
      writes++;
      kept.set(key, value);
    },
  } as unknown as Storage;
  return { storage, writes: () => writes };
}

test('a drag is one step to undo and is kept once, at its end', () => {
  const { storage, writes } = device();
  const work = createWork(design('a'), storage);
  work.dragStart();
  for (const position of [0.001, 0.002, 0.003]) work.moveTo(position);
  expect(writes()).toBe(0);
  work.dragEnd();
  expect(work.store.getState().design.position).toBe(0.003);
  expect(createWork(design('b'), storage).store.getState().design).toMatchObject({ title: 'a', position: 0.003 });
  work.undo();
  expect(work.store.getState().design.position).toBeUndefined();
  work.redo();
  expect(work.store.getState().design.position).toBe(0.003);
});

test('a value told once more after a drag is no step of its own', () => {
  const work = createWork(design('a'), undefined);
  work.dragStart();
  for (const position of [0.001, 0.002]) work.moveTo(position);
  work.dragEnd();
  work.moveTo(0.002);
  work.undo();
  expect(work.store.getState().design.position).toBeUndefined();
});

test('opening a file ends a drag that goes on, and the file is one more step', () => {
  const work = createWork(design('a'), undefined);
  work.dragStart();
  work.moveTo(0.01);
  work.open('b', { ok: true, design: design('b') });
  expect(work.dragging()).toBe(false);
  expect(work.store.getState().design.title).toBe('b');
  work.undo();
  expect(work.store.getState().design).toMatchObject({ title: 'a', position: 0.01 });
});

test('a change that makes no valid design is refused whole; a device without room does not stop the work', () => {
  const work = createWork(design('a'), device(true).storage);
  const before = work.store.getState().design;
  expect(work.change((d) => ({ ...d, position: Number.NaN }))).not.toEqual([]);
  expect(work.store.getState().design).toBe(before);
  work.moveTo(0.02);
  expect(work.store.getState().design.position).toBe(0.02);
});
