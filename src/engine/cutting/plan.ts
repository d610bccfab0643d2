/**
 * The plan: the stock, and the position of the journal, that weigh least
 *
 *   cost = Σ stock + WORTH·Σ misses of the films          within the rooms of the stock and the reach of the journal
 *
 * (programme.ts, where preferences come in). Films are those of the exact lines; the programme is made about a point,
 * solved, made again about what it gives, until nothing is gained. For straight lines the first or second is exact.
 * Films of profiles are no straight function of position and stock: a step that gains nothing is halved, and every
 * seat's own position is started from; another place of least film further off could weigh less by a small part of the
 * profile.
 *
 * Where a film still misses: the limits that stand in its way and what they would have to be (conflicts.ts).
 */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, seatLines } from '../contact/fit.ts';
import type { Part } from '../parts/line.ts';
import { type Conflicts, conflictsOf } from './conflicts.ts';
import { filmPieces } from './filmPieces.ts';
import { cutParts, NO_STEP, PARTS, type PlanInput, type Problem, problemOf, type Room } from './problem.ts';
import {
  isMet,
  type Multipliers,
  missOf,
  moveCost,
  type Point,
  solvedAbout,
  stockCost,
  turnOf,
  WORTH,
} from './programme.ts';

export interface Plan {
  /** position of the journal (m) at which the films are these */
  position: Metres;
  rooms: Room[];
  /** m: normal stock, or metal off a face (below 0: put on), one for each room */
  amounts: number[];
  /** the parts before anything is cut (renewed surfaces on their new line) and after all is */
  base: SeatInput[];
  seats: SeatInput[];
  /** least films of the cut parts there (m) */
  films: (number | null)[];
  /** what each misses (m): of its target, or of the share of its tolerance that may be used */
  misses: number[];
  /** all stock together (m) */
  total: number;
}

export type Verdict =
  | { status: 'planned'; plan: Plan }
  | ({ status: 'infeasible'; nearest: Plan } & Conflicts)
  /** no seat has a film that is wanted */
  | { status: 'nothingWanted' }
  /** these seats' parts do not overlap where the others have their film */
  | { status: 'apart'; seats: number[] }
  /** the programme did not settle: numbers too far from each other */
  | { status: 'stalled' };

/** The plan, or the nearest there is; null where there is nothing to show. */
export const planIn = (verdict: Verdict): Plan | null =>
  verdict.status === 'planned' ? verdict.plan : verdict.status === 'infeasible' ? verdict.nearest : null;

/** The same without asking what stands in the way of it, which takes several plans more. */
export function nearestPlan(input: PlanInput): Plan | null {
  const found = bestPlan(problemOf(input));
  return found.status === 'found' ? found.plan : null;
}

/** Rounds from one start; two do for straight lines. */
const ROUNDS = 40;
/** Halvings of a step that gains nothing. */
const HALVINGS = 12;
/** Costs, stocks and positions nearer to each other (m) are the same. */
const SAME = 1e-13;
/** An amount nearer (m) to an end of its room stands at it. */
const AT_END = 1e-14;

export function planCut(input: PlanInput): Verdict {
  const problem = problemOf(input);
  const found = inSteps(bestPlan(problem));
  if (found.status !== 'found') return found;
  const { plan } = found;
  return isMet(plan) && shutBy(found.problem) === 0
    ? { status: 'planned', plan }
    : { status: 'infeasible', nearest: plan, ...conflictsOf(problem, found, bestPlan) };
}

/** The same without stock that is no step. */
function inSteps(sought: Sought): Sought {
  if (sought.status !== 'found') return sought;
  const { plan, problem } = sought;
  const none = (k: number) =>
    plan.amounts[k] !== 0 && Math.abs(plan.amounts[k]!) < NO_STEP && problem.rooms[k]!.least <= 0;
  if (!problem.rooms.some((_, k) => none(k))) return sought;
  return inSteps(
    bestPlan({ ...problem, rooms: problem.rooms.map((room, k) => (none(k) ? { ...room, least: 0, most: 0 } : room)) }),
  );
}

export interface PlanFound {
  status: 'found';
  plan: Plan;
  /** the rooms and the reach as they were when it was found, one set-up told; what each bound costs */
  problem: Problem;
  multipliers: Multipliers;
}

type Sought = PlanFound | Exclude<Verdict, { status: 'planned' | 'infeasible' }>;

/** The plan of least cost. */
function bestPlan(problem: Problem): Sought {
  if (problem.input.seats.every(({ target }) => target === undefined)) return { status: 'nothingWanted' };
  if (!problem.input.prefer?.oneSetUp) return foundIn(problem);
  const [one, other] = PARTS.map((part) => foundIn(onlyPart(problem, part))) as [Sought, Sought];
  if (one.status !== 'found' || other.status !== 'found') return other.status === 'found' ? other : one;
  return isBetter(other, one) ? other : one;
}

/** By how much (m) cleanups are above their limits. */
const shutBy = ({ rooms }: Problem) => rooms.reduce((sum, { least, most }) => sum + Math.max(0, least - most), 0);

/** Only this part is cut; a cleanup of the other leaves no room at all. */
function onlyPart(problem: Problem, part: Part): Problem {
  const ofPart = ({ of }: Room) => (of.kind === 'surface' ? of.part : problem.input.faces![of.face]!.part) === part;
  return {
    ...problem,
    rooms: problem.rooms.map((room) => (ofPart(room) ? room : { ...room, least: Math.max(0, room.least), most: 0 })),
  };
}

