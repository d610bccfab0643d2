/** The report of a run that no oil carries. */
import type { FailedAnswer } from '../../engine/run/answer.ts';
import type { Running } from '../../engine/run/running.ts';
import { millimetres as mm } from '../convert.ts';
import type { FilmReport, SeatOilReport } from './definition.ts';
import { backOffReport, leastReport, loadReport, placeReport, poseReport } from './parts.ts';

export function failedReport(running: Running, { failed: verdict, films, sought }: FailedAnswer): FilmReport {
  const touching = verdict.seat === null ? null : films[verdict.seat];
  const known = films.filter((film) => film !== null).map(({ film }) => film);
  return {
    status: verdict.status,
    pose: poseReport(verdict.pose),
    seats: running.seats.map(({ name }, i) => ({ ...NOTHING, name, ...leastReport(running, i, films[i]!) })),
    force: null,
    moment: null,
    torque: null,
    power: null,
    leastFilm: known.length === 0 ? null : mm(Math.min(...known)),
    stop: null,
    load: loadReport(running),
    contact:
      verdict.seat === null || !touching
        ? null
        : {
            seat: running.seats[verdict.seat]!.name,
            film: mm(touching.film),
            ...placeReport(running, verdict.seat, touching.u, touching.angle),
          },
    backOff: backOffReport(sought),
    stiffness: [],
    damping: [],
    nose: null,
    turn: null,
    whirl: null,
    warmUp: [],
    warmUpEnd: 'none',
    steady: null,
    unreached: [
      ...(verdict.status === 'givenUp' ? (['pose'] as const) : []),
      ...(sought?.givenUp ? (['backOff'] as const) : []),
    ],
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
