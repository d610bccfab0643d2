/**
 * Work that is kept, in Chromium's own store: put away by a demo, set aside unread, held by two tabs, refused by a full
 * or forbidden store.
 */
import { flushSync } from 'react-dom';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { DEMOS, isOwn, openingDesign } from '../../src/app/state/demos.ts';
import { createWork, type Work } from '../../src/app/state/store.ts';
import { thisDevice } from '../../src/jobs/device.ts';
import { createKeeper } from '../../src/jobs/keeper.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('', true);

/** The page as it is loaded: another one is another tab. */
function load(session = new Map<string, string>()): Work {
  const device = {
    ...thisDevice(),
    session: {
      ...window.sessionStorage,
      getItem: (key: string) => session.get(key) ?? null,
      setItem: (key: string, text: string) => void session.set(key, text),
    } as Storage,
  };
  shown.work = createWork(openingDesign(), createKeeper(device, isOwn));
  shown.show();
  return shown.work;
}

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

const said = () => document.querySelector('.keeping')?.textContent ?? '';
const listed = () => [...document.querySelectorAll('.earlier li')].map((li) => li.textContent!);
const press = (name: string) => userEvent.click(browser.getByRole('button', { name, exact: true }));
const mine = (work: Work, title: string) => flushSync(() => work.change((d) => ({ ...d, title })));

test('a demo chosen over one’s own work: it is said to be kept, is listed with its time after a reload, and opened again', async () => {
  mine(load(), 'My spindle');
  await userEvent.selectOptions(document.querySelector('header select')!, DEMOS[1]!.file);
  await expect.poll(said).toMatch(/“My spindle” stays kept, under Earlier work/);
  await press('Back to it');
  expect(shown.work.store.getState().design.title).toBe('My spindle');
  expect(said()).toBe('');
  await userEvent.selectOptions(document.querySelector('header select')!, DEMOS[1]!.file);
  const again = load();
  expect(again.store.getState().design.title).toBe(DEMOS[1]!.design.title);
  await press('Earlier work');
  await expect.poll(listed).toHaveLength(1);
  expect(listed()[0]).toMatch(new RegExp(`^My spindle, .*${new Date().getFullYear()}`));
  await expectNoSidewaysScroll();
  await press('Open');
  expect(again.store.getState().design.title).toBe('My spindle');
  expect(document.querySelector('.earlier')).toBeNull();
});

test('a piece is taken off for good only when asked twice', async () => {
  const work = load();
  mine(work, 'My spindle');
  flushSync(() => work.open('demo', { ok: true, design: openingDesign() }));
  await press('Earlier work');
  await press('Take off');
  expect(listed()).toHaveLength(1);
  await press('Take it off for good');
  await expect.poll(listed).toHaveLength(0);
});

test('kept work that is damaged is said, and saved as a file with every character it has', async () => {
  const damaged = '{"design":{"conepair":1,"title":"My spin';
  localStorage.setItem('conepair.work.1', damaged);
  const work = load();
  await expect.poll(said).toMatch(/cannot be opened: it is damaged\. It is set aside whole/);
  const saved: Blob[] = [];
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    saved.push(blob as Blob);
    return '#';
  });
  await press('Save it as a file');
  expect(await saved[0]!.text()).toBe(damaged);
  mine(work, 'Another');
  expect(localStorage.getItem('conepair.work.1')).toBe(damaged);
  await expectAccessible();
});

test('two tabs on the same work: the second says so, and both are kept', async () => {
  const one = load();
  mine(one, 'My spindle');
  const two = load();
  await expect.poll(said).toMatch(/open in another tab/);
  mine(two, 'My spindle, second tab');
  mine(one, 'My spindle, first tab');
  mine(two, 'My spindle, second tab again');
  const kept = Object.keys(localStorage).map((key) => JSON.parse(localStorage.getItem(key)!).design.title);
  expect(kept.sort()).toEqual(['My spindle, first tab', 'My spindle, second tab again']);
});

test('a full store is said and the work goes on; leaving the page is then asked after', async () => {
  const work = load();
  mine(work, 'My spindle');
  const leave = () => !window.dispatchEvent(new Event('beforeunload', { cancelable: true }));
  expect(leave()).toBe(false);
  const full = vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
  mine(work, 'My second spindle');
  await expect.poll(said).toMatch(/no room left on this device/);
  expect(work.store.getState().design.title).toBe('My second spindle');
  expect(leave()).toBe(true);
  full.mockRestore();
  mine(work, 'My third spindle');
  await expect.poll(said).toBe('');
  expect(leave()).toBe(false);
});

// Last in this file: what the page itself starts cannot be taken down again.
test('a browser that forbids its store shows the page and says that work is not kept', async () => {
  const forbidden = vi.spyOn(window, 'localStorage', 'get').mockImplementation(() => {
    throw new DOMException('forbidden', 'SecurityError');
  });
  document.body.innerHTML = '<div id="root"></div>';
  await import('../../src/main.tsx');
  await expect.poll(said).toMatch(/This browser keeps nothing for this page/);
  expect(document.querySelector('.verdict')!.textContent).toMatch(/the steep seat touches first/);
  forbidden.mockRestore();
});
