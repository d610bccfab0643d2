/**
 * The plan: the least stock that brings every film to its target at one position of the journal.
 *
 * A linear programme about the present parts gives a vertex; its exact amounts are found on the exact lines (vertex.ts);
 * the programme is made again about those; and so on until the vertex stays. For lines without profile, of one half
 * angle a seat, the first vertex is exact already. The result is the least stock of the last programme; where seats
 * close opposite ways and have profiles, another place of least film further off could be less by a small part of
 * the profile's own height (with seats that all close one way the foremost position there is has the least stock).
 *
 * Where no amounts do it: the limits that conflict, an irreducible set (each of them dropped alone would do), with what
 * it would have to be; and the nearest result, whose greatest miss is least with no film below 0 (programme.ts), if need
 * be beyond the reach of the adjuster; where the parts press into each other whatever comes off, the least of that.
 */
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, seatLines } from '../contact/fit.ts';
import type { Part } from '../gauging/reading.ts';
import { conflictsOf, type Limit } from './conflicts.ts';
import { cutParts, type Linear, linearised, PARTS, type PlanInput, type Problem, problemOf, type Room } from './problem.ts';
import { type Goal, type Point, type Step, solvedAbout, weightsOf } from './programme.ts';
import { EXACT, exactVertex } from './vertex.ts';

export interface Plan {
  /** position of the journal (m) at which the films are these */
  position: number;
  rooms: Room[];
  /** m: normal stock, or metal off a face (below 0: put on), one for each room */
  amounts: number[];
  /** the parts before anything is cut (renewed surfaces on their new line) and after all is */
  base: SeatInput[];
  seats: SeatInput[];
  /** least films of the cut parts there (m) */
  films: (number | null)[];
  /** all stock together (m) */
  total: number;
}

export type Verdict =
  | { status: 'planned'; plan: Plan }
  | { status: 'infeasible'; nearest: Plan; conflicts: Limit[] }
  /** no seat has a film that is wanted */
  | { status: 'nothingWanted' }
  /** these seats' parts do not overlap where the others have their film */
  | { status: 'apart'; seats: number[] }
  /** the programme did not settle: lines too far from straight */
  | { status: 'stalled' };

/** The plan, or the nearest there is; null where there is nothing to show. */
export const planIn = (verdict: Verdict): Plan | null => (verdict.status === 'planned' ? verdict.plan : verdict.status === 'infeasible' ? verdict.nearest : null);

/** The greatest miss of some films (m) and the sum of all, in what a miss of 1 is for each seat (programme.ts); null films count as endless. */
export function missesOf(seats: readonly SeatInput[], films: readonly (number | null)[]): { greatest: number; sum: number } {
  const weights = weightsOf(seats);
  const misses = seats.map(({ target }, i) => (target === undefined ? 0 : films[i] === null ? Number.POSITIVE_INFINITY : Math.abs(films[i]! - target) / weights[i]!));
  return { greatest: Math.max(0, ...misses), sum: misses.reduce((a, b) => a + b, 0) };
}

/** Rounds of programme and exact vertex; two do for straight lines. */
const ROUNDS = 25;
/** A film this near its target (m) is exact: a hundredth of the 1e-9 mm promised. */
const GOOD = 1e-14;
/** Two plans within this of each other (m of stock) are the same. */
const SAME_TOTAL = 1e-13;

export function planCut(input: PlanInput): Verdict {
  if (input.seats.every(({ target }) => target === undefined)) return { status: 'nothingWanted' };
  if (!input.prefer?.oneSetUp) return planProblem(problemOf(input));
  const [one, other] = PARTS.map((part) => planProblem(onlyPart(problemOf(input), part))) as [Verdict, Verdict];
  if (one.status === 'planned' && other.status === 'planned') return other.plan.total < one.plan.total - SAME_TOTAL ? other : one;
  if (one.status === 'planned') return one;
  if (other.status === 'planned') return other;
  return one;
}

/** Only this part is cut; a cleanup of the other leaves no room at all. */
function onlyPart(problem: Problem, part: Part): Problem {
  const ofPart = ({ of }: Room) => (of.kind === 'surface' ? of.part : problem.input.faces![of.face]!.part) === part;
  return { ...problem, rooms: problem.rooms.map((room) => (ofPart(room) ? room : { ...room, least: Math.max(0, room.least), most: 0 })) };
}

