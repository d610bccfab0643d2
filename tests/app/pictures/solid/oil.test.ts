/** The oil in the round is that of the section: as thick, in the same order, closed, and no longer than its bush. */
import fc from 'fast-check';
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  MeshBasicMaterial,
  PerspectiveCamera,
  Raycaster,
  Mesh as Solid,
  Vector3,
} from 'three';
import { describe, expect, test } from 'vitest';
import type { Drawn } from '../../../../src/app/pictures/drawn.ts';
import type { Mesh } from '../../../../src/app/pictures/revolve.ts';
import {
  bushCutMesh,
  bushMesh,
  discsOf,
  facesOf,
  frameOf,
  journalMesh,
} from '../../../../src/app/pictures/sceneGeometry.ts';
import { anchorsOf } from '../../../../src/app/pictures/solid/anchors.ts';
import { seenFrom } from '../../../../src/app/pictures/solid/camera.ts';
import { arrowsOf } from '../../../../src/app/pictures/solid/contact.ts';
import {
  filmMesh,
  greatestFilm,
  leastFilm,
  placesAt,
  TOUCHING,
  touchMesh,
} from '../../../../src/app/pictures/solid/filmGeometry.ts';
import { cutSeat, cutStation, noseCutMeshes, ringAt, stepsOf } from '../../../../src/app/pictures/solid/noseCut.ts';
import { standOf } from '../../../../src/app/pictures/solid/useCamera.ts';
import { write } from '../../../../src/app/pictures/useSolid.ts';
import { SAME } from '../../../../src/engine/contact/film.ts';
import { DESIGNS, drawnAt, positionOf, pulled, touchOf } from './demos.ts';

/** Two of them in every state, the others in those that differ most. */
const all = DESIGNS.flatMap(([name, design]): [string, Drawn][] => [
  [`${name} as it stands`, drawnAt(design, positionOf(design))],
  [`${name} touching`, drawnAt(design, touchOf(design))],
  [`${name} pressed deep in`, drawnAt(design, touchOf(design) - 50e-6)],
  ...(name === 'steep-first' || name === 'rear-bearing'
    ? ([
        [`${name} wide open`, drawnAt(design, touchOf(design) + 200e-6)],
        [`${name} pulled`, pulled(design, 0.4)],
      ] as [string, Drawn][])
    : []),
]);

