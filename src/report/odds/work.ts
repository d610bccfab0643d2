/**
 * The odds of a design, told as they come: pairs as they are now, as planned, what matters, and what a trial first
 * would make of it. The same design gives the same odds.
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { blocksOf, oddsRun } from '../../engine/odds/odds.ts';
import { together } from '../../engine/odds/tally.ts';
import { settledSection } from '../belief/believed.ts';
import { assumedSection } from '../belief/section.ts';
import { millimetres } from '../convert.ts';
import type { OddsReport, StateReport } from './definition.ts';
import { drawCount } from './drawCount.ts';
import { type Start, type State, startOf } from './drawn.ts';
import { holdReport } from './hold.ts';
import { mattersOf, NO_MATTERS } from './matters.ts';
import { type Pictures, picturesOf } from './pictures.ts';
import { type Planning, plannedState, planningOf } from './planned.ts';
import { processReport } from './processes.ts';
import { questionOf } from './question.ts';
import { stateSection } from './stateSection.ts';
import { trialFirst } from './trialFirst.ts';

export type Stage = 'now' | 'planned' | 'matters' | 'processes' | 'hold' | 'trial';

export interface OddsSoFar {
  stage: Stage;
  /** of this stage */
  done: number;
  of: number;
  report: OddsReport | null;
  /** once a stage, when it ends */
  pictures?: { now?: Pictures; planned?: Pictures };
}

/** Blocks between two points that are told. */
const TOLD_EVERY = 4;

/**
 * `inFull`: a trial first is simulated too, and what to hold to is sought without being asked for. Nothing where what
 * is known goes together in no pair.
 */
export function* oddsWork(given: Design, inFull = true): Generator<OddsSoFar, OddsReport | null> {
  const start = startOf(given);
  if (!start) return null;
  const draws = drawCount(given);
  const seed = given.odds?.seed ?? defaultAt('odds.seed');
  const { design } = start;
  const planning = planningOf(start);
  const planned = planning && plannedState(start, planning);
  // Where trials leave nothing to cut, Cut tells the films at its position, and so are they told here.
  const settled = planning && !planned && start.trials.length > 0;
  const now = settled ? { ...start.now, question: questionOf(design, millimetres(planning.plan.position)) } : start.now;
  const head = { ...headOf(start, draws, seed), ...(settled && { setBy: 'plan' as const }) };
  let report: OddsReport | null = null;
  const found = yield* drawnState(design, now, { draws, seed }, function* (state, done, of, pictures) {
    report = { ...head, ...state, ...NO_MATTERS };
    yield { stage: 'now', done, of, report, ...(pictures && { pictures: { now: pictures } }) };
  });
  if (!found) return null;
  let told: OddsReport = { ...head, ...found, ...NO_MATTERS };
  if (planned) {
    const then = yield* drawnState(design, planned, { draws, seed }, function* (state, done, of, pictures) {
      const report = { ...told, planned: { ...state, ...NO_MATTERS } };
      yield { stage: 'planned', done, of, report, ...(pictures && { pictures: { planned: pictures } }) };
    });
    if (then) told = { ...told, planned: { ...then, ...NO_MATTERS } };
  }
  yield { stage: 'matters', done: 0, of: 2, report: told };
  if (told.planned)
    told = { ...told, planned: { ...told.planned, ...mattersOf(design, planned!, seed, start.unread) } };
  yield { stage: 'matters', done: 1, of: 2, report: told };
  told = { ...told, ...mattersOf(design, now, seed, start.unread) };
  yield { stage: 'matters', done: 2, of: 2, report: told };
  told = yield* sideBySide(given, told);
  if (inFull || given.odds?.wanted !== undefined) {
    yield { stage: 'hold', done: 0, of: 0, report: told };
    told = { ...told, hold: holdReport(design, told.planned ? planned! : now, seed) };
  }
  return inFull && planning && told.planned ? yield* triedFirst(start, planning, seed, told) : told;
}

function* sideBySide(given: Design, report: OddsReport): Generator<OddsSoFar, OddsReport> {
  const processes = given.odds?.processes ?? [];
  if (processes.length === 0) return report;
  let told = report;
  for (const [done, process] of processes.entries()) {
    yield { stage: 'processes', done, of: processes.length, report: told };
    told = { ...told, processes: [...(told.processes ?? []), ...listOf(processReport(given, process))] };
  }
  return told;
}

const listOf = <T>(one: T | null): T[] => (one === null ? [] : [one]);

function* triedFirst(
  start: Start,
  planning: Planning,
  seed: number,
  report: OddsReport,
): Generator<OddsSoFar, OddsReport> {
  const { best, limits } = report.planned!;
  const work = trialFirst(start, planning, { share: best.inBand.all!, ...limits.best.all! }, seed);
  for (;;) {
    const next = work.next();
    if (next.done) return next.value ? { ...report, trialFirst: next.value } : report;
    yield { stage: 'trial', ...next.value, report };
  }
}

type Tell = (state: StateReport, done: number, of: number, pictures?: Pictures) => Generator<OddsSoFar>;

function* drawnState(
  design: Design,
  state: State,
  { draws, seed }: { draws: number; seed: number },
  tell: Tell,
): Generator<OddsSoFar, StateReport | null> {
  const run = oddsRun(state.sampler, state.middle, state.question, seed);
  const blocks = blocksOf(draws);
  let tally = run.empty();
  let section: StateReport | null = null;
  for (const [i, [from, count]] of blocks.entries()) {
    tally = together(tally, run.block(from, count));
    if ((i + 1) % TOLD_EVERY !== 0 && i + 1 < blocks.length) continue;
    section = stateSection(design, state.question, run.answer(tally));
    const last = i + 1 === blocks.length;
    if (section) yield* tell(section, i + 1, blocks.length, last ? picturesOf(state, run, seed, draws) : undefined);
  }
  return section;
}

const headOf = ({ from, design, unread, now }: Start, draws: number, seed: number) => ({
  from,
  draws,
  seed,
  ...(now.sampler.effective !== undefined && { effective: now.sampler.effective }),
  assumed: assumedSection(design, unread),
  ...(from === 'belief' && settledSection(design)),
});
