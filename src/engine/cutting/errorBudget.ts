/**
 * What the errors of a set-up do to the film of a seat, each by itself on the exact lines of the planned parts:
 *
 *   tool height   the hollow flank of a tool off the centre (parts/offCentre.ts)
 *   angle         the half angle wrong by the error of the way it is set (angleError.ts)
 *   dial          half a division of the cross feed, s = δ·cos a (δ radius; half of it on a diameter dial)
 *   stop          the indicator that tells the stock leans by t: s·(1 - cos t) too little comes off
 *   sine          the indicator that tells the angle leans (angleSetting.ts)
 *   growth        the work is warmer by ΔT when it is gauged: cold it is smaller by 1 + α·ΔT about its anchor
 *
 * The lean is worked out in gauging/cosineError.ts. Each is the greatest change of the least or the greatest film (m).
 * Errors of several causes add up at worst to their sum, and likely, being independent, to the root of the sum of their
 * squares.
 * @source derived (each by itself); ISO1 (growth); JCGM100 5.1.2 (sums)
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import type { SeatInput } from '../contact/fit.ts';
import { trueTravel } from '../gauging/cosineError.ts';
import { grown } from '../parts/growth.ts';
import type { Part } from '../parts/line.ts';
import { offCentreSeat } from '../parts/offCentre.ts';
import { withStock } from '../parts/stock.ts';
import { tilted, worstFilms } from './angleError.ts';
import { leaningError, type Way } from './angleSetting.ts';

export type Cause = 'toolHeight' | 'angle' | 'dial' | 'stop' | 'sine' | 'growth';

export interface SetUpErrors {
  /** tool, wheel or diamond above or below the centre (m) */
  toolHeight: number;
  /** error of the half angle as set (rad), and the way it is set */
  angle: Radians;
  way: Way;
  /** one division of the cross-feed dial (m), and whether it counts the diameter */
  division: number;
  diameterDial: boolean;
  /** lean of the indicator (rad) */
  lean: Radians;
  /** work warmer than the gauge (K), its expansion (1/K) and where it is held axially (m) */
  warm: number;
  expansion: number;
  anchor: number;
}

export interface Contribution {
  seat: number;
  part: Part;
  cause: Cause;
  /** m of film */
  film: Metres;
}

export interface Budget {
  /** largest first */
  contributions: Contribution[];
  /** for every seat cut: all at their worst together, and likely together (m) */
  seats: { seat: number; sum: number; likely: number }[];
}

export interface SurfaceCut {
  seat: number;
  part: Part;
  /** m */
  normal: number;
  /** station (m) at which it is gauged */
  gauged: number;
}

/** What every error of one surface's set-up does, the planned parts at their position. */
export function contributionsOf(
  seats: readonly SeatInput[],
  position: Metres,
  cut: SurfaceCut,
  errors: SetUpErrors,
): Contribution[] {
  const pair = seats[cut.seat]!;
  const wrong = withErrors(pair, cut, errors);
  return (Object.keys(wrong) as Cause[]).map((cause) => ({
    seat: cut.seat,
    part: cut.part,
    cause,
    film: changeOf(pair, wrong[cause], position),
  }));
}

/** All contributions together. */
export function budgetOf(all: readonly Contribution[]): Budget {
  const contributions = [...all].sort((a, b) => b.film - a.film);
  const named = [...new Set(contributions.map(({ seat }) => seat))].sort((a, b) => a - b);
  return {
    contributions,
    seats: named.map((seat) => {
      const films = contributions.filter((c) => c.seat === seat).map((c) => c.film);
      return { seat, sum: films.reduce((a, b) => a + b, 0), likely: Math.hypot(...films) };
    }),
  };
}

/** The seat with each error, to both sides where it has two. */
function withErrors(
  pair: SeatInput,
  { part, normal, gauged }: SurfaceCut,
  e: SetUpErrors,
): Record<Cause, (SeatInput | null)[]> {
  const { halfAngle } = pair[part];
  const withLess = (stock: number): SeatInput => ({ ...pair, [part]: withStock(pair[part], part, stock) });
  const half = ((e.division / (e.diameterDial ? 2 : 1)) * Math.cos(halfAngle)) / 2;
  return {
    toolHeight: [offCentreSeat(pair, part, gauged, e.toolHeight)],
    angle: [tilted(pair, part, gauged, e.angle), tilted(pair, part, gauged, -e.angle)],
    dial: [withLess(half), withLess(-half)],
    stop: [withLess(trueTravel(normal, e.lean) - normal)],
    // what is told is always too little
    sine: [tilted(pair, part, gauged, -Math.sign(halfAngle) * leaningError(halfAngle, e.way, e.lean))],
    growth: [{ ...pair, [part]: grown(pair[part], 1 / (1 + e.expansion * e.warm), e.anchor) }],
  };
}

/** Greatest change (m) of the least or the greatest film. */
function changeOf(pair: SeatInput, wrong: readonly (SeatInput | null)[], position: Metres): number {
  const now = worstFilms(pair, position);
  let most = 0;
  for (const seat of wrong) {
    const then = seat && worstFilms(seat, position);
    if (now && then) most = Math.max(most, Math.abs(then.least - now.least), Math.abs(then.greatest - now.greatest));
  }
  return most;
}