describe('the oil in the round', () => {
  test.each(all)('%s: every shell is closed and ends with its bush', (_, drawn) => {
    const frame = frameOf(drawn);
    const faces = facesOf(drawn).flat();
    for (const seat of drawn.seats.keys()) {
      const mesh = filmMesh(drawn, seat, frame, 1e-5);
      expect(openEdges(mesh)).toBe(0);
      // A lobe or a profile may move the drawn face itself by what it is drawn.
      const slack = drawn.at ? 2e-4 : 1e-7;
      for (let i = 0; i < mesh.positions.length; i += 3) {
        const z = mesh.positions[i]! / frame.scale + frame.centre;
        expect(z).toBeGreaterThan(Math.min(...faces) - slack);
        expect(z).toBeLessThan(Math.max(...faces) + slack);
      }
    }
  });

  test('a film that shrinks is drawn shrinking, in the section and in the round, down to the touch and past it', () => {
    for (const [, design] of DESIGNS) {
      const [touch, factor] = [touchOf(design), 150];
      fc.assert(
        fc.property(
          fc.double({ min: -6e-5, max: 6e-5, noNaN: true }),
          fc.double({ min: 1e-9, max: 1e-5, noNaN: true }),
          (at, step) => {
            const [wide, narrow] = [drawnAt(design, touch + at + step, factor), drawnAt(design, touch + at, factor)];
            if (wide.factor !== factor || narrow.factor !== factor) return;
            for (const seat of wide.seats.keys()) {
              const [a, b] = [thickness(wide, seat), thickness(narrow, seat)];
              const [m, n] = [leastFilm(wide, seat), leastFilm(narrow, seat)];
              if (a === null || b === null || m === null || n === null) continue;
              expect(Math.sign(a - b)).toBe(Math.sign(m - n));
              // And by the one factor, square to a straight seat; a slope that is off is itself drawn larger.
              if (wide.seats[seat]!.bush.length === 2)
                expect(Math.abs(a / factor - m)).toBeLessThanOrEqual(0.02 * Math.abs(m) + 1e-12);
            }
          },
        ),
        { numRuns: 15 },
      );
    }
  });

  test.each(all)('%s: what bears has its band and arrows on it, what stands clear has none', (title, drawn) => {
    const frame = frameOf(drawn);
    const arrows = arrowsOf(drawn, 120);
    for (const arrow of arrows) expect(Math.hypot(...arrow.way)).toBeCloseTo(1, 9);
    if (drawn.at) {
      expect(arrows.length).toBe(drawn.forces.length);
      return;
    }
    const bears = drawn.seats.filter(({ film }) => film.some((place) => place.film <= SAME));
    expect(new Set(arrows.map(({ key }) => key.split(' ')[0]))).toEqual(
      new Set(bears.map(({ name }) => name.split(' ')[0])),
    );
    const bands = drawn.seats.filter((_, seat) => touchMesh(drawn, seat, frame).indices.length > 0);
    if (title.endsWith('touching')) expect(bands.length).toBeGreaterThan(0);
    for (const arrow of arrows) expect(arrow.way[1]).toBeLessThan(0);
  });

  test.each(DESIGNS)(
    '%s: the band of the first touch is drawn in the buffers made while nothing touched',
    (_, design) => {
      const [touch, factor] = [touchOf(design), 150];
      const open = drawnAt(design, touch + 5e-6, factor);
      const frame = frameOf(open);
      const touching = drawnAt(design, touch, factor);
      const bands = open.seats.map((_, seat) => {
        const geometry = new BufferGeometry();
        write(geometry, touchMesh(open, seat, frame));
        const before = { ...geometry.attributes };
        const band = touchMesh(touching, seat, frame);
        write(geometry, band);
        expect(geometry.attributes).toEqual(before);
        expect([...geometry.getAttribute('position').array.slice(0, band.positions.length)]).toEqual([
          ...band.positions,
        ]);
        return geometry.drawRange.count;
      });
      expect(Math.max(...bands)).toBeGreaterThan(0);
    },
  );

  test('a shell that touches all along is as the touch is shown, any other as its film', () => {
    for (const [, design] of DESIGNS) {
      const drawn = drawnAt(design, touchOf(design));
      const frame = frameOf(drawn);
      for (const [seat, { oil }] of drawn.seats.entries()) {
        if (oil.length === 0 || drawn.at) continue;
        const { colours } = filmMesh(drawn, seat, frame, 1e-5);
        const all = oil.every(({ film }) => Math.abs(film) <= SAME);
        const isTouch = (k: number) => TOUCHING.every((part, c) => Math.abs(colours![3 * k + c]! - part) < 1e-6);
        for (let k = 0; k < colours!.length / 3; k++) expect(isTouch(k)).toBe(all);
      }
    }
  });

  test('bushes that stand far apart are two, each with the oil of its own seats', () => {
    const count = (name: string) => facesOf(all.find(([title]) => title === `${name} as it stands`)![1]).length;
    expect(count('rear-bearing')).toBe(2);
    expect(count('opposed-cones')).toBe(2);
    expect(count('steep-first')).toBe(1);
    const [, drawn] = all.find(([title]) => title === 'rear-bearing as it stands')!;
    const between = (facesOf(drawn)[0]![1] + facesOf(drawn)[1]![0]) / 2;
    const frame = frameOf(drawn);
    const mesh = bushMesh(drawn, frame, 120);
    for (let i = 0; i < mesh.indices.length; i += 3) {
      const z = [0, 1, 2].map((k) => mesh.positions[3 * mesh.indices[i + k]!]! / frame.scale + frame.centre);
      expect(Math.min(...z) < between && Math.max(...z) > between).toBe(false);
    }
  });
});

