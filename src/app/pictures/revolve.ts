/**
 * Solids swept about the axis, as plain arrays.
 *
 *   (z, r) at angle θ  →  (s·(z - centre), s·r·sin θ, s·r·cos θ)
 *
 * s scene lengths to one metre · θ = 0 points at the viewer of the side view, where the bush is open.
 * A profile runs with its solid on the right (rear to nose along an outside); its normal points out of it.
 */
import type { Point } from './drawn.ts';

export interface Mesh {
  positions: Float32Array;
  normals: Float32Array;
  indices: Uint32Array;
  /** linear light, where the mesh is coloured by film */
  colours?: Float32Array;
  /** four a corner, scene lengths: how far the borders that are drawn as lines are; FAR where none is */
  edges?: Float32Array;
}

/** From a border that is not drawn. */
export const FAR = 1e3;
/** cos of the least turn (about 11°) between two pieces that shows as an edge. */
const CREASE = 0.98;

/**
 * How the drawn metres stand in the scene. Taken from the bush alone, so that it holds still while the journal is
 * dragged.
 */
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

/** Corners of one whole turn. */
const AROUND = 96;

/** From where to where the bush's wall goes round, the open sector left out. */
export function wallAngles(sector: number): [from: number, to: number] {
  const half = (Math.min(340, Math.max(0, sector)) * Math.PI) / 360;
  return [half, 2 * Math.PI - half];
}

export interface Profile {
  points: readonly Point[];
  colours?: readonly (readonly [number, number, number])[];
}

/**
 * Sweeps a profile about the axis; it may change on the way, but not its number of points. Each piece of it has
 * corners of its own, so that edges stay sharp. Pieces of no length are left out. `last`: a mesh that is done with,
 * written over where it has the size: new room at every move is most of what a drag leaves to clear away.
 */
