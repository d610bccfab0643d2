/**
 * The solids of the scene from the drawn half sections, as plain arrays: surfaces swept about the axis.
 *
 *   (z, r) at angle φ  →  (s·(z - centre), s·r·sin φ, s·r·cos φ)
 *
 * s scene lengths to one metre · φ = 0 points at the viewer of the side view, where the bush is open.
 * A profile runs with its solid on the right (rear to nose along an outside); its normal points out of it.
 */
import { SAME } from '../../engine/contact/film.ts';
import { type Drawn, type DrawnSeat, type FilmPlace, type Point, relieved } from './drawn.ts';
import { filmColour, INTERFERENCE, linear } from './filmColour.ts';
import { fromChord, thinned } from './thinned.ts';

export interface Mesh {
  positions: Float32Array;
  normals: Float32Array;
  indices: Uint32Array;
  /** linear light, where the mesh is coloured by film */
  colours?: Float32Array;
}

/** How the drawn metres stand in the scene. Taken from the bush alone, so that it holds still while the journal is dragged. */
export interface Frame {
  /** m */
  centre: number;
  /** scene lengths to one metre */
  scale: number;
  /** outside of the bush, m */
  outside: number;
  /** length of the journal's stub and nose, m */
  overhang: number;
  /** half the size of everything along the axis and across it, scene lengths */
  halfLength: number;
  halfHeight: number;
}

/** The outside of the bush to the largest radius. */
const WALL = 1.35;
const AROUND = 96;
/** Most points of one solid's profile; a measured profile may have thousands, more than a screen shows. */
const MOST_POINTS = 120;
/** Half thickness of a touching ring to the largest radius. */
const RING = 0.012;
const MOST_RINGS = 8;

const middle = (points: readonly Point[]) => (points[0]![0] + points[points.length - 1]![0]) / 2;
/** Seats from the rear to the nose; by the bush, which does not move. */
const inOrder = (drawn: Drawn): DrawnSeat[] => drawn.seats.filter((seat) => seat.bush.length > 1 && seat.journal.length > 1).sort((a, b) => middle(a.bush) - middle(b.bush));

export function frameOf(drawn: Drawn): Frame {
  const points = inOrder(drawn).flatMap((seat) => seat.bush);
  if (points.length === 0) return { centre: 0, scale: 1, outside: 1, overhang: 0, halfLength: 1, halfHeight: 1 };
  const [low, high] = extent(points.map(([z]) => z));
  const [, largest] = extent(points.map(([, r]) => r));
  const outside = WALL * largest;
  const overhang = 0.4 * largest;
  const halfLength = (high - low) / 2 + overhang;
  const scale = 1 / Math.max(halfLength, outside);
  return { centre: (low + high) / 2, scale, outside, overhang, halfLength: halfLength * scale, halfHeight: outside * scale };
}

/** The journal's half section, from the axis at its rear to the axis at its nose. */
export function journalProfile(drawn: Drawn, { overhang }: Frame): Point[] {
  const seats = inOrder(drawn);
  const body = relieved(
    seats.map((seat) => thinned(seat.journal, MOST_POINTS / seats.length, fromChord(seat.journal))),
    seats.map((seat) => seat.bush),
    'inside',
  );
  const rear = body[0];
  const nose = body[body.length - 1];
  if (!rear || !nose) return [];
  // Clear of the bush wherever it reaches past the journal.
  const clear = (beyond: (z: number) => boolean) => 0.9 * seats.flatMap((seat) => seat.bush).reduce((least, [z, r]) => (beyond(z) ? Math.min(least, r) : least), Number.POSITIVE_INFINITY);
  const stub = Math.min(
    0.8 * rear[1],
    clear((z) => z < rear[0]),
  );
  const end = Math.min(
    0.95 * nose[1],
    clear((z) => z > nose[0]),
  );
  const from = rear[0] - overhang;
  const to = nose[0] + overhang;
  return [[from, 0], [from, stub], [rear[0], stub], ...body, [nose[0], end], [to, end], [to, 0]];
}

