/** The way from the Run screen to its two workers: one follows the hand, one does what takes long. */
import { proxy, type Remote } from 'comlink';
import type { Design } from '../design/definition.ts';
import type { FilmReport } from '../report/film/definition.ts';
import type { RunFields } from '../report/film/fields.ts';
import type { ColdSetting, LimitPoint, Stretch } from '../report/film/limits.ts';
import type { Ended } from './longWork.ts';
import type { RunSolver } from './run.ts';
import { createThread } from './thread.ts';

const start = () => new Worker(new URL('./run.ts', import.meta.url), { type: 'module' });

/** Answers in a frame or two. */
const following = createThread<RunSolver>(start);
/** Takes seconds. */
const working = createThread<RunSolver>(start);

type Solver = Remote<RunSolver>;
type Steady = NonNullable<FilmReport['steady']>;
type Fields = Promise<RunFields | null | undefined>;

/** Pressure and film on a coarse grid, for a design that changes. */
export const movingFields = (design: Design): Fields => following.ask((solver) => solver.fields(design));
/** The same on the full grid. */
export const fullFields = (design: Design): Fields => following.ask((solver) => solver.fullFields(design));
/** The same of the warm spindle. */
export const warmFields = (design: Design, steady: Steady): Fields => following.ask((solver) => solver.warmFields(design, steady));

/** The whole section. */
export const film = (design: Design): Promise<FilmReport | null> => working.ask((solver) => solver.film(design));

/** The same; it tells nothing on its way, so a stop ends the worker, and it fails. */
export async function runSection(design: Design, signal: AbortSignal): Promise<FilmReport | null> {
  signal.addEventListener('abort', working.end, { once: true });
  try {
    return await film(design);
  } finally {
    signal.removeEventListener('abort', working.end);
  }
}

type Running = Design & { run: NonNullable<Design['run']> };

let jobs = 0;

/** Starts a sweep; `signal` stops it between two points. */
async function sweep<P, R>(call: (solver: Solver, job: number, tell: (point: P) => void) => Promise<Ended<R>>, tell: (point: P) => void, signal: AbortSignal): Promise<Ended<R>> {
  jobs++;
  const job = jobs;
  const stop = () => working.tell((solver) => solver.stop(job));
  signal.addEventListener('abort', stop, { once: true });
  try {
    return signal.aborted ? { status: 'cancelled' } : await working.ask((solver) => call(solver, job, proxy(tell)));
  } finally {
    signal.removeEventListener('abort', stop);
  }
}

/** Film, temperature and power at each of these speeds (rev/min), and the stretch that is safe. */
export const speedSweep = (design: Running, speeds: number[], tell: (point: LimitPoint) => void, signal: AbortSignal): Promise<Ended<Stretch | null>> => sweep((solver, job, each) => solver.speeds(job, design, speeds, each), tell, signal);

/** The same with this much film (mm) added to every seat. */
export const clearanceSweep = (design: Running, extras: number[], tell: (point: LimitPoint) => void, signal: AbortSignal): Promise<Ended<Stretch | null>> =>
  sweep((solver, job, each) => solver.clearances(job, design, extras, each), tell, signal);

/** Where to set the journal cold, seat by seat. */
export const coldSettingSweep = (design: Running, tell: (setting: ColdSetting) => void, signal: AbortSignal): Promise<Ended<void>> => sweep((solver, job, each) => solver.coldSettings(job, design, each), tell, signal);