function foundIn(asked: Problem): Sought {
  // A cleanup above its limit leaves no room: the limit holds, and conflicts.ts tells of it.
  const problem = { ...asked, rooms: asked.rooms.map((room) => ({ ...room, least: Math.min(room.least, room.most) })) };
  const starts = startsOf(problem);
  if ('apart' in starts) return { status: 'apart', seats: starts.apart };
  let best: PlanFound | null = null;
  for (const start of starts.points) {
    const found = settledFrom(problem, start);
    if (found && (!best || isBetter(found, best))) best = found;
  }
  return best ? { ...best, problem: asked } : { status: 'stalled' };
}

/** From one start downhill; null where the programme has no solution. */
function settledFrom(problem: Problem, start: Point): PlanFound | null {
  let best: PlanFound | null = null;
  let about = planOf(problem, start);
  for (let round = 0; round < ROUNDS; round++) {
    const step = solvedAbout(problem, about, filmPieces(problem, about.position, about.amounts));
    if (step.status !== 'solved') return best;
    const { multipliers } = step;
    const next = firstBetter(problem, about, step.point, best !== null);
    if (!next) return { ...(best ?? { status: 'found', plan: about, problem }), multipliers };
    about = next;
    best = { status: 'found', plan: next, problem, multipliers };
  }
  return best;
}

/** The whole way to a point, or half of it, or a quarter…: the first that is better; null where none is. */
function firstBetter(problem: Problem, from: Plan, to: Point, settled: boolean): Plan | null {
  for (let halving = 0, share = 1; halving <= HALVINGS; halving++, share /= 2) {
    const between = (a: number, b: number) => (share === 1 ? b : a + share * (b - a));
    const plan = planOf(problem, {
      position: between(from.position, to.position),
      amounts: to.amounts.map((x, k) => between(from.amounts[k]!, x)),
    });
    if (isBetter({ plan, problem }, { plan: from, problem })) return plan;
    // What is as good already is not looked for in between.
    if (halving === 0 && settled && Math.abs(costOf(problem, plan) - costOf(problem, from)) <= SAME) return null;
  }
  return null;
}

function costOf(problem: Problem, { position, amounts, misses }: Plan): number {
  const stock = amounts.reduce((sum, x, k) => sum + stockCost(problem, problem.rooms[k]!) * Math.abs(x), 0);
  return (
    stock + WORTH * misses.reduce((a, b) => a + b, 0) + moveCost(problem) * Math.abs(position - problem.input.position)
  );
}

/** Cleanups within their limits first, then in the order of the objectives of the programme. */
function isBetter(a: Pick<PlanFound, 'plan' | 'problem'>, than: Pick<PlanFound, 'plan' | 'problem'>): boolean {
  const [one, other] = [a, than].map(({ problem, plan }) => [
    shutBy(problem),
    costOf(problem, plan),
    plan.amounts.reduce((sum, x, k) => sum + turnOf(problem, k) * Math.abs(x), 0),
    Math.abs(plan.position - problem.input.position),
  ]) as [number[], number[]];
  if (one[1] === Number.POSITIVE_INFINITY) return false;
  for (const [i, value] of one.entries()) if (Math.abs(value - other[i]!) > SAME) return value < other[i]!;
  return false;
}

function planOf(problem: Problem, { position, amounts }: Point): Plan {
  const { rooms, base, input } = problem;
  const snapped = amounts.map(
    (x, k) => [0, rooms[k]!.least, rooms[k]!.most].find((end) => Math.abs(x - end) <= AT_END) ?? x,
  );
  const seats = cutParts(problem, snapped);
  const films = filmsAt(seats, position);
  const misses = input.seats.map((seat, i) => missOf(seat, films[i]!, input.share ?? 0));
  return {
    position,
    rooms,
    amounts: snapped,
    base,
    seats,
    films,
    misses,
    total: snapped.reduce((sum, x) => sum + Math.abs(x), 0),
  };
}

const filmsAt = (seats: readonly SeatInput[], position: Metres) =>
  seats.map((seat) => leastFilm(seatLines(seat).gap, position));

/**
 * The least amounts, at the position now and where each seat wanted has its film, if every seat wanted overlaps there.
 */
function startsOf(problem: Problem): { points: Point[] } | { apart: number[] } {
  const { input, rooms } = problem;
  const amounts = rooms.map(({ least }) => Math.max(0, least));
  const seats = cutParts(problem, amounts);
  const within = (p: number) => Math.min(Math.max(p, input.reach?.from ?? p), input.reach?.to ?? p);
  const wanted = seats.flatMap((seat) =>
    seat.target === undefined ? [] : [positionForFilm(seatLines(seat), seat.target)],
  );
  const positions = [...wanted.filter((p): p is number => p !== null), input.position].map(within);
  const apartAt = (position: Metres) =>
    filmsAt(seats, position).flatMap((film, i) => (film === null && input.seats[i]!.target !== undefined ? [i] : []));
  const apart = positions.map(apartAt);
  const points = positions.filter(
    (position, k) => apart[k]!.length === 0 && positions.findIndex((p) => Math.abs(p - position) <= SAME) === k,
  );
  if (points.length > 0) return { points: points.map((position) => ({ position, amounts })) };
  return { apart: apart.reduce((fewest, seats) => (seats.length < fewest.length ? seats : fewest)) };
}
