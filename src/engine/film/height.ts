/**
 * The film on the unrolled seat, with the journal at any pose.
 *
 *   h(u, φ) = h₀(u; z) - (x·cos a + tiltY·u)·cos φ - (y·cos a - tiltX·u)·sin φ - lobes(φ) + growth
 *
 * h₀ (m) film of the lines on one axis with the journal at position z (contact/film.ts), exact in z, profiles included ·
 * a half angle of the bush (rad) · x, y (m), tiltX, tiltY (rad) · u = z·cos a + r·sin a (m) is both the place along the
 * slant and cos a times the station at which the normal meets the axis, so tilt is right for any half angle, 0 and
 * 90° included · lobes (m) stand proud of their part, so they take film away · growth (m) even along the seat.
 * First order in x, y and tilt: holds for films far smaller than the radius.
 *
 * Change of film with the pose: ∂h/∂(x, y, tiltX, tiltY) from the above; ∂h/∂z = sin a + cos a·(slope of the journal against
 * the bush line), which is sin a where their half angles agree.
 * @source first-order rigid motion: derived in docs of the project (design: small rigid motion).
 */
import { filmAlong, type Gap } from '../contact/film.ts';
import type { Five, Pose } from './pose.ts';
import { layRows, type Unrolled } from './unrolled.ts';

/** amplitude·cos(count·(φ - phase)), m and rad; proud where positive. */
export interface Lobe {
  count: number;
  amplitude: number;
  phase: number;
}

export interface FilmShape {
  gap: Gap;
  journalLobes: readonly Lobe[];
  bushLobes: readonly Lobe[];
}

/** The film of every cell, and of the links between them. */
export interface Film {
  grid: Unrolled;
  /** m, at cell centres */
  centre: Float64Array;
  /** m, at the faces toward the next column */
  around: Float64Array;
  /** m, at the links along the slant: (rows + 1) a column */
  along: Float64Array;
  /** m, what the journal's lobes take away at the faces toward the next column; it turns with the journal */
  turning: Float64Array;
  /** ∂h/∂z at rows and at links along the slant */
  zRate: Float64Array;
  zRateLink: Float64Array;
}

export function newFilm(grid: Unrolled): Film {
  const { rows, columns } = grid;
  return {
    grid,
    centre: new Float64Array(rows * columns),
    around: new Float64Array(rows * columns),
    along: new Float64Array((rows + 1) * columns),
    turning: new Float64Array(columns),
    zRate: new Float64Array(rows),
    zRateLink: new Float64Array(rows + 1),
  };
}

/** What lobes take from the film at an angle (m). */
export function lobesAt(lobes: readonly Lobe[], angle: number): number {
  let sum = 0;
  for (const { count, amplitude, phase } of lobes) sum += amplitude * Math.cos(count * (angle - phase));
  return sum;
}

/**
 * Lays the grid over the overlap and fills the film in. `growth` (m) is what warm parts add; `turned` (rad) how far the journal's
 * lobes have turned. False: the parts do not overlap at this position.
 */
export function layFilm(film: Film, { gap, journalLobes, bushLobes }: FilmShape, pose: Pose, growth = 0, turned = 0): boolean {
  const { grid } = film;
  const chain = filmAlong(gap, pose.z);
  const from = chain.u[0]!;
  const to = chain.u[chain.count - 1]!;
  if (chain.count < 2 || to <= from) return false;
  const sin = Math.sin(gap.halfAngle);
  const cos = Math.cos(gap.halfAngle);
  const bush = { x: gap.bush.u, y: gap.bush.v, count: gap.bush.u.length };
  layRows(grid, gap.halfAngle, from, to, (u) => u * sin + cos * valueOn(bush, u));

  const { rows, columns } = grid;
  const onAxis = { x: chain.u, y: chain.film, count: chain.count };
  const shift = pose.z * cos;
  const journalSlope = (u: number) => gap.journal.slope[pieceOf(gap.journal.u, gap.journal.u.length, u - shift)]!;
  const h0 = grid.centre.map((u) => valueOn(onAxis, u) + growth);
  const h0Link = grid.link.map((u) => valueOn(onAxis, u) + growth);
  for (let i = 0; i < rows; i++) film.zRate[i] = sin + cos * journalSlope(grid.centre[i]!);
  for (let i = 0; i <= rows; i++) film.zRateLink[i] = sin + cos * journalSlope(grid.link[i]!);

  const step = (2 * Math.PI) / columns;
  for (let j = 0; j < columns; j++) {
    const lobed = lobesAt(bushLobes, j * step) + lobesAt(journalLobes, j * step - turned);
    const turning = lobesAt(journalLobes, (j + 0.5) * step - turned);
    film.turning[j] = turning;
    const faceLobed = lobesAt(bushLobes, (j + 0.5) * step) + turning;
    fillColumn(film.centre, j * rows, h0, grid.centre, pose, cos, grid.cos[j]!, grid.sin[j]!, lobed);
    fillColumn(film.around, j * rows, h0, grid.centre, pose, cos, grid.faceCos[j]!, grid.faceSin[j]!, faceLobed);
    fillColumn(film.along, j * (rows + 1), h0Link, grid.link, pose, cos, grid.cos[j]!, grid.sin[j]!, lobed);
  }
  return true;
}

