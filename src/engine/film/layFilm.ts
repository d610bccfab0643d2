/** The film of every cell of the unrolled seat, and of the links between them (spindle/height.ts). */
import { filmAlong, pieceAt } from '../contact/film.ts';
import { proudAt, roundOf } from '../spindle/lobes.ts';
import type { Pose } from '../spindle/pose.ts';
import type { RigidSeat } from '../spindle/rigid.ts';
import { layRows, type Unrolled } from './unrolled.ts';

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

/**
 * Lays the grid over the overlap and fills the film in. `growth` (m) is what warm parts add; `turned` (rad) how far the
 * journal's lobes have turned. False: the parts do not overlap at this position.
 */
export function layFilm(
  film: Film,
  { gap, parts: { journal, bush }, sin, cos }: RigidSeat,
  pose: Pose,
  growth: number,
  turned = 0,
): boolean {
  const { grid } = film;
  const chain = filmAlong(gap, pose.z);
  const from = chain.u[0]!;
  const to = chain.u[chain.count - 1]!;
  if (chain.count < 2 || to <= from) return false;
  const bushLine = { x: gap.bush.u, y: gap.bush.v, count: gap.bush.u.length };
  layRows(grid, gap.halfAngle, from, to, (u) => u * sin + cos * valueOn(bushLine, u));

  const { rows, columns } = grid;
  const onAxis = { x: chain.u, y: chain.film, count: chain.count };
  const shift = pose.z * cos;
  const journalSlope = (u: number) => gap.journal.slope[pieceAt(gap.journal.u, u - shift)]!;
  const h0 = grid.centre.map((u) => valueOn(onAxis, u) + growth);
  const h0Link = grid.link.map((u) => valueOn(onAxis, u) + growth);
  for (let i = 0; i < rows; i++) film.zRate[i] = sin + cos * journalSlope(grid.centre[i]!);
  for (let i = 0; i <= rows; i++) film.zRateLink[i] = sin + cos * journalSlope(grid.link[i]!);

  const [journalRound, bushRound] = [roundOf(journal.lobes, [], turned), roundOf([], bush.lobes)];
  const step = (2 * Math.PI) / columns;
  for (let j = 0; j < columns; j++) {
    const lobed = proudAt(bushRound, j * step) + proudAt(journalRound, j * step);
    const turning = proudAt(journalRound, (j + 0.5) * step);
    film.turning[j] = turning;
    const faceLobed = proudAt(bushRound, (j + 0.5) * step) + turning;
    fillColumn(film.centre, j * rows, h0, grid.centre, pose, cos, grid.cos[j]!, grid.sin[j]!, lobed);
    fillColumn(film.around, j * rows, h0, grid.centre, pose, cos, grid.faceCos[j]!, grid.faceSin[j]!, faceLobed);
    fillColumn(film.along, j * (rows + 1), h0Link, grid.link, pose, cos, grid.cos[j]!, grid.sin[j]!, lobed);
  }
  return true;
}

function fillColumn(
  out: Float64Array,
  at: number,
  h0: Float64Array,
  u: Float64Array,
  { x, y, tiltX, tiltY }: Pose,
  cosA: number,
  cos: number,
  sin: number,
  lobed: number,
): void {
  const even = cosA * (x * cos + y * sin) + lobed;
  const perU = tiltY * cos - tiltX * sin;
  for (let i = 0; i < h0.length; i++) out[at + i] = h0[i]! - even - perU * u[i]!;
}

interface Chain {
  x: Float64Array;
  y: Float64Array;
  count: number;
}

function valueOn({ x, y, count }: Chain, at: number): number {
  const i = pieceAt(x, at, count);
  const span = x[i + 1]! - x[i]!;
  return span > 0 ? y[i]! + ((y[i + 1]! - y[i]!) * (at - x[i]!)) / span : y[i]!;
}
