/**
 * Jobs that are kept, in Chromium's own store and by its own locks: gone on with after a reload, listed, named, held
 * by two windows, set aside unread, refused by a full or forbidden store.
 *
 * @module-tag long
 */
import { flushSync } from 'react-dom';
import { beforeEach, expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { DEMOS } from '../../src/app/state/demos.ts';
import { OPENING } from '../../src/app/state/opening.ts';
import type { Work } from '../../src/app/state/store.ts';
import { openDatabase } from '../../src/jobs/database.ts';
import type { Device } from '../../src/jobs/device.ts';
import type { Row } from '../../src/jobs/tables.ts';
import { tablesContract } from '../jobs/tablesContract.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';
import { type Opened, openWindow } from './window.ts';

const shown = page('', true);
let store = '';
let stores = 0;
beforeEach(() => {
  store = `conepair test ${Date.now()} ${stores++}`;
});

tablesContract(() => openDatabase(store, () => {}));

/** The page in a window; another call is another window, or this one loaded anew. */
async function load(session?: Map<string, string>, change?: (device: Device) => Device): Promise<Opened> {
  const opened = await openWindow(store, session, change);
  shown.work = opened.work;
  shown.show();
  return opened;
}

const said = () => document.querySelector('.keeping')?.textContent ?? '';
const press = (name: string | RegExp) => userEvent.click(browser.getByRole('button', { name, exact: true }).first());
const rows = () => [...document.querySelectorAll('.rows > li')].map((row) => row.textContent!);
const mine = (work: Work, title: string) => flushSync(() => work.change((d) => ({ ...d, title })));
const titleOf = (work: Work) => work.store.getState().design.title;
const go = (hash: string) => {
  window.location.hash = hash;
};
async function kept(work: Work, title: string) {
  mine(work, title);
  await work.keeper!.flush();
}

test('an example opened over one’s own job: it is said to be kept, is listed after a reload, and opened again', async () => {
  const first = await load();
  await kept(first.work, 'My spindle');
  go('#jobs');
  await expect.poll(rows).toHaveLength(1);
  await press(new RegExp(`^${DEMOS[1]!.design.title}`));
  await expect.poll(said).toMatch(/“My spindle” stays kept, under Jobs/);
  expect(window.location.hash).toBe('#fit');
  expect(document.querySelector('header .job')!.textContent).toBe(`Jobs · example ${DEMOS[1]!.design.title}`);
  await press('Back to it');
  await expect.poll(() => titleOf(first.work)).toBe('My spindle');
  expect(document.querySelector('header .job')!.textContent).toBe('Jobs My spindle');
  first.kill();
  const again = await load(first.session);
  expect(titleOf(again.work)).toBe('My spindle');
  expect(said()).toBe('');
  go('#jobs');
  await expect.poll(rows).toHaveLength(1);
  expect(rows()[0]).toMatch(new RegExp(`My spindle open here.*${new Date().getFullYear()}.*2 seats · \\d+ kB`));
  await expect.poll(() => document.querySelectorAll('.rows svg path.journal-fill').length).toBe(1);
});

test('a job is renamed, copied, put away, deleted and brought back; the page holds at every width and is accessible', async () => {
  const { work } = await load();
  await kept(work, 'My spindle');
  go('#jobs');
  await expect.poll(rows).toHaveLength(1);
  await press('Rename');
  await userEvent.fill(browser.getByRole('textbox', { name: 'Title of the job' }), 'Headstock of the old lathe');
  await press('Rename');
  expect(titleOf(work)).toBe('Headstock of the old lathe');
  await press('Duplicate');
  await expect.poll(rows).toHaveLength(2);
  expect(rows()[1]).toMatch(/^Headstock of the old lathe, copy/);
  await userEvent.click(browser.getByRole('button', { name: 'Put away', exact: true }).nth(1));
  await expect.poll(() => document.querySelector('.jobs summary:not(.versions *)')?.textContent).toBe('Put away (1)');
  await expectNoSidewaysScroll();
  await expectAccessible();
  await press('Take out again');
  await expect.poll(() => document.querySelector('.jobs summary:not(.versions *)')).toBeNull();
  // The open one: an example stands in its place, and it can be brought back.
  await press('Delete');
  await expect.poll(() => work.store.getState().example).not.toBeNull();
  await expect
    .poll(() => document.querySelector('.gone')?.textContent)
    .toMatch(/“Headstock of the old lathe” is deleted/);
  expect(document.querySelector('.jobs')!.textContent).toMatch(/A deleted job can be brought back for 30 days;/);
  await press('Bring it back');
  await expect.poll(() => document.querySelector('.gone')).toBeNull();
  await expect.poll(rows).toHaveLength(2);
  await expectAccessible();
});

test('a state is named, held against now in a table and a picture, and gone back to as a step', async () => {
  const { work } = await load();
  await kept(work, 'My spindle');
  go('#jobs');
  await userEvent.click(browser.getByText('Versions', { exact: true }));
  await userEvent.fill(browser.getByLabelText('Name the state of now'), 'as measured');
  await press('Name it');
  await expect.poll(() => document.querySelector('.versions strong')?.textContent).toBe('as measured');
  const before = work.store.getState().design;
  flushSync(() =>
    work.change((d) => ({
      ...d,
      seats: d.seats.map((seat, i) =>
        i === 0 ? { ...seat, bush: { ...seat.bush, diameter: seat.bush.diameter + 0.02 } } : seat,
      ),
    })),
  );
  await press('Compare with now');
  const cells = () => [...document.querySelectorAll('.comparison tbody tr')].map((row) => row.textContent);
  const [old, fresh] = [before.seats[0]!.bush.diameter, before.seats[0]!.bush.diameter + 0.02];
  await expect.poll(cells).toEqual([`${before.seats[0]!.name} bush: Diameter${old} mm${fresh} mm+20.00 µm`]);
  expect(document.querySelector('.overlay svg')!.innerHTML).not.toMatch(/NaN|Infinity/);
  expect(document.querySelectorAll('.overlay .after').length).toBe(2 * before.seats.length);
  flushSync(() => work.store.setState({ system: 'inch' }));
  expect(cells()[0]).toMatch(/ in.* in\+/);
  await expectNoSidewaysScroll();
  await expectAccessible();
  await press('Go back to it');
  expect(work.store.getState().design).toEqual(before);
  await expect.poll(() => document.querySelector('.comparison')?.textContent).toMatch(/Nothing differs/);
  work.undo();
  expect(work.store.getState().design.seats[0]!.bush.diameter).toBe(fresh);
});

test('undo goes on after a reload, over two hundred steps', async () => {
  const first = await load();
  await kept(first.work, 'My spindle');
  for (let i = 1; i <= 220; i++) {
    first.work.dragStart();
    first.work.moveTo(i / 1000);
    first.work.dragEnd();
  }
  await first.work.keeper!.flush();
  first.kill();
  const { work } = await load(first.session);
  for (let i = 219; i >= 1; i--) {
    work.undo();
    expect(work.store.getState().design.position).toBe(i / 1000);
  }
  await work.keeper!.flush();
  work.redo();
  expect(work.store.getState().design.position).toBe(0.002);
});

test('two windows on one job: the second says so and follows; taken over there, the first follows', async () => {
  const one = await load();
  await kept(one.work, 'My spindle');
  const two = await load();
  await expect.poll(said).toMatch(/open in another window\. This one follows it/);
  await kept(one.work, 'My spindle, changed');
  await expect.poll(() => titleOf(two.work)).toBe('My spindle, changed');
  mine(two.work, 'Mine too');
  expect(titleOf(two.work)).toBe('My spindle, changed');
  await expect
    .poll(() => document.querySelector('.keeping [role=alert]')?.textContent)
    .toMatch(/^Not changed: this job is open/);
  await expectAccessible();
  await press('Take over here');
  await expect.poll(said).toBe('');
  mine(two.work, 'Mine too');
  await expect.poll(() => titleOf(one.work)).toBe('Mine too');
  expect(one.work.store.getState().elsewhere).toBe(true);
  expect(await two.work.keeper!.shelf.heads()).toHaveLength(1);
});

test('a number typed in the window that follows says what it waits for, and is taken there once the job is', async () => {
  const one = await load();
  await kept(one.work, 'My spindle');
  const two = await load();
  await expect.poll(said).toMatch(/This one follows it/);
  go('#fit');
  await expect.poll(() => document.querySelectorAll('.controls details').length).toBeGreaterThan(2);
  flushSync(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.controls details')) details.open = true;
  });
  const place = '[data-path="seats[0].journal.diameter"]';
  const input = () => document.querySelector<HTMLInputElement>(`${place} input`)!;
  await expect.poll(input).toBeTruthy();
  await userEvent.fill(input(), '22.5');
  await userEvent.keyboard('{Enter}');
  const why = () => document.querySelector(place)!.textContent;
  expect(why()).toMatch(/another window has this job: take it over here, then Enter takes it/);
  await kept(one.work, 'My spindle, changed');
  await expect.poll(() => titleOf(two.work)).toBe('My spindle, changed');
  expect(input().value).toBe('22.500 mm');
  await press('Take over here');
  await expect.poll(() => two.work.store.getState().elsewhere).toBe(false);
  expect(input().value).toBe('22.500 mm');
  await expect.poll(why).toMatch(/it goes with the rest now: Enter takes it/);
  await userEvent.click(input());
  await userEvent.keyboard('{Enter}');
  expect(two.work.store.getState().design.seats[0]!.journal.diameter).toBe(22.5);
  await two.work.keeper!.flush();
  await expect.poll(() => one.work.store.getState().design.seats[0]!.journal.diameter).toBe(22.5);
});

