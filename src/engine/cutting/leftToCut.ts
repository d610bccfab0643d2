/**
 * What is left to cut: of every amount the most likely, how far that may be off, and how much of it may safely be taken
 * before the next trial. All of it from pairs drawn as everything known allows (pairsDrawn.ts).
 *
 *   e_i          by how much the film of seat i is greater than the parts as taken give: most likely (trial.ts), and
 *                of every pair drawn, at the position of the plan
 *   most likely  the plan of the parts with their films greater by the most likely e
 *   may be off   by the spread of Σ J_i·e_i about it, J the change of the amount by each film (differences of the
 *                plan). An amount that its limit holds does not change there: what would come off without the limit
 *                tells J, and what a pair needs ends at the limit
 *   safe         the plan of the parts as they are where only so many pairs as the risk allows have less to come off:
 *                mean e of those that have, brought to that place. Metal cannot be put back. Never more than is most
 *                likely left, and nothing at all while some of what was read does not go with the rest, or hardly a
 *                pair drawn does: then it is not known what is left. Where what is told to be taken comes off by a
 *                dial that errs by σ(s), room is left for that too, root of squares, as both are apart:
 *                need - s = √((need - end)² + (z·σ(s))²), z of the risk, one side
 *                Less than σ(0), half a division, is not set on a dial: it is stoned or lapped off and gauged as it
 *                comes, and needs no such room.
 *
 *   short        how far the first touch still is from where it will be: now less all; its spread is that of the same
 *                over the pairs drawn, each with its own amounts off
 *
 * The plan follows the films in straight pieces, so J holds near the estimate; the safe amount is a plan of its own
 * and holds across its corners. Of several amounts each is safe by itself; taken off one seat's two surfaces they add
 * up.
 */

import type { Metres } from '../../design/dimension.ts';
import { normalQuantile } from '../belief/distributions.ts';
import { leastFilm } from '../contact/film.ts';
import { fit, type SeatInput, seatLines } from '../contact/fit.ts';
import type { PairsDrawn } from './pairsDrawn.ts';
import { nearestPlan, type Plan, planCut, planIn, type Verdict } from './plan.ts';
import { cutParts, NO_STEP, type PlanInput, problemOf, type Room } from './problem.ts';
import { seenAtTrial } from './seenAtTrial.ts';
import { believed } from './trialReadings.ts';

/** m, of the differences */
const DIFFERENCE = 1e-8;
/** Where fewer draws than this count, they tell no spread. */
const FEWEST = 20;

export interface LeftAmount {
  /** place in the plan's rooms */
  room: number;
  /** m: most likely, its standard deviation, and what may safely be taken */
  amount: number;
  sigma: number;
  safe: number;
  /** the seat whose film has most of that doubt */
  doubted: number;
  /** the same of every pair drawn, in their order (m) */
  each: number[];
  follows: Follows;
}

/** How an amount follows the films: for what they may be once more is known. */
export interface Follows {
  /** m: what would come off without its limit; most likely, and of every pair drawn */
  need: number;
  needs: number[];
  /** what more of it for a metre more of each film */
  gains: number[];
  /** m: the most that may come off */
  most: number;
}

export interface Left {
  verdict: Verdict;
  plan: Plan | null;
  amounts: LeftAmount[];
  /**
   * position of first touch (m) most likely now, with the safe amounts off, and with all of it off; null where nothing
   * stops the journal; and the standard deviation of now less all, null where it cannot be told
   */
  standOff: { now: number | null; safe: number | null; all: number | null; sigma: number | null };
}

/** What is known when a remaining plan is made. */
export interface KnownNow {
  /** the parts as they were taken to be */
  parts: readonly SeatInput[];
  /** by how much each film is most likely greater than they give (m) */
  films: readonly number[];
  drawn: PairsDrawn;
  /** whether something that was read does not go with the rest */
  clashes: boolean;
  /** chance that is allowed of less being left than is said to be safe */
  risk: number;
  /** m: how far metal off may be other than is read off, of so much in a room (m); not there: gauged as it comes */
  dial?: (of: Room['of'], amount: Metres) => Metres;
}

