/**
 * What is kept on the device, window by window: nothing a person made is overwritten, whatever is opened, by whichever
 * window, and however damaged.
 */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createWork, type Work } from '../../src/app/state/store.ts';
import type { Design } from '../../src/design/definition.ts';
import type { Device } from '../../src/jobs/device.ts';
import { createKeeper } from '../../src/jobs/keeper.ts';
import { bringBackJob, deleteJob, duplicateJob, jobOfVersion, renameJob } from '../../src/jobs/list.ts';
import type { Row } from '../../src/jobs/tables.ts';
import { device } from './device.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (title: string): Design => ({
  conepair: 1,
  title,
  seats: [{ name: 'seat', journal: surface, bush: surface }],
});
const DEMO = design('demo');
const isOwn = ({ title }: Design) => title !== 'demo';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Long enough for everything that was begun. */
const settle = (ms = 400) => vi.advanceTimersByTimeAsync(ms);

async function workOn(of: Device): Promise<Work> {
  const keeper = createKeeper(of, isOwn);
  const starting = keeper.start();
  await settle();
  return createWork(DEMO, keeper, await starting);
}
const open = (work: Work, title: string) => work.open(title, { ok: true, design: design(title) });
const told = (work: Work) => work.store.getState().notices.map(({ what }) => what);
const now = (work: Work) => work.store.getState().design;
const titles = async (work: Work) => (await work.keeper!.shelf.heads()).map(({ title }) => title).sort();
const kept = async (work: Work, id = work.store.getState().piece) => {
  const opened = await work.keeper!.shelf.open(id);
  return opened.ok ? opened.job.found.design : null;
};

test('any number of jobs stay, each as it was left; the last one is gone on with after a reload, with its history and forms', async () => {
  const here = device();
  const first = here.window();
  const work = await workOn(first.device);
  for (let i = 0; i < 25; i++) {
    open(work, `mine ${i}`);
    work.moveTo(i / 1000);
    await settle();
  }
  work.store.setState({ system: 'inch', factor: 900 });
  const { piece } = work.store.getState();
  work.store.setState({ unfinished: { trial: { piece, written: { note: 'half' } } } });
  await settle();
  first.kill();
  const again = await workOn(here.window(first.session).device);
  expect(await titles(again)).toHaveLength(25);
  expect(again.store.getState()).toMatchObject({
    design: { title: 'mine 24', position: 0.024 },
    system: 'inch',
    factor: 900,
    piece,
    unfinished: { trial: { piece, written: { note: 'half' } } },
    steps: { back: 1, forth: 0 },
    notices: [],
  });
  again.undo();
  expect(now(again).position).toBeUndefined();
  const other = (await again.keeper!.shelf.heads()).find(({ title }) => title === 'mine 7')!;
  await again.reopen(other.id);
  expect(now(again)).toMatchObject({ title: 'mine 7', position: 0.007 });
});

test('an example is no job until something of it is changed, and displaces none; moving its journal is no change', async () => {
  const here = device();
  const window = here.window();
  const work = await workOn(window.device);
  expect(work.store.getState().example).not.toBeNull();
  work.moveTo(0.01);
  await settle();
  expect(await titles(work)).toEqual([]);
  open(work, 'mine');
  await settle();
  work.open('a.json', { ok: true, design: DEMO });
  expect(work.store.getState()).toMatchObject({ example: 'a.json', notices: [{ what: 'aside', title: 'mine' }] });
  await settle();
  expect(await titles(work)).toEqual(['mine']);
  // Loaded anew it is that example again, as its journal stood.
  work.moveTo(-0.02);
  work.keepAll();
  const keeper = createKeeper(here.window(window.session).device, isOwn);
  expect(await keeper.start()).toMatchObject({ job: null, example: 'a.json', position: -0.02 });
  work.change((d) => ({ ...d, title: 'demo, mine' }));
  expect(work.store.getState()).toMatchObject({ example: null, notices: [] });
  await settle();
  expect(await titles(work)).toEqual(['demo, mine', 'mine']);
});

test('a form half filled in on an example makes it a job, which is there after a reload', async () => {
  const here = device();
  const window = here.window();
  const work = await workOn(window.device);
  const { piece } = work.store.getState();
  work.store.setState({ unfinished: { reading: { piece, written: { value: '3' } } } });
  await settle();
  window.kill();
  const again = await workOn(here.window(window.session).device);
  expect(again.store.getState().unfinished).toEqual({ reading: { piece, written: { value: '3' } } });
});

