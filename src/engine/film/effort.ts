/**
 * Work that may be spent on one question, so that no design is worked on without end. Counted in visits to the cells of
 * the grids and not by the clock: the same design is given up at the same place on every machine.
 */
export interface Effort {
  spent: number;
  readonly most: number;
}

export const effortOf = (most: number): Effort => ({ spent: 0, most });
export const isSpent = (effort: Effort | undefined): boolean => effort !== undefined && effort.spent >= effort.most;

/** Passes over the grid that go with every pressure besides its cycles; those of K and B, five adjoints. */
const AROUND = 6;
const COEFFICIENTS = 40;

export function spendOnPressure(effort: Effort | undefined, cells: number, cycles: number): void {
  if (effort) effort.spent += cells * (cycles + AROUND);
}

export function spendOnCoefficients(effort: Effort | undefined, cells: number): void {
  if (effort) effort.spent += cells * COEFFICIENTS;
}
