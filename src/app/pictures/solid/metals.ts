/**
 * The metals of the solid picture, its ink and the red of its arrows: the page's own colours (frame/tokens.css), as the
 * drawings have them, so that both pictures show the same steel and the same bronze.
 */
import type { Rgb } from '../colourScale.ts';

type Line = 'ground' | 'text' | 'axis' | 'bush' | 'journal' | 'faint' | 'net';
type PageColour = 'steel' | 'bronze' | 'ink' | 'clash' | `scene-${Line}`;

/** A colour of the page in its light or its dark theme; of forced colours it is left alone, as the scene is. */
export function pageColourText(name: PageColour, dark: boolean): string {
  const probe = document.createElement('i');
  probe.style.setProperty('color-scheme', dark ? 'dark' : 'light');
  probe.style.setProperty('forced-color-adjust', 'none');
  probe.style.setProperty('color', `var(--${name})`);
  document.body.append(probe);
  const { color } = getComputedStyle(probe);
  probe.remove();
  return color;
}

/** The same in sRGB. */
export function pageColour(name: PageColour, dark: boolean): Rgb {
  const parts = pageColourText(name, dark).match(/[\d.]+/g) ?? [];
  return [Number(parts[0]) / 255, Number(parts[1]) / 255, Number(parts[2]) / 255];
}

/**
 * The light of a scene adds to a metal's own colour: on light paper it is deepened by this power first; in the dark,
 * where the page's metals are deep already, it is not.
 */
const DEEPENED = { light: 1.5, dark: 0.85 };

/** A metal as the scene's light falls on it. */
export const litMetal = (name: 'steel' | 'bronze', dark: boolean): Rgb => {
  const power = DEEPENED[dark ? 'dark' : 'light'];
  const [red, green, blue] = pageColour(name, dark);
  return [red ** power, green ** power, blue ** power];
};
