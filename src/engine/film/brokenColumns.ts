/** Where the broken part of a film ends along a column (complementarity.ts). */
import type { Level } from './multigrid.ts';

/** What a broken cell is held by. */
export const BROKEN = 1;

/**
 * The edge of the broken part runs along a column for many cells where links along the slant are strong, and would move
 * by one cell a cycle: each column where it moved is brought to its own end first, its neighbours as they stand.
 */
export function settleTouched(level: Level, held: Uint8Array, touched: Uint8Array): void {
  for (let j = 0; j < level.columns; j++) {
    if (touched[j] === 0) continue;
    for (let turn = 0; turn < level.rows; turn++) {
      solveColumn(level, held, j);
      if (!exchangeInColumn(level, held, j)) break;
    }
  }
}

/** Factors and solves one column. */
function solveColumn(
  { rows, columns, along, around, diagonal, inverse, p, b }: Level,
  held: Uint8Array,
  j: number,
): void {
  const at = j * rows;
  const before = (j === 0 ? columns - 1 : j - 1) * rows;
  const after = (j === columns - 1 ? 0 : j + 1) * rows;
  let y = 0;
  for (let i = 0; i < rows; i++) {
    const k = at + i;
    const under = i === 0 ? 0 : along[k - 1]!;
    const one = held[k] !== 0 ? 0 : 1 / (diagonal[k]! - (i === 0 ? 0 : under * under * inverse[k - 1]!));
    inverse[k] = one;
    y = (b[k]! + around[before + i]! * p[before + i]! + around[k]! * p[after + i]! + under * y) * one;
    p[k] = y;
  }
  for (let k = at + rows - 2; k >= at; k--) {
    y = p[k]! + along[k]! * inverse[k]! * y;
    p[k] = y;
  }
}

/** Breaks and fills cells of one solved column; false when nothing changed. */
function exchangeInColumn({ rows, columns, along, around, p, b }: Level, held: Uint8Array, j: number): boolean {
  const at = j * rows;
  const before = (j === 0 ? columns - 1 : j - 1) * rows;
  const after = (j === columns - 1 ? 0 : j + 1) * rows;
  let changed = false;
  for (let i = 0; i < rows; i++) {
    const k = at + i;
    if (p[k]! < 0) {
      p[k] = 0;
      held[k] = BROKEN;
      changed = true;
    } else if (held[k] === BROKEN) {
      const r =
        b[k]! +
        around[before + i]! * p[before + i]! +
        around[k]! * p[after + i]! +
        (i > 0 ? along[k - 1]! * p[k - 1]! : 0) +
        (i < rows - 1 ? along[k]! * p[k + 1]! : 0);
      if (r > 0) {
        held[k] = 0;
        changed = true;
      }
    }
  }
  return changed;
}
