/**
 * Take along: pictures, tables, curves, models and the report of what is shown; and a link that opens a design.
 *
 * @module-tag long
 */
import { expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { angleChoice, sayAngles } from '../../src/app/state/angles.ts';
import { linkOf } from '../../src/app/takeAlong/link.ts';
import { solve } from '../../src/report/report.ts';
import { expectAccessible, expectNoSidewaysScroll, page, pressInBar } from './page.tsx';

const shown = page('#fit');

/** What the page offers as a file while `act` goes on. */
async function offered(act: () => Promise<void>): Promise<{ name: string; blob: Blob }> {
  const blobs: Blob[] = [];
  const names: string[] = [];
  const made = vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    blobs.push(blob as Blob);
    return '#';
  });
  const clicked = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    names.push(this.download);
  });
  await act();
  await expect.poll(() => names.length, { timeout: 40_000 }).toBe(1);
  made.mockRestore();
  clicked.mockRestore();
  return { name: names[0]!, blob: blobs[0]! };
}
const press = (name: string | RegExp) => () =>
  userEvent.click(browser.getByRole('region', { name: 'Take along' }).getByRole('button', { name, exact: true }));
const opened = async () => {
  await pressInBar('Take along');
  await expect.poll(() => document.querySelectorAll('.take-along li').length).toBeGreaterThan(2);
};

test('the closing chart: its picture as SVG and PNG, its curves as a table in the units of its axes', async () => {
  shown.open('steep-first');
  await opened();
  const chart = 'Least film of every seat against axial position';
  const svg = await offered(press(`${chart} as SVG`));
  expect(svg.name).toMatch(/^instrument-lathe-.*-least-film-of-every-seat-against-axial-position\.svg$/);
  expect(
    new DOMParser().parseFromString(await svg.blob.text(), 'image/svg+xml').querySelector('parsererror'),
  ).toBeNull();
  const png = await offered(press(`${chart} as PNG`));
  const picture = await createImageBitmap(png.blob);
  const { width } = document.querySelector(`svg[aria-label^="${chart}"]`)!.getBoundingClientRect();
  expect(picture.width).toBe(Math.round(3 * width));
  const csv = await offered(press(`${chart} as CSV`));
  expect(new Uint8Array(await csv.blob.arrayBuffer()).slice(0, 3)).toEqual(new Uint8Array([0xef, 0xbb, 0xbf]));
  const rows = (await csv.blob.text()).split(/\r?\n/).map((row) => row.split(','));
  expect(rows[0]!.join()).toMatch(/position, µm.*shallow: least film, µm.*steep: least film, µm/);
  expect(rows.length).toBeGreaterThan(4);
  // Where the steep film is nothing the pair touches first: -4 µm in this demo.
  const steep = rows.slice(1).flatMap((row) => (row.at(-1) ? [[Number(row[0]), Number(row.at(-1))] as const] : []));
  const k = steep.findIndex(([, film], i) => film <= 0 && (steep[i + 1]?.[1] ?? -1) > 0);
  const [[p0, f0], [p1, f1]] = [steep[k]!, steep[k + 1]!];
  expect(p0 - (f0 * (p1 - p0)) / (f1 - f0)).toBeCloseTo(-4, 2);
});

test('the solid picture is drawn anew for its file: not one colour', async () => {
  await browser.viewport(1440, 900);
  await expect.poll(() => document.querySelector('canvas')?.getClientRects().length, { timeout: 40_000 }).toBeTruthy();
  await opened();
  const found = () => document.querySelector('[aria-label="Solid picture as PNG"]') !== null;
  await expect
    .poll(
      async () => {
        if (!found()) await press('Look again')();
        return found();
      },
      { timeout: 40_000 },
    )
    .toBe(true);
  const { blob } = await offered(press('Solid picture as PNG'));
  const picture = await createImageBitmap(blob);
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [picture.width, picture.height];
  const ink = canvas.getContext('2d')!;
  ink.drawImage(picture, 0, 0);
  const { data } = ink.getImageData(0, 0, canvas.width, canvas.height);
  const colours = new Set<number>();
  for (let i = 0; i < data.length; i += 4) colours.add((data[i]! << 16) | (data[i + 1]! << 8) | data[i + 2]!);
  expect(colours.size).toBeGreaterThan(50);
});

