/** The `film` section of the report: present when the design has `run`. */
import type { Design } from '../../design/definition.ts';
import { effortOf } from '../../engine/film/effort.ts';
import { asFive } from '../../engine/film/pose.ts';
import type { SeatFilm } from '../../engine/film/seatFilm.ts';
import { solveSmall } from '../../engine/film/smallSystem.ts';
import { newSpindle, overTurn } from '../../engine/film/spindle.ts';
import type { Matrix5 } from '../../engine/film/stiffness.ts';
import { filmRatio, leastFilmGuidance } from '../../engine/heat/guidance.ts';
import { calm } from '../../engine/heat/limits.ts';
import type { WarmFilm, Warming } from '../../engine/heat/warmFilm.ts';
import { toRoom } from '../../engine/heat/warmFilm.ts';
import { steadyState, warmUp } from '../../engine/heat/warmUp.ts';
import { metres, millimetres as mm } from '../toEngine.ts';
import { backOff } from './backOff.ts';
import type { FilmReport, SeatOilReport } from './definition.ts';
import { failedReport } from './failed.ts';
import { forceReport, leastReport, loadReport, placeReport, poseReport } from './parts.ts';
import { COARSE, FINE, HALF, MOST_EFFORT, type MostEffort, type RunInput, type Solved, solveRun, toRunInput, WARM, whirlOf } from './solveRun.ts';
import { AMBIENT, DURATION, neededFilm, ROUGHNESS, type Run, toBushBody, toJournalBody, toOil, toRotor } from './toSpindle.ts';

/** `most`: how much work is spent on each question. */
export function filmSection(design: Design, most: MostEffort = MOST_EFFORT): FilmReport | undefined {
  const { run } = design;
  if (!run) return undefined;
  const input = toRunInput(design, run, most);
  const verdict = solveRun(input);
  return 'seats' in verdict ? carriedReport(design, run, input, verdict) : failedReport(run, input, verdict);
}

function carriedReport(design: Design, run: Run, input: RunInput, solved: Solved): FilmReport {
  // Where no oil presses, nothing is stiff: the film would first have to be pushed into being.
  const presses = solved.seats.some(({ wetted }) => wetted.area > 0);
  const ambient = run.ambient ?? AMBIENT;
  const nose = noseStation(design, run);
  const sought = filmOf(solved) < metres(neededFilm(run)) ? backOff(input, metres(neededFilm(run))) : null;
  const whirling = run.speed === 0 ? null : whirlOf(design, input, solved);
  const warm = warmReport(design, run, input);
  return {
    status: solved.status,
    pose: poseReport(solved.pose),
    seats: solved.seats.map((seat, i) => seatReport(seat, i, input, ambient)),
    ...totalsOf(solved),
    stop: solved.stop,
    load: loadReport(input),
    contact: null,
    backOff: sought?.backOff ?? null,
    stiffness: presses ? matrixReport(solved.coefficients.stiffness) : [],
    damping: presses ? matrixReport(solved.coefficients.damping) : [],
    nose: presses ? noseReport(solved, nose) : null,
    turn: turnReport(input, solved),
    whirl: whirling && whirlReport(run, input, whirling),
    ...warm.report,
    unreached: [...(whirling?.givenUp ? (['whirl'] as const) : []), ...warm.unreached, ...(sought?.givenUp ? (['backOff'] as const) : [])],
    guidance: guidanceReport(design, run, input, solved),
    accuracy: accuracyReport(solved),
  };
}

function seatReport(seat: SeatFilm, i: number, input: RunInput, ambient: number): SeatOilReport {
  return {
    name: input.seats[i]!.name,
    ...forceReport(seat.force),
    torque: mm(seat.torque),
    power: seat.power,
    peakPressure: seat.peak.pressure * 1e-6,
    peakAt: placeReport(input, i, seat.peak.u, seat.peak.angle),
    ...leastReport(input, i, seat.least),
    flow: (seat.flow.rear + seat.flow.nose) * 1e9,
    supplied: seat.supplied * 1e9,
    temperature: ambient,
    viscosity: input.run.viscosity[i]!,
    wetted: seat.wetted.area / seat.wetted.of,
  };
}