function fillColumn(out: Float64Array, at: number, h0: Float64Array, u: Float64Array, { x, y, tiltX, tiltY }: Pose, cosA: number, cos: number, sin: number, lobed: number): void {
  const even = cosA * (x * cos + y * sin) + lobed;
  const perU = tiltY * cos - tiltX * sin;
  for (let i = 0; i < h0.length; i++) out[at + i] = h0[i]! - even - perU * u[i]!;
}

interface Chain {
  x: Float64Array;
  y: Float64Array;
  count: number;
}

function pieceOf(x: Float64Array, count: number, at: number): number {
  let low = 0;
  let high = count - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= at) low = middle;
    else high = middle;
  }
  return low;
}

function valueOn({ x, y, count }: Chain, at: number): number {
  const i = pieceOf(x, count, at);
  const span = x[i + 1]! - x[i]!;
  return span > 0 ? y[i]! + ((y[i + 1]! - y[i]!) * (at - x[i]!)) / span : y[i]!;
}

/** ∂h/∂q at one place, into `out`: x, y, z, tiltX, tiltY. */
export function filmPerPose(out: Five, cosA: number, u: number, zRate: number, cos: number, sin: number): void {
  out[0] = -cosA * cos;
  out[1] = -cosA * sin;
  out[2] = zRate;
  out[3] = u * sin;
  out[4] = -u * cos;
}

export interface LeastFilm {
  /** m */
  film: number;
  /** m along the bush line, and rad in [0, 2π) */
  u: number;
  angle: number;
}

/**
 * The least film, anywhere: along the slant it is at a breakpoint, and around it is known in closed form for round
 * parts; with lobes it is sought on 16 places a lobe and refined. Null: no overlap.
 */
export function leastFilmOf({ gap, journalLobes, bushLobes }: FilmShape, pose: Pose, growth = 0, turned = 0): LeastFilm | null {
  const chain = filmAlong(gap, pose.z);
  const cosA = Math.cos(gap.halfAngle);
  const lobes = [...bushLobes, ...journalLobes.map((lobe) => ({ ...lobe, phase: lobe.phase + turned }))].filter((lobe) => lobe.amplitude !== 0);
  let least: LeastFilm | null = null;
  for (let i = 0; i < chain.count; i++) {
    const u = chain.u[i]!;
    const cx = cosA * pose.x + pose.tiltY * u;
    const cy = cosA * pose.y - pose.tiltX * u;
    const angle = lobes.length === 0 ? Math.atan2(cy, cx) : proudestAngle(cx, cy, lobes);
    const film = chain.film[i]! + growth - cx * Math.cos(angle) - cy * Math.sin(angle) - lobesAt(lobes, angle);
    if (least === null || film < least.film) least = { film, u, angle: angle < 0 ? angle + 2 * Math.PI : angle };
  }
  return least;
}

/** Where cx·cos φ + cy·sin φ + lobes is greatest (rad). */
function proudestAngle(cx: number, cy: number, lobes: readonly Lobe[]): number {
  const proud = (angle: number) => cx * Math.cos(angle) + cy * Math.sin(angle) + lobesAt(lobes, angle);
  const places = 16 * Math.max(4, ...lobes.map(({ count }) => count));
  let best = 0;
  for (let i = 1; i < places; i++) if (proud((2 * Math.PI * i) / places) > proud((2 * Math.PI * best) / places)) best = i;
  let low = (2 * Math.PI * (best - 1)) / places;
  let high = (2 * Math.PI * (best + 1)) / places;
  for (let i = 0; i < 60; i++) {
    const third = (high - low) / 3;
    if (proud(low + third) < proud(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}