test('back to the job before, from what is said of it', async () => {
  const work = await workOn(device().window().device);
  open(work, 'mine');
  await settle();
  const { piece } = work.store.getState();
  open(work, 'other');
  expect(work.store.getState().notices).toMatchObject([{ what: 'aside', piece, title: 'mine' }]);
  await work.reopen(piece);
  expect(now(work).title).toBe('mine');
  expect(told(work)).toEqual(['aside']);
  work.moveTo(0.5);
  expect(told(work)).toEqual([]);
});

test('what is changed is written within three tenths of a second, whatever goes on', async () => {
  const work = await workOn(device().window().device);
  open(work, 'mine');
  await settle();
  for (let i = 1; i <= 40; i++) {
    work.moveTo(i / 1000);
    await settle(25);
  }
  expect((await kept(work))!.position).toBeGreaterThan(0.027);
  await settle(300);
  expect((await kept(work))!.position).toBe(0.04);
});

test('hidden, the page has written all that was changed, a drag with it', async () => {
  const here = device();
  const work = await workOn(here.window().device);
  open(work, 'mine');
  await settle();
  const before = here.writes.length;
  work.dragStart();
  work.moveTo(0.1);
  work.moveTo(0.2);
  await settle();
  expect(here.writes.length).toBe(before);
  work.keepAll();
  // At once: a page that is closed waits for nothing.
  expect(here.writes.length).toBe(before + 1);
  await settle();
  expect((await kept(work))!.position).toBe(0.2);
});

test('two windows on one job: the second says so, follows live and changes nothing; taken over, the first follows', async () => {
  const here = device();
  const one = await workOn(here.window().device);
  open(one, 'mine');
  await settle();
  const two = await workOn(here.window().device);
  expect(now(two).title).toBe('mine');
  expect([told(one), told(two)]).toEqual([[], ['elsewhere']]);
  one.moveTo(0.1);
  await settle();
  expect(now(two).position).toBe(0.1);
  expect(two.change((d) => ({ ...d, title: 'other' }))[0]!.message).toMatch(/open in another window/);
  two.moveTo(0.7);
  two.undo();
  two.dragStart();
  expect(two.dragging()).toBe(false);
  expect(now(two)).toMatchObject({ title: 'mine', position: 0.1 });
  expect(two.store.getState().notices).toMatchObject([{ what: 'elsewhere', refused: 4 }]);
  one.moveTo(0.2);
  two.takeOver();
  await settle();
  expect([told(one), told(two)]).toEqual([['elsewhere'], []]);
  expect(now(two).position).toBe(0.2);
  two.moveTo(0.3);
  one.moveTo(0.9);
  await settle();
  expect(now(one).position).toBe(0.3);
  // Its history came with it.
  two.undo();
  expect(now(two).position).toBe(0.2);
  expect(await titles(one)).toEqual(['mine']);
});

test('where the window that has the job is closed, the one that follows may write', async () => {
  const here = device();
  const first = here.window();
  const one = await workOn(first.device);
  open(one, 'mine');
  await settle();
  const two = await workOn(here.window().device);
  first.kill();
  await settle();
  expect(told(two)).toEqual([]);
  two.moveTo(0.3);
  await settle();
  expect((await kept(two))!.position).toBe(0.3);
});

test('a window that does not answer has the job taken from it, and its late word overwrites nothing', async () => {
  const here = device();
  const first = here.window();
  const deaf: Device = { ...first.device, channel: { post: first.device.channel!.post, listen: () => {} } };
  const one = await workOn(deaf);
  open(one, 'mine');
  await settle();
  const two = await workOn(here.window().device);
  two.takeOver();
  await settle(2000);
  expect(told(two)).toEqual([]);
  two.moveTo(0.3);
  await settle();
  one.moveTo(0.9);
  await settle();
  expect((await kept(two))!.position).toBe(0.3);
  expect(told(one)).toEqual(['elsewhere']);
});

test('a job that another window has open is neither renamed nor deleted from the list', async () => {
  const here = device();
  const one = await workOn(here.window().device);
  open(one, 'mine');
  await settle();
  const id = one.store.getState().piece;
  const two = await workOn(here.window().device);
  open(two, 'other');
  await settle();
  const refused = Promise.all([renameJob(two.keeper!, id, 'x'), deleteJob(two.keeper!, id)]);
  await settle(1000);
  expect(await refused).toEqual([false, false]);
  one.moveTo(0.4);
  await settle();
  expect(await kept(one)).toMatchObject({ title: 'mine', position: 0.4 });
});