/** The bush's wall, once round: bore from nose to rear, rear face, outside, nose face. */
export function bushProfile(drawn: Drawn, { outside }: Frame): Point[] {
  const bore = boreOf(drawn);
  const rear = bore[0];
  const nose = bore[bore.length - 1];
  if (!rear || !nose) return [];
  return [...bore.toReversed(), [rear[0], outside], [nose[0], outside], nose];
}

function boreOf(drawn: Drawn): Point[] {
  const seats = inOrder(drawn);
  return relieved(
    seats.map((seat) => thinned(seat.bush, MOST_POINTS / seats.length, fromChord(seat.bush))),
    seats.map((seat) => seat.bush),
    'outside',
  );
}

export const journalMesh = (drawn: Drawn, frame: Frame): Mesh => revolved(journalProfile(drawn, frame), frame, 0, 2 * Math.PI);

/** The bush, open by `sector` degrees. */
export const bushMesh = (drawn: Drawn, frame: Frame, sector: number): Mesh => revolved(bushProfile(drawn, frame), frame, ...wallAngles(sector));

/** The two faces where the bush is cut open; none where it is closed. */
export function bushCutMesh(drawn: Drawn, frame: Frame, sector: number): Mesh {
  const bore = boreOf(drawn);
  return cutFaces(
    bore.map((point) => [point, [point[0], frame.outside]]),
    frame,
    sector,
  );
}

/** The film's skin right round: half way between the two surfaces; on the journal's where it is pressed in. */
export function filmMesh(seat: DrawnSeat, frame: Frame, max: number): Mesh {
  const places = finePlaces(seat.film);
  const points = places.map(({ bush, journal, film }): Point => (film < 0 ? journal : [(bush[0] + journal[0]) / 2, (bush[1] + journal[1]) / 2]));
  return revolved(points, frame, 0, 2 * Math.PI, filmColours(places, max));
}

/** The film in section on the two cut faces. */
export function filmCutMesh(seat: DrawnSeat, frame: Frame, sector: number, max: number): Mesh {
  const places = finePlaces(seat.film);
  return cutFaces(
    places.map(({ bush, journal }) => [journal, bush]),
    frame,
    sector,
    filmColours(places, max),
  );
}

/** Rings where the two surfaces touch; a stretch that touches is a band. */
export function touchMesh(seat: DrawnSeat, frame: Frame): Mesh {
  const size = (RING * frame.outside) / WALL;
  const places = touches(seat);
  return joined(places.map(([from, to]) => revolved(around(from, to, size), frame, 0, 2 * Math.PI)));
}

/** Pieces of a seat's bush line that touch, each from a place to a place; the same twice for a single place. */
export function touches({ film }: DrawnSeat): [Point, Point][] {
  const runs: Point[][] = [];
  film.forEach((place, i) => {
    if (Math.abs(place.film) > SAME) return;
    if (i > 0 && Math.abs(film[i - 1]!.film) <= SAME) runs[runs.length - 1]!.push(place.bush);
    else runs.push([place.bush]);
  });
  return runs.slice(0, MOST_RINGS).flatMap((run): [Point, Point][] => {
    const [first, ...rest] = thinned(run, 6, fromChord(run));
    return rest.length === 0 ? [[first!, first!]] : rest.map((point, i) => [i === 0 ? first! : rest[i - 1]!, point]);
  });
}

/** Greatest film drawn (m), 0 at least. */
export const greatestFilm = (drawn: Drawn) => drawn.seats.reduce((most, seat) => seat.film.reduce((m, { film }) => Math.max(m, film), most), 0);

/** The next of 1, 2, 2.5, 5 · 10ⁿ at or above a value, for the far end of a scale. */
export function roundAbove(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 2.5, 5].find((step) => step * power >= value * (1 - 1e-9)) ?? 10) * power;
}

/**
 * Distance of a camera from the middle at which the pair just fills the view, looked at along `toward`
 * (unit vector to the camera; the picture's upright is y). Angles in radians, tangents of half the view.
 */