function planProblem(problem: Problem): Verdict {
  const start = startOf(problem);
  if ('apart' in start) return { status: 'apart', seats: start.apart };
  let about: Point = start.point;
  let best: Plan | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const linear = linearised(problem, about.position, about.amounts);
    const apart = apartOf(problem, linear.films);
    if (apart.length > 0) return best ? { status: 'planned', plan: best } : { status: 'apart', seats: apart };
    const step = solvedAbout(problem, about, linear, 'exact');
    if (step.status === 'infeasible') {
      if (best) return { status: 'planned', plan: best };
      // Lines that are not straight may have room where these gains do not tell of it: look again from the nearest.
      const near = nearestAbout(problem, about, linear);
      if (near.status !== 'solved' || isSame(near.point, about)) return infeasible(problem, about);
      about = near.point;
      continue;
    }
    if (step.status !== 'solved') break;
    const { position, amounts, residual, outside } = exactVertex(problem, step.point.position, step.point.amounts, isPinned(problem, step.point.position));
    const good = residual <= GOOD && outside <= GOOD;
    const found = planOf(problem, { position, amounts });
    if (good && best && !isBetter(problem, found, best)) return { status: 'planned', plan: best };
    if (good) best = found;
    about = residual < Number.POSITIVE_INFINITY ? { position, amounts } : step.point;
  }
  // What the programme's own rounding lets pass, the exact lines may still refuse.
  return best ? { status: 'planned', plan: best } : infeasible(problem, about);
}

const isSame = (a: Point, b: Point) => Math.abs(a.position - b.position) <= SAME_TOTAL && a.amounts.every((x, k) => Math.abs(x - b.amounts[k]!) <= SAME_TOTAL);

/** Whether the position itself stands at an end: of the reach, or where it is to stay. */
function isPinned({ input }: Problem, position: number): boolean {
  const { reach, prefer } = input;
  const at = (end: number) => Math.abs(position - end) <= 1e-11;
  return (reach !== undefined && (at(reach.from) || at(reach.to))) || (prefer?.keepPosition === true && at(input.position));
}

/** In the order of the objectives of the programme. */
function isBetter({ input, rooms }: Problem, plan: Plan, than: Plan): boolean {
  const measures = (p: Plan) => [
    input.prefer?.keepPosition ? Math.abs(p.position - input.position) : 0,
    input.prefer?.spare ? rooms.reduce((sum, { of }, k) => sum + (of.kind === 'surface' && of.part === input.prefer!.spare ? p.amounts[k]! : 0), 0) : 0,
    p.total,
  ];
  const other = measures(than);
  for (const [i, value] of measures(plan).entries()) {
    if (value < other[i]! - SAME_TOTAL) return true;
    if (value > other[i]! + SAME_TOTAL) return false;
  }
  return false;
}

function planOf(problem: Problem, { position, amounts }: Point): Plan {
  const seats = cutParts(problem, amounts);
  // An amount within rounding of nothing is nothing.
  const clean = amounts.map((x) => (Math.abs(x) <= EXACT ? 0 : x));
  return { position, rooms: problem.rooms, amounts: clean, base: problem.base, seats, films: filmsAt(seats, position), total: clean.reduce((sum, x) => sum + Math.abs(x), 0) };
}

const filmsAt = (seats: readonly SeatInput[], position: number) => seats.map((seat) => leastFilm(seatLines(seat).gap, position));

const apartOf = ({ input }: Problem, films: readonly (number | null)[]) => films.flatMap((film, i) => (film === null && input.seats[i]!.target !== undefined ? [i] : []));

/** The least amounts, at a position where every seat wanted overlaps: now, or where one of them has its film. */
function startOf(problem: Problem): { point: Point } | { apart: number[] } {
  const amounts = problem.rooms.map(({ least }) => Math.max(0, least));
  const seats = cutParts(problem, amounts);
  const wanted = seats.flatMap((seat) => (seat.target === undefined ? [] : [positionForFilm(seatLines(seat), seat.target)]));
  const positions = [...wanted.filter((p): p is number => p !== null), problem.input.position];
  let fewest: number[] | null = null;
  for (const position of positions) {
    const apart = apartOf(problem, filmsAt(seats, position));
    if (apart.length === 0) return { point: { position, amounts } };
    if (!fewest || apart.length < fewest.length) fewest = apart;
  }
  return { apart: fewest ?? [] };
}

/** The nearest result about a point: with clear films, within the reach where that can be. */
function nearestAbout(problem: Problem, about: Point, linear: Linear): Step {
  const { reach: _, ...unbounded } = problem.input;
  const tries: [Problem, Goal][] = [
    [problem, 'nearest'],
    [{ ...problem, input: unbounded }, 'nearest'],
    [problem, 'pressed'],
  ];
  let step: Step = { status: 'infeasible' };
  for (const [question, goal] of tries) {
    step = solvedAbout(question, about, linear, goal);
    if (step.status !== 'infeasible') break;
  }
  return step;
}

function infeasible(problem: Problem, from: Point): Verdict {
  let about = from;
  for (let round = 0; round < 6; round++) {
    const linear = linearised(problem, about.position, about.amounts);
    const apart = apartOf(problem, linear.films);
    if (apart.length > 0) return { status: 'apart', seats: apart };
    const step = nearestAbout(problem, about, linear);
    // A cleanup above its limit leaves no room whatever the films.
    if (step.status === 'infeasible') return { status: 'infeasible', nearest: planOf(problem, about), conflicts: conflictsOf(problem, about) };
    if (step.status !== 'solved') return { status: 'stalled' };
    const settled = Math.abs(step.point.position - about.position) < EXACT;
    about = step.point;
    if (settled) break;
  }
  return { status: 'infeasible', nearest: planOf(problem, about), conflicts: conflictsOf(problem, about) };
}
