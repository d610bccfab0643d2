/**
 * Photographs in the record, in Chromium’s own store: scaled down, there after a reload, said to stay behind.
 *
 * @module-tag long
 */
import { beforeEach, expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { setOpen } from '../../src/app/frame/openParts.ts';
import { scaledDown } from '../../src/app/record/picture.ts';
import type { Device } from '../../src/jobs/device.ts';
import { page, withoutSolid } from './page.tsx';
import { type Opened, openWindow } from './window.ts';

const shown = page('#measure', true);
let store = '';
beforeEach(() => {
  store = `conepair photographs ${Date.now()}`;
});

/** A picture of one colour. */
async function picture(width: number, height: number, type = 'image/png'): Promise<File> {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  const context = canvas.getContext('2d')!;
  context.fillStyle = '#3a6ea5';
  context.fillRect(0, 0, width, height);
  const blob = await new Promise<Blob>((done) => canvas.toBlob((made) => done(made!), type));
  return new File([blob], 'bush.png', { type });
}

async function load(session?: Map<string, string>, change?: (device: Device) => Device): Promise<Opened> {
  withoutSolid();
  const opened = await openWindow(store, session, change);
  shown.work = opened.work;
  window.location.hash = '#measure';
  shown.show();
  setOpen('measure/record', true, false);
  await expect.poll(() => document.querySelector('.new-note'), { timeout: 30_000 }).toBeTruthy();
  return opened;
}
const record = () => shown.work.store.getState().design.record;
const pick = (file: File) =>
  userEvent.upload(document.querySelector<HTMLInputElement>('.new-note input[type=file]')!, file);
const said = () => document.querySelector('.keeping')?.textContent ?? '';

test('pictures are scaled down to 1600 on the longer side, never up; what is none is refused', async () => {
  const large = await scaledDown(await picture(3200, 1000));
  expect(large).toMatchObject({ width: 1600, height: 500 });
  expect(large!.blob.type).toBe('image/jpeg');
  expect(await scaledDown(await picture(40, 30))).toMatchObject({ width: 40, height: 30 });
  expect(await scaledDown(new Blob(['no picture']))).toBeNull();
});

test('taken in with a note, there after a reload, and a file goes without it', { timeout: 90_000 }, async () => {
  const first = await load();
  await userEvent.fill(browser.getByRole('textbox', { name: 'A note' }), 'The scratch');
  await pick(await picture(2000, 1500));
  await expect.poll(() => record()?.length, { timeout: 20_000 }).toBe(1);
  expect(record()![0]).toMatchObject({ note: 'The scratch', photograph: expect.stringMatching(/^[a-z0-9-]+$/) });
  const image = () => document.querySelector<HTMLImageElement>('.photograph img');
  await expect.poll(() => image()?.complete && image()!.naturalWidth).toBe(1600);
  expect(image()!.alt).toBe('The scratch');
  expect(document.querySelector('.photograph figcaption')!.textContent).toMatch(/^1600 × 1200, \d+ kB/);
  first.work.fileSaved();
  await expect.poll(said).toContain('The file goes without the photograph of this job');
  await first.work.keeper!.flush();
  first.kill();
  await load(first.session);
  await expect.poll(() => image()?.complete && image()!.naturalWidth, { timeout: 20_000 }).toBe(1600);
});

test('what is no picture, and a device without room, are told, and nothing is written down', {
  timeout: 60_000,
}, async () => {
  const { work } = await load();
  await pick(new File(['words'], 'words.png', { type: 'image/png' }));
  const alert = () => document.querySelector('.new-note [role=alert]')?.textContent;
  await expect.poll(alert).toBe('“words.png” is no picture that this browser can read.');
  const { photographs } = work.keeper!.shelf;
  photographs.put = async () => {
    throw new DOMException('full', 'QuotaExceededError');
  };
  await pick(await picture(20, 20));
  await expect.poll(alert).toMatch(/^There is no room on this device/);
  expect(record()).toBeUndefined();
});