test('a table as it stands, and no formula in it', async () => {
  const refused = shown.work.change(({ seats }) => ({
    conepair: 1,
    seats: seats.map((seat, i) => (i === 0 ? { ...seat, name: '=2+3' } : seat)),
  }));
  expect(refused).toEqual([]);
  for (const details of document.querySelectorAll('details')) details.open = true;
  await opened();
  const table = await offered(() =>
    userEvent.click(browser.getByRole('button', { name: /^Table: .* as CSV$/ }).first()),
  );
  const text = await table.blob.text();
  expect(text).toMatch(/'=2\+3/);
  expect(text).not.toMatch(/(^|,|")=/m);
});

// Automatic exaggeration draws no gap larger than a share of the smallest radius: 227 times here, not 400.
test('glTF in metres, both parts by name, the factor in the name; STL of each part', async () => {
  shown.open('steep-first');
  await opened();
  const { name, blob } = await offered(press('Both as glTF'));
  expect(name).toMatch(/-pair-gaps-x227\.glb$/);
  const bytes = new DataView(await blob.arrayBuffer());
  const length = bytes.getUint32(12, true);
  const json = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes.buffer, 20, length))) as {
    nodes: { name?: string }[];
    accessors: { max?: number[] }[];
    meshes: { primitives: { attributes: { POSITION: number } }[] }[];
  };
  const names = json.nodes.flatMap((node) => node.name ?? []);
  expect(names).toEqual(expect.arrayContaining(['journal', 'bush']));
  expect(names.join()).toMatch(/gaps drawn 227 times as large/);
  const corners = json.meshes.flatMap(({ primitives }) => primitives.map(({ attributes }) => attributes.POSITION));
  const reach = Math.max(...corners.flatMap((place) => json.accessors[place]!.max!));
  expect(reach).toBeGreaterThan(0.012);
  expect(reach).toBeLessThan(0.1);
  const stl = await offered(press('Journal as STL'));
  expect(stl.name).toMatch(/-journal-gaps-x227\.stl$/);
  expect(stl.blob.size).toBe(84 + 50 * new DataView(await stl.blob.arrayBuffer()).getUint32(80, true));
});

test('the report, as the command line writes it', async () => {
  await opened();
  const { name, blob } = await offered(press('Report as JSON'));
  expect(name).toMatch(/\.report\.json$/);
  // Whole, section by section, under the name that the saved file has.
  const { design } = shown.work.store.getState();
  const file = name.replace('.report.json', '.conepair.json');
  const whole = JSON.parse(JSON.stringify(solve(design, file)));
  expect(Object.keys(whole)).toEqual(expect.arrayContaining(['fit', 'play', 'film', 'cut']));
  expect(JSON.parse(await blob.text())).toEqual(whole);
  await expect
    .poll(() => document.querySelector('.take-along [role=status]')?.textContent)
    .toMatch(/^The report is taken, with fit, play, film and cut\. Without print, measure/);
});

test('a link opens its design as a piece of work of its own, once; a broken one is refused and the work stays', async () => {
  const { design } = shown.work.store.getState();
  const own = { ...design, title: 'From a link', position: 0.0123 };
  const link = linkOf(own, 'inch', 'included', 'https://shop.example/')!;
  window.location.hash = link.slice(link.indexOf('#'));
  await expect.poll(() => shown.work.store.getState().design.title).toBe('From a link');
  expect(shown.position()).toBe(0.0123);
  expect(shown.work.store.getState().system).toBe('inch');
  expect(angleChoice.getState().way).toBe('included');
  sayAngles('half');
  expect(window.location.hash).toBe('#fit');
  window.location.hash = link.slice(link.indexOf('#'), -60);
  await expect.poll(() => document.querySelector('.refused, [role=alert]')?.textContent ?? '').toMatch(/the link/);
  expect(shown.work.store.getState().design.title).toBe('From a link');
});

test('nothing reaches beyond the page, and an axe scan finds nothing', async () => {
  await opened();
  await expectNoSidewaysScroll();
  await expectAccessible();
});
