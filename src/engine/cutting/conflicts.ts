/**
 * Why no plan is possible: a set of limits that cannot all hold, of which each one dropped alone would do.
 *
 * Deletion filter on the linear programme about the nearest result: every limit is dropped in turn; where that leaves
 * no plan it had no part and stays dropped, otherwise it is put back. What is forbidden outright is tried before what
 * has a limit, so that a limit that could be widened is named where there is one. Metal that is missing (a film that
 * is too great already) is no limit that can be dropped: then the set is empty.
 * @source deletion filtering: J. W. Chinneck, Feasibility and Infeasibility in Optimization, 2008, chapter 6 (from memory)
 */
import { linearised, type Problem, type Room } from './problem.ts';
import { type Point, solvedAbout } from './programme.ts';

export type Limit = {
  what: 'forbidden' | 'limit' | 'cleanup' | 'add' | 'reachFrom' | 'reachTo';
  /** room the limit belongs to; null for the reach of the journal */
  room: number | null;
  /** as it is (m) */
  limit: number;
  /** what it would have to be (m), all others kept; null where others stand in the way too */
  needed: number | null;
};

type Bound = Pick<Limit, 'what' | 'room' | 'limit'>;

export function conflictsOf(problem: Problem, about: Point): Limit[] {
  const all = boundsOf(problem);
  if (solutionOf(problem, [], all, about) === null) return [];
  let bounds = all;
  for (const bound of all) {
    const without = bounds.filter((b) => b !== bound);
    if (solutionOf(problem, without, all, about) === null) bounds = without;
  }
  return bounds.map((bound) => {
    const found = solutionOf(
      problem,
      all.filter((b) => b !== bound),
      all,
      about,
    );
    return { ...bound, needed: found && neededOf(bound, found) };
  });
}

/** Those tried first are the first to be dropped: what is forbidden, then what is only limited. */
function boundsOf({ rooms, input }: Problem): Bound[] {
  const bounds: Bound[] = [];
  for (const [room, { of, least, most }] of rooms.entries()) {
    if (of.kind === 'surface' && most === 0) bounds.unshift({ what: 'forbidden', room, limit: 0 });
    else bounds.push({ what: 'limit', room, limit: most });
    if (least > 0) bounds.push({ what: 'cleanup', room, limit: least });
    if (of.kind === 'face' && least <= 0) bounds.push({ what: 'add', room, limit: -least });
  }
  const { reach } = input;
  if (reach && Number.isFinite(reach.from)) bounds.push({ what: 'reachFrom', room: null, limit: reach.from });
  if (reach && Number.isFinite(reach.to)) bounds.push({ what: 'reachTo', room: null, limit: reach.to });
  return bounds;
}

/** A plan with only these limits kept; null where there is none. */
function solutionOf(problem: Problem, kept: readonly Bound[], all: readonly Bound[], about: Point): Point | null {
  const dropped = all.filter((b) => !kept.includes(b));
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
  const opened = reach && { from: free('reachFrom') ? Number.NEGATIVE_INFINITY : reach.from, to: free('reachTo') ? Number.POSITIVE_INFINITY : reach.to };
  const relaxed: Problem = { ...problem, rooms, input: { ...problem.input, ...(opened && { reach: opened }) } };
  const step = solvedAbout(relaxed, about, linearised(problem, about.position, about.amounts), 'exact');
  return step.status === 'solved' ? step.point : null;
}

function neededOf({ what, room }: Bound, point: Point): number {
  if (room === null) return point.position;
  const amount = point.amounts[room]!;
  return what === 'add' ? Math.max(0, -amount) : amount;
}
