/**
 * What is kept on the device: nothing a person made is overwritten, whatever is opened, by whichever tab, and however
 * damaged.
 */
import { expect, test } from 'vitest';
import { createWork } from '../../src/app/state/store.ts';
import type { Design } from '../../src/design/definition.ts';
import { createKeeper, type Device } from '../../src/jobs/keeper.ts';
import { browser } from './browser.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (title: string): Design => ({
  conepair: 1,
  title,
  seats: [{ name: 'seat', journal: surface, bush: surface }],
});
const DEMO = design('demo');
const isOwn = ({ title }: Design) => title !== 'demo';

const workOn = (device: Device) => createWork(DEMO, createKeeper(device, isOwn));
const open = (work: ReturnType<typeof workOn>, title: string) => work.open(title, { ok: true, design: design(title) });
const titles = (work: ReturnType<typeof workOn>) => work.keeper!.earlier().map(({ found }) => found?.design.title);
const titleOf = (work: ReturnType<typeof workOn>) => work.store.getState().design.title;
const told = (work: ReturnType<typeof workOn>) => work.store.getState().told.map(({ what }) => what);

test('a demo chosen puts the work away and keeps it: after a reload it is there, listed, and opened again as it was left', () => {
  const device = browser();
  const first = device.tab();
  const work = workOn(first.device);
  open(work, 'mine');
  work.moveTo(0.0123);
  open(work, 'demo');
  expect(work.store.getState().told).toMatchObject([{ what: 'aside', title: 'mine', kept: true }]);
  first.shut();
  const again = workOn(device.tab(first.session).device);
  expect(titleOf(again)).toBe('demo');
  const [piece] = again.keeper!.earlier();
  expect(again.reopen(piece!.name)).toBe(true);
  expect(again.store.getState().design).toMatchObject({ title: 'mine', position: 0.0123 });
  // Going on with it changes that record and makes no other.
  again.moveTo(0.02);
  open(again, 'demo');
  expect(again.keeper!.earlier().map(({ found }) => found!.design.position)).toEqual([0.02]);
});

test('undo goes back to the piece of work before, and what is done then is kept there', () => {
  const device = browser();
  const work = workOn(device.tab().device);
  open(work, 'mine');
  open(work, 'demo');
  work.undo();
  expect(titleOf(work)).toBe('mine');
  expect(told(work)).toEqual([]);
  work.moveTo(0.5);
  expect(titles(work)).toEqual([]);
  work.redo();
  open(work, 'other');
  expect(work.keeper!.earlier().map(({ found }) => found!.design.position)).toEqual([0.5]);
});

test('the last ten pieces of own work are kept, a demo that was looked at and moved is none', () => {
  const device = browser();
  const work = workOn(device.tab().device);
  for (let i = 1; i <= 13; i++) {
    open(work, `mine ${i}`);
    open(work, 'demo');
    work.moveTo(i / 1000);
  }
  expect(titles(work)).toEqual([13, 12, 11, 10, 9, 8, 7, 6, 5, 4].map((i) => `mine ${i}`));
  expect(device.texts.size).toBe(11);
  work.keeper!.drop(work.keeper!.earlier()[0]!.name);
  expect(titles(work)[0]).toBe('mine 12');
});

test('two tabs on one piece of work: the second says so, and neither overwrites the other', () => {
  const device = browser();
  const one = workOn(device.tab().device);
  open(one, 'mine');
  const two = workOn(device.tab().device);
  expect(titleOf(two)).toBe('mine');
  expect(told(one)).toEqual([]);
  expect(told(two)).toEqual(['elsewhere']);
  two.moveTo(0.2);
  one.moveTo(0.1);
  two.moveTo(0.3);
  expect(told(one)).toEqual([]);
  const all = [...device.texts.values()].map((text) => JSON.parse(text).design.position as number);
  expect(all.sort()).toEqual([0.1, 0.3]);
});

