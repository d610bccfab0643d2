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
}

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
 * corners of its own, so that edges stay sharp. Pieces of no length are left out.
 */
export function revolved(profileAt: (theta: number) => Profile, frame: Frame, from: number, to: number): Mesh {
  const steps = Math.max(3, Math.ceil((AROUND * (to - from)) / (2 * Math.PI)));
  const ring = steps + 1;
  const turns = Array.from({ length: ring }, (_, j) => from + ((to - from) * j) / steps);
  const sines = turns.map(Math.sin);
  const cosines = turns.map(Math.cos);
  const profiles = turns.map(profileAt);
  const { points: profile, colours } = profiles[0]!;
  const pieces: number[] = [];
  for (let i = 0; i + 1 < profile.length; i++) {
    if (
      profiles.some(
        ({ points }) => Math.hypot(points[i + 1]![0] - points[i]![0], points[i + 1]![1] - points[i]![1]) > 1e-12,
      )
    )
      pieces.push(i);
  }
  const corners = pieces.length * 2 * ring;
  const positions = new Float32Array(corners * 3);
  const normals = new Float32Array(corners * 3);
  const tints = colours ? new Float32Array(corners * 3) : undefined;
  const indices = new Uint32Array(pieces.length * steps * 6);
  let corner = 0;
  let index = 0;
  for (const i of pieces) {
    const first = corner;
    for (let k = i; k <= i + 1; k++) {
      for (let j = 0; j < ring; j++, corner++) {
        const { points, colours: tint } = profiles[j]!;
        const dz = points[i + 1]![0] - points[i]![0];
        const dr = points[i + 1]![1] - points[i]![1];
        const length = Math.hypot(dz, dr) || 1;
        // Written one by one: a small array for each corner would be most of the work of a drag.
        const at = 3 * corner;
        const r = frame.scale * points[k]![1];
        positions[at] = frame.scale * (points[k]![0] - frame.centre);
        positions[at + 1] = r * sines[j]!;
        positions[at + 2] = r * cosines[j]!;
        normals[at] = -dr / length;
        normals[at + 1] = (dz / length) * sines[j]!;
        normals[at + 2] = (dz / length) * cosines[j]!;
        if (!tints) continue;
        const colour = tint![k]!;
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
  return tints ? { positions, normals, indices, colours: tints } : { positions, normals, indices };
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
    return colours
      ? { positions, normals, indices, colours: new Float32Array(colours.flatMap((colour) => [...colour, ...colour])) }
      : { positions, normals, indices };
  });
  return joined(meshes);
}

export function joined(meshes: readonly Mesh[]): Mesh {
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
  const mesh: Mesh = {
    positions: all((m) => m.positions),
    normals: all((m) => m.normals),
    indices: new Uint32Array(indices),
  };
  return meshes.length > 0 && meshes.every((m) => m.colours) ? { ...mesh, colours: all((m) => m.colours!) } : mesh;
}
