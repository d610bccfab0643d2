import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PATTERN } from '../../../../src/app/pictures/FilmPaint.tsx';
import { CLASS_TEXT, classOf } from '../../../../src/app/pictures/filmClass.ts';
import { CLASS_COLOUR, cssColour } from '../../../../src/app/pictures/filmColour.ts';
import { classRunsOf, paintFilm, rubs, sampled } from '../../../../src/app/screens/run/filmMap.ts';
import { heldAgainst } from '../../../../src/app/screens/run/runningFilm.ts';
import { runningPair } from '../../../../src/app/screens/run/runningPair.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { parseDesign } from '../../../../src/design/parse.ts';
import { toSeats } from '../../../../src/report/convert.ts';
import type { RunFields } from '../../../../src/report/film/fields.ts';
import { neededFilm } from '../../../../src/report/film/neededFilm.ts';
import { runsNow } from '../../../../src/report/film/now.ts';
import { seatLines } from '../../../../src/report/inFrame.ts';
import { solve } from '../../../../src/report/report.ts';

const wanted = { target: 3.5e-6, tolerance: 1.5e-6 };
const folder = new URL('../../../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).map((file): [string, Design] => {
  const read = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
  if (!read.ok) throw new Error(file);
  return [file, read.design];
});

test.each(demos)(
  '%s: a film is of one class on the map, in the running section and in every other picture',
  (_, of) => {
    const design = { ...of, run: of.run ?? { speed: 1000 } } as Design;
    const lines = toSeats(design).map(seatLines);
    for (const [i, { name }] of design.seats.entries()) {
      const { wanted: held } = heldAgainst(design, name);
      fc.assert(
        fc.property(fc.double({ min: -0.005, max: 0.05, noNaN: true }), (film) => {
          const [run] = classRunsOf({ wide: 1, high: 1, values: Float64Array.of(film) }, held);
          expect(run!.kind).toBe(classOf(film / 1000, lines[i]!.wanted));
        }),
        { numRuns: 100, seed: 4 },
      );
    }
    // And by the very same limits: what stands on the edge of the one stands on that of the other.
    const pose = { x: 0, y: 0, z: 0.02, tiltX: 0, tiltY: 0 };
    const pair = runningPair(design, { pose } as RunFields, 1, null);
    for (const [i, seat] of lines.entries()) expect(pair.seats[i]!.wanted).toEqual(seat.wanted);
    expect(lines.map((seat) => seat.wanted?.target)).toEqual(
      design.seats.map(({ name }) => heldAgainst(design, name).wanted?.target),
    );
  },
);

test('the headline says the class of no figure, so that it contradicts no map', () => {
  const run = solve(demos.find(([file]) => file.startsWith('steep-first'))![1], 'here', ['film']).film!;
  for (const asWanted of [true, false]) {
    const now = runsNow(run, 'metric', asWanted);
    expect(now).toMatch(/\d µm/);
    for (const told of now.split(/[:.] /).filter((part) => /\d µm/.test(part)))
      for (const word of Object.values(CLASS_TEXT).filter((text) => text !== CLASS_TEXT.plain))
        expect(told).not.toContain(word);
  }
});

test('metal rubs where a film is less than parts the surfaces, whatever is wanted; where it touches it does that', () => {
  const held = heldAgainst(demos[0]![1], demos[0]![1].seats[0]!.name);
  const needed = neededFilm(demos[0]![1].run!);
  expect(held.needed).toBe(needed);
  expect([0.99 * needed, 1.01 * needed, 0, -0.001].map((film) => rubs(film, held))).toEqual([
    true,
    false,
    false,
    false,
  ]);
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
  paintFilm(context as unknown as CanvasRenderingContext2D, cells, { wanted, needed: 0 }, 1, false);
  expect(painted.reduce((sum, one) => sum + one.area, 0)).toBeCloseTo(240 * 120, 6);
  for (const kind of ['pressed', 'thin', 'right', 'thick'] as const) {
    const found = painted.find(({ fill }) => fill === cssColour(CLASS_COLOUR[kind]))!;
    const share = runs.filter((one) => one.kind === kind).reduce((sum, { from, to }) => sum + to - from, 0);
    expect(found.area).toBeCloseTo((share * 240 * 120) / (grid.wide * grid.high), 6);
    expect(found.turns).toBe(PATTERN[kind]?.angles.length ?? 0);
  }
});
