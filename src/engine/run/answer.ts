/**
 * All that is asked of a running spindle, answered: as it starts cold, over a turn, as it warms, and where it stands
 * warm.
 */
import type { Metres } from '../../design/dimension.ts';
import { effortOf } from '../film/effort.ts';
import { newGrids, type OverTurn, overTurn, turningLobes } from '../film/films.ts';
import { filmRatio, leastFilmGuidance } from '../heat/guidance.ts';
import { toRoom, type WarmFilm } from '../heat/warmFilm.ts';
import { steadyState, type WarmUp, warmUp } from '../heat/warmUp.ts';
import type { LeastFilm } from '../spindle/height.ts';
import { asFive } from '../spindle/pose.ts';
import { backOff, type Sought } from './backOff.ts';
import { calm } from './limits.ts';
import { HALF, type Running, warmingOf } from './running.ts';
import {
  type Accuracy,
  accuracyOf,
  leastFilms,
  type RunVerdict,
  type Solved,
  solveRun,
  thinnestOf,
} from './solveRun.ts';
import { stiffnessAt } from './stiffnessAt.ts';
import { type Whirling, whirlOf } from './whirling.ts';

export interface Steady extends WarmFilm {
  /** it does not whirl there */
  isCalm: boolean;
  /** W to the room from each part */
  toRoom: { journal: number; bush: number };
}

export interface CarriedAnswer {
  solved: Solved;
  /** oil presses somewhere; where none does nothing is stiff: the film would first have to be pushed into being */
  presses: boolean;
  /** N/m at the nose; null where none resists */
  nose: number[][] | null;
  /** null where the films part the surfaces as it is */
  sought: Sought | null;
  whirling: Whirling | null;
  /** over a turn of its lobes; null where it has none */
  turn: OverTurn | 'touches' | null;
  warmUp: WarmUp;
  steady: Steady | null;
  unreached: ('warmUp' | 'steady')[];
  /** what is published for the seat with the thinnest film (m), and its film ratio */
  guidance: { seat: number; film: Metres; within: boolean; filmRatio: number };
  accuracy: Accuracy;
}

export interface FailedAnswer {
  failed: Exclude<RunVerdict, Solved>;
  /** of every seat in that pose, interference negative */
  films: (LeastFilm | null)[];
  sought: Sought | null;
}

export function answerOf(running: Running): CarriedAnswer | FailedAnswer {
  const verdict = solveRun(running);
  if (!('seats' in verdict))
    return {
      failed: verdict,
      films: leastFilms(running.seats, verdict.pose),
      sought: verdict.status === 'contact' || verdict.status === 'noRoom' ? backOff(running) : null,
    };
  const presses = verdict.seats.some(({ wetted }) => wetted.area > 0);
  return {
    solved: verdict,
    presses,
    nose: presses ? stiffnessAt(verdict, running.nose) : null,
    sought: thinnestOf(verdict.seats) < running.needed ? backOff(running) : null,
    whirling: whirlOf(running, verdict),
    turn: turnOf(running, verdict),
    ...warmed(running),
    guidance: guidanceOf(running, verdict),
    accuracy: accuracyOf(verdict),
  };
}

/** Angles of the journal looked at over a turn. */
const PLACES = 24;

function turnOf({ seats, run }: Running, { pose }: Solved): CarriedAnswer['turn'] {
  if (seats.every((seat) => turningLobes(seat).length === 0)) return null;
  return overTurn(newGrids(seats, HALF), asFive(pose), run, PLACES) ?? 'touches';
}

function warmed(running: Running): Pick<CarriedAnswer, 'warmUp' | 'steady' | 'unreached'> {
  const { most, duration, rotor, ambient, journal, bush } = running;
  const warming = warmingOf(running);
  const way = warmUp({ ...warming, effort: effortOf(most.warmUp) }, duration);
  // Where the way there takes too long, its end may still be found.
  const ending = { ...warming, effort: effortOf(most.steady) };
  const found = way.end === 'time' || way.end === 'givenUp' ? steadyState(ending, way.last) : null;
  return {
    warmUp: way,
    steady:
      found?.status === 'solved'
        ? {
            ...found,
            isCalm: calm(ending, found, rotor),
            toRoom: { journal: toRoom(journal, found.journal, ambient), bush: toRoom(bush, found.bush, ambient) },
          }
        : null,
    unreached: [
      ...(way.end === 'givenUp' ? (['warmUp'] as const) : []),
      ...(found?.status === 'givenUp' ? (['steady'] as const) : []),
    ],
  };
}

function guidanceOf({ seats: at, run, roughness }: Running, { seats }: Solved): CarriedAnswer['guidance'] {
  const seat = seats.reduce((thin, { least }, i) => (least.film < seats[thin]!.least.film ? i : thin), 0);
  const { radius } = at[seat]!.parts.bush;
  return {
    seat,
    ...leastFilmGuidance(2 * radius, Math.abs(run.omega) * radius),
    filmRatio: filmRatio(seats[seat]!.least.film, roughness.journal, roughness.bush),
  };
}