/** @param input the question as it is after the trials: rooms that are left; its seats are not looked at */
export function leftToCut(input: PlanInput, { parts, films, drawn, clashes, risk, dial }: KnownNow): Left {
  const inputAt = (e: readonly number[]): PlanInput => ({ ...input, seats: believed(parts, e) });
  const verdict = planCut(inputAt(films));
  const plan = planIn(verdict);
  if (!plan) return { verdict, plan, amounts: [], standOff: { now: null, safe: null, all: null, sigma: null } };
  const each = filmsMore(parts, drawn, plan.position);
  const spread = films.map((film, i) => Math.sqrt(meanOf(each, ({ e }) => (e[i]! - film) ** 2)));
  const at = (e: readonly number[]) => nearestPlan(inputAt(e))?.amounts ?? plan.amounts;
  const { rooms } = problemOf(inputAt(films));
  const held = rooms.map(({ least, most }, room) => isHeld(plan.amounts[room]!, least, most));
  const wide = held.includes(true) ? widened(input) : {};
  const freely = (e: readonly number[]) => nearestPlan({ ...inputAt(e), ...wide })?.amounts;
  const needs = (held.includes(true) ? freely(films) : null) ?? plan.amounts;
  const sides = films.map(
    (_, i) =>
      [1, -1].map((side) => freely(films.map((e, k) => (k === i ? e + side * DIFFERENCE : e))) ?? plan.amounts) as [
        number[],
        number[],
      ],
  );
  const known = !clashes && drawn.effective >= FEWEST;
  const amounts = plan.amounts.flatMap((amount, room): LeftAmount[] => {
    if (Math.abs(amount) < NO_STEP) return [];
    const gains = sides.map(([more, less]) => (more[room]! - less[room]!) / (2 * DIFFERENCE));
    const { end, ...spreads } = spreadOf(films, each, { gains, side: amount > 0 ? -1 : 1, risk });
    const wants = needsOf(each, films, gains, needs[room]!);
    const ofEach = held[room] ? wants.map((need) => within(rooms[room]!, need)) : wants;
    const about = each.reduce((sum, { weight }, k) => sum + weight * (ofEach[k]! - amount) ** 2, 0);
    const sigma = held[room] ? Math.sqrt(about) : spreads.sigma;
    const { of } = rooms[room]!;
    const reached = at(end)[room]!;
    const then = dial ? withDial(needs[room]!, reached, -normalQuantile(risk), (m) => dial(of, m)) : reached;
    const safe = !known ? 0 : amount > 0 ? Math.min(amount, Math.max(0, then)) : Math.max(amount, Math.min(0, then));
    const shares = gains.map((g, i) => Math.abs(g) * spread[i]!);
    return [
      {
        room,
        amount,
        sigma,
        safe,
        doubted: shares.indexOf(Math.max(...shares)),
        each: ofEach,
        follows: { need: needs[room]!, needs: wants, gains, most: rooms[room]!.most },
      },
    ];
  });
  const told = { drawn: known ? drawn : null, amounts, rooms: plan.amounts.length };
  return { verdict, plan, amounts, standOff: touches(inputAt(films), told) };
}

/** Where the most likely parts touch first, and how sure it is how far that is from where they shall. */
function touches(
  input: PlanInput,
  { drawn, amounts, rooms }: { drawn: PairsDrawn | null; amounts: readonly LeftAmount[]; rooms: number },
): Left['standOff'] {
  const problem = problemOf(input);
  const off = (of: (left: LeftAmount) => number) =>
    Array.from({ length: rooms }, (_, room) =>
      amounts.filter((left) => left.room === room).reduce((sum, left) => sum + of(left), 0),
    );
  const touch = (taken: number[] | null) =>
    fit(taken ? cutParts(problem, taken) : problem.input.seats, 0).firstPosition;
  const [now, all] = [touch(null), touch(off(({ amount }) => amount))];
  return {
    now,
    safe: touch(off(({ safe }) => safe)),
    all,
    sigma: drawn && now !== null && all !== null ? shortSpread(input, drawn, amounts, now - all) : null,
  };
}

/**
 * How far (m) a pair's first touch is from where it is with its own amounts off: standard deviation about the most
 * likely. Null where nothing stops any pair.
 */
