/** The metals of the solid picture are the page's: one source for section and scene (frame/tokens.css). */
import type { Vector3 } from 'three';
import { expect, test } from 'vitest';
import tokens from '../../src/app/frame/tokens.css?raw';
import '../../src/app/frame/style.css';
import { linear } from '../../src/app/pictures/filmColour.ts';
import { createLook } from '../../src/app/pictures/solid/look.ts';
import { litMetal, pageColour } from '../../src/app/pictures/solid/metals.ts';

const written = (name: string, dark: boolean): [number, number, number] => {
  const [, light, other] = new RegExp(`--${name}: light-dark\\(([^,]+), ([^)]+)\\)`).exec(tokens)!;
  const parts = /^#(..)(..)(..)$/
    .exec(dark ? other! : light!)!
    .slice(1)
    .map((part) => Number.parseInt(part, 16) / 255);
  return [parts[0]!, parts[1]!, parts[2]!];
};

test.each([false, true])('steel, bronze, ink and red are those of the sheet (dark: %s)', (dark) => {
  for (const name of ['steel', 'bronze', 'ink', 'clash', 'scene-ground', 'scene-text', 'scene-net'] as const)
    pageColour(name, dark).forEach((part, k) => {
      expect(part, name).toBeCloseTo(written(name, dark)[k]!, 2);
    });
  const look = createLook(false);
  look.themed(dark, 1);
  const of = (material: keyof typeof look.materials) =>
    (look.materials[material].uniforms.metal!.value as Vector3).toArray();
  // The cut is hatched metal as in the section: the very colour.
  expect(of('steelCut')).toEqual(linear(pageColour('steel', dark)));
  expect(of('bronzeCut')).toEqual(linear(pageColour('bronze', dark)));
  expect(of('steel')).toEqual(linear(litMetal('steel', dark)));
  expect(of('bronze')).toEqual(linear(litMetal('bronze', dark)));
  look.dispose();
});

test('another colour in the sheet is another in the scene', () => {
  const before = litMetal('bronze', false);
  document.documentElement.style.setProperty('--bronze', '#336699');
  try {
    expect(pageColour('bronze', false)).toEqual([0.2, 0.4, 0.6]);
    expect(litMetal('bronze', false)).not.toEqual(before);
  } finally {
    document.documentElement.style.removeProperty('--bronze');
  }
});
