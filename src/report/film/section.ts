/** The `film` section of the report: present when the design has `run`. */
import type { Design } from '../../design/definition.ts';
import type { SeatFilm } from '../../engine/film/seatFilm.ts';
import type { Matrix5 } from '../../engine/film/stiffness.ts';
import { answerOf, type CarriedAnswer } from '../../engine/run/answer.ts';
import { FINE, MOST_EFFORT, type MostEffort, type Running, WARM } from '../../engine/run/running.ts';
import { type Solved, thinnestOf } from '../../engine/run/solveRun.ts';
import { cubicMillimetres, megapascals, millimetres as mm, perMillimetre, revPerMinute } from '../convert.ts';
import type { FilmReport, SeatOilReport } from './definition.ts';
import { failedReport } from './failed.ts';
import { backOffReport, forceReport, leastReport, loadReport, placeReport, poseReport } from './parts.ts';
import { noseStation, type Run, toRunning } from './toSpindle.ts';

/** `most`: how much work is spent on each question. */
export function filmSection(design: Design, most: MostEffort = MOST_EFFORT): FilmReport | undefined {
  const { run } = design;
  if (!run) return undefined;
  const running = toRunning({ ...design, run }, most);
  const answer = answerOf(running);
  return 'solved' in answer ? carriedReport({ ...design, run }, running, answer) : failedReport(running, answer);
}

function carriedReport(
  design: Design & { run: Run },
  running: Running,
  { solved, presses, nose, sought, whirling, turn, warmUp, steady, unreached, guidance, accuracy }: CarriedAnswer,
): FilmReport {
  return {
    status: solved.status,
    pose: poseReport(solved.pose),
    seats: solved.seats.map((seat, i) => seatReport(seat, i, running)),
    ...totalsOf(solved),
    stop: solved.stop,
    load: loadReport(running),
    contact: null,
    backOff: backOffReport(sought),
    stiffness: presses ? matrixReport(solved.coefficients.stiffness) : [],
    damping: presses ? matrixReport(solved.coefficients.damping) : [],
    nose: nose && { station: noseStation(design), stiffness: nose.map((row) => row.map(perMillimetre)) },
    turn: turnReport(turn),
    whirl: whirlReport(running, whirling),
    warmUp: warmUp.points.map((point) => ({ ...point, leastFilm: mm(point.leastFilm) })),
    warmUpEnd: warmUp.end === 'cancelled' ? 'none' : warmUp.end,
    steady: steady && steadyReport(running, steady),
    unreached: [
      ...(whirling?.givenUp ? (['whirl'] as const) : []),
      ...unreached,
      ...(sought?.givenUp ? (['backOff'] as const) : []),
    ],
    guidance: { ...guidance, film: mm(guidance.film), seat: running.seats[guidance.seat]!.name },
    accuracy: {
      ...FINE,
      ...accuracy,
      leastFilm: mm(accuracy.leastFilm),
      warmRows: WARM.rows,
      warmColumns: WARM.columns,
    },
  };
}

function seatReport(seat: SeatFilm, i: number, running: Running): SeatOilReport {
  return {
    name: running.seats[i]!.name,
    ...forceReport(seat.force),
    torque: mm(seat.torque),
    power: seat.power,
    peakPressure: megapascals(seat.peak.pressure),
    peakAt: placeReport(running, i, seat.peak.u, seat.peak.angle),
    ...leastReport(running, i, seat.least),
    flow: cubicMillimetres(seat.flow.rear + seat.flow.nose),
    supplied: cubicMillimetres(seat.supplied),
    temperature: running.ambient,
    viscosity: running.run.viscosity[i]!,
    wetted: seat.wetted.area / seat.wetted.of,
  };
}

function totalsOf({ seats, total }: Solved) {
  return {
    ...forceReport(total.force),
    torque: mm(total.torque),
    power: total.power,
    leastFilm: mm(thinnestOf(seats)),
  };
}

/** N/m and the rest to N/mm, N/rad, N·mm/mm, N·mm/rad. */
const matrixReport = (m: Matrix5) =>
  m.map((row, i) =>
    row.map((value, j) => {
      const done = i < 3 ? value : mm(value);
      return j < 3 ? perMillimetre(done) : done;
    }),
  );

function whirlReport({ run: { omega }, journal }: Running, whirling: CarriedAnswer['whirling']): FilmReport['whirl'] {
  if (!whirling || whirling.now === null) return null;
  const { now, threshold } = whirling;
  return {
    stable: now.stable,
    ratio: now.frequency / Math.abs(omega),
    decay: now.decay,
    threshold: threshold === null ? null : revPerMinute(threshold),
    mass: journal.mass,
  };
}

function turnReport(turn: CarriedAnswer['turn']): FilmReport['turn'] {
  if (turn === null) return null;
  if (turn === 'touches') return { touches: true, leastFilm: null, least: null, greatest: null };
  return {
    touches: false,
    leastFilm: mm(turn.leastFilm),
    least: forceReport(turn.least).force,
    greatest: forceReport(turn.greatest).force,
  };
}

function steadyReport(
  { seats }: Running,
  state: NonNullable<CarriedAnswer['steady']>,
): NonNullable<FilmReport['steady']> {
  return {
    journal: state.journal,
    bush: state.bush,
    pose: poseReport(state.pose),
    seats: state.seats.map((seat, i) => ({
      name: seats[i]!.name,
      temperature: state.oil[i]!,
      viscosity: state.run.viscosity[i]!,
      leastFilm: mm(seat.least.film),
      growth: mm(state.run.growth[i]!),
      power: seat.power,
    })),
    leastFilm: mm(thinnestOf(state.seats)),
    calm: state.isCalm,
    power: state.total.power,
    heat: { ...state.toRoom, oil: state.heat.oil },
  };
}
