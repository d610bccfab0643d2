/**
 * The stiffness felt at a station of the axis: the inverse of what the axis there gives way by under forces there.
 *
 *   C = Mᵀ K⁻¹ M,  stiffness C⁻¹        M: columns the unit forces along x, y, z at the station in the five coordinates
 *   (loadAt)
 *
 * K stiffness of the films (film/stiffness.ts), N/m and N/rad · returns N/m: x, y and z, or x and y alone where a stop
 * holds it along the axis
 */

import type { Metres } from '../../design/dimension.ts';
import { solveSmall } from '../algebra/elimination.ts';
import { loadAt } from '../spindle/pose.ts';
import type { Solved } from './solveRun.ts';

/** Null where the films do not resist some motion at all. */
export function stiffnessAt({ coefficients: { stiffness }, status }: Solved, station: Metres): number[][] | null {
  // The stop holds it along the axis, and so it is where nothing resists there.
  const isHeld = status === 'stopped' || stiffness[2]![2]! === 0;
  const free = isHeld ? [0, 1, 3, 4] : [0, 1, 2, 3, 4];
  const moves = [loadAt(1, 0, 0, station), loadAt(0, 1, 0, station), ...(isHeld ? [] : [loadAt(0, 0, 1, station)])].map(
    (move) => free.map((i) => move[i]!),
  );
  const given = solvedFor(
    free.map((i) => free.map((j) => stiffness[i]![j]!)),
    moves,
  );
  const compliance =
    given && moves.map((move) => given.map((one) => move.reduce((sum, part, k) => sum + part * one[k]!, 0)));
  const unit = moves.map((_, i) => moves.map((__, j) => (i === j ? 1 : 0)));
  const columns = compliance && solvedFor(compliance, unit);
  return columns && unit.map((_, i) => columns.map((column) => column[i]!));
}

function solvedFor(matrix: readonly (readonly number[])[], sides: readonly (readonly number[])[]): number[][] | null {
  const found = sides.map((side) => solveSmall(matrix, side));
  return found.every((one) => one !== null) ? found : null;
}
