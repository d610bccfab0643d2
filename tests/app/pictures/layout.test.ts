/** Where labels and dimension lines stand: nothing over another, in whatever room there is. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, crosses, placeTags, type Tagged } from '../../../src/app/charts/chartTags.ts';
import { dimensionRows, type Span } from '../../../src/app/pictures/dimensionRows.ts';
import { dimensionsOf } from '../../../src/app/pictures/dimensions.ts';
import { drawnPair } from '../../../src/app/pictures/drawn.ts';
import { scaleBar } from '../../../src/app/pictures/scaleBar.ts';
import { sectionFrame } from '../../../src/app/pictures/sectionFrame.ts';
import {
  dimensionsOnScreen,
  type Measures,
  onScreen,
  placing,
  type SpanOnScreen,
} from '../../../src/app/pictures/sectionLayout.ts';
import { placedNotes } from '../../../src/app/pictures/sectionNotes.ts';
import { spread } from '../../../src/app/pictures/spread.ts';
import { bounded, zoomed } from '../../../src/app/pictures/useView.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { TENTH } from '../../../src/design/units.ts';
import { seatLines } from '../../../src/engine/contact/fit.ts';
import { metres, toSeat } from '../../../src/report/convert.ts';
import { fitOf } from '../../../src/report/fit/fitOf.ts';

const folder = new URL('../../../assets/designs/', import.meta.url);
const DEMO_DESIGNS = readdirSync(folder)
  .filter((file) => file.endsWith('.conepair.json'))
  .map((file) => {
    const parsed = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
    if (!parsed.ok) throw new Error(`${file}: ${parsed.errors[0]?.message}`);
    return { file, design: parsed.design };
  });

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** As wide as the widest letters of the page. */
const measures: Measures = { width: (text, size) => text.length * size * 0.62 };

test('labels spread side by side keep their order, their distance and the room', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ at: number(-50, 450), size: number(5, 60) }), { minLength: 1, maxLength: 8 }),
      (labels) => {
        const wanted = labels.sort((a, b) => a.at - b.at);
        const needed = wanted.reduce((sum, { size }) => sum + size, 10 * (wanted.length - 1));
        const middles = spread(wanted, 0, 400, 10);
        if (needed > 400) return expect(middles).toBeNull();
        middles!.forEach((middle, i) => {
          expect(middle - wanted[i]!.size / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(middle + wanted[i]!.size / 2).toBeLessThanOrEqual(400 + 1e-6);
          if (i > 0)
            expect(middle - middles![i - 1]!).toBeGreaterThanOrEqual(
              (wanted[i]!.size + wanted[i - 1]!.size) / 2 + 10 - 1e-6,
            );
        });
      },
    ),
    { seed: 4, numRuns: 300 },
  );
});

test('a label with room stands over what it names', () => {
  expect(
    spread(
      [
        { at: 100, size: 40 },
        { at: 300, size: 40 },
      ],
      0,
      400,
      10,
    ),
  ).toEqual([100, 300]);
});

test('dimension lines of one row never meet, and figures have room between their arrow heads or stand outside', () => {
  const span = fc
    .record({ low: number(0, 300), length: number(1, 200), figure: number(20, 70) })
    .map(({ low, length, figure }): Span => ({ low, high: low + length, figure }));
  fc.assert(
    fc.property(fc.array(span, { minLength: 1, maxLength: 7 }), (spans) => {
      const rows = dimensionRows(spans, { low: 0, high: 500 });
      rows.forEach((row, i) => {
        if (row.within) expect(spans[i]!.high - spans[i]!.low).toBeGreaterThan(spans[i]!.figure);
        else
          expect(
            row.figureAt + spans[i]!.figure / 2 < spans[i]!.low || row.figureAt - spans[i]!.figure / 2 > spans[i]!.high,
          ).toBe(true);
        rows.slice(i + 1).forEach((other) => {
          if (other.row === row.row) expect(row.from >= other.to || other.from >= row.to).toBe(true);
        });
      });
    }),
    { seed: 5, numRuns: 300 },
  );
});

const figureBox = (span: SpanOnScreen, upright: boolean): Box => {
  const half = measures.width(span.text, 12) / 2;
  return upright
    ? { left: span.line - 14, right: span.line - 3, top: span.figureAt - half, bottom: span.figureAt + half }
    : { left: span.figureAt - half, right: span.figureAt + half, top: span.line - 14, bottom: span.line - 3 };
};
const meet = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