describe('the cut from the nose', () => {
  test('shows how far the axis lies aside: the film there is least where it was pulled to, as the half sections have it', () => {
    for (const [, design] of DESIGNS)
      for (const angle of [0, 1, 2.5]) {
        const drawn = pulled(design, angle);
        const station = cutStation(drawn);
        const rings = Array.from({ length: 24 }, (_, j) => ringAt(drawn, (2 * Math.PI * j) / 24, station)!);
        const films = rings.map(({ film }) => film);
        const wide = rings.map(({ inner, outer, film }) => (film < 0 ? -1 : 1) * (outer - inner));
        expect(wide.indexOf(Math.min(...wide))).toBe(films.indexOf(Math.min(...films)));
        const toward = Math.PI - (2 * Math.PI * films.indexOf(Math.min(...films))) / 24;
        const aside = drawn.aside(station, toward);
        if (Math.abs(aside) > 1e-6) expect(aside).toBeGreaterThan(0);
      }
  });

  test.each(all)('%s: lies in its seat, inside the bush, nothing of it is missing', (_, drawn) => {
    const frame = frameOf(drawn);
    const seat = drawn.seats[cutSeat(drawn)]!;
    const station = cutStation(drawn);
    expect(station).toBeGreaterThan(seat.bush[0]![0]);
    expect(station).toBeLessThan(seat.bush.at(-1)![0]);
    const { journal, bush, film } = noseCutMeshes(drawn, frame, frame.scale * (station - frame.centre), 0, 1e-5);
    for (const mesh of [journal, bush]) {
      expect(mesh.indices.length).toBeGreaterThan(0);
      expect(mesh.positions.every(Number.isFinite)).toBe(true);
    }
    expect(film.positions.every(Number.isFinite)).toBe(true);
    expect(noseCutMeshes(drawn, frame, Number.POSITIVE_INFINITY, 0, 1e-5).journal.indices.length).toBe(0);
  });
});

describe('the steps of the cut from the nose', () => {
  test('the shallow and the steep film of a double cone are both in it, each as thick as the drawing has it', () => {
    const drawn = all.find(([title]) => title === 'steep-first as it stands')![1];
    const frame = frameOf(drawn);
    const steps = stepsOf(drawn);
    expect(steps.map(({ seat }) => drawn.seats[seat]!.name)).toEqual(['shallow', 'steep']);
    const clip = frame.scale * (steps[0]!.station - frame.centre);
    const rings = noseCutMeshes(drawn, frame, clip, 0, 1e-5);
    const once = noseCutMeshes(drawn, frame, clip, 0, 1e-5, false);
    expect(rings.film.indices.length).toBe(2 * once.film.indices.length);
    for (const step of steps) {
      const ring = ringAt(drawn, 0, step.station, step)!;
      const { film } = drawn.seats[step.seat]!;
      expect(ring.film).toBeGreaterThanOrEqual(Math.min(...film.map((place) => place.film)) - 1e-12);
      expect(ring.film).toBeLessThanOrEqual(Math.max(...film.map((place) => place.film)) + 1e-12);
      expect(ring.outer - ring.inner).toBeGreaterThan(0);
    }
  });

  test.each(all)(
    '%s: each lies nearer the nose and further out than the one before, and all in one plane',
    (_, drawn) => {
      const frame = frameOf(drawn);
      const steps = stepsOf(drawn);
      for (const [i, { station, from }] of steps.entries()) {
        if (i === 0) continue;
        expect(station).toBeGreaterThan(steps[0]!.station);
        expect(from).toBeGreaterThan(steps[i - 1]!.from);
      }
      const clip = frame.scale * (steps[0]!.station - frame.centre);
      for (const mesh of Object.values(noseCutMeshes(drawn, frame, clip, 0, 1e-5)))
        for (let k = 0; k < mesh.positions.length; k += 3) expect(mesh.positions[k]!).toBeCloseTo(clip, 6);
    },
  );
});

test('a label of the solid points at film that is seen, from wherever it is looked at, or is told to be behind metal', () => {
  let [seen, hidden] = [0, 0];
  for (const [name, design] of DESIGNS) {
    const drawn = drawnAt(design, positionOf(design));
    const frame = frameOf(drawn);
    const metal = [journalMesh(drawn, frame), bushMesh(drawn, frame, 120), bushCutMesh(drawn, frame, 120)].map(solid);
    for (const turn of [0, 0.4, 0.9, 1.5, 2.2, 3, 4, 5]) {
      const eye = new Vector3(2.4 * Math.sin(turn), 1.6, 4 * Math.cos(turn));
      for (const anchor of anchorsOf(
        drawn,
        frame,
        { clip: Number.POSITIVE_INFINITY, sector: 120 },
        eye.toArray(),
        'metric',
      )) {
        const at = new Vector3(...anchor.at);
        const [first] = new Raycaster(eye, at.clone().sub(eye).normalize()).intersectObjects(metal);
        const clear = !first || first.distance > at.distanceTo(eye) - 0.03;
        if (anchor.hidden) hidden++;
        else {
          seen++;
          expect(clear, `${name} ${anchor.name} from ${turn}`).toBe(true);
        }
      }
    }
  }
  expect(seen).toBeGreaterThan(20);
  expect(hidden).toBeGreaterThan(5);
});

