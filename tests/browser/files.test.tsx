/** Files of the person's own: saved back to where they came from where the browser allows it, a download where not. */
import { expect, test, vi } from 'vitest';
import { page as browser } from 'vitest/browser';
import { openFile } from '../../src/app/state/files.ts';
import { OPENING } from '../../src/app/state/opening.ts';
import { page, pressInBar } from './page.tsx';

const shown = page('#fit');

/** A real file of the page's own store stands for one of the person's. */
async function fileCalled(name: string, text = ''): Promise<FileSystemFileHandle> {
  const handle = await (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
  const file = await handle.createWritable();
  await file.write(text);
  await file.close();
  return handle;
}
const textOf = async (handle: FileSystemFileHandle) => (await handle.getFile()).text();
const pickers = (of: object) => Object.assign(window, of);
const save = () => pressInBar('Save');
const downloads: string[] = [];
const watchDownloads = () => {
  downloads.length = 0;
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    downloads.push(this.download);
  });
};

test('asked where once; then written to the same file, and said', async () => {
  watchDownloads();
  const handle = await fileCalled('mine.json');
  const asked = vi.fn(async () => handle);
  pickers({ showSaveFilePicker: asked });
  await save();
  await expect.element(browser.getByRole('button', { name: 'Saved', exact: true })).toBeVisible();
  shown.work.moveTo(0.0123);
  await save();
  await expect.poll(() => textOf(handle)).toMatch(/"position": 0\.0123/);
  expect(asked).toHaveBeenCalledTimes(1);
  expect(downloads).toEqual([]);
});

test('opened from a file it is saved back there; another job asks anew', async () => {
  watchDownloads();
  const handle = await fileCalled('from.json', JSON.stringify({ ...OPENING.design, title: 'From a file' }));
  const other = await fileCalled('other.json');
  const asked = vi.fn(async () => other);
  pickers({ showSaveFilePicker: asked });
  await openFile(shown.work, await handle.getFile(), handle);
  shown.work.moveTo(0.0456);
  await save();
  await expect.poll(() => textOf(handle)).toMatch(/"position": 0\.0456/);
  expect(asked).not.toHaveBeenCalled();
  shown.open('correct');
  await save();
  await expect.poll(() => textOf(other)).toMatch(/conepair/);
  expect(asked).toHaveBeenCalledTimes(1);
  expect(await textOf(handle)).toMatch(/From a file/);
});

test('thought better of: nothing is saved; a file that cannot be written is offered as a download', async () => {
  watchDownloads();
  pickers({ showSaveFilePicker: () => Promise.reject(new DOMException('closed', 'AbortError')) });
  await save();
  expect(browser.getByRole('button', { name: 'Save', exact: true }).element()).toBeTruthy();
  expect(downloads).toEqual([]);
  pickers({ showSaveFilePicker: () => Promise.reject(new DOMException('forbidden', 'NotAllowedError')) });
  await save();
  await expect.poll(() => downloads).toEqual([expect.stringMatching(/\.conepair\.json$/)]);
});