test.each(DEMO_DESIGNS)('$file: figures and notes meet nothing on a phone, a tablet, a wide screen', ({ design }) => {
  const seats = design.seats.map((seat) => seatLines(toSeat(seat)));
  const drawn = drawnPair(seats, metres(design.position ?? 0), 400);
  const frame = sectionFrame(drawn);
  for (const size of [
    { width: 356, height: 360 },
    { width: 786, height: 410 },
    { width: 680, height: 430 },
  ]) {
    for (const system of ['metric', 'inch'] as const) {
      for (const part of ['bush', 'journal'] as const) {
        const dimensions = dimensionsOf(design, drawn, part, system);
        const at = placing(frame, dimensions, size, measures);
        expect(at.level).not.toBe('none');
        const { lengths, rear, nose } = dimensionsOnScreen(frame, dimensions, at, size, measures);
        const boxes = [
          ...lengths.map((span) => figureBox(span, false)),
          ...[...rear, ...nose].map((span) => figureBox(span, true)),
        ];
        boxes.forEach((box, i) => {
          for (const other of boxes.slice(i + 1))
            expect(meet(box, other), `${part} ${system} ${size.width}`).toBe(false);
          expect(box.top).toBeGreaterThan(at.notesEnd);
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(size.width);
          expect(box.bottom).toBeLessThanOrEqual(size.height - 40);
        });
      }
    }
  }
});

test('notes stand apart in one row whatever their number, so that no leader passes through one', () => {
  fc.assert(
    fc.property(
      fc.array(number(0, 356), { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 1, max: 40 }),
      (places, letters) => {
        const notes = placedNotes(
          places.map((x, i) => ({
            name: `${i}`.padEnd(letters, 'n'),
            film: '12.34 µm',
            taper: '1:9.541',
            at: { x, y: 200 },
          })),
          { level: 'full', scale: 1, middle: { x: 0, y: 0 }, station: 0, notesEnd: 44 },
          { width: 356, height: 300 },
          // As the page does where it cannot measure.
          (text, size) => text.length * size * 0.64,
        );
        expect(notes.length).toBe(places.length);
        notes.slice(1).forEach((note, i) => {
          const before = notes[i]!;
          const half = (n: typeof note) => Math.max(n.lines[0].length * 14 * 0.64, n.lines[1].length * 12 * 0.64) / 2;
          expect(note.x - before.x).toBeGreaterThanOrEqual(
            Math.min(half(note) + half(before), (356 - 12 - 14 * (places.length - 1)) / places.length) - 1e-6,
          );
          expect(note.at.x).toBeGreaterThanOrEqual(before.at.x);
        });
      },
    ),
    { seed: 6, numRuns: 200 },
  );
});

test('on a phone no figure of three seats is cut: where a line is too long the film stands below the name', () => {
  const notes = placedNotes(
    ['rear', 'shallow', 'steep'].map((name, i) => ({
      name,
      film: '−0.32 ± 0.12 µm',
      taper: '',
      at: { x: 60 + 100 * i, y: 200 },
    })),
    { level: 'none', scale: 1, middle: { x: 0, y: 0 }, station: 0, notesEnd: 44 },
    { width: 356, height: 300 },
    (text, size) => text.length * size * 0.58,
  );
  expect(notes.map(({ lines }) => lines)).toEqual(
    ['rear', 'shallow', 'steep'].map((name) => [name, '−0.32 ± 0.12 µm']),
  );
});

test('the scale bar turns into a length when it is large, and shows what it says', () => {
  expect(scaleBar(0.4 * 1000, 100, 'metric').text).toBe('200 µm');
  expect(scaleBar(40, 100, 'metric').text).toBe('2 mm');
  expect(scaleBar(40, 100, 'inch').text).toBe('0.05 in');
  expect(scaleBar(1, 120, 'inch').text).toBe('2 in');
  expect(scaleBar(100 / TENTH, 120, 'inch').text).toBe('1 tenth');
  fc.assert(
    fc.property(
      number(0.1, 1e6),
      number(40, 300),
      fc.constantFrom('metric' as const, 'inch' as const),
      (perMm, room, system) => {
        const { width, text } = scaleBar(perMm, room, system);
        expect(width).toBeLessThanOrEqual(room * (1 + 1e-9));
        expect(width).toBeGreaterThan(room * 0.39);
        const [count, unit] = text.split(' ');
        const size = { µm: 0.001, mm: 1, tenth: TENTH, tenths: TENTH, in: 25.4 }[unit!]!;
        expect(width).toBeCloseTo(Number(count) * size * perMm, 6);
        if (unit === 'tenths') expect(Number(count)).toBeLessThan(100);
        if (unit === 'µm') expect(Number(count)).toBeLessThan(1000);
      },
    ),
    { seed: 7, numRuns: 300 },
  );
});

