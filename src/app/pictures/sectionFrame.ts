/**
 * The outlines of both parts in mm, and the room they take. Taken from the bush, so that the ground holds still while
 * the journal moves.
 */
import type { Metres, Millimetres, Radians } from '../../design/dimension.ts';
import { millimetres } from '../../report/convert.ts';
import { type Drawn, type DrawnSeat, type Point, relieved } from './drawn.ts';
import { LARGEST_GAP, LARGEST_MOVE } from './factor.ts';
import { fromChord, thinned } from './thinned.ts';

export interface SectionFrame {
  /** mm: the room along the axis, which does not change while the journal moves */
  left: Millimetres;
  right: Millimetres;
  /** mm: how far noseward of the room the journal may stand out of it, at rest */
  ahead: Millimetres;
  /** mm: where the journal is broken off, rear and nose */
  journalLeft: Millimetres;
  journalRight: Millimetres;
  /** mm: ends of the bush */
  rear: Millimetres;
  nose: Millimetres;
  /** mm: outside radius of the bush */
  outer: Millimetres;
  /** half sections of the journal and of the bush above and below the axis, mm, radius away from it */
  journal: Halves;
  bush: Halves;
}

export interface Halves {
  above: PointInMm[];
  below: PointInMm[];
}

/** What of drawn.ts is in metres, for drawings in millimetres. */
export type PointInMm = readonly [z: Millimetres, r: Millimetres];
export const inMm = (points: readonly Point[]): PointInMm[] => points.map(([z, r]) => [millimetres(z), millimetres(r)]);

/** How far the journal reaches past the bush, and the bush past its bore, as shares. */
const REACH = 0.14;
const WALL = 1.28;
/** Of one seat's line; a measured profile may have more than a screen shows. */
export const MOST_POINTS = 1200;
/** The journal past its seats is drawn a little smaller. */
const STEP = 0.94;
const UP = Math.PI / 2;
const DOWN = 1.5 * Math.PI;

/**
 * m: how far a journal at rest is drawn from its bush along the axis. No move is drawn longer than its own share of the
 * bush, and no gap, which a move opens by the sine of its seat's half angle, wider than its share of the least radius.
 */
function furthestMove(seats: readonly DrawnSeat[], length: Metres): Metres {
  const slopes = seats.map(({ bush }) => {
    const [[z, r], [toZ, toR]] = [bush[0]!, bush[bush.length - 1]!];
    return Math.abs(toR - r) / Math.hypot(toZ - z, toR - r);
  });
  const least = Math.min(...seats.flatMap(({ bush }) => bush.map(([, r]) => r)));
  return Math.min(LARGEST_MOVE * length, (LARGEST_GAP * least) / Math.max(...slopes, 1e-9));
}

export function sectionFrame(drawn: Drawn): SectionFrame {
  const above = linesOf(drawn.seats);
  const below = drawn.below === drawn.seats ? above : linesOf(drawn.below);
  const { bore, body } = above;
  const rear = Math.min(...bore.map(([z]) => z));
  const nose = Math.max(...bore.map(([z]) => z));
  const reach = (nose - rear) * REACH;
  const outer = Math.max(...bore.map(([, r]) => r)) * WALL;
  const [first, last] = endsOf(above.body, below.body);
  // Broken off as far past its seats wherever the journal goes, and one thickness there: clear of the bush's rear.
  const { moved } = drawn;
  const left = Math.min(rear - reach, first[0] - moved - reach / 4) + moved;
  const right = Math.max(nose + reach, last[0] - moved + reach / 4) + moved;
  const clear = STEP * Math.min(first[1], bore[0]![1]);
  // The ends are no seats: they stand true to size, moved and tilted as the rigid journal is, clear of its seats.
  const journalOf = (line: readonly Point[], angle: Radians): PointInMm[] => {
    const [start, end] = [line[0]!, line[line.length - 1]!];
    const away = (right - last[0]) / 4;
    return inMm([
      [Math.min(left + drawn.endwise(clear, angle), start[0] - away), clear + drawn.aside(left, angle)],
      [start[0], clear + drawn.aside(start[0], angle)],
      ...line,
      [Math.max(right + drawn.endwise(last[1], angle), end[0] + away), last[1] + drawn.aside(right, angle)],
    ]);
  };
  const bushOf = (line: readonly Point[]) => inMm([...line, [nose, outer], [rear, outer]]);
  return {
    left: millimetres(rear - reach),
    right: millimetres(nose + reach),
    ahead: millimetres(furthestMove(drawn.seats, nose - rear)),
    journalLeft: millimetres(left),
    journalRight: millimetres(right),
    rear: millimetres(rear),
    nose: millimetres(nose),
    outer: millimetres(Math.max(outer, ...body.map(([, r]) => 1.02 * r))),
    journal: { above: journalOf(above.body, UP), below: journalOf(below.body, DOWN) },
    bush: { above: bushOf(above.bore), below: bushOf(below.bore) },
  };
}

/** Rear and nose end of the journal's seats, were it not pulled aside: what the one side loses the other gains. */
function endsOf(above: readonly Point[], below: readonly Point[]): [Point, Point] {
  const between = ([z, r]: Point, [z2, r2]: Point): Point => [(z + z2) / 2, (r + r2) / 2];
  return [between(above[0]!, below[0]!), between(above[above.length - 1]!, below[below.length - 1]!)];
}

/** The lines of all seats joined, from the rear to the nose. */
function linesOf(seats: readonly DrawnSeat[]): { bore: Point[]; body: Point[] } {
  const byStation = [...seats].sort((a, b) => a.bush[0]![0] - b.bush[0]![0]);
  const bores = byStation.map((s) => thinned(s.bush, MOST_POINTS, fromChord(s.bush)));
  const bodies = byStation.map((s) => thinned(s.journal, MOST_POINTS, fromChord(s.journal)));
  return { bore: relieved(bores, bores, 'outside'), body: relieved(bodies, bores, 'inside') };
}