test('the job that is open is put away, and another may be begun with units of its own: no example becomes a job', async () => {
  const { work } = await load();
  await kept(work, 'My spindle');
  go('#jobs');
  await expect.poll(rows).toHaveLength(1);
  await press('Put away');
  await expect.poll(() => work.store.getState().example).not.toBeNull();
  await expect.poll(() => document.querySelector('details summary')?.textContent).toBe('Put away (1)');
  expect(said()).toMatch(/“My spindle” stays kept/);
  go('#new');
  await expect.poll(() => document.querySelector('.liking')).toBeTruthy();
  await userEvent.selectOptions(browser.getByLabelText('Units'), 'inch, tenths');
  await press(/^Double cone alone/);
  await userEvent.fill(browser.getByLabelText('Name of the job'), 'Begun');
  await work.keeper!.flush();
  expect(work.store.getState().example).not.toBeNull();
  expect((await work.keeper!.shelf.heads()).map(({ title }) => title)).toEqual(['My spindle']);
  expect(await work.keeper!.shelf.note('new job')).toMatchObject({ written: { title: 'Begun', system: 'inch' } });
});

test('a job that is damaged is said, saved as a file with every character it has, and left as it is', async () => {
  const first = await load();
  await kept(first.work, 'My spindle');
  await kept(first.work, 'My spindle');
  const id = first.work.store.getState().piece;
  first.kill();
  const { tables } = first.work.keeper!.shelf;
  const damaged = (await tables.all('slots', id)).map((row) => ({
    ...(row as Row),
    text: '{"version":3,"design":{"con',
  }));
  const raw = await openDatabase(store, () => {});
  await raw.write(damaged.map((put) => ({ table: 'slots', put }) as const));
  const { work } = await load(first.session);
  await expect.poll(said).toMatch(/cannot be opened: it is damaged\. It is set aside whole/);
  const saved: Blob[] = [];
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    saved.push(blob as Blob);
    return '#';
  });
  await press('Save it as a file');
  expect(await saved[0]!.text()).toBe('{"version":3,"design":{"con');
  await kept(work, 'Another');
  expect(await raw.all('slots', id)).toEqual(damaged);
  go('#jobs');
  await expect
    .poll(() => rows().find((row) => row.includes('Cannot be opened')))
    .toMatch(/My spindle.*Save it as a file/);
  await expectAccessible();
});

