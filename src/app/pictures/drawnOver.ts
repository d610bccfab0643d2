/**
 * Two states of a pair over each other: the lines of both in the frame of the first one's bush, by the one map of
 * drawn.ts and with one factor, so that what came off or moved is as thick on the screen as a film of that thickness.
 * Seats are matched by name; those that only one state has, or that are too differently steep, are left out.
 */

import type { Metres } from '../../design/dimension.ts';
import { radians } from '../../report/convert.ts';
import { gapOf, type Line, type SeatLines } from '../../report/inFrame.ts';
import { drawnPair, type Point } from './drawn.ts';
import { groundOf } from './drawnMap.ts';

export interface SeatOver {
  name: string;
  before: { journal: Point[]; bush: Point[] };
  after: { journal: Point[]; bush: Point[] };
}

export interface DrawnOver {
  factor: number;
  seats: SeatOver[];
  /** names of seats that are left out */
  apart: string[];
}

/** Of two bushes more differently steep one is no picture of the other. */
const STEEPER = radians(20);

interface State {
  seats: readonly SeatLines[];
  /** m */
  position: Metres;
}

export function drawnOver(before: State, after: State, factor: number): DrawnOver {
  const both = before.seats.flatMap((seat) => {
    const other = after.seats.find(({ name }) => name === seat.name);
    return other && Math.abs(other.gap.halfAngle - seat.gap.halfAngle) < STEEPER ? [{ seat, other }] : [];
  });
  const shown = new Set(both.map(({ seat }) => seat.name));
  const apart = [...new Set([...before.seats, ...after.seats].map(({ name }) => name))].filter(
    (name) => !shown.has(name),
  );
  if (both.length === 0) return { factor, seats: [], apart };
  // A line is drawn by the map of the first pair as the journal of a pair is, and none is moved along.
  const asJournal = (line: (pair: (typeof both)[number]) => Line) =>
    both.map((pair): SeatLines => ({ ...pair.seat, journal: line(pair), gap: gapOf(pair.seat.bush, line(pair)) }));
  const pairs = [
    { seats: both.map(({ seat }) => seat), position: before.position },
    { seats: asJournal(({ other }) => other.journal), position: after.position },
    { seats: asJournal(({ other }) => other.bush), position: 0 },
  ];
  const { maps } = groundOf(pairs[0]!.seats);
  const drawnWith = (times: number) =>
    pairs.map(({ seats, position }) => drawnPair(seats, position, times, null, { maps, home: position }));
  const drawn = Math.min(...drawnWith(factor).map((one) => one.factor));
  const [old, journals, bushes] = drawnWith(drawn).map(({ seats }) => seats);
  return {
    factor: drawn,
    seats: both.map(({ seat }, i) => ({
      name: seat.name,
      before: { journal: old![i]!.journal, bush: old![i]!.bush },
      after: { journal: journals![i]!.journal, bush: bushes![i]!.journal },
    })),
    apart,
  };
}
