/**
 * The running spindle off the main thread. The film that follows a hand answers in a frame or two; the whole section and the sweeps
 * take seconds, tell every point and can be stopped. One worker is started for each of the two (runClient.ts), so that the one never waits for the other.
 */
import { expose } from 'comlink';
import type { Design } from '../design/definition.ts';
import { FINE, QUICK } from '../engine/run/running.ts';
import type { FilmReport } from '../report/film/definition.ts';
import { followFields, warmFields } from '../report/film/fields.ts';
import { type ColdSetting, clearanceWork, coldSettings, type LimitPoint, speedWork } from '../report/film/limits.ts';
import { filmSection } from '../report/film/section.ts';
import { sayAlive } from './alive.ts';
import { drive, type Ended } from './longWork.ts';

type Running = Design & { run: NonNullable<Design['run']> };
type Tell<P> = (point: P) => void;

const follower = followFields(QUICK);
const full = followFields(FINE);
/** Jobs that were asked to stop. */
const stops = new Set<number>();

/** Lets messages in between two points. */
const breathe = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

async function long<P, R>(job: number, work: Generator<P, R>, tell: Tell<P>): Promise<Ended<R>> {
  const ended = await drive(work, { tell, stopped: () => stops.has(job), breathe });
  stops.delete(job);
  return ended;
}

const RUN = {
  fields: (design: Design) => follower.fields(design),
  /** the same on the full grid, for a design that rests */
  fullFields: (design: Design) => full.fields(design),
  warmFields: (design: Design, steady: NonNullable<FilmReport['steady']>) => warmFields(design, steady, FINE),
  film: (design: Design) => filmSection(design) ?? null,
  /** speeds in rev/min */
  speeds: (job: number, design: Running, speeds: number[], tell: Tell<LimitPoint>) => long(job, speedWork(design, speeds), tell),
  /** mm of film added to every seat */
  clearances: (job: number, design: Running, extras: number[], tell: Tell<LimitPoint>) => long(job, clearanceWork(design, extras), tell),
  coldSettings: (job: number, design: Running, tell: Tell<ColdSetting>) => long(job, coldSettings(design), tell),
  stop: (job: number) => {
    stops.add(job);
  },
};

export type RunSolver = typeof RUN;

expose(RUN);
sayAlive();
