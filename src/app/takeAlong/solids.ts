/**
 * The drawn pair as two closed solids, to be looked at elsewhere or printed as a teaching model: gaps and displacements
 * drawn larger by the factor, lengths and diameters true. The half sections are those of the pictures (drawn.ts).
 */
import { BufferAttribute, BufferGeometry, Group, Mesh, MeshStandardMaterial } from 'three';
import { GLTFExporter } from 'three/addons/exporters/GLTFExporter.js';
import { STLExporter } from 'three/addons/exporters/STLExporter.js';
import type { Drawn, Point } from '../pictures/drawn.ts';
import { bushProfiles, frameOf, journalProfile } from '../pictures/sceneGeometry.ts';

export interface Solid {
  /** m: along the axis, and across it */
  positions: Float64Array;
  indices: number[];
}

/** Corners of one turn: a chord of a radius of 15 mm then stands 0.01 mm within it. */
const AROUND = 120;
/** m: nearer than this two points of a half section are one. */
const SAME_PLACE = 1e-9;

/**
 * A half section swept once round into a closed surface: every edge belongs to two triangles. `closed`: it runs round
 * a wall; otherwise from the axis to the axis.
 */
export function sweptSolid(section: readonly Point[], closed: boolean): Solid {
  const points = section.filter(
    ([z, r], i) => i === 0 || Math.hypot(z - section[i - 1]![0], r - section[i - 1]![1]) > SAME_PLACE,
  );
  const [first, last] = [points[0]!, points[points.length - 1]!];
  if (closed && Math.hypot(first[0] - last[0], first[1] - last[1]) <= SAME_PLACE) points.pop();
  const positions: number[] = [];
  const ring = points.map(([z, r]) => {
    const start = positions.length / 3;
    const corners = r <= SAME_PLACE ? 1 : AROUND;
    for (let j = 0; j < corners; j++) {
      const turn = (2 * Math.PI * j) / AROUND;
      positions.push(z, r <= SAME_PLACE ? 0 : r * Math.sin(turn), r <= SAME_PLACE ? 0 : r * Math.cos(turn));
    }
    return (j: number) => (corners === 1 ? start : start + (j % AROUND));
  });
  const indices: number[] = [];
  const triangle = (...corners: [number, number, number]) => {
    if (new Set(corners).size === 3) indices.push(...corners);
  };
  for (let i = 0; i < points.length - (closed ? 0 : 1); i++) {
    const [one, other] = [ring[i]!, ring[(i + 1) % points.length]!];
    for (let j = 0; j < AROUND; j++) {
      triangle(one(j), other(j), one(j + 1));
      triangle(one(j + 1), other(j), other(j + 1));
    }
  }
  const solid = { positions: Float64Array.from(positions), indices };
  if (volumeOf(solid) < 0) indices.reverse();
  return solid;
}

/** m³; below 0 where the surface faces inward. */
export function volumeOf({ positions, indices }: Solid): number {
  let six = 0;
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => positions.subarray(3 * indices[t + k]!, 3 * indices[t + k]! + 3)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    six +=
      a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
      a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
      a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
  }
  return six / 6;
}

export type Piece = 'journal' | 'bush';

export function solidOf(drawn: Drawn, piece: Piece): Solid {
  return piece === 'journal'
    ? sweptSolid(journalProfile(drawn, frameOf(drawn)), false)
    : together(bushProfiles(drawn).map((profile) => sweptSolid(profile, true)));
}

/** Bushes that stand apart are one file all the same. */
function together(solids: readonly Solid[]): Solid {
  const indices: number[] = [];
  const positions: number[] = [];
  for (const solid of solids) {
    const before = positions.length / 3;
    for (const index of solid.indices) indices.push(before + index);
    positions.push(...solid.positions);
  }
  return { positions: Float64Array.from(positions), indices };
}

/** @param scale of the file to metres */
function meshOf(drawn: Drawn, piece: Piece, scale: number): Mesh {
  const { positions, indices } = solidOf(drawn, piece);
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    'position',
    new BufferAttribute(
      Float32Array.from(positions, (x) => scale * x),
      3,
    ),
  );
  geometry.setIndex(indices);
  const flat = geometry.toNonIndexed();
  flat.computeVertexNormals();
  const colour = piece === 'journal' ? 0x7d8b97 : 0xa8703a;
  const mesh = new Mesh(flat, new MeshStandardMaterial({ color: colour, metalness: 0.6, roughness: 0.5 }));
  mesh.name = piece;
  return mesh;
}

/** Bytes of free words before the triangles of an STL file. */
const HEAD = 80;

/** One part in millimetres; the format itself has no unit, so its head says it. */
export function stlOf(drawn: Drawn, piece: Piece): ArrayBuffer {
  const view = new STLExporter().parse(meshOf(drawn, piece, 1000), { binary: true }) as unknown as DataView;
  const file = view.buffer.slice(view.byteOffset, view.byteOffset + view.byteLength) as ArrayBuffer;
  // "solid" must not be its first word: that begins the other, written form of the format.
  const words = `Conepair ${piece}; mm; gaps drawn ${Math.round(drawn.factor)} times as large`;
  new TextEncoder().encodeInto(words, new Uint8Array(file, 0, HEAD));
  return file;
}

/** Both parts in one binary glTF, in metres as that format has it. */
export async function gltfOf(drawn: Drawn): Promise<ArrayBuffer> {
  const pair = new Group();
  pair.name = `journal and bush, gaps drawn ${Math.round(drawn.factor)} times as large`;
  pair.add(meshOf(drawn, 'journal', 1), meshOf(drawn, 'bush', 1));
  return (await new GLTFExporter().parseAsync(pair, { binary: true })) as ArrayBuffer;
}
