/**
 * What is left to cut after trials: of every amount the most likely, how far that may be off, and how much of it may
 * safely be taken before the next trial.
 *
 *   most likely  the plan of the parts as believed
 *   may be off   by the spread of Σ J_i·e_i, J the change of the amount by each film (differences of the plan)
 *   safe         the plan of the parts as they may be at the end of that spread where the least comes off, CAUTIOUS
 *                standard deviations out: metal cannot be put back. Never more than is most likely left, and nothing at
 *                all while some of what was read does not go with the rest: then it is not known what is left.
 *
 * The plan follows the films in straight pieces, so J holds near the estimate; the safe amount is a plan of its own
 * and holds across its corners. Of several amounts each is safe by itself; taken off one seat's two surfaces they add
 * up.
 */

import { endOf } from '../belief/accounts.ts';
import { fit } from '../contact/fit.ts';
import { nearestPlan, type Plan, planCut, planIn, type Verdict } from './plan.ts';
import { cutParts, NO_STEP, type PlanInput, problemOf } from './problem.ts';
import { type Believed, spreadOf } from './trial.ts';
import { believed } from './trialReadings.ts';

/** The lower end of what holds 19 in 20 of a normal spread: beyond it lies 1 in 40. */
export const CAUTIOUS = 1.96;
/** m, of the differences */
const DIFFERENCE = 1e-8;

export interface LeftAmount {
  /** place in the plan's rooms */
  room: number;
  /** m: most likely, its standard deviation, and what may safely be taken */
  amount: number;
  sigma: number;
  safe: number;
  /** the seat whose film has most of that doubt */
  doubted: number;
}

export interface Left {
  verdict: Verdict;
  plan: Plan | null;
  amounts: LeftAmount[];
  /**
   * position of first touch (m) most likely now, with the safe amounts off, and with all of it off; null where nothing
   * stops the journal
   */
  standOff: { now: number | null; safe: number | null; all: number | null };
}

/** @param input the question as it is after the trials: rooms that are left; its seats are not looked at */
export function leftToCut(input: PlanInput, { parts, films, sigmas, accounts, clashes }: Believed): Left {
  const inputAt = (e: readonly number[]): PlanInput => ({ ...input, seats: believed(parts, e) });
  const verdict = planCut(inputAt(films));
  const plan = planIn(verdict);
  if (!plan) return { verdict, plan, amounts: [], standOff: { now: null, safe: null, all: null } };
  const at = (e: readonly number[]) => nearestPlan(inputAt(e))?.amounts ?? plan.amounts;
  const sides = films.map(
    (_, i) =>
      [1, -1].map((side) => at(films.map((e, k) => (k === i ? e + side * DIFFERENCE : e)))) as [number[], number[]],
  );
  const amounts = plan.amounts.flatMap((amount, room): LeftAmount[] => {
    if (Math.abs(amount) < NO_STEP) return [];
    const gains = sides.map(([more, less]) => (more[room]! - less[room]!) / (2 * DIFFERENCE));
    const sigma = spreadOf(accounts, gains);
    const shares = gains.map((g, i) => Math.abs(g) * sigmas[i]!);
    const doubted = shares.indexOf(Math.max(...shares));
    const end = endOf(accounts, gains, amount > 0 ? -1 : 1, CAUTIOUS);
    const then = at(end.films)[room]!;
    const safe =
      clashes.length > 0 ? 0 : amount > 0 ? Math.min(amount, Math.max(0, then)) : Math.max(amount, Math.min(0, then));
    return [{ room, amount, sigma, safe, doubted }];
  });
  const problem = problemOf({ ...input, seats: believed(parts, films) });
  const off = (of: (left: LeftAmount) => number) =>
    plan.amounts.map((_, room) =>
      amounts.filter((left) => left.room === room).reduce((sum, left) => sum + of(left), 0),
    );
  const touch = (taken: number[] | null) =>
    fit(taken ? cutParts(problem, taken) : problem.input.seats, 0).firstPosition;
  return {
    verdict,
    plan,
    amounts,
    standOff: { now: touch(null), safe: touch(off(({ safe }) => safe)), all: touch(off(({ amount }) => amount)) },
  };
}
