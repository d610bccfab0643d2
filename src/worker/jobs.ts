/**
 * What is worked out beside the screen, by name: one line each. A generator tells every point as it comes and can be
 * stopped between two.
 * Runs in a worker.
 */
import type { Design } from '../design/definition.ts';
import type { System } from '../design/units.ts';
import type { Right } from '../lessons/apart.ts';
import { type DealtQuestion, deal } from '../lessons/deal.ts';
import type { Lesson, Question } from '../lessons/definition.ts';
import { triedBy } from '../lessons/tried.ts';
import { triedLesson } from '../lessons/tries.ts';
import { beliefSection } from '../report/belief/section.ts';
import { expectedShake, expectedTouch } from '../report/cut/expectedAtTrial.ts';
import { cutSection } from '../report/cut/section.ts';
import type { FilmReport } from '../report/film/definition.ts';
import { FINE, followFields, QUICK, warmFields } from '../report/film/fields.ts';
import { clearanceWork, coldSettings, filmWork, speedWork } from '../report/film/limits.ts';
import { filmSection } from '../report/film/section.ts';
import { measureSection } from '../report/measure/section.ts';
import type { Piece } from '../report/odds/pieces.ts';
import { askedOf, type Done, runnerOf } from '../report/odds/running.ts';
import { runningShown } from '../report/odds/runningShown.ts';
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
const asked = lastOf((design: Design, now: boolean) => {
  const asked = askedOf(design, now);
  return asked && { asked, run: runnerOf(asked) };
});

/** What an answer leans on, kept for the next of the same design: pieces come one by one. */
function lastOf<R>(work: (design: Design, now: boolean) => R): (design: Design, now: boolean) => R {
  let last: { key: string; result: R } | null = null;
  return (design, now) => {
    const key = JSON.stringify([design, now]);
    if (last?.key !== key) last = { key, result: work(design, now) };
    return last.result;
  };
}

export const JOBS = {
  cut: (design: Design) => cutSection(design),
  /** how far it would shake at the last of its trials, and where it would first touch */
  expectedAtTrial: (design: Design) => ({ shake: expectedShake(design), touch: expectedTouch(design) }),
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
  /** a piece of the odds of the run, and all of them put together; `now`: as it is set, whatever the plan */
  runPiece: ({ design, now, piece }: { design: Design; now: boolean; piece: Piece }) =>
    asked(design, now)?.run(piece) ?? null,
  runShown: ({ design, now, done }: { design: Design; now: boolean; done: Done[] }) => {
    const of = asked(design, now);
    return of && runningShown(design, of.asked, done);
  },
  /** a lesson, its design in it, with the numbers of a seed, solved before and after each question */
  lesson: ({ lesson, seed, before }: { lesson: Lesson; seed: number; before: readonly Right[] }) =>
    deal(lesson, seed, () => undefined, before),
  /** what an answer makes of the design of its question */
  lessonAnswer: ({ question, dealt, answer }: { question: Question; dealt: DealtQuestion; answer: number | string }) =>
    triedBy(question, dealt, answer),
  /** which of its first seeds are given, and why others are not */
  lessonTried: ({ lesson, count }: { lesson: Lesson; count: number }) => triedLesson(lesson, count),
  /** the whole report, as the command line writes it */
  solve: (design: Design) => solve(design, `${design.title ?? 'design'}.conepair.json`),
};

export type Jobs = typeof JOBS;
export type JobName = keyof Jobs;
export type Input<K extends JobName> = Parameters<Jobs[K]>[0];
export type Result<K extends JobName> =
  ReturnType<Jobs[K]> extends Generator<unknown, infer R> ? R : ReturnType<Jobs[K]>;
export type Point<K extends JobName> = ReturnType<Jobs[K]> extends Generator<infer P> ? P : never;
