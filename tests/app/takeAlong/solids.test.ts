/** The models: closed surfaces, of the volume that the sections have, in the unit of their format. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawnPair, type Point } from '../../../src/app/pictures/drawn.ts';
import { type Solid, solidOf, stlOf, sweptSolid, volumeOf } from '../../../src/app/takeAlong/solids.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { seatLines } from '../../../src/engine/contact/fit.ts';
import { metres, toSeats } from '../../../src/report/convert.ts';

const read = parseDesign(
  readFileSync(join(import.meta.dirname, '../../../assets/designs/steep-first.conepair.json'), 'utf8'),
);
if (!read.ok) throw new Error('the demo is no design');
const { design } = read;
const drawn = drawnPair(toSeats(design).map(seatLines), metres(design.position ?? 0), 400);

/** Every edge run along once each way: nothing open, nothing inside out. */
function openEdges({ indices }: Solid): number {
  const edges = new Map<string, number>();
  for (let t = 0; t < indices.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const [a, b] = [indices[t + k]!, indices[t + ((k + 1) % 3)]!];
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  return [...edges.values()].filter((sum) => sum !== 0).length;
}

/** Share of a circle that a polygon of 120 corners in it fills: sin(2π/n)·n/(2π). */
const POLYGON = (120 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 120);

/** Volume under a section swept round, by the frustum of each piece: π/3·h·(r² + r·s + s²). */
const sweptVolume = (section: readonly Point[]) =>
  POLYGON *
  section.reduce((sum, [z, r], i) => {
    const [next, s] = section[(i + 1) % section.length]!;
    return sum + (Math.PI / 3) * (next - z) * (r * r + r * s + s * s);
  }, 0);

test('any half section: closed, outward, and of the volume of its frusta', () => {
  const section = fc
    .array(
      fc.tuple(fc.double({ min: 1e-4, max: 0.02, noNaN: true }), fc.double({ min: 1e-3, max: 0.03, noNaN: true })),
      {
        minLength: 1,
        maxLength: 12,
      },
    )
    .map((steps) => {
      let z = 0;
      const line = steps.map(([step, r]): Point => {
        z += step;
        return [z, r];
      });
      return [[line[0]![0], 0] as Point, ...line, [line[line.length - 1]![0] + 0.01, 0] as Point];
    });
  fc.assert(
    fc.property(section, (points) => {
      const solid = sweptSolid(points, false);
      expect(openEdges(solid)).toBe(0);
      expect(volumeOf(solid)).toBeGreaterThan(0);
      expect(volumeOf(solid) / sweptVolume(points)).toBeCloseTo(1, 9);
    }),
    { numRuns: 60 },
  );
});

test('journal and bush of a demo are closed, and the journal goes into the bush', () => {
  const [journal, bush] = [solidOf(drawn, 'journal'), solidOf(drawn, 'bush')];
  expect([openEdges(journal), openEdges(bush)]).toEqual([0, 0]);
  expect(Math.min(volumeOf(journal), volumeOf(bush))).toBeGreaterThan(0);
  const extent = ({ positions }: Solid) =>
    Math.max(...positions.filter((_, i) => i % 3 === 2)) - Math.min(...positions.filter((_, i) => i % 3 === 2));
  expect(extent(bush)).toBeGreaterThan(extent(journal));
});

test('STL in millimetres: as many triangles as it says, each with its own outward normal', () => {
  const solid = solidOf(drawn, 'bush');
  const view = new DataView(stlOf(drawn, 'bush'));
  const head = new TextDecoder().decode(new Uint8Array(view.buffer, 0, 80));
  expect(head).toMatch(new RegExp(`^Conepair bush; mm; gaps drawn ${Math.round(drawn.factor)} times as large\0*$`));
  const count = view.getUint32(80, true);
  expect(count).toBe(solid.indices.length / 3);
  expect(view.byteLength).toBe(84 + 50 * count);
  const number = (at: number) => view.getFloat32(at, true);
  let [largest, volume] = [0, 0];
  for (let t = 0; t < count; t++) {
    const at = 84 + 50 * t;
    const p = (k: number) => [0, 1, 2].map((c) => number(at + 12 * k + 4 * c)) as [number, number, number];
    const [n, a, b, c] = [p(0), p(1), p(2), p(3)];
    largest = Math.max(largest, ...[a, b, c].map(([, y, z]) => Math.hypot(y, z)));
    const cross = [
      (b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1]),
      (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2]),
      (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]),
    ];
    const length = Math.hypot(...cross);
    if (length > 1e-9) expect(cross.reduce((sum, x, k) => sum + x * n[k]!, 0) / length).toBeCloseTo(1, 3);
    volume +=
      (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) /
      6;
  }
  // The wall stands 1.35 times as far out as the widest bore, which is some 12 mm.
  expect(largest).toBeGreaterThan(12);
  expect(largest).toBeLessThan(60);
  expect(volume / (1e9 * volumeOf(solid))).toBeCloseTo(1, 4);
});
