/** The way from the Run screen to its two workers: one follows the hand, one does what takes long. */
import { proxy, type Remote, wrap } from 'comlink';
import type { Design } from '../design/definition.ts';
import type { FilmReport } from '../report/film/definition.ts';
import type { ColdSetting, LimitPoint, Stretch } from '../report/film/limits.ts';
import type { Ended } from './longWork.ts';
import type { RunSolver } from './run.ts';

const start = () => new Worker(new URL('./run.ts', import.meta.url), { type: 'module' });

let following: Remote<RunSolver> | null = null;
let working: { thread: Worker; solver: Remote<RunSolver> } | null = null;

/** Answers in a frame or two: `fields`. */
export function runFollower(): Remote<RunSolver> {
  following ??= wrap<RunSolver>(start());
  return following;
}

/** Takes seconds: `film`, and the sweeps below. */
export function runWorker(): Remote<RunSolver> {
  if (working === null) {
    const thread = start();
    working = { thread, solver: wrap<RunSolver>(thread) };
  }
  return working.solver;
}

/** Ends what the worker is at, which is then never answered; the next one to ask starts another. */
function endRunWorker(): void {
  working?.thread.terminate();
  working = null;
}

/** The whole section. It tells nothing on its way, so a stop ends the worker; the answer then never comes. */
export async function runSection(design: Design, signal: AbortSignal): Promise<FilmReport | null> {
  signal.addEventListener('abort', endRunWorker, { once: true });
  try {
    return await runWorker().film(design);
  } finally {
    signal.removeEventListener('abort', endRunWorker);
  }
}

type Running = Design & { run: NonNullable<Design['run']> };

let jobs = 0;

/** Starts a sweep; `signal` stops it between two points. */
async function sweep<P, R>(call: (job: number, tell: (point: P) => void) => Promise<Ended<R>>, tell: (point: P) => void, signal: AbortSignal): Promise<Ended<R>> {
  jobs++;
  const job = jobs;
  const stop = () => void runWorker().stop(job);
  signal.addEventListener('abort', stop, { once: true });
  try {
    return signal.aborted ? { status: 'cancelled' } : await call(job, proxy(tell));
  } finally {
    signal.removeEventListener('abort', stop);
  }
}

/** Film, temperature and power at each of these speeds (rev/min), and the stretch that is safe. */
export const speedSweep = (design: Running, speeds: number[], tell: (point: LimitPoint) => void, signal: AbortSignal): Promise<Ended<Stretch | null>> => sweep((job, each) => runWorker().speeds(job, design, speeds, each), tell, signal);

/** The same with this much film (mm) added to every seat. */
export const clearanceSweep = (design: Running, extras: number[], tell: (point: LimitPoint) => void, signal: AbortSignal): Promise<Ended<Stretch | null>> =>
  sweep((job, each) => runWorker().clearances(job, design, extras, each), tell, signal);

/** Where to set the journal cold, seat by seat. */
export const coldSettingSweep = (design: Running, tell: (setting: ColdSetting) => void, signal: AbortSignal): Promise<Ended<void>> => sweep((job, each) => runWorker().coldSettings(job, design, each), tell, signal);
