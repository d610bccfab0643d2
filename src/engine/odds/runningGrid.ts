/** How the odds of a run are shared out and looked over: what whoever shares them out has to know, and no more. */
import type { GridSize } from '../film/films.ts';

/** Draws of a block, a power of 2: so few that a stop is soon heard. */
export const RUN_BLOCK = 8;
/** A quarter of the rows and half the columns of the warm run itself; what that costs is told. */
export const RUN_GRID: GridSize = { rows: 16, columns: 32 };
/** How many of so many draws are run on the grid of the run itself too: a run there takes as long as a dozen here. */
export const checkedOf = (draws: number): number => Math.min(24, Math.ceil(draws / 32));