export function revolved(
  profileAt: (theta: number) => Profile,
  frame: Frame,
  from: number,
  to: number,
  last?: Mesh | null,
): Mesh {
  const steps = Math.max(3, Math.ceil((AROUND * (to - from)) / (2 * Math.PI)));
  const ring = steps + 1;
  const turns = Array.from({ length: ring }, (_, j) => from + ((to - from) * j) / steps);
  const sines = turns.map(Math.sin);
  const cosines = turns.map(Math.cos);
  const profiles = turns.map(profileAt);
  const { points: profile, colours } = profiles[0]!;
  const pieces = piecesOf(profiles);
  const creases = creasesOf(profile, pieces);
  const open = to - from < 2 * Math.PI - 1e-9;
  const corners = pieces.length * 2 * ring;
  const room = roomFor(corners, pieces.length * steps * 6, colours !== undefined, last);
  const { positions, normals, edges, indices, colours: tints } = room;
  let corner = 0;
  let index = 0;
  for (const [piece, i] of pieces.entries()) {
    const first = corner;
    const [starts, ends] = creases[piece]!;
    for (let k = i; k <= i + 1; k++) {
      // Worked out where the profile is another; written one by one, for a small array for each corner, or a length,
      // would be most of the work of a drag.
      let before: Profile | null = null;
      let along = 0;
      let out = 0;
      let x = 0;
      let r = 0;
      let whole = 0;
      for (let j = 0; j < ring; j++, corner++) {
        const here = profiles[j]!;
        if (here !== before) {
          before = here;
          const { points } = here;
          const dz = points[i + 1]![0] - points[i]![0];
          const dr = points[i + 1]![1] - points[i]![1];
          const length = Math.hypot(dz, dr) || 1;
          along = -dr / length;
          out = dz / length;
          x = frame.scale * (points[k]![0] - frame.centre);
          r = frame.scale * points[k]![1];
          whole = frame.scale * length;
        }
        const sine = sines[j]!;
        const cosine = cosines[j]!;
        const at = 3 * corner;
        positions[at] = x;
        positions[at + 1] = r * sine;
        positions[at + 2] = r * cosine;
        normals[at] = along;
        normals[at + 1] = out * sine;
        normals[at + 2] = out * cosine;
        const edge = 4 * corner;
        edges[edge] = starts ? (k === i ? 0 : whole) : FAR;
        edges[edge + 1] = ends ? (k === i ? whole : 0) : FAR;
        edges[edge + 2] = open ? r * (turns[j]! - from) : FAR;
        edges[edge + 3] = open ? r * (to - turns[j]!) : FAR;
        if (!tints) continue;
        const colour = here.colours![k]!;
        tints[at] = colour[0];
        tints[at + 1] = colour[1];
        tints[at + 2] = colour[2];
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
  return room;
}

type Room = Mesh & Required<Pick<Mesh, 'edges'>>;

function roomFor(corners: number, indices: number, tinted: boolean, last?: Mesh | null): Room {
  const fits =
    last?.edges?.length === corners * 4 && last.indices.length === indices && (last.colours !== undefined) === tinted;
  if (fits) return last as Room;
  return {
    positions: new Float32Array(corners * 3),
    normals: new Float32Array(corners * 3),
    indices: new Uint32Array(indices),
    edges: new Float32Array(corners * 4),
    ...(tinted ? { colours: new Float32Array(corners * 3) } : {}),
  };
}

/** Which pieces of the profile have a length, anywhere round. */
function piecesOf(profiles: readonly Profile[]): number[] {
  const different = profiles.filter(({ points }, j) => j === 0 || points !== profiles[0]!.points);
  const long = ({ points }: Profile, i: number) =>
    Math.hypot(points[i + 1]![0] - points[i]![0], points[i + 1]![1] - points[i]![1]) > 1e-12;
  return profiles[0]!.points.slice(1).flatMap((_, i) => (different.some((one) => long(one, i)) ? [i] : []));
}

/** Whether each piece has an edge at its start and its end: where the profile turns, and where it is open. */
function creasesOf(points: readonly Point[], pieces: readonly number[]): [start: boolean, end: boolean][] {
  const [first, last] = [points[0], points[points.length - 1]];
  const closed = first && last && Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-12;
  const way = (i: number): Point => {
    const [dz, dr] = [points[i + 1]![0] - points[i]![0], points[i + 1]![1] - points[i]![1]];
    const length = Math.hypot(dz, dr) || 1;
    return [dz / length, dr / length];
  };
  const turns = pieces.map((i, k) => {
    const before = k > 0 ? pieces[k - 1]! : closed ? pieces[pieces.length - 1]! : null;
    if (before === null) return points[i]![1] > 1e-12;
    const [a, b] = [way(before), way(i)];
    return a[0] * b[0] + a[1] * b[1] < CREASE;
  });
  const end = closed ? turns[0]! : (last?.[1] ?? 0) > 1e-12;
  return pieces.map((_, k) => [turns[k]!, turns[k + 1] ?? end]);
}

export interface Strip {
  pairs: readonly (readonly [inner: Point, outer: Point])[];
  colours?: readonly (readonly [number, number, number])[];
}

/** A strip between pairs of points on both faces of the opening, facing into it. */
export function cutFaces(stripAt: (theta: number) => Strip, frame: Frame, sector: number): Mesh {
  const faces = wallAngles(sector).map((angle) => ({ angle, ...stripAt(angle) }));
  const { pairs: first, colours: tinted } = faces[0]!;
  if (sector <= 0 || first.length < 2)
    return {
      positions: new Float32Array(),
      normals: new Float32Array(),
      indices: new Uint32Array(),
      edges: new Float32Array(),
      ...(tinted ? { colours: new Float32Array() } : {}),
    };
  const meshes = faces.map(({ angle, pairs, colours }, face): Mesh => {
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    const inward = face === 0 ? -1 : 1;
    const ends = pairs.flat();
    const positions = new Float32Array(
      ends.flatMap(([z, r]) => [frame.scale * (z - frame.centre), frame.scale * r * sin, frame.scale * r * cos]),
    );
    const normals = new Float32Array(ends.flatMap(() => [0, inward * cos, -inward * sin]));
    const indices = new Uint32Array(
      pairs.slice(1).flatMap((_, i) => {
        const a = 2 * i;
        return face === 0 ? [a, a + 2, a + 1, a + 1, a + 2, a + 3] : [a, a + 1, a + 2, a + 1, a + 3, a + 2];
      }),
    );
    return {
      positions,
      normals,
      indices,
      edges: stripEdges(pairs, frame.scale),
      ...(colours ? { colours: new Float32Array(colours.flatMap((colour) => [...colour, ...colour])) } : {}),
    };
  });
  return joined(meshes);
}

/** Of a strip: to its inner side, its outer side, its first pair and its last. */
function stripEdges(pairs: Strip['pairs'], scale: number): Float32Array {
  const far = (a: Point, b: Point) => scale * Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along = [0];
  for (let i = 1; i < pairs.length; i++) along.push(along[i - 1]! + far(pairs[i - 1]![0], pairs[i]![0]));
  const whole = along[along.length - 1]!;
  return new Float32Array(
    pairs.flatMap(([inner, outer], i) => {
      const across = far(inner, outer);
      return [0, across, along[i]!, whole - along[i]!, across, 0, along[i]!, whole - along[i]!];
    }),
  );
}

export function joined(meshes: readonly Mesh[]): Mesh {
  const indices: number[] = [];
  let corners = 0;
  for (const mesh of meshes) {
    for (const index of mesh.indices) indices.push(index + corners);
    corners += mesh.positions.length / 3;
  }
  const all = (part: (mesh: Mesh) => Float32Array) => {
    const out = new Float32Array(meshes.reduce((sum, mesh) => sum + part(mesh).length, 0));
    let at = 0;
    for (const mesh of meshes) {
      out.set(part(mesh), at);
      at += part(mesh).length;
    }
    return out;
  };
  const every = (has: (mesh: Mesh) => unknown) => meshes.length > 0 && meshes.every(has);
  return {
    positions: all((m) => m.positions),
    normals: all((m) => m.normals),
    indices: new Uint32Array(indices),
    ...(every((m) => m.colours) ? { colours: all((m) => m.colours!) } : {}),
    ...(every((m) => m.edges) ? { edges: all((m) => m.edges!) } : {}),
  };
}
