/**
 * The colour of an oil film by its true thickness, in even steps (colourScale.ts): anchored to the film wanted where
 * one is, and from pale straw (nothing) to deep amber (the most) where none is. Interference has one off the scale.
 */
import type { Metres } from '../../design/dimension.ts';
import type { Wanted } from '../../report/inFrame.ts';
import { colourScale, polar, type Rgb, srgb } from './colourScale.ts';
import { bandOf, classOf, type FilmClass } from './filmClass.ts';

export type { Rgb } from './colourScale.ts';

export const INTERFERENCE: Rgb = [0.85, 0.05, 0.16];
/** Marking blue where two surfaces touch; no seat has it. */
export const touchColour = (dark: boolean): Rgb => (dark ? [0.467, 0.635, 0.988] : [0.114, 0.247, 0.561]);

/** Of a film nobody set a figure for: straw, amber, brown. */
const plain = colourScale([polar(0.95, 0.05, 95), polar(0.74, 0.2, 75), polar(0.36, 0.09, 50)]);

/** Of a film nobody set a figure for, where its thickness is told by lines. */
export const PLAIN = plain(0.5);

/** Film and the film of the scale's far end in the same unit; beyond the end the end's colour. */
export const filmColour = (film: Metres, max: number): Rgb =>
  film < 0 ? INTERFERENCE : plain(max > 0 ? film / max : 0);

/**
 * Too thin in plums, right in one yellow, too thick in teals: none of them steel, bronze, or the blue of a print, and
 * each apart from its neighbours by lightness too, for the colour-blind and for a grey printer.
 */
const THIN = colourScale([polar(0.42, 0.17, 355), polar(0.47, 0.19, 355), polar(0.52, 0.2, 355)]);
const RIGHT = srgb(polar(0.88, 0.17, 103));
const THICK = colourScale([polar(0.72, 0.11, 195), polar(0.66, 0.11, 205), polar(0.6, 0.11, 215)]);
/** Times the film wanted from which on all is the same. */
const MUCH = 4;

/** The colour of a film (m) where one is wanted: what it is to the seat, and how far. Elsewhere of the plain scale. */
export function wantedColour(film: Metres, wanted: Wanted | null, max: number): Rgb {
  if (!wanted) return filmColour(film, max);
  const [low, high] = bandOf(wanted);
  const kind = classOf(film, wanted);
  if (kind === 'pressed') return INTERFERENCE;
  if (kind === 'right') return RIGHT;
  // Beside a touch, which is drawn as itself, the film goes on to nothing.
  return kind === 'thick' ? THICK((film - high) / (MUCH * high - high)) : THIN(Math.max(0, film) / low);
}

/** The colour a class has in a drawing of one tint: the middle of its own. */
export const CLASS_COLOUR: Record<Exclude<FilmClass, 'plain' | 'touch'>, Rgb> = {
  pressed: INTERFERENCE,
  thin: THIN(0.5),
  right: RIGHT,
  thick: THICK(0.5),
};

/** The same as tokens.css has it, where no drawing need stand alone; a touch is darker or lighter with the page. */
export const CLASS_FILL: Record<Exclude<FilmClass, 'plain'>, string> = {
  pressed: 'var(--film-pressed)',
  touch: 'var(--touch)',
  thin: 'var(--film-thin)',
  right: 'var(--film-right)',
  thick: 'var(--film-thick)',
};

export const cssColour = (colour: Rgb) => `rgb(${colour.map((part) => Math.round(part * 255)).join(', ')})`;

/** Linear light of an sRGB colour (IEC 61966-2-1), as vertex colours are kept. */
export const linear = (colour: Rgb): Rgb => [linearPart(colour[0]), linearPart(colour[1]), linearPart(colour[2])];

/** Relative luminance, 0 to 1 (IEC 61966-2-1 primaries). */
export function luminance(colour: Rgb): number {
  const [red, green, blue] = linear(colour);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linearPart = (part: number) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