function totalsOf({ seats, total }: Solved) {
  return { ...forceReport(total.force), torque: mm(total.torque), power: total.power, leastFilm: mm(filmOf({ seats })) };
}

const filmOf = ({ seats }: Pick<Solved, 'seats'>) => Math.min(...seats.map(({ least }) => least.film));

/** N/m and the rest to N/mm, N/rad, N·mm/mm, N·mm/rad. */
const matrixReport = (m: Matrix5) => m.map((row, i) => row.map((value, j) => value * (i < 3 ? 1 : 1000) * (j < 3 ? 1e-3 : 1)));

function whirlReport(run: Run, input: RunInput, { now, threshold }: ReturnType<typeof whirlOf>): FilmReport['whirl'] {
  const { omega } = input.run;
  if (now === null) return null;
  return { stable: now.stable, ratio: now.frequency / Math.abs(omega), decay: now.decay, threshold: threshold === null ? null : (threshold * 30) / Math.PI, mass: toJournalBody(run).mass };
}

/** Where the load acts, if beyond the seats; else the nose end of the journal. */
function noseStation(design: Design, run: Run): number {
  return Math.max(...design.seats.map((seat) => seat.journal.to), run.load?.station ?? Number.NEGATIVE_INFINITY);
}

/** The stiffness felt at a station: the inverse of what the axis there gives way by under three forces there. */
function noseReport({ coefficients: { stiffness }, status }: Solved, station: number): FilmReport['nose'] {
  const s = metres(station);
  const moves = [
    [1, 0, 0, 0, s],
    [0, 1, 0, -s, 0],
    [0, 0, 1, 0, 0],
  ];
  // The stop holds it along the axis, and so it is where nothing resists there.
  const free = status === 'stopped' || stiffness[2]![2]! === 0 ? [0, 1, 3, 4] : [0, 1, 2, 3, 4];
  const matrix = free.map((i) => free.map((j) => stiffness[i]![j]!));
  const rows = free.length === 5 ? moves : moves.slice(0, 2);
  const given = rows.map((push) =>
    solveSmall(
      matrix,
      free.map((i) => push[i]!),
    ),
  );
  if (given.some((one) => one === null)) return null;
  const compliance = rows.map((move) => given.map((one) => free.reduce((sum, i, k) => sum + move[i]! * one![k]!, 0)));
  const columns = compliance.map((_, j) =>
    solveSmall(
      compliance,
      compliance.map((__, i) => (i === j ? 1 : 0)),
    ),
  );
  if (columns.some((one) => one === null)) return null;
  return { station, stiffness: compliance.map((_, i) => columns.map((column) => column![i]! * 1e-3)) };
}

/** Angles of the journal looked at over a turn. */
const PLACES = 24;

function turnReport(input: RunInput, { pose }: Solved): FilmReport['turn'] {
  if (input.seats.every(({ shape }) => shape.journalLobes.every(({ amplitude }) => amplitude === 0))) return null;
  const found = overTurn(newSpindle(input.seats, HALF), asFive(pose), input.run, PLACES);
  if (found === null) return { touches: true, leastFilm: null, least: null, greatest: null };
  return { touches: false, leastFilm: mm(found.leastFilm), least: forceReport(found.least).force, greatest: forceReport(found.greatest).force };
}

/** The warming spindle, on a grid for many states. */
export function toWarming(design: { run: Run }, input: RunInput): Warming {
  const { run } = design;
  return {
    spindle: newSpindle(input.seats, WARM),
    coarse: newSpindle(input.seats, COARSE),
    stand: input.load === null ? { pose: input.pose } : { load: input.load, position: input.position, adjusted: input.adjusted },
    omega: input.run.omega,
    oil: toOil(run),
    journal: toJournalBody(run),
    bush: toBushBody(run),
    ambient: run.ambient ?? AMBIENT,
  };
}

