import { readFileSync } from 'node:fs';
import {
  type Color,
  converter,
  differenceEuclidean,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  formatRgb,
  parse,
} from 'culori';
import fc from 'fast-check';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { Rgb } from '../../../src/app/pictures/colourScale.ts';
import { FilmShape, PATTERN } from '../../../src/app/pictures/FilmPaint.tsx';
import { bandOf, classOf, type FilmClass, filmRuns } from '../../../src/app/pictures/filmClass.ts';
import {
  CLASS_COLOUR,
  CLASS_FILL,
  cssColour,
  INTERFERENCE,
  linear,
  touchColour,
  wantedColour,
} from '../../../src/app/pictures/filmColour.ts';
import { MetalMarks, WantedMarks } from '../../../src/app/pictures/sceneLegend.tsx';
import { colourOf } from '../../../src/app/pictures/solid/filmGeometry.ts';

const wanted = { target: 2.5e-6, tolerance: 0.5e-6 };
const film = fc.double({ min: -4e-6, max: 12e-6, noNaN: true });

describe('what a film is to its seat', () => {
  test('by the film wanted, its edges within it; none in a seat that wants none', () => {
    expect([-1e-6, 0, 1.99e-6, 2e-6, 2.5e-6, 3e-6, 3.01e-6].map((h) => classOf(h, wanted))).toEqual([
      'pressed',
      'touch',
      'thin',
      'right',
      'right',
      'right',
      'thick',
    ]);
    expect([-1e-6, 0, 3e-6].map((h) => classOf(h, null))).toEqual(['pressed', 'touch', 'plain']);
  });

  test('runs of one class join to the whole film, and part exactly at the edges', () => {
    fc.assert(
      fc.property(fc.array(film, { minLength: 2, maxLength: 9 }), fc.boolean(), (films, wants) => {
        const places = films.map((film, at) => ({ film, at }));
        const want = wants ? wanted : null;
        const between = (a: (typeof places)[0], b: (typeof places)[0], share: number) => ({
          film: a.film + (b.film - a.film) * share,
          at: a.at + (b.at - a.at) * share,
        });
        const runs = filmRuns(places, want, between);
        expect(runs[0]!.places[0]).toEqual(places[0]);
        expect(runs[runs.length - 1]!.places.at(-1)).toEqual(places.at(-1));
        expect(new Set(runs.map(({ name }) => name)).size).toBe(runs.length);
        runs.forEach((run, i) => {
          const next = runs[i + 1];
          if (next) {
            expect(next.kind).not.toBe(run.kind);
            expect(next.places[0]!.at).toBe(run.places.at(-1)!.at);
          }
          for (let k = 1; k < run.places.length; k++) {
            const [a, b] = [run.places[k - 1]!, run.places[k]!];
            for (const share of [0.05, 0.5, 0.95]) {
              const here = between(a, b, share);
              // Within a rounding of an edge either is right.
              const edge = [0, 2e-6, 3e-6].some((at) => Math.abs(here.film - at) < 1e-11);
              if (!edge) expect(classOf(here.film, want)).toBe(run.kind);
            }
          }
        });
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});

/** CIE 1976 difference. */
const difference = differenceEuclidean('lab');
const lab = converter('lab');
const colour = ([r, g, b]: Rgb) => ({ mode: 'rgb' as const, r, g, b });
const VISIONS: Record<string, (seen: Color) => Color> = {
  full: (seen) => seen,
  'no red': filterDeficiencyProt(1),
  'no green': filterDeficiencyDeuter(1),
  'no blue': filterDeficiencyTrit(1),
};
const css = readFileSync(new URL('../../../src/app/frame/tokens.css', import.meta.url), 'utf8');
/** A colour of the page, in its light theme (0) or its dark one (1). */
const named = (name: string, dark: number) =>
  parse(new RegExp(`--${name}: light-dark\\(([^,]+), ([^)]+)\\)`).exec(css)![1 + dark]!)!;
const rgb = converter('rgb');
const METALS = ['steel', 'bronze'].flatMap((name) =>
  [0, 1].map((dark): Rgb => {
    const { r, g, b } = rgb(named(name, dark));
    return [r, g, b];
  }),
);

describe('colours of films', () => {
  const thin = [0, 1, 1.99].map((h) => wantedColour(h * 1e-6, wanted, 1));
  const right = [2, 2.5, 3].map((h) => wantedColour(h * 1e-6, wanted, 1));
  const thick = [3.01, 6, 12, 50].map((h) => wantedColour(h * 1e-6, wanted, 1));

  test('one yellow for all that is right; a film below nothing has the colour of interference', () => {
    for (const one of right) expect(one).toEqual(CLASS_COLOUR.right);
    expect(wantedColour(-1e-6, wanted, 1)).toEqual(INTERFERENCE);
  });

  test.each(Object.entries(VISIONS))(
    'classes are told apart with %s vision, and from steel, bronze and the touch',
    (_, seen) => {
      const apart = (a: readonly Rgb[], b: readonly Rgb[]) =>
        Math.min(...a.flatMap((x) => b.map((y) => difference(seen(colour(x)), seen(colour(y))))));
      // Neighbours, which also differ in pattern; then what stands beside them in the pictures.
      const touches = [touchColour(false), touchColour(true)];
      for (const [one, other] of [
        [[INTERFERENCE], touches],
        [[INTERFERENCE], thin],
        [thin, right],
        [right, thick],
        [thin, thick],
      ] as const)
        expect(apart(one, other)).toBeGreaterThan(20);
      const metals = METALS;
      for (const [one, other] of [
        [thin, metals],
        [right, metals],
        [thick, metals],
        [
          [...thin, ...right, ...thick],
          [touchColour(false), touchColour(true)],
        ],
      ] as const)
        expect(apart(one, other)).toBeGreaterThan(11);
    },
  );

  test.each(Object.entries(VISIONS))('no seat has the colour of a touch, with %s vision', (_, seen) => {
    for (const dark of [0, 1]) {
      const seats = [0, 1, 2, 3].map((seat) => named(`seat-${seat}`, dark));
      const touch = named('touch', dark);
      expect(difference(touch, colour(touchColour(dark === 1)))).toBeLessThan(1);
      for (const seat of seats) expect(difference(seen(seat), seen(touch))).toBeGreaterThan(15);
    }
  });

  test('in grey the right film is the lightest, and its neighbours are darker by a good step', () => {
    const light = (all: Rgb[]) => all.map((one) => lab(colour(one)).l);
    expect(Math.min(...light(right)) - Math.max(...light(thick))).toBeGreaterThan(12);
    expect(Math.min(...light(thick)) - Math.max(...light(thin))).toBeGreaterThan(10);
  });

  test('in grey a class differs from its neighbours by its lines where it does not by lightness', () => {
    const order = ['pressed', 'touch', 'thin', 'right', 'thick'] as const;
    for (const dark of [false, true])
      for (let i = 1; i < order.length; i++) {
        const [one, other] = [order[i - 1]!, order[i]!];
        const light = (kind: (typeof order)[number]) =>
          lab(colour(kind === 'touch' ? touchColour(dark) : CLASS_COLOUR[kind])).l;
        const lines = (kind: FilmClass) => JSON.stringify(PATTERN[kind]?.angles ?? []);
        const step = Math.abs(light(one) - light(other));
        expect(step > 12 || lines(one) !== lines(other), `${one} and ${other}, ${step}`).toBe(true);
        expect(lines(one) === lines(other) && lines(one) === '[]', `${one} and ${other}`).toBe(false);
      }
  });

  test('sheets, drawings, solid picture and charts have one fill for a class', () => {
    const legend = [WantedMarks, MetalMarks].map((marks) => renderToStaticMarkup(createElement(marks))).join('');
    for (const [kind, fill] of Object.entries(CLASS_COLOUR)) {
      const token = parse(new RegExp(`--film-${kind}: (#[0-9a-f]+);`).exec(css)![1]!)!;
      expect(formatRgb(token)).toBe(cssColour(fill));
      expect(CLASS_FILL[kind as keyof typeof CLASS_FILL]).toBe(`var(--film-${kind})`);
      const drawn = renderToStaticMarkup(createElement(FilmShape, { points: '', kind: kind as FilmClass, id: '' }));
      expect(drawn).toContain(`fill:${cssColour(fill)}`);
      // A film in the middle of its class, as a corner of the solid picture has it.
      const [low, high] = bandOf(wanted);
      const middle = { pressed: -1e-6, thin: low / 2, right: wanted.target, thick: high + (3 * high) / 2 };
      const corner = colourOf(middle[kind as keyof typeof middle], wanted, 1);
      for (const [k, part] of linear(fill).entries()) expect(corner[k]).toBeCloseTo(part, 3);
      expect(legend).toContain(CLASS_FILL[kind as keyof typeof CLASS_FILL]);
    }
    expect(renderToStaticMarkup(createElement(FilmShape, { points: '', kind: 'touch', id: '' }))).toContain(
      'fill:var(--touch)',
    );
    expect(legend).toContain(CLASS_FILL.touch);
    const [, light, dark] = /--touch: light-dark\((#[0-9a-f]+), (#[0-9a-f]+)\);/.exec(css)!;
    expect([light, dark].map((one) => formatRgb(parse(one!)!))).toEqual(
      [false, true].map((page) => cssColour(touchColour(page))),
    );
  });
});
