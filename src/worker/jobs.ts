/**
 * What is worked out beside the screen, by name: one line each. A generator tells every point as it comes and can be
 * stopped between two.
 * Runs in a worker.
 */
import type { Design } from '../design/definition.ts';
import type { System } from '../design/units.ts';
import { FINE, QUICK } from '../engine/run/running.ts';
import { beliefSection } from '../report/belief/section.ts';
import { cutSection } from '../report/cut/section.ts';
import type { FilmReport } from '../report/film/definition.ts';
import { followFields, warmFields } from '../report/film/fields.ts';
import { clearanceWork, coldSettings, filmWork, speedWork } from '../report/film/limits.ts';
import { filmSection } from '../report/film/section.ts';
import { measureSection } from '../report/measure/section.ts';
import { oddsTold } from '../report/odds/section.ts';
import { oddsWork } from '../report/odds/work.ts';
import { playSection } from '../report/play/section.ts';
import { printMaps } from '../report/print/maps.ts';
import { printSection } from '../report/print/section.ts';
import { statesOf } from '../report/record/states.ts';
import { solve } from '../report/report.ts';

export type Running = Design & { run: NonNullable<Design['run']> };

const follower = followFields(QUICK);
const full = followFields(FINE);

export const JOBS = {
  cut: (design: Design) => cutSection(design),
  /** both parts as believed, with their doubt */
  belief: (design: Design) => beliefSection(design),
  play: (design: Design) => playSection(design),
  print: (design: Design) => printSection(design),
  printMaps: (design: Design) => printMaps(design),
  /** `tools`: which system's tools the shop has */
  measure: ({ design, tools }: { design: Design; tools: System }) => measureSection(design, tools),
  /** every surface as first measured, after each cut, and now */
  states: (design: Design) => statesOf(design),
  /** pressure and film on a coarse grid, for a design that changes */
  movingFields: (design: Design) => follower.fields(design),
  /** the same on the full grid, for a design that rests, and of the warm spindle */
  fullFields: (design: Design) => full.fields(design),
  warmFields: ({ design, steady }: { design: Design; steady: NonNullable<FilmReport['steady']> }) =>
    warmFields(design, steady, FINE),
  film: (design: Design) => filmSection(design),
  /** film, temperature and power at each of these speeds (rev/min), and the stretch that is safe */
  speeds: ({ design, speeds }: { design: Running; speeds: number[] }) => speedWork(design, speeds),
  /** the same with this much film (mm) added to every seat */
  clearances: ({ design, extras }: { design: Running; extras: number[] }) => clearanceWork(design, extras),
  /** the same with every film aimed for cut to each of these (mm), and which to aim for */
  films: ({ design, films }: { design: Running; films: number[] }) => filmWork(design, films),
  /** where to set the journal cold, seat by seat */
  coldSettings: (design: Running) => coldSettings(design),
  /** how likely the pair works, point by point; and the same at once, without a trial simulated */
  odds: (design: Design) => oddsWork(design),
  oddsTold: (design: Design) => oddsTold(design),
  /** the whole report, as the command line writes it */
  solve: (design: Design) => solve(design, `${design.title ?? 'design'}.conepair.json`),
};

export type Jobs = typeof JOBS;
export type JobName = keyof Jobs;
export type Input<K extends JobName> = Parameters<Jobs[K]>[0];
export type Result<K extends JobName> =
  ReturnType<Jobs[K]> extends Generator<unknown, infer R> ? R : ReturnType<Jobs[K]>;
export type Point<K extends JobName> = ReturnType<Jobs[K]> extends Generator<infer P> ? P : never;