test('a job is renamed as a step, copied with its versions, deleted and brought back', async () => {
  const here = device();
  const work = await workOn(here.window().device);
  open(work, 'mine');
  await settle();
  const id = work.store.getState().piece;
  await work.keeper!.shelf.nameVersion(id, 'as measured', now(work), 5);
  open(work, 'other');
  await settle();
  const renamed = renameJob(work.keeper!, id, 'renamed');
  await settle();
  expect(await renamed).toBe(true);
  const copy = (await duplicateJob(work.keeper!, id))!;
  expect(await titles(work)).toEqual(['other', 'renamed', 'renamed, copy']);
  expect(await work.keeper!.shelf.versions(copy)).toMatchObject([{ name: 'as measured' }]);
  const deleted = deleteJob(work.keeper!, id);
  await settle();
  expect(await deleted).toBe(true);
  expect((await work.keeper!.shelf.heads()).filter((head) => head.deleted !== null)).toHaveLength(1);
  const back = bringBackJob(work.keeper!, id);
  await settle();
  await back;
  await work.reopen(id);
  work.undo();
  expect(now(work).title).toBe('mine');
  await duplicateJob(work.keeper!, copy);
  expect(await titles(work)).toContain('renamed, copy 2');
});

test('a job that cannot be read is told, set aside whole, and never overwritten; nothing takes its place', async () => {
  const here = device();
  const window = here.window();
  const work = await workOn(window.device);
  open(work, 'mine');
  work.moveTo(0.1);
  await settle();
  const id = work.store.getState().piece;
  window.kill();
  const damaged = (await here.tables.all('slots', id)).map((slot) => ({ ...(slot as Row), text: 'torn' }));
  await here.tables.write(damaged.map((put) => ({ table: 'slots', put }) as const));
  const again = await workOn(here.window(window.session).device);
  expect(again.store.getState().notices).toMatchObject([
    { what: 'unreadable', name: id, unreadable: { why: 'it is damaged' } },
  ]);
  for (let i = 0; i < 3; i++) {
    open(again, `later ${i}`);
    await settle();
  }
  expect(await again.reopen(id)).toBe(false);
  expect(await here.tables.all('slots', id)).toEqual(damaged);
});

test('what an earlier program kept is taken over whole: own work as jobs, the unreadable aside, examples not at all', async () => {
  const here = device();
  const text = (d: Design, more: object) => JSON.stringify({ design: d, system: 'inch', factor: 900, ...more });
  here.old.set('conepair.work.1', text({ ...design('first'), position: 0.007 }, {}));
  here.old.set('conepair.work.2', text(design('second'), { version: 2, changed: 1767600000000 }));
  here.old.set('conepair.work.3', text(DEMO, { version: 2, changed: 1767700000000 }));
  here.old.set('conepair.work.4', '{"design":{"conep');
  here.old.set('of another program', 'stays');
  const work = await workOn(here.window().device);
  expect(await titles(work)).toEqual(['first', 'second']);
  expect(now(work).title).toBe('second');
  expect(work.store.getState().notices).toMatchObject([
    { what: 'unreadable', unreadable: { file: { text: '{"design":{"conep' } } },
  ]);
  expect(await work.keeper!.shelf.aside()).toMatchObject([{ file: { text: '{"design":{"conep' } }]);
  expect([...here.old.keys()]).toEqual(['of another program']);
  await work.reopen('1');
  expect(work.store.getState()).toMatchObject({ design: { position: 0.007 }, system: 'inch', factor: 900 });
});

test('a browser that keeps nothing shows what an earlier program kept, and leaves it there', async () => {
  const here = device();
  const text = JSON.stringify({ design: design('first'), system: 'inch', factor: 900 });
  here.old.set('conepair.work.1', text);
  const work = await workOn(here.window(undefined, 'nowhere').device);
  expect(now(work).title).toBe('first');
  expect([...here.old]).toEqual([['conepair.work.1', text]]);
});