export function fillingDistance({ halfLength, halfHeight }: Frame, toward: readonly [number, number, number], tanUp: number, tanAcross: number): number {
  const [x, y, z] = toward;
  const flat = Math.hypot(x, z) || 1;
  const right = [z / flat, 0, -x / flat] as const;
  const up = [y * right[2], z * right[0] - x * right[2], -y * right[0]] as const;
  let distance = 0;
  for (const end of [-halfLength, halfLength]) {
    for (let k = 0; k < 16; k++) {
      const corner = [end, halfHeight * Math.sin((k * Math.PI) / 8), halfHeight * Math.cos((k * Math.PI) / 8)] as const;
      const along = (axis: readonly [number, number, number]) => corner[0] * axis[0] + corner[1] * axis[1] + corner[2] * axis[2];
      distance = Math.max(distance, along(toward) + Math.max(Math.abs(along(right)) / tanAcross, Math.abs(along(up)) / tanUp));
    }
  }
  return distance;
}

/** From where to where the bush's wall goes round, the open sector left out. */
function wallAngles(sector: number): [from: number, to: number] {
  const half = (Math.min(340, Math.max(0, sector)) * Math.PI) / 360;
  return [half, 2 * Math.PI - half];
}

/**
 * Sweeps a profile about the axis. Each piece of it has corners of its own, so that edges stay sharp.
 * Pieces of no length are left out.
 */
function revolved(profile: readonly Point[], frame: Frame, from: number, to: number, colours?: readonly (readonly [number, number, number])[]): Mesh {
  const pieces: number[] = [];
  for (let i = 0; i + 1 < profile.length; i++) {
    if (Math.hypot(profile[i + 1]![0] - profile[i]![0], profile[i + 1]![1] - profile[i]![1]) > 1e-12) pieces.push(i);
  }
  const steps = Math.max(3, Math.ceil((AROUND * (to - from)) / (2 * Math.PI)));
  const ring = steps + 1;
  const corners = pieces.length * 2 * ring;
  const positions = new Float32Array(corners * 3);
  const normals = new Float32Array(corners * 3);
  const tints = colours ? new Float32Array(corners * 3) : undefined;
  const indices = new Uint32Array(pieces.length * steps * 6);
  // Sines and cosines once for all pieces: a drag makes the solids anew at every move.
  const circle = new Float64Array(2 * ring);
  for (let j = 0; j < ring; j++) {
    const angle = from + ((to - from) * j) / steps;
    circle[2 * j] = Math.sin(angle);
    circle[2 * j + 1] = Math.cos(angle);
  }
  let corner = 0;
  let index = 0;
  for (const i of pieces) {
    const [z0, r0] = profile[i]!;
    const [z1, r1] = profile[i + 1]!;
    const length = Math.hypot(z1 - z0, r1 - r0);
    const normal: Point = [(r0 - r1) / length, (z1 - z0) / length];
    const first = corner;
    for (let k = i; k <= i + 1; k++) {
      const x = frame.scale * (profile[k]![0] - frame.centre);
      const r = frame.scale * profile[k]![1];
      const colour = colours?.[k];
      for (let j = 0; j < ring; j++, corner++) {
        const at = corner * 3;
        const sin = circle[2 * j]!;
        const cos = circle[2 * j + 1]!;
        positions[at] = x;
        positions[at + 1] = r * sin;
        positions[at + 2] = r * cos;
        normals[at] = normal[0];
        normals[at + 1] = normal[1] * sin;
        normals[at + 2] = normal[1] * cos;
        if (!tints) continue;
        tints[at] = colour![0];
        tints[at + 1] = colour![1];
        tints[at + 2] = colour![2];
      }
    }
    for (let j = 0; j < steps; j++, index += 6) {
      const a = first + j;
      const b = a + ring;
      indices[index] = a;
      indices[index + 1] = b;
      indices[index + 2] = a + 1;
      indices[index + 3] = b;
      indices[index + 4] = b + 1;
      indices[index + 5] = a + 1;
    }
  }
  return tints ? { positions, normals, indices, colours: tints } : { positions, normals, indices };
}

