import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Drawn, drawnPair, type Point } from '../../../src/app/pictures/drawn.ts';
import { filmColour, INTERFERENCE, luminance, touchColour } from '../../../src/app/pictures/filmColour.ts';
import { leaningOf } from '../../../src/app/pictures/leaning.ts';
import type { Mesh } from '../../../src/app/pictures/revolve.ts';
import { bushCutMesh, bushMesh, frameOf, journalMesh, roundAbove } from '../../../src/app/pictures/sceneGeometry.ts';
import { framing } from '../../../src/app/pictures/solid/camera.ts';
import {
  filmCutMesh,
  filmMesh,
  greatestFilm,
  touches,
  touchMesh,
} from '../../../src/app/pictures/solid/filmGeometry.ts';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { fit as fitOf, seatLines } from '../../../src/engine/contact/fit.ts';
import { reachToward } from '../../../src/engine/play/reach.ts';
import { heldAt } from '../../../src/engine/play/shake.ts';
import { spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { toSeats } from '../../../src/report/convert.ts';

const folder = new URL('../../../assets/designs/', import.meta.url);
const designs = readdirSync(folder)
  .filter((name) => name.endsWith('.conepair.json'))
  .map((name): [string, Design] => {
    const result = parseDesign(readFileSync(new URL(name, folder), 'utf8'));
    if (!result.ok) throw new Error(name);
    return [name, result.design];
  });

/** Apart, at first touch, and pressed 5 µm in. */
const drawings = designs.flatMap(([name, design]): [string, Drawn][] => {
  const seats = toSeats(design);
  const first = fitOf(seats, 0).firstPosition ?? 0;
  return [
    [`${name} as it stands`, (design.position ?? 0) / 1000],
    [`${name} touching`, first],
    [`${name} pressed in`, first - 5e-6],
  ].map(([title, position]) => [title as string, drawnPair(seats.map(seatLines), position as number, 400)]);
});

/** Back from the scene to metres: every corner's station and radius. */
function corners({ positions }: Mesh, drawn: Drawn): [number, number][] {
  const { centre, scale } = frameOf(drawn);
  return Array.from({ length: positions.length / 3 }, (_, i) => [
    positions[3 * i]! / scale + centre,
    Math.hypot(positions[3 * i + 1]!, positions[3 * i + 2]!) / scale,
  ]);
}

const all = (drawn: Drawn, sector = 120): Mesh[] => {
  const frame = frameOf(drawn);
  const max = greatestFilm(drawn);
  return [
    journalMesh(drawn, frame),
    bushMesh(drawn, frame, sector),
    bushCutMesh(drawn, frame, sector),
    ...drawn.seats.flatMap((_, seat) => [
      filmMesh(drawn, seat, frame, max),
      filmCutMesh(drawn, seat, frame, sector, max),
      touchMesh(drawn, seat, frame),
    ]),
  ];
};

describe('the solids of the scene', () => {
  test.each(drawings)('%s: journal and bush pass through every drawn point', (_, drawn) => {
    for (const [part, mesh] of [
      ['journal', journalMesh(drawn, frameOf(drawn))],
      ['bush', bushMesh(drawn, frameOf(drawn), 120)],
    ] as const) {
      const found = corners(mesh, drawn);
      expect(drawn.seats.every((seat) => seat[part].length < 60)).toBe(true);
      for (const [z, r] of drawn.seats.flatMap((seat) => seat[part]))
        expect(found.some((corner) => Math.abs(corner[0] - z) < 1e-7 && Math.abs(corner[1] - r) < 1e-7)).toBe(true);
    }
  });

  test.each(drawings)(
    '%s: numbers everywhere, corners that exist, normals of length 1 that agree with the winding',
    (_, drawn) => {
      for (const sector of drawn === drawings[0]![1] ? [0, 120, 360] : [120]) {
        for (const { positions, normals, indices, colours } of all(drawn, sector)) {
          for (const list of [positions, normals, colours ?? []]) expect(list.every(Number.isFinite)).toBe(true);
          expect(normals.length).toBe(positions.length);
          if (colours) expect(colours.length).toBe(positions.length);
          expect(indices.every((index) => index < positions.length / 3)).toBe(true);
          const at = (list: Float32Array, i: number) => [list[3 * i]!, list[3 * i + 1]!, list[3 * i + 2]!] as const;
          let against = 0;
          for (let i = 0; i < indices.length; i += 21) {
            const [a, b, c] = [
              at(positions, indices[i]!),
              at(positions, indices[i + 1]!),
              at(positions, indices[i + 2]!),
            ];
            const p = a.map((x, k) => b[k]! - x);
            const q = a.map((x, k) => c[k]! - x);
            const n = at(normals, indices[i]!);
            if (Math.abs(Math.hypot(...n) - 1) > 1e-5) against++;
            const turn =
              (p[1]! * q[2]! - p[2]! * q[1]!) * n[0] +
              (p[2]! * q[0]! - p[0]! * q[2]!) * n[1] +
              (p[0]! * q[1]! - p[1]! * q[0]!) * n[2];
            if (turn < -1e-9) against++;
          }
          // Where the journal is drawn behind the bush, a cut film face turns over: it is seen from both sides.
          if (drawn.seats.every((seat) => seat.film.every(({ film }) => film > 0))) expect(against).toBe(0);
        }
      }
    },
  );

  test('a journal pulled aside stands in the scene as its half sections do, to the side it was pulled to', () => {
    const [, design] = designs[0]!;
    const seats = toSeats(design);
    const lines = seats.map(seatLines);
    const position = (design.position ?? 0) / 1000;
    const reach = reachToward(heldAt(spindleOf(seats, ['x', 'y', 'tiltX', 'tiltY']), position), 0.03, 1, 0.4);
    if (reach.status !== 'solved') throw new Error(reach.status);
    const drawn = drawnPair(lines, position, 400, leaningOf(seats, reach.pose));
    for (const mesh of all(drawn))
      for (const list of [mesh.positions, mesh.normals]) expect(list.every(Number.isFinite)).toBe(true);
    const frame = frameOf(drawn);
    const { positions } = journalMesh(drawn, frame);
    const chains = (angle: number) => drawn.at!(angle).flatMap((seat) => seat.journal);
    const nose = (angle: number) => chains(angle).at(-1)!;
    // Seen from in front, x is to the right: pulled there, the journal stands further out at 0 than at 180 degrees, and
    // a steep seat, drawn along the axis, deeper in its bush.
    const shallow = (angle: number) => drawn.at!(angle)[0]!.journal.at(-1)![1];
    expect(shallow(0)).toBeGreaterThan(shallow(Math.PI));
    expect(nose(0)[0]).toBeLessThan(nose(Math.PI)[0]);
    for (const [angle, [z, r]] of [0, Math.PI / 2, Math.PI, 1.5 * Math.PI].map((a) => [a, nose(a)] as const)) {
      const wanted = [
        frame.scale * (z - frame.centre),
        frame.scale * r * Math.sin(angle),
        -frame.scale * r * Math.cos(angle),
      ];
      let nearest = Number.POSITIVE_INFINITY;
      for (let i = 0; i < positions.length; i += 3)
        nearest = Math.min(nearest, Math.hypot(...wanted.map((value, k) => value - positions[i + k]!)));
      expect(nearest, `at ${angle}`).toBeLessThan(1e-6);
    }
  });

  test('touching is marked at first touch, and not where the parts stand clear', () => {
    const touching = drawings.filter(([title]) => title.endsWith('touching'));
    expect(touching.length).toBe(designs.length);
    for (const [, drawn] of touching) expect(drawn.seats.flatMap(touches).length).toBeGreaterThan(0);
    for (const [, drawn] of drawings)
      for (const seat of drawn.seats) if (seat.film.every(({ film }) => film > 1e-9)) expect(touches(seat)).toEqual([]);
  });

  test('a profile of thousands of points stays small enough to draw', () => {
    const [, drawn] = drawings[0]!;
    const seat = drawn.seats[0]!;
    const points = Array.from({ length: 20_000 }, (_, i) => [i * 1e-6, 0.02 + 1e-4 * Math.sin(i / 50)] as const);
    const long = [
      {
        ...seat,
        bush: points.map(([z, r]): Point => [z, r + 1e-3]),
        journal: points,
        film: points.map((point, i) => ({ bush: point, journal: point, film: i % 2 ? 1e-6 : 0, along: i, edge: 0 })),
      },
    ];
    for (const mesh of all({ ...drawn, seats: long, below: long }))
      expect(mesh.indices.length / 3).toBeLessThan(40_000);
  });

  test('the camera stands far enough away', () => {
    const discs = [[-1, 0.5] as const, [1, 0.5] as const];
    // Widest where the circles come nearest, 0.5 before the axis; from the end the nearer circle.
    expect(framing(discs, [0, 0, 1], 0.25, 0.25)).toMatchObject({
      across: expect.closeTo(0, 9),
      up: expect.closeTo(0, 9),
    });
    expect(framing(discs, [0, 0, 1], 0.25, 0.25).distance).toBeCloseTo(4.5, 9);
    expect(framing(discs, [1, 0, 0], 0.25, 0.25).distance).toBeCloseTo(3, 9);
    // A single circle far to one side is looked at in its middle.
    const aside = framing([[0.6, 0.1]], [0, 0, 1], 0.1, 0.1);
    expect(aside.across).toBeCloseTo(0.6 / aside.distance, 1);
  });

  test('the end of a scale is a round number', () => {
    expect([0, 0.9, 1, 1.1, 2.2, 3, 7, 12].map(roundAbove)).toEqual([1, 1, 1, 2, 2.5, 5, 10, 20]);
  });
});

describe('the colour of a film', () => {
  test('darkens all the way, by even steps', () => {
    const light = Array.from({ length: 101 }, (_, i) => luminance(filmColour(i, 100)));
    for (let i = 1; i < light.length; i++) expect(light[i]!).toBeLessThan(light[i - 1]!);
    expect(light[0]! / light[100]!).toBeGreaterThan(5);
  });

  test('ends where the scale ends; interference and touching are off the scale', () => {
    expect(filmColour(7, 5)).toEqual(filmColour(5, 5));
    expect(filmColour(0, 0)).toEqual(filmColour(0, 5));
    expect(filmColour(-1e-9, 5)).toEqual(INTERFERENCE);
    for (const off of [INTERFERENCE, touchColour(false), touchColour(true)]) {
      for (let i = 0; i <= 50; i++)
        expect(Math.hypot(...filmColour(i, 50).map((part, k) => part - off[k]!))).toBeGreaterThan(0.2);
    }
  });
});

test('a mesh written over the one before is the same as a new one, wherever the journal went', () => {
  for (const [name, design] of designs) {
    const seats = toSeats(design).map(seatLines);
    const first = fitOf(toSeats(design), 0).firstPosition ?? 0;
    const frame = frameOf(drawnPair(seats, first, 200));
    const last: { journal: Mesh | null; films: (Mesh | null)[] } = { journal: null, films: seats.map(() => null) };
    let kept = 0;
    for (const off of [20e-6, 19e-6, 3e-6, 2e-6, 0, -2e-6, -3e-6, 18e-6]) {
      const drawn = drawnPair(seats, first + off, 200);
      const journal = journalMesh(drawn, frame, last.journal);
      if (journal === last.journal) kept++;
      expect(journal, `${name} ${off}`).toEqual(journalMesh(drawn, frame));
      last.journal = journal;
      last.films = seats.map((_, i) => {
        const film = filmMesh(drawn, i, frame, 20e-6, last.films[i]);
        expect(film, `${name} ${off} film ${i}`).toEqual(filmMesh(drawn, i, frame, 20e-6));
        return film;
      });
    }
    expect(kept, `${name}: the journal has room once made`).toBeGreaterThan(0);
  }
});