test('where the take-over cannot be written, what is there stays there, and is taken over another time, once', async () => {
  const here = device();
  const text = JSON.stringify({ design: design('first'), system: 'inch', factor: 900 });
  here.old.set('conepair.work.1', text);
  here.fail(new DOMException('', 'QuotaExceededError'));
  const first = here.window();
  await workOn(first.device);
  expect(here.old.size).toBe(1);
  first.kill();
  here.fail(null);
  const again = here.window();
  const work = await workOn(again.device);
  expect(here.old.size).toBe(0);
  work.moveTo(0.2);
  await settle();
  again.kill();
  // Killed before it was removed there: it is the same text, and no job again.
  here.old.set('conepair.work.1', text);
  const third = await workOn(here.window().device);
  expect(await titles(third)).toEqual(['first']);
  expect(now(third).position).toBe(0.2);
  // Gone on with in a window of the earlier program: both are kept.
  here.old.set(
    'conepair.work.1',
    JSON.stringify({ version: 2, changed: 1, design: { ...design('first'), position: 1 } }),
  );
  expect(await titles(await workOn(here.window().device))).toEqual(['first', 'first']);
});

test.each([
  ['full', new DOMException('', 'QuotaExceededError')],
  ['failed', new DOMException('', 'UnknownError')],
] as const)(
  'a store that is %s is said at once, leaves what it has, and the work goes on; room again is used',
  async (what, error) => {
    const here = device();
    const work = await workOn(here.window().device);
    open(work, 'mine');
    await settle();
    const first = work.store.getState().piece;
    here.fail(error);
    work.moveTo(0.25);
    work.moveTo(0.26);
    await settle();
    expect(told(work)).toEqual([what]);
    expect(work.unkept()).toBe(true);
    expect(now(work).position).toBe(0.26);
    expect((await kept(work))!.position).toBeUndefined();
    // What could not be written is not lost by opening another.
    open(work, 'other');
    await settle();
    await work.reopen(first);
    expect(now(work).position).toBe(0.26);
    here.fail(null);
    work.moveTo(0.3);
    await settle();
    expect(told(work)).not.toContain(what);
    expect((await kept(work))!.position).toBe(0.3);
    await work.reopen((await work.keeper!.shelf.heads())[0]!.id);
    work.undo();
    expect(now(work).position).toBe(0.26);
  },
);

test('a browser that keeps nothing says so; the jobs of this window can still be gone back to', async () => {
  const work = await workOn(device().window(undefined, 'nowhere').device);
  expect(told(work)).toEqual(['nowhere']);
  expect(work.unkept()).toBe(false);
  open(work, 'mine');
  expect(work.unkept()).toBe(true);
  const { piece } = work.store.getState();
  await settle();
  open(work, 'other');
  await settle();
  await work.reopen(piece);
  expect(now(work).title).toBe('mine');
});

test('a store thrown away under the page is said, and the job at work is kept anew with all its steps', async () => {
  const here = device();
  let lose = () => {};
  const given = here.window().device;
  const work = await workOn({
    ...given,
    tables: (lost) => {
      lose = lost;
      return given.tables(lost);
    },
  });
  open(work, 'mine');
  for (let i = 1; i <= 5; i++) work.moveTo(i / 1000);
  await settle();
  const id = work.store.getState().piece;
  await work.keeper!.shelf.remove([id]);
  lose();
  expect(told(work)).toEqual(['evicted']);
  await settle();
  const opened = await work.keeper!.shelf.open(id);
  expect(opened.ok && opened.job.history.at - opened.job.history.first).toBe(5);
  expect(opened.ok && opened.job.found.design.position).toBe(0.005);
});

test('a clock set back or forward loses nothing, and the last job worked on stays the one gone on with', async () => {
  const here = device();
  const window = here.window();
  const work = await workOn(window.device);
  open(work, 'first');
  await settle();
  here.setClock(Date.UTC(2001, 0, 1));
  open(work, 'second');
  work.moveTo(0.1);
  await settle();
  here.setClock(Date.UTC(2040, 0, 1));
  work.moveTo(0.2);
  await settle();
  here.setClock(Date.UTC(1990, 0, 1));
  work.moveTo(0.3);
  await settle();
  window.kill();
  const again = await workOn(here.window().device);
  expect(now(again)).toMatchObject({ title: 'second', position: 0.3 });
  expect(await titles(again)).toEqual(['first', 'second']);
});