test('tabs that cannot hear each other find the other’s record under their hand, and leave it', () => {
  const device = browser();
  const one = workOn(device.tab(undefined, true).device);
  open(one, 'mine');
  const two = workOn(device.tab(undefined, true).device);
  two.moveTo(0.2);
  one.moveTo(0.1);
  expect(told(one)).toEqual(['elsewhere']);
  two.moveTo(0.3);
  one.moveTo(0.4);
  expect(told(two)).toEqual([]);
  const kept = [...device.texts.values()].map((text) => JSON.parse(text).design.position as number);
  expect(kept.sort()).toEqual([0.3, 0.4]);
});

test('a tab loaded anew goes on with its own work, not with what another tab did last', () => {
  const device = browser();
  const first = device.tab();
  open(workOn(first.device), 'of the first');
  open(workOn(device.tab().device), 'of the second');
  first.shut();
  const again = workOn(device.tab(first.session).device);
  expect(titleOf(again)).toBe('of the first');
  expect(told(again)).toEqual([]);
});

test.each([
  ['damaged', '{"design":{"conepair":1,"ti', /damaged/, '{"design":{"conepair":1,"ti'],
  ['empty', '', /damaged/, ''],
  ['no work at all', '7', /damaged/, '7'],
  [
    'of a later program',
    JSON.stringify({ version: 3, design: design('mine') }),
    /another version/,
    `${JSON.stringify(design('mine'), null, 2)}\n`,
  ],
  [
    'of a later format',
    JSON.stringify({ design: { ...design('mine'), conepair: 2 } }),
    /conepair/,
    `${JSON.stringify({ ...design('mine'), conepair: 2 }, null, 2)}\n`,
  ],
  [
    'no longer valid',
    JSON.stringify({ design: { ...design('mine'), seats: [] } }),
    /seats/,
    `${JSON.stringify({ ...design('mine'), seats: [] }, null, 2)}\n`,
  ],
])('kept work that is %s is set aside whole, said, and never overwritten', (_, text, why, file) => {
  const device = browser();
  device.texts.set('conepair.work.1', text);
  const work = workOn(device.tab().device);
  expect(titleOf(work)).toBe('demo');
  expect(told(work)).toEqual(['unreadable']);
  for (let i = 0; i < 12; i++) open(work, `mine ${i}`);
  expect(device.texts.get('conepair.work.1')).toBe(text);
  const [aside] = work.keeper!.earlier().filter(({ unreadable }) => unreadable);
  expect(aside!.unreadable!.why).toMatch(why);
  expect(aside!.unreadable!.file.text).toBe(file);
  expect(work.reopen(aside!.name)).toBe(false);
});

test('what the program kept before pieces had names is taken up', () => {
  const device = browser();
  device.texts.set(
    'conepair.work.1',
    JSON.stringify({ design: { ...design('mine'), position: 0.007 }, system: 'inch', factor: 900 }),
  );
  const work = workOn(device.tab().device);
  expect(work.store.getState()).toMatchObject({
    design: { title: 'mine', position: 0.007 },
    system: 'inch',
    factor: 900,
    told: [],
  });
});

test('a full store is said, leaves what it has, and the work goes on; room again is used', () => {
  const device = browser();
  const work = workOn(device.tab().device);
  open(work, 'mine');
  device.leaveRoom(10);
  work.moveTo(0.25);
  expect(told(work)).toEqual(['full']);
  expect(work.unkept()).toBe(true);
  expect(work.store.getState().design.position).toBe(0.25);
  expect([...device.texts.values()].map((text) => JSON.parse(text).design.title)).toEqual(['mine']);
  open(work, 'demo');
  expect(work.store.getState().told).toMatchObject([{ what: 'full' }, { what: 'aside', kept: false }]);
  work.undo();
  device.leaveRoom(1e6);
  work.moveTo(0.3);
  expect(told(work)).toEqual([]);
  expect(work.unkept()).toBe(false);
});

test('a browser that keeps nothing says so, and the work goes on', () => {
  const work = workOn({ ...browser().tab().device, storage: null, session: null, tabs: null });
  expect(told(work)).toEqual(['nowhere']);
  expect(work.unkept()).toBe(false);
  work.change((d) => ({ ...d, title: 'mine' }));
  expect(work.unkept()).toBe(true);
  open(work, 'demo');
  expect(work.store.getState().told).toMatchObject([{ what: 'nowhere' }, { what: 'aside', kept: false }]);
  expect(work.keeper!.earlier()).toEqual([]);
});
