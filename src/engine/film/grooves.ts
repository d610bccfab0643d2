/**
 * Grooves and holes: cells held at the pressure of their supply.
 *
 * A cell is held when its centre lies in the groove. Its links to the film beside it are as long as the way from the
 * neighbour's centre to the groove's true edge, not to the held cell's centre, so that the edge counts where it lies
 * and the pressure stays second order in the cells.
 */
import type { Radians } from '../../design/dimension.ts';
import { GIVEN, type PressureSolver } from './complementarity.ts';
import { columnStep, rowStep, type Unrolled } from './unrolled.ts';

/**
 * An axial groove, or a hole, in the bush: oil at a pressure (Pa ≥ 0) from u to u along the slant (m), `width` (m)
 * along the arc about `angle` (rad).
 */
export interface Groove {
  angle: Radians;
  from: number;
  to: number;
  width: number;
  pressure: number;
}

/** Marks the cells of grooves, sets their links and lets them feed their neighbours. Comes after the links are made. */
export function holdGrooves(
  grid: Unrolled,
  solver: PressureSolver,
  given: Float64Array,
  grooves: readonly Groove[],
): void {
  const held = solver.held[0]!;
  held.fill(0);
  given.fill(0);
  if (grooves.length === 0) return;
  for (const groove of grooves) holdOne(grid, solver, given, groove);
  feed(solver, given, held);
}

function holdOne(grid: Unrolled, { levels, held }: PressureSolver, given: Float64Array, groove: Groove): void {
  const { rows, columns, radius } = grid;
  const { along, around } = levels[0]!;
  const around360 = (j: number) => ((j % columns) + columns) % columns;
  const [firstRow, lastRow] = stretch(rowAt(grid, groove.from), rowAt(grid, groove.to), rows);
  for (let i = firstRow; i <= lastRow; i++) {
    const half = Math.min(Math.PI, groove.width / 2 / radius[i]!) / columnStep(grid);
    const middle = groove.angle / columnStep(grid);
    const [first, last] = nearestIn(middle - half, middle + half);
    const end = Math.min(last, first + columns - 1);
    for (let j = first; j <= end; j++) {
      const k = around360(j) * rows + i;
      held[0]![k] = GIVEN;
      given[k] = groove.pressure;
      if (i === firstRow && i > 0) along[k - 1]! /= way(rowAt(grid, groove.from) - (i - 1));
      if (i === lastRow && i < rows - 1) along[k]! /= way(i + 1 - rowAt(grid, groove.to));
    }
    if (end - first + 1 < columns) {
      around[around360(first - 1) * rows + i]! /= way(middle - half - (first - 1));
      around[around360(end) * rows + i]! /= way(end + 1 - (middle + half));
    }
  }
}

/** The place of u among the rows, in cells: a whole number at a centre. */
const rowAt = (grid: Unrolled, u: number) => (u - grid.from) / rowStep(grid) - 0.5;

/** Cells from centre to edge; a groove narrower than a cell is farther away than the cell. */
const way = (cells: number) => Math.min(1.5, Math.max(0.1, cells));

/**
 * The whole numbers from one place to another; the nearest to their middle where there is none: a small hole is one
 * cell.
 */
function nearestIn(from: number, to: number): [number, number] {
  const nearest = Math.round((from + to) / 2);
  return [Math.min(Math.ceil(from), nearest), Math.max(Math.floor(to), nearest)];
}

/** The same within `count` cells; none where the groove does not reach the seat. */
function stretch(from: number, to: number, count: number): [number, number] {
  if (to < -0.5 || from > count - 0.5) return [0, -1];
  const [first, last] = nearestIn(Math.max(from, -0.5), Math.min(to, count - 0.5));
  return [Math.max(0, Math.min(count - 1, first)), Math.min(count - 1, Math.max(0, last))];
}

/** What flows from held cells at their pressure into their neighbours, whose unknown is counted from nothing. */
function feed({ levels }: PressureSolver, given: Float64Array, held: Uint8Array): void {
  const { rows, columns, along, around, b } = levels[0]!;
  for (let k = 0; k < held.length; k++) {
    if (held[k] !== GIVEN || given[k] === 0) continue;
    const row = k % rows;
    const column = (k - row) / rows;
    const before = (column === 0 ? columns - 1 : column - 1) * rows + row;
    const after = (column === columns - 1 ? 0 : column + 1) * rows + row;
    if (row > 0) b[k - 1]! += along[k - 1]! * given[k]!;
    if (row < rows - 1) b[k + 1]! += along[k]! * given[k]!;
    b[before]! += around[before]! * given[k]!;
    b[after]! += around[k]! * given[k]!;
  }
}
