/** The way from the screen to its solvers: one worker for the sections that all screens share, one for the readings, which may take seconds. */
import type { Design } from '../design/definition.ts';
import type { System } from '../design/units.ts';
import type { Solvers } from './solver.ts';
import { createThread } from './thread.ts';

const start = () => new Worker(new URL('./solver.ts', import.meta.url), { type: 'module' });

export const sections = createThread<Solvers>(start);
const readings = createThread<Solvers>(start);

/** What the readings of a design tell; `tools`: which system's tools the shop has. */
export const measured = (design: Design, tools: System) => readings.ask((solver) => solver.measure(design, tools));

/** What is still being worked out of the readings is wanted no more. */
export const giveUpMeasuring = () => readings.giveUp();
