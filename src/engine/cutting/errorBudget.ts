/**
 * What the errors of a set-up do to the film of a seat, each by itself on the exact lines of the planned parts:
 *
 *   tool height   the hollow flank of a tool off the centre (offCentre.ts)
 *   angle         the half angle wrong by the error of the way it is set (angleError.ts)
 *   dial          half a division of the cross feed, s = δ·cos a (δ radius; half of it on a diameter dial)
 *   stop          the indicator that tells the stock leans by t: s·(1 - cos t) too little comes off
 *   sine          the indicator that tells the angle leans by t: sin a' = sin a·cos t along a slide or at the tailstock,
 *                 tan a' = tan a·cos t along the axis or at the table; levelled on a sine bar it reads nothing, and errs by nothing
 *   growth        the work is warmer by ΔT when it is gauged: cold it is smaller by 1 + α·ΔT about its anchor
 *
 * Each is the greatest change of the least or the greatest film (m). Errors of several causes add up at worst to their
 * sum, and likely, being independent, to the root of the sum of their squares.
 * @source cosine error: gauging/cosineError.ts; growth: ISO 1 and gauging/temperature.ts; sums: JCGM 100:2008, 5.1.2
 */
import type { SeatInput } from '../contact/fit.ts';
import { trueTravel } from '../gauging/cosineError.ts';
import type { Part } from '../gauging/reading.ts';
import type { Surface } from '../geometry/line.ts';
import { tilted, worstFilms } from './angleError.ts';
import type { Way } from './angleSetting.ts';
import { offCentreSeat } from './offCentre.ts';
import { withStock } from './stock.ts';

export type Cause = 'toolHeight' | 'angle' | 'dial' | 'stop' | 'sine' | 'growth';

export interface SetUpErrors {
  /** tool, wheel or diamond above or below the centre (m) */
  toolHeight: number;
  /** error of the half angle as set (rad), and the way it is set */
  angle: number;
  way: Way;
  /** one division of the cross-feed dial (m), and whether it counts the diameter */
  division: number;
  diameterDial: boolean;
  /** lean of the indicator (rad) */
  lean: number;
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
  film: number;
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

/** The budget of the planned parts at their position. */
export function errorBudget(seats: readonly SeatInput[], position: number, cuts: readonly SurfaceCut[], errors: SetUpErrors): Budget {
  const contributions = cuts.flatMap((cut): Contribution[] => {
    const pair = seats[cut.seat]!;
    const wrong = withErrors(pair, cut, errors);
    return (Object.keys(wrong) as Cause[]).map((cause) => ({ seat: cut.seat, part: cut.part, cause, film: changeOf(pair, wrong[cause], position) }));
  });
  contributions.sort((a, b) => b.film - a.film);
  const named = [...new Set(cuts.map(({ seat }) => seat))].sort((a, b) => a - b);
  return {
    contributions,
    seats: named.map((seat) => {
      const films = contributions.filter((c) => c.seat === seat).map((c) => c.film);
      return { seat, sum: films.reduce((a, b) => a + b, 0), likely: Math.hypot(...films) };
    }),
  };
}

/** The seat with each error, to both sides where it has two. */
function withErrors(pair: SeatInput, { part, normal, gauged }: SurfaceCut, e: SetUpErrors): Record<Cause, (SeatInput | null)[]> {
  const { halfAngle } = pair[part];
  const withLess = (stock: number): SeatInput => ({ ...pair, [part]: withStock(pair[part], part, stock) });
  const half = ((e.division / (e.diameterDial ? 2 : 1)) * Math.cos(halfAngle)) / 2;
  return {
    toolHeight: [offCentreSeat(pair, part, gauged, e.toolHeight)],
    angle: [tilted(pair, part, gauged, e.angle), tilted(pair, part, gauged, -e.angle)],
    dial: [withLess(half), withLess(-half)],
    stop: [withLess(trueTravel(normal, e.lean) - normal)],
    sine: [tilted(pair, part, gauged, leaningSine(halfAngle, e))],
    growth: [{ ...pair, [part]: cooled(pair[part], e) }],
  };
}

/** Error of the half angle (rad) by an indicator that leans. */
function leaningSine(halfAngle: number, { way, lean }: Pick<SetUpErrors, 'way' | 'lean'>): number {
  if (way === 'sineBar' || way === 'scale') return 0;
  const told = way === 'alongSlide' || way === 'tailstock' ? Math.asin(trueTravel(Math.sin(halfAngle), lean)) : Math.atan(trueTravel(Math.tan(halfAngle), lean));
  return told - halfAngle;
}

/** Greatest change (m) of the least or the greatest film. */
function changeOf(pair: SeatInput, wrong: readonly (SeatInput | null)[], position: number): number {
  const now = worstFilms(pair, position);
  let most = 0;
  for (const seat of wrong) {
    const then = seat && worstFilms(seat, position);
    if (now && then) most = Math.max(most, Math.abs(then.least - now.least), Math.abs(then.greatest - now.greatest));
  }
  return most;
}

/** The surface as it is when the warmth is gone: every length from the anchor and the axis less by 1 + α·ΔT. */
export function cooled(surface: Surface, { warm, expansion, anchor }: Pick<SetUpErrors, 'warm' | 'expansion' | 'anchor'>): Surface {
  const scale = 1 / (1 + expansion * warm);
  const at = (z: number) => anchor + (z - anchor) * scale;
  return { ...surface, radius: surface.radius * scale, station: at(surface.station), from: at(surface.from), to: at(surface.to), profile: surface.profile.map(([z, d]) => [at(z), d * scale] as const) };
}
