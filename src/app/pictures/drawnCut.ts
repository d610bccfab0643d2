/**
 * A pair before and after a cut, drawn with one factor: each state by the one map of drawn.ts, and on the state
 * before the lines to which it will be cut, by the same map, so that the stock between them is as thick on the
 * screen as a film of that thickness.
 */
import { gapOf, type Line, type SeatLines } from '../../report/inFrame.ts';
import { type Drawn, drawnPair, type Point } from './drawn.ts';
import { groundOf } from './drawnMap.ts';

export interface DrawnCut {
  before: Drawn;
  after: Drawn;
  /** by seat: the lines after the cut as they would lie in the state before */
  cutTo: { journal: Point[]; bush: Point[] }[];
}

/** Positions in m. */
export function drawnCut(
  before: readonly SeatLines[],
  after: readonly SeatLines[],
  from: number,
  to: number,
  factor: number,
): DrawnCut {
  // A line is drawn by the map of the pair before as the journal of a pair is, and none is moved along.
  const asJournal = (line: (seat: SeatLines) => Line) =>
    before.map((seat, i): SeatLines => ({ ...seat, journal: line(after[i]!), gap: gapOf(seat.bush, line(after[i]!)) }));
  const [mapsBefore, mapsAfter] = [groundOf(before).maps, groundOf(after).maps];
  const states = [
    { seats: before, position: from, maps: mapsBefore },
    { seats: after, position: to, maps: mapsAfter },
    { seats: asJournal(({ journal }) => journal), position: from, maps: mapsBefore },
    { seats: asJournal(({ bush }) => bush), position: 0, maps: mapsBefore },
  ];
  const drawnWith = (times: number) =>
    states.map(({ seats, position, maps }) => drawnPair(seats, position, times, null, { maps, home: position }));
  const drawn = Math.min(...drawnWith(factor).map((one) => one.factor));
  const [nowDrawn, then, cutJournals, cutBushes] = drawnWith(drawn) as [Drawn, Drawn, Drawn, Drawn];
  return {
    before: nowDrawn,
    after: then,
    cutTo: before.map((_, i) => ({ journal: cutJournals.seats[i]!.journal, bush: cutBushes.seats[i]!.journal })),
  };
}