test('zoom keeps the place under the pointer, and half the drawing in sight', () => {
  fc.assert(
    fc.property(
      fc.record({ zoom: number(1, 20), x: number(-200, 200), y: number(-200, 200) }),
      number(0.5, 3),
      number(-300, 300),
      number(-300, 300),
      (view, by, px, py) => {
        const after = zoomed(view, by, { x: px, y: py });
        // The place of the drawing under the pointer, before and after.
        expect((px - after.x) / after.zoom).toBeCloseTo((px - view.x) / view.zoom, 9);
        expect((py - after.y) / after.zoom).toBeCloseTo((py - view.y) / view.zoom, 9);
        const kept = bounded({ ...after, x: 1e6 }, { width: 600, height: 400 });
        expect(kept.x).toBe(300 * after.zoom);
      },
    ),
    { seed: 8, numRuns: 200 },
  );
});

test('names and triangles on the chart stand on no line and on no other', () => {
  const plot: Box = { left: 50, right: 780, top: 40, bottom: 340 };
  fc.assert(
    fc.property(
      fc.array(fc.record({ slope: number(-3, 3), at: number(0, 300) }), { minLength: 1, maxLength: 4 }),
      (seats) => {
        const lines = seats.map(({ slope, at }): Tagged => {
          const y = (x: number) => at - slope * (x - 400) * 0.3;
          return {
            line: [50, 400, 780].map((x) => [x, y(x)] as const),
            at: y,
            shapes: [
              { run: 60, width: 110, height: 32 },
              { run: 0, width: 50, height: 16 },
            ],
          };
        });
        const tags = placeTags(lines, plot, [], []);
        tags.forEach((tag, i) => {
          if (!tag) return;
          for (const { line } of lines) expect(crosses(line, tag.text, 0)).toBe(false);
          for (const other of tags.slice(i + 1)) if (other) expect(meet(tag.text, other.text)).toBe(false);
          expect(tag.from[1]).toBe(lines[i]!.at(tag.from[0]));
          expect(tag.to[1]).toBe(lines[i]!.at(tag.to[0]));
        });
        // One line alone that crosses the plot always has its name.
        if (seats.length === 1 && seats[0]!.at > 90 && seats[0]!.at < 290) expect(tags[0]).not.toBeNull();
      },
    ),
    { seed: 9, numRuns: 200 },
  );
});

test('a journal at rest is in sight with all its seats from its touch noseward, however narrow the picture', () => {
  for (const { file, design } of DEMO_DESIGNS) {
    const seats = design.seats.map(toSeat).map(seatLines);
    const touch = fitOf(design).firstPosition ?? 0;
    for (const position of [0, 0.005, 0.02, 0.05, 0.3].map((open) => touch + open)) {
      const drawn = drawnPair(seats, metres(position), 1e6);
      const frame = sectionFrame(drawn);
      for (const size of [
        { width: 438, height: 641 },
        { width: 346, height: 462 },
        { width: 358, height: 230 },
        { width: 900, height: 420 },
      ]) {
        const at = placing(frame, null, size, measures);
        const where = `${file} at ${position}, ${size.width} px wide`;
        // As far as it is broken off, its handle beside it.
        expect(at.middle.x + (frame.journalRight - at.station) * at.scale, where).toBeLessThanOrEqual(size.width);
        for (const { journal, bush } of drawn.seats)
          for (const { x } of [...journal, ...bush].map((point) => onScreen(at, point, 1))) {
            expect(x, where).toBeGreaterThanOrEqual(0);
            expect(x, where).toBeLessThanOrEqual(size.width);
          }
      }
    }
  }
});
