/**
 * Drawings saved: each stands alone, looks as on the screen, and says whose it is and how much larger gaps are drawn.
 */
import { expect, test } from 'vitest';
import { allOnScreen, svgOf } from '../../src/app/takeAlong/onScreen.ts';
import { page } from './page.tsx';

const shown = page('#cut');

const drawings = () =>
  allOnScreen(document.querySelector('main')!).flatMap(({ svg, name }) => (svg ? [{ svg, name }] : []));
const read = (text: string) => new DOMParser().parseFromString(text, 'image/svg+xml');
const words = (file: Document) => [...file.querySelectorAll('text')].map(({ textContent }) => textContent!);

/** Pixels of a picture at its own size, and how many of them are other than its ground. */
async function drawn(text: string): Promise<{ opaque: boolean; share: number }> {
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  await image.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
  const ink = canvas.getContext('2d')!;
  ink.drawImage(image, 0, 0);
  URL.revokeObjectURL(image.src);
  const { data } = ink.getImageData(0, 0, canvas.width, canvas.height);
  let other = 0;
  for (let i = 0; i < data.length; i += 4)
    if (data[i] !== data[0] || data[i + 1] !== data[1] || data[i + 2] !== data[2]) other++;
  return { opaque: data[3] === 255, share: other / (data.length / 4) };
}

test('section, close-ups and flank of Cut: no class, no variable, strokes as on the screen, under the name of the job', async () => {
  shown.open('steep-first');
  await expect.poll(() => drawings().length, { timeout: 45_000 }).toBeGreaterThanOrEqual(3);
  const { title } = shown.work.store.getState().design;
  for (const { svg, name } of drawings()) {
    const text = svgOf(svg, title!, name);
    expect(text, name).not.toMatch(/class=|var\(|currentcolor/i);
    const file = read(text);
    expect(file.querySelector('parsererror'), name).toBeNull();
    expect(words(file).join(' '), name).toContain(title);
    expect(words(file).join(' '), name).toContain(name.replace('…', ''));
    // Without any style sheet the strokes are those of the screen.
    const [paths, saved] = [svg.querySelectorAll('path'), file.querySelectorAll('svg > svg:first-of-type path')];
    expect(saved.length, name).toBe(paths.length);
    for (const [i, path] of [...paths].entries())
      for (const look of ['fill', 'stroke', 'stroke-width'])
        expect(saved[i]!.getAttribute(look), name).toBe(getComputedStyle(path).getPropertyValue(look));
    const { opaque, share } = await drawn(text);
    expect(opaque, name).toBe(true);
    expect(share, name).toBeGreaterThan(0.002);
  }
  const section = drawings().find(({ name }) => /section/i.test(name))!;
  const told = words(read(svgOf(section.svg, title!, section.name)));
  expect(told.join(' ')).toMatch(/stock to come off.*gap or move, drawn ×\d/);
});

test('the section of Fit: the factor beneath it, and no grip for the hand in it', async () => {
  shown.open('steep-first');
  window.location.hash = '#fit';
  await expect.poll(() => document.querySelector('.pull-grip')).not.toBeNull();
  const { svg, name } = drawings().find((one) => /section/i.test(one.name))!;
  const file = read(svgOf(svg, 'A job with a name <of> & its own', name));
  expect(words(file).slice(0, 2)).toEqual(['A job with a name <of> & its own', 'Longitudinal section of the pair']);
  expect(words(file).at(-1)).toMatch(/^Gaps drawn ×227$/);
  expect(words(file).slice(-3, -1)).toEqual([
    'Shallow 9.24 µm, too thick; steep 16.97 µm, too thick.',
    expect.stringMatching(/^Journal: 20\.00 µm noseward of the datum/),
  ]);
  expect(file.querySelector('[aria-label^="Pull the nose"]')).toBeNull();
  expect(svg.querySelector('[aria-label^="Pull the nose"]')).not.toBeNull();
});

test('a chart takes along what its lines mean; where the nose can go has its unit on both axes', async () => {
  shown.open('steep-first');
  window.location.hash = '#fit';
  const found = (start: string) => drawings().find(({ name }) => name.startsWith(start));
  await expect.poll(() => found('Least film'), { timeout: 20_000 }).toBeTruthy();
  const chart = found('Least film')!;
  const file = read(svgOf(chart.svg, 'job', chart.name));
  const marks = document.querySelectorAll('.chart .legend .seat').length;
  expect(file.querySelectorAll('svg > svg').length).toBe(1 + marks);
  await expect.poll(() => found('Where the nose can go'), { timeout: 30_000 }).toBeTruthy();
  const units = [...found('Where the nose can go')!.svg.querySelectorAll('.unit')].map(
    ({ textContent }) => textContent,
  );
  expect(units).toEqual(['µm', 'µm']);
});

/** Of every screen with pictures of its own: what stands on it. */
test.each([
  ['fit', 'steep-first', 4],
  ['run', 'steep-first', 3],
  ['cut', 'shallow-first', 3],
  ['odds', 'steep-first', 3],
  ['measure', 'notebook', 2],
  ['sheet', 'steep-first', 3],
])(
  'every picture of %s opens elsewhere: by itself, with nothing of the page',
  { tags: ['long'] },
  async (screen, demo, least) => {
    shown.open(demo);
    window.location.hash = `#${screen}`;
    // The screen that was open keeps its pictures until the one asked for has come.
    await expect.poll(() => document.querySelector(`main.at-${screen}`)).not.toBeNull();
    await expect.poll(() => drawings().length, { timeout: 60_000 }).toBeGreaterThanOrEqual(least);
    for (const { svg, name } of drawings()) {
      const text = svgOf(svg, 'A job', name);
      const file = read(text);
      expect(file.querySelector('parsererror'), name).toBeNull();
      const root = file.documentElement;
      expect([root.localName, root.namespaceURI], name).toEqual(['svg', 'http://www.w3.org/2000/svg']);
      const page = / class=| style=|var\(|current[Cc]olor|\bNaN\b|undefined|<script|<foreignObject|<image/.exec(text);
      expect(page?.[0] ?? '', name).toBe('');
      // What it refers to is in it, and nothing else.
      for (const [, target] of text.matchAll(/(?:url\(["']?|href=["'])#([^"')]+)/g))
        expect(file.getElementById(target!), `${name}: #${target}`).not.toBeNull();
      expect(/https?:|href="[^#]/.exec(text.replaceAll('http://www.w3.org/', ''))?.[0] ?? '', name).toBe('');
      const { share } = await drawn(text);
      expect(share, name).toBeGreaterThan(0.001);
    }
  },
);
