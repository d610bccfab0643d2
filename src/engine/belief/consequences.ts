/**
 * What follows from the fitted shape, and how sure one may be of it.
 *
 *   u(q)² = gᵀ·C·g            g = ∂q/∂x through the fit (filmGradient.ts), C covariance of the numbers
 *   [low, high]               2·q - q_97.5 and 2·q - q_2.5 of shapes drawn with the same covariance about the fitted
 *                             one, each put through the fit
 *
 * The two tell the same where q follows the shape evenly. A first touch is a greatest of several: near a tie the
 * drawn values lie to the one side of q, as q itself lies to that side of the truth, and the range is turned about q
 * for that reason. It then holds the truth as often as it claims, ties or not (tests/engine/belief). A quantity that
 * leans on what no reading tells, or on a surface that no reading touches, has no uncertainty at all: null.
 * @source JCGM100 5.1.2 and 5.2.2; JCGM101 (drawing); DavisonHinkley 5.2.1 (the turned range: basic limits)
 */
import type { Metres } from '../../design/dimension.ts';
import { seatLines } from '../contact/fit.ts';
import type { Belief } from './belief.ts';
import { uncertaintyOf } from './decomposition.ts';
import { ofDrawnShapes } from './draws.ts';
import { followed, type Quantity, quantitiesOf, valuesOf } from './quantities.ts';
import { gradientOf, type Influence, type On } from './unknowns.ts';

export interface Consequence {
  quantity: Quantity;
  /** m; null where the shape has no such quantity */
  value: number | null;
  /** standard uncertainty (m); null where the readings leave it open */
  sigma: number | null;
  /**
   * the range (m) that holds it in 95 of 100 cases; null with sigma, or where some drawn shapes have no such quantity
   */
  interval: [low: number, high: number] | null;
  /** surfaces it leans on that no reading tells of; they are taken as drawn */
  asDrawn: On[];
}

export interface FirstSeat {
  seat: number;
  /** share of the drawn shapes whose first touch is on this seat */
  probability: number;
}

interface Consequences {
  all: Consequence[];
  /** null where the readings leave it open which seat is first, or none closes rearward */
  first: FirstSeat[] | null;
}

/** How many shapes are drawn: a probability is then told to about 0.01, the ends of a range to a tenth of a sigma. */
const DRAWS = 2000;
const SEED = 1;
const OUTSIDE = 0.025;

/** With the journal at `position` (m). */
export function consequencesOf(belief: Belief, position: Metres, draws = DRAWS): Consequences {
  const { seats } = belief;
  const drawn = ofDrawnShapes(belief, draws, SEED, (shape) => valuesOf(shape, position));
  const all = quantitiesOf(seats).map((quantity, k): Consequence => {
    const found = followed(quantity, seats, position);
    if (!found) return { quantity, value: null, sigma: null, interval: null, asDrawn: [] };
    const asDrawn = unread(belief, found.influences);
    const sigma =
      asDrawn.length > 0
        ? null
        : uncertaintyOf(belief.decomposition, gradientOf(found.influences, seats, belief.unknowns));
    return {
      quantity,
      value: found.value,
      sigma,
      interval:
        sigma === null
          ? null
          : rangeOf(
              found.value,
              drawn.map((values) => values[k]!),
            ),
      asDrawn,
    };
  });
  return { all, first: firstSeats(belief, all, drawn) };
}

/** The surfaces among the influences that are no unknowns. */
export function unread({ unknowns }: Belief, influences: readonly Influence[]): On[] {
  const found: On[] = [];
  for (const { seat, part, rate } of influences) {
    const known =
      unknowns.list.some((u) => u.of === 'radius' && u.seat === seat && u.part === part) ||
      found.some((f) => f.seat === seat && f.part === part);
    if (rate !== 0 && !known) found.push({ seat, part });
  }
  return found;
}

/** The middle 95 % of the drawn values turned about the value; null where some are missing. */
function rangeOf(value: number, drawn: readonly (number | null)[]): [number, number] | null {
  const sorted = Float64Array.from(drawn.filter((v): v is number => v !== null)).sort();
  if (sorted.length === 0 || sorted.length < drawn.length) return null;
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return [2 * value - at(1 - OUTSIDE), 2 * value - at(OUTSIDE)];
}

function firstSeats(
  { seats }: Belief,
  all: readonly Consequence[],
  drawn: readonly (number | null)[][],
): FirstSeat[] | null {
  const rearward = seats.flatMap((input, seat) =>
    seatLines(input).closes === 'rearward'
      ? [{ seat, k: all.findIndex(({ quantity: q }) => q.of === 'seatPosition' && q.seat === seat) }]
      : [],
  );
  const touching = rearward.filter(({ k }) => all[k]!.value !== null);
  if (touching.length === 0 || (touching.length > 1 && touching.some(({ k }) => all[k]!.sigma === null))) return null;
  const counts = new Map(touching.map(({ seat }) => [seat, 0]));
  for (const values of drawn) {
    const first = touching.reduce((a, b) =>
      (values[b.k] ?? Number.NEGATIVE_INFINITY) > (values[a.k] ?? Number.NEGATIVE_INFINITY) ? b : a,
    );
    counts.set(first.seat, counts.get(first.seat)! + 1);
  }
  return touching.map(({ seat }) => ({ seat, probability: counts.get(seat)! / Math.max(1, drawn.length) }));
}