test('who never saved a file is reminded once there is something to lose, once a day at most, and not after a file', async () => {
  const here = device();
  let window = here.window();
  let work = await workOn(window.device);
  open(work, 'mine');
  for (let i = 1; i < 20; i++) work.moveTo(i / 1000);
  await settle();
  expect(told(work)).toEqual([]);
  work.moveTo(0.5);
  await settle();
  expect(told(work)).toEqual(['file']);
  const reload = async () => {
    window.kill();
    window = here.window(window.session);
    work = await workOn(window.device);
    work.moveTo(Math.random());
    await settle();
    return told(work);
  };
  expect(await reload()).toEqual([]);
  here.setClock(Date.UTC(2026, 0, 7));
  expect(await reload()).toEqual(['file']);
  work.fileSaved();
  expect(told(work)).toEqual([]);
  here.setClock(Date.UTC(2026, 0, 9));
  expect(await reload()).toEqual([]);
  expect(here.persisted()).toBeGreaterThan(0);
});

test('changes that stand here alone for a week since the file are told of, on opening too; a file of one job is none of another', async () => {
  const here = device();
  let window = here.window();
  let work = await workOn(window.device);
  open(work, 'mine');
  await settle();
  const saved = work.keeper!.device.now();
  work.fileSaved();
  const opened = async (days: number) => {
    window.kill();
    here.setClock(saved + days * 86_400_000);
    window = here.window(window.session);
    work = await workOn(window.device);
    await settle();
    return work.store.getState().notices;
  };
  // Nothing was changed since the file: nothing is to be lost.
  expect(await opened(14)).toEqual([]);
  work.moveTo(0.1);
  await settle();
  expect(work.store.getState().notices).toEqual([{ what: 'file', saved: expect.closeTo(saved, -5) }]);
  // The next day, and later, it is told as the job is opened, before anything is changed.
  expect(await opened(14.5)).toEqual([]);
  expect(await opened(16)).toEqual([{ what: 'file', saved: expect.closeTo(saved, -5) }]);
  work.fileSaved();
  expect(await opened(40)).toEqual([]);
  open(work, 'another');
  for (let i = 1; i <= 20; i++) work.moveTo(i / 1000);
  await settle();
  expect(work.store.getState().notices).toContainEqual({ what: 'file', saved: null });
  // All in one file is a file of each.
  work.fileSaved(true);
  expect(await opened(42)).toEqual([]);
  work.moveTo(0.3);
  await settle();
  expect(told(work)).toEqual([]);
});

test('of a job that cannot be read any named version goes on as a job of its own, with all of them; the other stays as it is', async () => {
  const here = device();
  const work = await workOn(here.window().device);
  const keeper = work.keeper!;
  open(work, 'worn');
  await settle();
  const { piece } = work.store.getState();
  for (const [name, made] of [
    ['as measured', 1],
    ['ground', 2],
  ] as const)
    await keeper.shelf.nameVersion(piece, name, { ...design('worn'), position: made / 10 }, made);
  const damaged = (await keeper.shelf.tables.all('slots', piece)) as Row[];
  await keeper.shelf.tables.write(damaged.map((row) => ({ table: 'slots', put: { ...row, text: 'x' } as Row })));
  const before = await keeper.shelf.tables.all('slots', piece);
  const [measured] = await keeper.shelf.versions(piece);
  const as = { system: 'inch', factor: 300 } as const;
  const id = await jobOfVersion(keeper, { id: piece, title: 'worn' }, measured!, as);
  const found = await keeper.shelf.open(id);
  expect(found.ok && found.job.found).toMatchObject({ ...as, design: { title: 'worn, as measured', position: 0.1 } });
  expect((await keeper.shelf.versions(id)).map(({ name, made }) => [name, made])).toEqual([
    ['as measured', 1],
    ['ground', 2],
  ]);
  expect(await keeper.shelf.tables.all('slots', piece)).toEqual(before);
});

test('a window left open for weeks looks again', async () => {
  const here = device();
  const work = await workOn(here.window().device);
  open(work, 'mine');
  for (let i = 1; i <= 20; i++) work.moveTo(i / 1000);
  await settle();
  work.fileSaved();
  const saved = work.keeper!.device.now();
  for (const days of [3, 6, 8]) {
    here.setClock(saved + days * 86_400_000);
    work.moveTo(days / 10);
    await settle();
    expect(told(work)).toEqual(days > 7 ? ['file'] : []);
  }
});
