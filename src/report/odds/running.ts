/**
 * The odds of the run: pairs drawn, each run from cold to warm. A block of draws is worked out by itself, by whoever
 * has time; put together they are the same in any order.
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import type { Chance } from '../../engine/odds/limits.ts';
import {
  CHECK_GRID,
  gridError,
  type RunBlock,
  type RunningAsk,
  type RunSpread,
  runDraws,
  runningOf,
} from '../../engine/odds/running.ts';
import { RUN_GRID } from '../../engine/odds/runningGrid.ts';
import { millimetres } from '../convert.ts';
import { toRunning } from '../film/toSpindle.ts';
import type { RunningReport } from './definition.ts';
import { startOf } from './drawn.ts';
import { drawsOf, type Piece, piecesOf } from './pieces.ts';
import { plannedState, planningOf } from './planned.ts';
import { settingsOf } from './settings.ts';

/** Which pairs are run: those of the plan where there is one, or as they are now. */
export type Which = 'planned' | 'now';

export interface Asked {
  ask: RunningAsk;
  of: Which;
}

/** Null where nothing runs, or what is known goes together in no pair. `now`: whatever the plan; each as it is set. */
export function askedOf(design: Design, now = false): Asked | null {
  const { run, odds } = design;
  const start = run && startOf(design);
  if (!start) return null;
  const planning = now ? null : planningOf(start);
  const planned = planning && plannedState(start, planning);
  const { sampler, middle, question } = planned ?? start.now;
  const wanted = middle.some(({ target }) => target !== undefined);
  const ask: RunningAsk = {
    running: toRunning({ ...design, run }),
    sampler,
    middle,
    question,
    at: now || !wanted ? 'set' : (odds?.running?.at ?? 'best'),
    settings: settingsOf(design).settings,
    seed: odds?.seed ?? defaultAt('odds.seed'),
  };
  return { ask, of: planned ? 'planned' : 'now' };
}

export interface Done {
  piece: Piece;
  block: RunBlock;
}

/** Works out pieces of one design, one after another. */
export function runnerOf({ ask }: Asked): (piece: Piece) => Done {
  const runs = new Map<boolean, ReturnType<typeof runDraws>>();
  return (piece) => {
    const run = runs.get(piece.fine) ?? runDraws(ask, piece.fine ? CHECK_GRID : RUN_GRID);
    runs.set(piece.fine, run);
    return { piece, block: { from: piece.from, draws: run(piece.from, piece.count) } };
  };
}

/** Null while nothing that counts is done. */
export function runningReport(design: Design, { ask, of }: Asked, done: readonly Done[]): RunningReport | null {
  const blocks = (fine: boolean) =>
    done.flatMap(({ piece, block }) => (piece.fine === fine ? [block] : [])).toSorted((a, b) => a.from - b.from);
  const small = blocks(false);
  const answer = runningOf(ask, small);
  if (answer.draws === 0) return null;
  const named = <T>(each: readonly T[]) =>
    Object.fromEntries(design.seats.map(({ name }, i) => [name, each[i]!])) as Record<string, T>;
  const fine = new Map(
    blocks(true).flatMap((block) => block.draws.map((drawn, k) => [block.from + k, drawn] as const)),
  );
  const checked = small.flatMap(({ from, draws }) =>
    draws.flatMap((drawn, k) => (fine.has(from + k) ? [[drawn, fine.get(from + k)!] as const] : [])),
  );
  const error = gridError(
    checked.map(([drawn]) => drawn),
    checked.map(([, other]) => other),
  );
  const { runs, shut, seizes, standing } = answer.ends;
  const { notCarried } = settingsOf(design);
  return {
    of,
    at: ask.at,
    draws: answer.draws,
    unsettled: answer.unsettled,
    noShape: answer.noShape,
    needed: millimetres(ask.running.needed),
    runs: told(runs),
    shut: told(shut),
    seizes: told(seizes),
    standing: told(standing),
    parted: { ...named(answer.parted.each.map(told)), all: told(answer.parted.all) },
    cool: told(answer.cool),
    calm: told(answer.calm),
    well: told(answer.well),
    films: named(answer.films.map((film) => film && scaled(film, millimetres))),
    hottest: answer.hottest && scaled(answer.hottest),
    power: answer.power && scaled(answer.power),
    stop: answer.stop && scaled(answer.stop),
    grid: {
      ...RUN_GRID,
      checked: error.checked,
      otherwise: error.otherwise,
      film: millimetres(error.film.error),
      hottest: error.hottest.error,
    },
    ...(notCarried.length > 0 && { notCarried }),
  };
}

const told = ({ share, low, high }: Chance) => ({ share, low, high });

const scaled = ({ mean, sd, p05, p50, p95 }: RunSpread, by: (value: number) => number = (value) => value) => ({
  mean: by(mean),
  sd: by(sd),
  p05: by(p05),
  p50: by(p50),
  p95: by(p95),
});

/** All of it, one piece after another. */
export function runningTold(design: Design): RunningReport | null {
  const asked = askedOf(design);
  if (!asked) return null;
  return runningReport(design, asked, piecesOf(drawsOf(design)).map(runnerOf(asked)));
}
