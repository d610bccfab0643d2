import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PATTERN } from '../../../../src/app/pictures/FilmPaint.tsx';
import { bandOf, classOf } from '../../../../src/app/pictures/filmClass.ts';
import { CLASS_COLOUR, cssColour } from '../../../../src/app/pictures/filmColour.ts';
import { classRunsOf, paintFilm, sampled } from '../../../../src/app/screens/run/filmMap.ts';
import { runningWanted } from '../../../../src/app/screens/run/runningWanted.ts';
import { neededFilm } from '../../../../src/report/film/neededFilm.ts';

const wanted = { target: 3.5e-6, tolerance: 1.5e-6 };
const seats = [
  { name: 'shallow', film: { target: 0.0025, tolerance: 0.0005 } },
  { name: 'rear' },
] as unknown as Parameters<typeof runningWanted>[0]['seats'];
const run = { speed: 1000 } as NonNullable<Parameters<typeof runningWanted>[0]['run']>;

test('in a running seat too thin is what does not part it, too thick more than twice its film', () => {
  const [low, high] = bandOf(runningWanted({ seats, run }, 'shallow'));
  expect(1000 * low).toBeCloseTo(Math.min(neededFilm(run), 0.006), 8);
  expect(1000 * high).toBeCloseTo(Math.max(neededFilm(run), 0.006), 8);
  // A journal right to one side of a seat with the film wanted leaves no more than that opposite.
  for (const share of [0.2, 0.7, 1])
    for (const angle of [0, 1, 2, 3])
      expect(0.003 * (1 - share * Math.cos(angle))).toBeLessThanOrEqual(1000 * high + 1e-12);
  expect(classOf(0.01, runningWanted({ seats, run }, 'rear'))).toBe('right');
});

test('sampled finer a film lies between its neighbours, joins at 0° and keeps its rows from the rear up', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -0.01, max: 0.05, noNaN: true }), { minLength: 12, maxLength: 12 }),
      (values) => {
        const film = Float32Array.from(values);
        const cells = { rows: 3, columns: 4, film };
        const { wide, high, values: fine } = sampled(cells, 4);
        expect([wide, high]).toEqual([16, 12]);
        const [least, most] = [Math.min(...film), Math.max(...film)];
        for (const value of fine) {
          expect(value).toBeGreaterThanOrEqual(least - 1e-9);
          expect(value).toBeLessThanOrEqual(most + 1e-9);
        }
        // Both ends of the page are half a sample from 0°: the one is the other reflected.
        const whole = sampled(cells, 1);
        expect(whole.values[0]).toBeCloseTo((film[2]! + film[5]!) / 2, 9);
        expect(whole.values[3 + 4 * 2]).toBeCloseTo((film[9]! + film[0]!) / 2, 9);
      },
    ),
    { numRuns: 100, seed: 2 },
  );
});

test('every place is painted once, in the fill and the lines of its class', () => {
  const film = Float32Array.from({ length: 8 * 4 }, (_, i) => ((i * 7) % 32) / 2000 - 0.002);
  const cells = { rows: 4, columns: 8, film };
  const grid = sampled(cells);
  const runs = classRunsOf(grid, wanted);
  expect(runs.reduce((sum, { from, to }) => sum + to - from, 0)).toBe(grid.wide * grid.high);
  for (const { kind, row, from, to } of runs)
    for (let i = from; i < to; i++) expect(classOf(grid.values[row * grid.wide + i]! / 1000, wanted)).toBe(kind);
  const painted: { fill: string; area: number; turns: number }[] = [];
  let [area, turns] = [0, 0];
  const context = {
    canvas: { width: 240, height: 120 },
    fillStyle: '',
    save: () => {},
    restore: () => {},
    beginPath: () => {},
    rect: (_x: number, _y: number, w: number, h: number) => {
      area += w * h;
    },
    clip: () => {},
    fillRect() {
      painted.push({ fill: this.fillStyle, area, turns: 0 });
      [area, turns] = [0, 0];
    },
    translate: () => {},
    rotate: () => {
      turns++;
      painted[painted.length - 1]!.turns = turns;
    },
    moveTo: () => {},
    lineTo: () => {},
    stroke: () => {},
  };
  paintFilm(context as unknown as CanvasRenderingContext2D, cells, wanted, 1, false);
  expect(painted.reduce((sum, one) => sum + one.area, 0)).toBeCloseTo(240 * 120, 6);
  for (const kind of ['pressed', 'thin', 'right', 'thick'] as const) {
    const found = painted.find(({ fill }) => fill === cssColour(CLASS_COLOUR[kind]))!;
    const share = runs.filter((one) => one.kind === kind).reduce((sum, { from, to }) => sum + to - from, 0);
    expect(found.area).toBeCloseTo((share * 240 * 120) / (grid.wide * grid.high), 6);
    expect(found.turns).toBe(PATTERN[kind]?.angles.length ?? 0);
  }
});
