/** The report of a run that no oil carries. */
import { metres, millimetres as mm } from '../toEngine.ts';
import { backOff } from './backOff.ts';
import type { FilmReport, SeatOilReport } from './definition.ts';
import { leastReport, loadReport, placeReport, poseReport } from './parts.ts';
import { leastFilms, type RunInput, type RunVerdict, type Solved } from './solveRun.ts';
import { neededFilm, type Run } from './toSpindle.ts';

export function failedReport(run: Run, input: RunInput, verdict: Exclude<RunVerdict, Solved>): FilmReport {
  const films = leastFilms(input.seats, verdict.pose);
  const touching = verdict.seat === null ? null : films[verdict.seat];
  const sought = verdict.status === 'contact' || verdict.status === 'noRoom' ? backOff(input, metres(neededFilm(run))) : null;
  const known = films.filter((film) => film !== null).map(({ film }) => film);
  return {
    status: verdict.status,
    pose: poseReport(verdict.pose),
    seats: input.seats.map(({ name }, i) => ({ ...NOTHING, name, ...leastReport(input, i, films[i]!) })),
    force: null,
    moment: null,
    torque: null,
    power: null,
    leastFilm: known.length === 0 ? null : mm(Math.min(...known)),
    stop: null,
    load: loadReport(input),
    contact: verdict.seat === null || !touching ? null : { seat: input.seats[verdict.seat]!.name, film: mm(touching.film), ...placeReport(input, verdict.seat, touching.u, touching.angle) },
    backOff: sought?.backOff ?? null,
    stiffness: [],
    damping: [],
    nose: null,
    turn: null,
    whirl: null,
    warmUp: [],
    warmUpEnd: 'none',
    steady: null,
    unreached: [...(verdict.status === 'givenUp' ? (['pose'] as const) : []), ...(sought?.givenUp ? (['backOff'] as const) : [])],
    guidance: null,
    accuracy: null,
  };
}

const NOTHING: Omit<SeatOilReport, 'name' | 'leastFilm' | 'leastFilmAt'> = {
  force: null,
  moment: null,
  torque: null,
  power: null,
  peakPressure: null,
  peakAt: null,
  flow: null,
  supplied: null,
  temperature: null,
  viscosity: null,
  wetted: null,
};