function shortSpread(
  input: PlanInput,
  { pairs, weights }: PairsDrawn,
  amounts: readonly Pick<LeftAmount, 'room' | 'each'>[],
  likely: number,
): number | null {
  // Of all of them: beside the doubt of the metal, of which it is the same along the axis, nothing else is told.
  const shorts = pairs.flatMap((pair, k) => {
    const problem = problemOf({ ...input, seats: pair });
    const taken = problem.rooms.map((_, room) => amounts.find((left) => left.room === room)?.each[k] ?? 0);
    const [now, all] = [problem.input.seats, cutParts(problem, taken)].map((seats) => seenAtTrial(seats, 0)?.at);
    return now === undefined || all === undefined ? [] : [{ by: now - all, weight: weights[k]! }];
  });
  const share = shorts.reduce((sum, { weight }) => sum + weight, 0);
  if (share === 0) return null;
  return Math.sqrt(shorts.reduce((sum, { by, weight }) => sum + weight * (by - likely) ** 2, 0) / share);
}

/** Turns until the doubt of what is taken is that of what is left of it. */
const TURNS = 12;

/** So much less (m) that the dial may be wrong as well. */
function withDial(need: number, end: number, z: number, sigma: (amount: number) => number): number {
  const side = Math.sign(need);
  let safe = end;
  for (let turn = 0; turn < TURNS; turn++) safe = need - side * Math.hypot(need - end, z * sigma(Math.abs(safe)));
  const byHand = Math.min(Math.max(side * end, 0), sigma(0));
  return side * Math.max(side * safe, byHand);
}

/** What each pair drawn needs off, by its films. */
const needsOf = (each: readonly More[], films: readonly number[], gains: readonly number[], need: number): number[] =>
  each.map(({ e }) => gains.reduce((sum, g, i) => sum + g * (e[i]! - films[i]!), need));

const within = ({ least, most }: Pick<Room, 'least' | 'most'>, need: number) => Math.min(most, Math.max(least, need));

/** Whether an amount stands at an end of its room that it could go beyond. */
const isHeld = (amount: number, least: number, most: number): boolean =>
  (amount > NO_STEP && amount > most - NO_STEP) || (amount < -NO_STEP && amount < least + NO_STEP);

/** As much room again twice over: what would come off if it might. */
const AGAIN = 3;
const widened = ({ allow, faces = [] }: PlanInput): Pick<PlanInput, 'allow' | 'faces'> => ({
  allow: allow.map((one) => ({ ...one, limit: AGAIN * one.limit })),
  faces: faces.map((one) => ({ ...one, limit: AGAIN * one.limit, add: AGAIN * one.add })),
});

/** e of a pair drawn (m, by seat), and its share. */
interface More {
  e: number[];
  weight: number;
}

const meanOf = (each: readonly More[], of: (more: More) => number): number =>
  each.reduce((sum, more) => sum + more.weight * of(more), 0);

/** e of every pair drawn, at a position (m); a film that is not to be had there is as taken. */
export function filmsMore(parts: readonly SeatInput[], { pairs, weights }: PairsDrawn, position: Metres): More[] {
  const filmOf = (seat: SeatInput) => leastFilm(seatLines(seat).gap, position);
  const taken = parts.map(filmOf);
  return pairs.map((pair, k) => ({
    e: pair.map((seat, i) => {
      const film = filmOf(seat);
      return film === null || taken[i] === null ? 0 : film - taken[i]!;
    }),
    weight: weights[k]!,
  }));
}

/**
 * Spread of a combination of the films about the most likely, and the films where it is beyond all but the share of
 * pairs that is the risk.
 */
function spreadOf(
  films: readonly number[],
  each: readonly More[],
  { gains, side, risk }: { gains: readonly number[]; side: 1 | -1; risk: number },
): { sigma: number; end: number[] } {
  const along = ({ e }: Pick<More, 'e'>) => gains.reduce((sum, g, i) => sum + g * (e[i]! - films[i]!), 0);
  const sigma = Math.sqrt(meanOf(each, (more) => along(more) ** 2));
  const farthest = each.map((more) => ({ more, by: along(more) })).sort((a, b) => side * (b.by - a.by));
  let share = 0;
  let count = 0;
  while (count < farthest.length && share < risk) share += farthest[count++]!.more.weight;
  const beyond = farthest.slice(0, count).map(({ more }) => more);
  if (share === 0) return { sigma, end: [...films] };
  const mean = films.map((_, i) => meanOf(beyond, ({ e }) => e[i]!) / share);
  const by = along({ e: mean });
  const reach = by === 0 ? 0 : farthest[count - 1]!.by / by;
  return { sigma, end: films.map((film, i) => film + reach * (mean[i]! - film)) };
}