function warmReport(design: Design, run: Run, input: RunInput): { report: Pick<FilmReport, 'warmUp' | 'warmUpEnd' | 'steady'>; unreached: FilmReport['unreached'] } {
  const warming = toWarming({ run }, input);
  const { points, end, last } = warmUp({ ...warming, effort: effortOf(input.most.warmUp) }, run.heat?.duration ?? DURATION);
  // Where the way there takes too long, its end may still be found.
  const ending = { ...warming, effort: effortOf(input.most.steady) };
  const steady = end === 'time' || end === 'givenUp' ? steadyState(ending, last) : null;
  return {
    report: {
      warmUp: points.map((point) => ({ ...point, leastFilm: mm(point.leastFilm) })),
      warmUpEnd: end === 'cancelled' ? 'none' : end,
      steady: steady?.status === 'solved' ? steadyReport(design, ending, input, steady) : null,
    },
    unreached: [...(end === 'givenUp' ? (['warmUp'] as const) : []), ...(steady?.status === 'givenUp' ? (['steady'] as const) : [])],
  };
}

function steadyReport(design: Design, warming: Warming, input: RunInput, state: WarmFilm): NonNullable<FilmReport['steady']> {
  const { ambient } = warming;
  return {
    journal: state.journal,
    bush: state.bush,
    pose: poseReport(state.pose),
    seats: state.seats.map((seat, i) => ({ name: input.seats[i]!.name, temperature: state.oil[i]!, viscosity: state.run.viscosity[i]!, leastFilm: mm(seat.least.film), growth: mm(state.run.growth[i]!), power: seat.power })),
    leastFilm: mm(Math.min(...state.seats.map(({ least }) => least.film))),
    calm: calm(warming, state, toRotor(design)),
    power: state.total.power,
    heat: { journal: toRoom(warming.journal, state.journal, ambient), bush: toRoom(warming.bush, state.bush, ambient), oil: state.heat.oil },
  };
}

/** Guidance for the seat with the thinnest film. */
function guidanceReport(design: Design, run: Run, input: RunInput, { seats }: Solved): FilmReport['guidance'] {
  let thin = 0;
  seats.forEach((seat, i) => {
    if (seat.least.film < seats[thin]!.least.film) thin = i;
  });
  const { bush } = design.seats[thin]!;
  const { film, within } = leastFilmGuidance(metres(bush.diameter), (Math.abs(input.run.omega) * metres(bush.diameter)) / 2);
  const rough = (part: 'journal' | 'bush') => metres(run.roughness?.[part] ?? ROUGHNESS[part]);
  return { film: mm(film), within, seat: design.seats[thin]!.name, filmRatio: filmRatio(seats[thin]!.least.film, rough('journal'), rough('bush')) };
}

function accuracyReport({ seats, total, half }: Solved): FilmReport['accuracy'] {
  const greatest = Math.max(...seats.flatMap(({ force }) => [Math.hypot(force[0], force[1]), Math.abs(force[2])]), 1e-9);
  const change = Math.max(...seats.flatMap(({ force }, i) => [0, 1, 2].map((c) => Math.abs(force[c]! - half.seats[i]!.force[c]!))));
  const least = (films: SeatFilm[]) => Math.min(...films.map((seat) => seat.least.film));
  return {
    ...FINE,
    force: change / greatest / 3,
    leastFilm: mm(Math.abs(least(seats) - half.leastFilm) / 3),
    torque: Math.abs(total.torque / (half.total.torque || 1) - (total.torque === 0 ? 0 : 1)) / 3,
    imbalance: Math.max(...seats.map(({ solution }) => solution.imbalance)),
    warmRows: WARM.rows,
    warmColumns: WARM.columns,
  };
}
