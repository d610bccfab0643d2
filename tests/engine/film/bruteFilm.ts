/**
 * The film by another way: its own formulas for the film and the links, whole matrices, and a solver that knows nothing
 * of columns. Only for small grids of round, straight-lined seats.
 */
import type { Pose } from '../../../src/engine/spindle/pose.ts';
import type { Cone } from './bearings.ts';

export interface Brute {
  rows: number;
  columns: number;
  /** entries [i, j, value] on and above the diagonal */
  entries: [number, number, number][];
  b: number[];
  p: number[];
}

/** The equations of a cone at a pose, cell k = column·rows + row; columns `held` at a pressure. */
export function bruteEquations(
  cone: Cone,
  pose: Pose,
  mu: number,
  omega: number,
  rows: number,
  columns: number,
  held: { column: number; pressure: number } | null,
): Brute {
  const { halfAngle: a, radius, from, to, film } = cone;
  const slant = (to - from) / Math.cos(a);
  const [dl, df] = [slant / rows, (2 * Math.PI) / columns];
  const r = (l: number) => radius + from * Math.tan(a) + l * Math.sin(a);
  const h = (l: number, f: number) => {
    // a point of the journal surface, moved: x, y, tilts about the bush datum
    const z = from + l * Math.cos(a);
    const n = [Math.cos(a) * Math.cos(f), Math.cos(a) * Math.sin(f), -Math.sin(a)] as const;
    const point = [r(l) * Math.cos(f), r(l) * Math.sin(f), z] as const;
    const move = [
      pose.x + pose.tiltY * point[2],
      pose.y - pose.tiltX * point[2],
      pose.z + pose.tiltX * point[1] - pose.tiltY * point[0],
    ] as const;
    return film - n[0] * move[0] - n[1] * move[1] - n[2] * move[2];
  };
  const at = (i: number, j: number) => ((j + columns) % columns) * rows + i;
  const n = rows * columns;
  const diagonal = new Array<number>(n).fill(0);
  const off: [number, number, number][] = [];
  const b = new Array<number>(n).fill(0);
  const fixed = (k: number) => held !== null && Math.floor(k / rows) === held.column;
  const link = (k: number, m: number, g: number) => {
    if (!fixed(k) && !fixed(m)) off.push([Math.min(k, m), Math.max(k, m), -g]);
    for (const [one, other] of [
      [k, m],
      [m, k],
    ] as const) {
      if (fixed(one)) continue;
      diagonal[one]! += g;
      if (fixed(other)) b[one]! += g * held!.pressure;
    }
  };
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < rows; i++) {
      const l = (i + 0.5) * dl;
      const f = j * df;
      const east = h(l, f + df / 2);
      link(at(i, j), at(i, j + 1), (east ** 3 / (12 * mu)) * (dl / (r(l) * df)));
      if (i < rows - 1) link(at(i, j), at(i + 1, j), (h(l + dl / 2, f) ** 3 / (12 * mu)) * ((r(l + dl / 2) * df) / dl));
      else if (!fixed(at(i, j)))
        diagonal[at(i, j)]! += (h(l + dl / 4, f) ** 3 / (12 * mu)) * ((r(l + dl / 4) * df) / (dl / 2));
      if (i === 0 && !fixed(at(i, j)))
        diagonal[at(i, j)]! += (h(l - dl / 4, f) ** 3 / (12 * mu)) * ((r(l - dl / 4) * df) / (dl / 2));
      if (!fixed(at(i, j))) b[at(i, j)]! -= (omega / 2) * r(l) * dl * (east - h(l, f - df / 2));
    }
  }
  for (let k = 0; k < n; k++) if (fixed(k)) [diagonal[k], b[k]] = [1, held!.pressure];
  const entries = [...diagonal.map((value, k): [number, number, number] => [k, k, value]), ...off];
  return { rows, columns, entries, b, p: new Array<number>(n).fill(0) };
}

/** Full rows of the matrix: for each unknown its neighbours and values. */
export function neighbours({ entries, b }: Brute): [number, number][][] {
  const rows: [number, number][][] = b.map(() => []);
  for (const [i, j, value] of entries) {
    if (i === j) continue;
    rows[i]!.push([j, value]);
    rows[j]!.push([i, value]);
  }
  return rows;
}

/** p ≥ 0, A p ≥ b, complementary: projected over-relaxation of one unknown at a time, till nothing moves. */
export function projectedRelaxation(brute: Brute): Float64Array {
  const next = neighbours(brute);
  const diagonal = brute.b.map(() => 0);
  for (const [i, j, value] of brute.entries) if (i === j) diagonal[i] = value;
  const p = new Float64Array(brute.b.length);
  for (let sweep = 0; sweep < 40_000; sweep++) {
    let moved = 0;
    let top = 0;
    for (let k = 0; k < p.length; k++) {
      let sum = brute.b[k]!;
      for (const [m, value] of next[k]!) sum -= value * p[m]!;
      const old = p[k]!;
      p[k] = Math.max(0, old + 1.6 * (sum / diagonal[k]! - old));
      moved = Math.max(moved, Math.abs(p[k]! - old));
      top = Math.max(top, p[k]!);
    }
    if (moved <= 1e-14 * top) return p;
  }
  throw new Error('projected relaxation did not settle');
}
