/** Jobs put away or deleted, and a new one begun: what stays on the device, for how long, and who takes it off. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { typeAt } from '../../src/app/state/draft.ts';
import { createWork, type Work } from '../../src/app/state/store.ts';
import type { Design } from '../../src/design/definition.ts';
import type { Device } from '../../src/jobs/device.ts';
import { createKeeper } from '../../src/jobs/keeper.ts';
import { bringBackJob, deleteJob, KEPT_DELETED, putJobAway, sweepDeleted } from '../../src/jobs/list.ts';
import { TABLES } from '../../src/jobs/tables.ts';
import { device } from './device.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (title: string): Design => ({
  conepair: 1,
  title,
  seats: [{ name: 'seat', journal: surface, bush: surface }],
});
beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());
const settle = (ms = 400) => vi.advanceTimersByTimeAsync(ms);
async function done<T>(act: Promise<T>): Promise<T> {
  await settle(1000);
  return act;
}
async function workOn(of: Device): Promise<Work> {
  const keeper = createKeeper(of, ({ title }) => title !== 'demo');
  const starting = keeper.start();
  await settle();
  return createWork(design('demo'), keeper, await starting);
}
async function begun(work: Work, title: string): Promise<string> {
  work.open(title, { ok: true, design: design(title) });
  await settle();
  return work.store.getState().piece;
}
const titles = async (work: Work) => (await work.keeper!.shelf.heads()).map(({ title }) => title).sort();

test('a deleted job stays 30 days, to be brought back, and then goes with all it had; others stay', async () => {
  const here = device();
  const work = await workOn(here.window().device);
  const [gone, back] = [await begun(work, 'gone'), await begun(work, 'back')];
  await begun(work, 'mine');
  const { shelf, device: clock } = work.keeper!;
  await shelf.nameVersion(gone, 'first', design('gone'), 1);
  const blob = new Blob(['x'], { type: 'image/jpeg' });
  await shelf.photographs.put('nobodys', { blob, width: 1, height: 1, made: 0 });
  for (const id of [gone, back]) expect(await done(deleteJob(work.keeper!, id))).toBe(true);
  const at = clock.now();
  here.setClock(at + KEPT_DELETED - 60_000);
  await done(sweepDeleted(work.keeper!));
  expect(await titles(work)).toEqual(['back', 'gone', 'mine']);
  expect(await shelf.photographs.get('nobodys')).not.toBeNull();
  expect(await done(bringBackJob(work.keeper!, back))).toBe(true);
  here.setClock(at + KEPT_DELETED + 60_000);
  await done(sweepDeleted(work.keeper!));
  expect(await titles(work)).toEqual(['back', 'mine']);
  for (const table of TABLES) expect(await shelf.tables.all(table, gone), table).toEqual([]);
  expect(await shelf.photographs.get('nobodys')).toBeNull();
  // A clock set back makes nothing old.
  await done(deleteJob(work.keeper!, back));
  here.setClock(0);
  await done(sweepDeleted(work.keeper!));
  expect(await titles(work)).toEqual(['back', 'mine']);
});

test('one that is put away is not what another window begins with; one that is open here is gone on with', async () => {
  const here = device();
  const first = here.window();
  const work = await workOn(first.device);
  await begun(work, 'older');
  const id = await begun(work, 'newer');
  expect(await done(putJobAway(work.keeper!, id, true))).toBe(true);
  first.kill();
  await settle();
  const other = await workOn(here.window().device);
  expect(other.store.getState().design.title).toBe('older');
  const again = await workOn(here.window(first.session).device);
  expect(again.store.getState().design.title).toBe('newer');
});

test('what is begun on the page of a new job is there after a reload, and makes no job of an example or of another job', async () => {
  const here = device();
  const first = here.window();
  const work = await workOn(first.device);
  expect(work.store.getState().example).not.toBeNull();
  work.begun.write({ arrangement: 'double', title: 'Bench lathe' });
  work.store.setState({ system: 'inch' });
  await settle();
  expect(await titles(work)).toEqual([]);
  expect(work.store.getState().example).not.toBeNull();
  first.kill();
  const again = await workOn(here.window(first.session).device);
  expect(again.begun.store.getState().written).toEqual({ arrangement: 'double', title: 'Bench lathe' });
  again.begun.write(null);
  await settle();
  expect((await workOn(here.window().device)).begun.store.getState().written).toBeNull();
});

test('a number typed in a window that follows stays there as the other goes on, and can be taken after taking over', async () => {
  const here = device();
  const one = await workOn(here.window().device);
  await begun(one, 'mine');
  const two = await workOn(here.window().device);
  const type = (work: Work, path: string, value: number) => typeAt(work, path, { text: `${value}`, put: { value } });
  const held = (work: Work) => Object.keys((work.store.getState().unfinished.drafts?.written ?? {}) as object);
  const path = 'seats[0].journal.diameter';
  type(two, path, 21);
  expect(held(two)).toEqual([path]);
  one.moveTo(0.1);
  type(one, 'seats[0].bush.from', 30);
  await settle();
  expect(two.store.getState().design.position).toBe(0.1);
  // Its own beside what the other window left.
  expect(held(two).sort()).toEqual(['seats[0].bush.from', path]);
  expect(held(one)).toEqual(['seats[0].bush.from']);
  two.takeOver();
  await settle();
  expect(two.store.getState().elsewhere).toBe(false);
  expect(held(two).sort()).toEqual(['seats[0].bush.from', path]);
  expect(JSON.stringify(two.store.getState().unfinished)).not.toContain('here');
  expect(two.store.getState().design.seats[0]!.journal.diameter).toBe(22);
  type(two, path, 21);
  expect(two.store.getState().design.seats[0]!.journal.diameter).toBe(21);
  await settle();
  // The other window, which follows now, has no ghost of it.
  expect(held(one)).toEqual(['seats[0].bush.from']);
});