/** A strip between pairs of points on both faces of the opening, facing into it. */
function cutFaces(pairs: readonly (readonly [inner: Point, outer: Point])[], frame: Frame, sector: number, colours?: readonly (readonly [number, number, number])[]): Mesh {
  if (sector <= 0 || pairs.length < 2) return { positions: new Float32Array(), normals: new Float32Array(), indices: new Uint32Array(), ...(colours ? { colours: new Float32Array() } : {}) };
  const meshes = wallAngles(sector).map((angle, face): Mesh => {
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    const inward = face === 0 ? -1 : 1;
    const ends = pairs.flat();
    const positions = new Float32Array(ends.flatMap(([z, r]) => [frame.scale * (z - frame.centre), frame.scale * r * sin, frame.scale * r * cos]));
    const normals = new Float32Array(ends.flatMap(() => [0, inward * cos, -inward * sin]));
    const indices = new Uint32Array(
      pairs.slice(1).flatMap((_, i) => {
        const a = 2 * i;
        return face === 0 ? [a, a + 2, a + 1, a + 1, a + 2, a + 3] : [a, a + 1, a + 2, a + 1, a + 3, a + 2];
      }),
    );
    return colours ? { positions, normals, indices, colours: new Float32Array(colours.flatMap((colour) => [...colour, ...colour])) } : { positions, normals, indices };
  });
  return joined(meshes);
}

function joined(meshes: readonly Mesh[]): Mesh {
  const indices: number[] = [];
  let corners = 0;
  for (const mesh of meshes) {
    for (const index of mesh.indices) indices.push(index + corners);
    corners += mesh.positions.length / 3;
  }
  const all = (part: (mesh: Mesh) => Float32Array) => {
    const out = new Float32Array(corners * 3);
    let at = 0;
    for (const mesh of meshes) {
      out.set(part(mesh), at);
      at += part(mesh).length;
    }
    return out;
  };
  const mesh: Mesh = { positions: all((m) => m.positions), normals: all((m) => m.normals), indices: new Uint32Array(indices) };
  return meshes.length > 0 && meshes.every((m) => m.colours) ? { ...mesh, colours: all((m) => m.colours!) } : mesh;
}

/** Places close enough that the colour between two is theirs, and one where the film passes through nothing. */
function finePlaces(film: readonly FilmPlace[]): FilmPlace[] {
  const kept = thinned(film, MOST_POINTS / 2, (place) => place.film);
  const pieces = Math.max(1, Math.min(12, Math.floor(MOST_POINTS / Math.max(1, kept.length - 1))));
  return kept.flatMap((place, i) => {
    const next = kept[i + 1];
    if (!next) return [place];
    const shares = Array.from({ length: pieces }, (_, k) => k / pieces);
    if (place.film * next.film >= 0) return shares.map((t) => between(place, next, t));
    // Twice, so that each side keeps its own colour: just above and just below nothing.
    const zero = place.film / (place.film - next.film);
    const least = (sign: number): FilmPlace => ({ ...between(place, next, zero), film: sign * Number.MIN_VALUE });
    const sides = [least(Math.sign(place.film)), least(Math.sign(next.film))];
    return [...shares.filter((t) => t < zero).map((t) => between(place, next, t)), ...sides, ...shares.filter((t) => t > zero).map((t) => between(place, next, t))];
  });
}

function between(a: FilmPlace, b: FilmPlace, t: number): FilmPlace {
  if (t === 0) return a;
  const mix = (p: Point, q: Point): Point => [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t];
  return { bush: mix(a.bush, b.bush), journal: mix(a.journal, b.journal), film: a.film + (b.film - a.film) * t };
}

const filmColours = (places: readonly FilmPlace[], max: number) => places.map(({ film }) => linear(film < -SAME || film === -Number.MIN_VALUE ? INTERFERENCE : filmColour(Math.max(0, film), max)));

/** The outline of everything within `size` of a straight piece, its solid on the right. */
function around(from: Point, to: Point, size: number): Point[] {
  const turn = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const half = (middlePoint: Point, start: number): Point[] =>
    Array.from({ length: 7 }, (_, k) => {
      const angle = turn + start - (k * Math.PI) / 6;
      return [middlePoint[0] + size * Math.cos(angle), middlePoint[1] + size * Math.sin(angle)];
    });
  const outline = [...half(to, Math.PI / 2), ...half(from, -Math.PI / 2)];
  return [...outline, outline[0]!];
}

function extent(values: readonly number[]): [least: number, greatest: number] {
  return values.reduce<[number, number]>(([least, greatest], value) => [Math.min(least, value), Math.max(greatest, value)], [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]);
}
