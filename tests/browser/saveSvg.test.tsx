/** Drawings of the Cut screen saved: each stands alone and looks as on the screen. */
import { expect, test } from 'vitest';
import { standaloneSvg } from '../../src/app/pictures/standaloneSvg.ts';
import { page } from './page.tsx';

const shown = page('#cut');

test('section, close-ups and flank have a button, and what is saved has no class, no variable, and is drawn as on the screen', async () => {
  shown.open('steep-first');
  await expect
    .poll(() => document.querySelectorAll('figure .save-svg').length, { timeout: 20_000 })
    .toBeGreaterThanOrEqual(3);
  for (const button of document.querySelectorAll('figure .save-svg')) {
    const svg = button.closest('figure')!.querySelector('svg')!;
    const name = button.getAttribute('aria-label')!;
    const text = standaloneSvg(svg);
    expect(text, name).not.toMatch(/class=|var\(|currentcolor/i);
    const file = new DOMParser().parseFromString(text, 'image/svg+xml');
    expect(file.querySelector('parsererror'), name).toBeNull();
    // Without any style sheet the strokes are those of the screen.
    const [paths, saved] = [svg.querySelectorAll('path'), file.querySelectorAll('path')];
    expect(saved.length, name).toBe(paths.length);
    for (const [i, path] of [...paths].entries())
      for (const look of ['fill', 'stroke', 'stroke-width'])
        expect(saved[i]!.getAttribute(look), name).toBe(getComputedStyle(path).getPropertyValue(look));
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
    await image.decode();
    const { width, height } = svg.getBoundingClientRect();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [Math.ceil(width), Math.ceil(height)];
    const ink = canvas.getContext('2d')!;
    ink.drawImage(image, 0, 0);
    URL.revokeObjectURL(image.src);
    const { data } = ink.getImageData(0, 0, canvas.width, canvas.height);
    // The ground is opaque, and something is drawn on it.
    let other = 0;
    for (let i = 0; i < data.length; i += 4)
      if (data[i] !== data[0] || data[i + 1] !== data[1] || data[i + 2] !== data[2]) other++;
    expect(data[3], name).toBe(255);
    expect(other / (data.length / 4), name).toBeGreaterThan(0.002);
  }
});