test('a full store is said and the work goes on; leaving the page is then asked after', async () => {
  let full = false;
  const { work } = await load(undefined, (device) => ({
    ...device,
    tables: async (lost) => {
      const given = await device.tables(lost);
      const write: typeof given.tables.write = (changes) =>
        full ? Promise.reject(new DOMException('full', 'QuotaExceededError')) : given.tables.write(changes);
      return { ...given, tables: { ...given.tables, write } };
    },
  }));
  await kept(work, 'My spindle');
  const leave = () => !window.dispatchEvent(new Event('beforeunload', { cancelable: true }));
  expect(leave()).toBe(false);
  full = true;
  mine(work, 'My second spindle');
  await expect.poll(said).toMatch(/no room left on this device/);
  expect(titleOf(work)).toBe('My second spindle');
  expect(leave()).toBe(true);
  const saved: Blob[] = [];
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    saved.push(blob as Blob);
    return '#';
  });
  await press('Save as a file');
  expect(await saved[0]!.text()).toMatch(/My second spindle/);
  full = false;
  mine(work, 'My third spindle');
  await expect.poll(said).toBe('');
  expect(leave()).toBe(false);
});

test('a store of a newer program is left alone, and that is said', async () => {
  const { openDB, deleteDB } = await import('idb');
  const newer = await openDB(store, 99, { upgrade: (db) => void db.createObjectStore('what it likes') });
  newer.close();
  const { thisDevice } = await import('../../src/jobs/device.ts');
  const given = await thisDevice(store).tables(() => {});
  expect(given.lasting).toBe('newer');
  await load(undefined, (device) => ({ ...device, tables: async () => given }));
  await expect.poll(said).toMatch(/kept by a newer version of the program/);
  await deleteDB(store);
});

