/** The labels of the solid picture: over all demos, sizes and views none overlaps, and eight seats are told apart. */
import fc from 'fast-check';
import { PerspectiveCamera } from 'three';
import { describe, expect, test } from 'vitest';
import { createDrawing } from '../../../../src/app/pictures/drawing.ts';
import type { Drawn } from '../../../../src/app/pictures/drawn.ts';
import { discsOf, frameOf } from '../../../../src/app/pictures/sceneGeometry.ts';
import { shortNames } from '../../../../src/app/pictures/shortNames.ts';
import { seenFrom, VIEWS, type View } from '../../../../src/app/pictures/solid/camera.ts';
import { cutStation } from '../../../../src/app/pictures/solid/noseCut.ts';
import { planOf, tagsNow } from '../../../../src/app/pictures/solid/SceneTags.tsx';
import { createStaged } from '../../../../src/app/pictures/solid/staged.ts';
import { met, overlap, type Placed, placeTags, planned, type Spot } from '../../../../src/app/pictures/solid/tags.ts';
import { offset, standOf } from '../../../../src/app/pictures/solid/useCamera.ts';
import { DESIGNS, drawnAt, positionOf, pulled, touchOf } from './demos.ts';

const width = (text: string, size: number) => 0.6 * size * text.length;
const SIZES = [
  { width: 350, height: 330 },
  { width: 600, height: 380 },
  { width: 676, height: 350 },
  { width: 1200, height: 700 },
];
const FOV = 28;

/** The labels as the picture has them in a view. */
function seen(drawn: Drawn, name: View, size: { width: number; height: number }, system: 'metric' | 'inch' = 'metric') {
  const frame = frameOf(drawn);
  const { bushes, journal } = discsOf(drawn, frame);
  const cut = frame.scale * (cutStation(drawn) - frame.centre);
  const plan = planOf(
    drawn.seats.map((seat) => seat.name),
    system,
    size.width,
    width,
  );
  const discs = (at: number | null) => (at === null ? [...bushes, ...journal] : [[at, frame.halfHeight] as const]);
  const stand = standOf({ view: { name }, side: seenFrom(drawn), cut, discs, sector: 120, band: plan.band }, FOV, size);
  const camera = new PerspectiveCamera(FOV, size.width / size.height, 0.1, 60);
  camera.position.setFromSpherical(stand.at);
  camera.position.x += stand.target;
  camera.lookAt(stand.target, 0, 0);
  offset(camera, size, plan.band, stand.middle);
  camera.updateProjectionMatrix();
  const staged = createStaged(stand.opening);
  return tagsNow(camera, size, { drawing: createDrawing(drawn), frame, staged, system, plan }, width);
}

function expectClear(placed: readonly Placed[], { width: across, height }: { width: number; height: number }): void {
  for (const [i, a] of placed.entries()) {
    expect(a.x).toBeGreaterThanOrEqual(0);
    expect(a.x + a.width).toBeLessThanOrEqual(across + 1e-9);
    expect(a.y).toBeGreaterThanOrEqual(0);
    expect(a.y + a.height).toBeLessThanOrEqual(height);
    for (const b of placed.slice(i + 1)) {
      expect(overlap(a, b), `${a.lines} on ${b.lines}`).toBe(false);
      expect(met(a, b.leader) || met(b, a.leader), `a leader through ${a.lines} or ${b.lines}`).toBe(false);
      expect(leadersCross(a.leader, b.leader), `leaders of ${a.lines} and ${b.lines}`).toBe(false);
    }
  }
}

function leadersCross(a: readonly Spot[], b: readonly Spot[]): boolean {
  const side = (p: Spot, q: Spot, r: Spot) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return a.slice(1).some((to, i) =>
    b.slice(1).some((end, k) => {
      const [p, q, r, s] = [a[i]!, to, b[k]!, end];
      return side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0;
    }),
  );
}

describe('labels of the solid picture', () => {
  test.each(DESIGNS)('%s: apart, touching, pulled aside: nothing overlaps in any view or size', (_, design) => {
    const drawings = [drawnAt(design, positionOf(design)), drawnAt(design, touchOf(design)), pulled(design, 1)];
    for (const angle of [0, 0.5 * Math.PI, 2, Math.PI, 1.5 * Math.PI])
      for (const size of SIZES) expectClear(seen(pulled(design, angle), 'From the nose', size), size);
    for (const drawn of drawings)
      for (const name of VIEWS)
        for (const size of SIZES) {
          const placed = seen(drawn, name, size);
          expectClear(placed, size);
          const said = placed.flatMap(({ lines }) => lines).join(' ');
          if (name !== 'From the nose') for (const seat of drawn.seats) expect(said).toContain(seat.name);
        }
  });

  test('the ends of the axis are told, nose and rear, where both are seen', () => {
    for (const [, design] of DESIGNS)
      for (const name of ['From the side', 'Three-quarter'] as const) {
        const ends = seen(drawnAt(design, positionOf(design)), name, SIZES[2]!).filter(({ kind }) => kind === 'end');
        expect(ends.map(({ lines }) => lines[0])).toEqual(['nose', 'rear']);
        expect(ends[0]!.x).toBeGreaterThan(ends[1]!.x);
      }
  });

  test('in inches they stand as well', () => {
    for (const [, design] of DESIGNS)
      for (const size of SIZES)
        expectClear(seen(drawnAt(design, positionOf(design)), 'Three-quarter', size, 'inch'), size);
  });

  test('any seats anywhere: nothing overlaps, none is left out', () => {
    const spot = fc.record({
      x: fc.double({ min: 10, max: 340, noNaN: true }),
      y: fc.double({ min: 210, max: 320, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 340, max: 1300 }),
        (spots, across) => {
          const names = spots.map((_, i) => `bearing ${'abcdefgh'[i]} of the long spindle`);
          const plan = planned(names, '88.88 µm', across, width);
          const seats = spots.map((at, i) => ({ key: names[i]!, name: names[i]!, film: '2.50 µm', at }));
          const placed = placeTags(seats, [], plan, { width: across, height: 330 }, width);
          expectClear(placed, { width: across, height: 330 });
          expect(placed.filter(({ kind }) => kind === 'seat' || kind === 'number').length).toBe(spots.length);
        },
      ),
    );
  });
});

test('names that begin alike are told apart by what differs, at worst by number', () => {
  const names = Array.from({ length: 8 }, (_, i) => `bearing ${i + 1} at the nose`);
  const short = shortNames(names, 12 * 7, (text) => 7 * text.length);
  expect(short).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
  expect(shortNames(['front left', 'front right'], 50, (text) => 8 * text.length)).toEqual(['left', 'right']);
  expect(shortNames(['steep', 'shallow'], 200, (text) => 8 * text.length)).toEqual(['steep', 'shallow']);
  fc.assert(
    fc.property(fc.uniqueArray(fc.string({ minLength: 1, maxLength: 20 }), { minLength: 1, maxLength: 8 }), (any) => {
      expect(new Set(shortNames(any, 60, (text) => 8 * text.length)).size).toBe(any.length);
    }),
  );
});
