/**
 * Why a film still misses: the bounds that hold it back, and what they would have to be.
 *
 * The multipliers of the programme tell which bounds cost something where the plan stands. Each of them is let go and
 * the plan made anew: where all films are then met it is told how far it has to go. Where no one of them does it alone,
 * those that cost something are let go together, and with them what then stands in the way, until the films are met or
 * nothing holds them back any more. So no way out is told that was not tried. What is left when nothing holds a film
 * back is metal that is missing already, or a film that costs more stock than it is worth.
 */
import type { Plan, PlanFound } from './plan.ts';
import { NO_STEP, type Problem, type Room } from './problem.ts';
import { isMet } from './programme.ts';

export interface Limit {
  what: 'forbidden' | 'limit' | 'cleanup' | 'add' | 'reachFrom' | 'reachTo';
  /** room the limit belongs to; null for the reach of the journal */
  room: number | null;
  /** as it is (m) */
  limit: number;
  /** what it would have to be (m), all others kept; null where others stand in the way too */
  needed: number | null;
}

export interface Conflicts {
  /** what stands in the way */
  conflicts: Limit[];
  /**
   * what would do only together, where none does alone; each with what it would have to be. Empty: nothing known does.
   */
  together: Limit[];
}

type Bound = Pick<Limit, 'what' | 'room' | 'limit'>;
type Sought = PlanFound | { status: string };
type Plans = (problem: Problem) => Sought;

/** Cost that falls by less for a bound let go is rounding. */
const COSTS = 1e-7;
/** Rounds of letting go together. */
const ROUNDS = 8;

const isFound = (sought: Sought): sought is PlanFound => sought.status === 'found';

export function conflictsOf(problem: Problem, found: PlanFound, plans: Plans): Conflicts {
  const bounds = costly(found);
  const conflicts = bounds.flatMap((bound): Limit[] => {
    const without = plans(letGo(problem, [bound]));
    if (!isFound(without)) return [{ ...bound, needed: null }];
    if (isMet(without.plan)) return [{ ...bound, needed: neededOf(bound, without.plan) }];
    // A bound that holds back stock but no film to speak of stands in nobody's way.
    return isShut(found, bound) || missed(found.plan) - missed(without.plan) >= NO_STEP
      ? [{ ...bound, needed: null }]
      : [];
  });
  const alone = conflicts.some(({ needed }) => needed !== null);
  return { conflicts, together: alone || conflicts.length === 0 ? [] : togetherOf(problem, bounds, plans) };
}

const missed = ({ misses }: Plan) => misses.reduce((a, b) => a + b, 0);
const isShut = ({ problem }: PlanFound, { room }: Bound) =>
  room !== null && problem.rooms[room]!.least > problem.rooms[room]!.most;

function togetherOf(problem: Problem, first: readonly Bound[], plans: Plans): Limit[] {
  const dropped = [...first];
  for (let round = 0; round < ROUNDS; round++) {
    const found = plans(letGo(problem, dropped));
    if (!isFound(found)) return [];
    if (isMet(found.plan))
      return dropped
        .filter((bound) => isBeyond(bound, found.plan))
        .map((bound) => ({ ...bound, needed: neededOf(bound, found.plan) }));
    const more = costly(found).filter((bound) => !dropped.some((b) => b.what === bound.what && b.room === bound.room));
    if (more.length === 0) return [];
    dropped.push(...more);
  }
  return [];
}

/** The bounds that cost something where the plan stands. */
function costly({ problem: { rooms, input }, multipliers }: PlanFound): Bound[] {
  const bounds: Bound[] = [];
  for (const [room, { of, least, most }] of rooms.entries()) {
    // A cleanup above the limit stands against it whatever the films.
    const shut = least > most;
    if (shut || multipliers.most[room]! > COSTS)
      bounds.push({ what: of.kind === 'surface' && most === 0 ? 'forbidden' : 'limit', room, limit: most });
    if (!shut && !(multipliers.least[room]! > COSTS)) continue;
    if (least > 0) bounds.push({ what: 'cleanup', room, limit: least });
    else if (of.kind === 'face') bounds.push({ what: 'add', room, limit: -least });
  }
  const { reach } = input;
  if (reach && Number.isFinite(reach.from) && multipliers.from > COSTS)
    bounds.push({ what: 'reachFrom', room: null, limit: reach.from });
  if (reach && Number.isFinite(reach.to) && multipliers.to > COSTS)
    bounds.push({ what: 'reachTo', room: null, limit: reach.to });
  return bounds;
}

/** The problem without these bounds. */
function letGo(problem: Problem, dropped: readonly Bound[]): Problem {
  const rooms: Room[] = problem.rooms.map((room, k) => {
    const free = (what: Bound['what']) => dropped.some((b) => b.room === k && b.what === what);
    return {
      ...room,
      least: free('cleanup') ? 0 : free('add') ? Number.NEGATIVE_INFINITY : room.least,
      most: free('limit') || free('forbidden') ? Number.POSITIVE_INFINITY : room.most,
    };
  });
  const { reach } = problem.input;
  const free = (what: Bound['what']) => dropped.some((b) => b.what === what);
  const opened = reach && {
    from: free('reachFrom') ? Number.NEGATIVE_INFINITY : reach.from,
    to: free('reachTo') ? Number.POSITIVE_INFINITY : reach.to,
  };
  return { ...problem, rooms, input: { ...problem.input, ...(opened && { reach: opened }) } };
}

const neededOf = ({ what, room }: Bound, { position, amounts }: Plan): number =>
  room === null ? position : what === 'add' ? Math.max(0, -amounts[room]!) : amounts[room]!;

/** Whether a plan goes beyond a bound at all. */
function isBeyond(bound: Bound, plan: Plan): boolean {
  const by = neededOf(bound, plan) - bound.limit;
  return bound.what === 'cleanup' || bound.what === 'reachFrom' ? by < 0 : by > 0;
}