test('from where it is looked at first no metal hides the film of a seat', () => {
  for (const [name, design] of DESIGNS) {
    const drawn = drawnAt(design, positionOf(design));
    const frame = frameOf(drawn);
    const { bushes, journal } = discsOf(drawn, frame);
    const view = { name: 'Three-quarter' } as const;
    const discs = () => [...bushes, ...journal];
    const stand = standOf({ view, side: seenFrom(drawn), cut: 0, discs, sector: 120, band: 40 }, 28, {
      width: 676,
      height: 350,
    });
    const camera = new PerspectiveCamera();
    camera.position.setFromSpherical(stand.at);
    const metal = [journalMesh(drawn, frame), bushMesh(drawn, frame, 120), bushCutMesh(drawn, frame, 120)].map(solid);
    const eye = camera.position.toArray();
    for (const anchor of anchorsOf(drawn, frame, stand.opening, eye, 'metric')) {
      const at = new Vector3(...anchor.at);
      const ray = new Raycaster(camera.position, at.clone().sub(camera.position).normalize());
      const [first] = ray.intersectObjects(metal);
      // The journal's own surface lies just behind the oil.
      if (first)
        expect(first.distance, `${name} ${anchor.name}`).toBeGreaterThan(at.distanceTo(camera.position) - 1e-3);
    }
  }
});

test('the greatest film is that of the drawing', () => {
  for (const [, drawn] of all)
    if (!drawn.at)
      expect(greatestFilm(drawn)).toBe(Math.max(0, ...drawn.seats.flatMap(({ film }) => film.map((f) => f.film))));
});

/** Least drawn distance (m) between the two sides of a shell, square to the seat; below 0 where they cross. */
function thickness(drawn: Drawn, seat: number): number | null {
  const { bush, film } = drawn.seats[seat]!;
  const [first, last] = [bush[0]!, bush[bush.length - 1]!];
  const length = Math.hypot(last[0] - first[0], last[1] - first[1]);
  const across = [(last[1] - first[1]) / length, -(last[0] - first[0]) / length] as const;
  const wide = placesAt(drawn, seat, 0)
    // Where the oil is cut off by the bush's face it is not as thick as the film.
    .filter((place) =>
      film.some(({ journal }) => Math.hypot(journal[0] - place.journal[0], journal[1] - place.journal[1]) < 1e-12),
    )
    .map((place) => (place.journal[0] - place.bush[0]) * across[0] + (place.journal[1] - place.bush[1]) * across[1]);
  return wide.length === film.length ? Math.min(...wide) : null;
}

/** Edges that are not run along once each way, corners in one place taken for one. */
function openEdges({ positions, indices }: Mesh): number {
  const places = new Map<string, number>();
  const known = Array.from({ length: positions.length / 3 }, (_, i) => {
    const key = `${Math.round(positions[3 * i]! * 1e5)} ${Math.round(positions[3 * i + 1]! * 1e5)} ${Math.round(positions[3 * i + 2]! * 1e5)}`;
    if (!places.has(key)) places.set(key, places.size);
    return places.get(key)!;
  });
  const edges = new Map<number, number>();
  for (let t = 0; t < indices.length; t += 3) {
    const corners = [0, 1, 2].map((k) => known[indices[t + k]!]!);
    if (new Set(corners).size < 3) continue;
    for (let k = 0; k < 3; k++) {
      const [a, b] = [corners[k]!, corners[(k + 1) % 3]!];
      const key = Math.min(a, b) * places.size + Math.max(a, b);
      edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  }
  return [...edges.values()].filter((sum) => sum !== 0).length;
}

function solid({ positions, indices }: Mesh): Solid {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setIndex(new BufferAttribute(indices, 1));
  return new Solid(geometry, new MeshBasicMaterial({ side: DoubleSide }));
}