test('a row is a job of its own in the list while a file is opened; a bad one is refused and nothing is displaced', async () => {
  const { work } = await load();
  await kept(work, 'My spindle');
  go('#jobs');
  await expect.poll(() => document.querySelector('.begin input')).toBeTruthy();
  const give = (name: string, text: string) => {
    const input = document.querySelector<HTMLInputElement>('.begin input')!;
    const bag = new DataTransfer();
    bag.items.add(new File([text], name));
    input.files = bag.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  };
  give('bad.json', '{"conepair":1}');
  await expect.poll(() => document.querySelector('.refused')?.textContent).toMatch(/bad\.json was not opened/);
  expect(titleOf(work)).toBe('My spindle');
  give('good.json', JSON.stringify({ ...OPENING.design, title: 'From a file' }));
  await expect.poll(() => titleOf(work)).toBe('From a file');
  await work.keeper!.flush();
  go('#jobs');
  await expect.poll(rows).toHaveLength(2);
});

// Last in this file: what the page itself starts cannot be taken down again.
test('a browser that forbids its store shows the page and says that work is not kept', async () => {
  const forbidden = vi.spyOn(window, 'indexedDB', 'get').mockImplementation(() => {
    throw new DOMException('forbidden', 'SecurityError');
  });
  document.body.innerHTML = '<div id="root"></div>';
  await import('../../src/main.tsx');
  await expect.poll(said).toMatch(/This browser keeps nothing for this page/);
  expect(document.querySelector('.verdict')!.textContent).toMatch(/the steep seat touches first/);
  forbidden.mockRestore();
});

test('all jobs saved as one file stand on an empty device as they stood', async () => {
  const first = await load();
  await kept(first.work, 'One of mine');
  go('#jobs');
  await expect.poll(rows).toHaveLength(1);
  await press(new RegExp(`^${DEMOS[1]!.design.title}`));
  await kept(first.work, 'Another');
  go('#jobs');
  await expect.poll(rows).toHaveLength(2);
  let saved: Blob | undefined;
  const made = vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    saved = blob as Blob;
    return '#';
  });
  const clicked = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => {});
  await press('Save all jobs as one file');
  await expect.poll(() => saved).toBeTruthy();
  made.mockRestore();
  clicked.mockRestore();
  first.kill();
  store = `${store} another device`;
  const second = await load();
  go('#jobs');
  const mineThere = () => rows().filter((row) => /One of mine|Another/.test(row)).length;
  await expect.poll(mineThere).toBe(0);
  await userEvent.upload(
    document.querySelector<HTMLInputElement>('input[type=file]')!,
    new File([saved!], 'conepair-jobs.json', { type: 'application/json' }),
  );
  await expect.poll(mineThere).toBe(2);
  const row = [...document.querySelectorAll('.rows > li')].find(({ textContent }) => /One of mine/.test(textContent!))!;
  await userEvent.click(row.querySelector('button')!);
  await expect.poll(() => titleOf(second.work)).toBe('One of mine');
});
