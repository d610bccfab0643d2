/**
 * A pair before and after a cut, drawn with one factor: each state by the one map of drawn.ts, and on the state
 * before the lines to which it will be cut, by the same map, so that the stock between them is as thick on the
 * screen as a film of that thickness.
 */
import { gapOf, type Line, type SeatLines } from '../../report/inFrame.ts';
import { type Drawn, drawnPair, type Point } from './drawn.ts';

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
  // A line is drawn in the frame of the bush before as the journal of a pair is.
  const asJournal = (line: (seat: SeatLines) => Line) =>
    before.map((seat, i): SeatLines => ({ ...seat, journal: line(after[i]!), gap: gapOf(seat.bush, line(after[i]!)) }));
  const journals = asJournal(({ journal }) => journal);
  const bushes = asJournal(({ bush }) => bush);
  const drawn = Math.min(
    ...[
      drawnPair(before, from, factor),
      drawnPair(after, to, factor),
      drawnPair(journals, from, factor),
      drawnPair(bushes, 0, factor),
    ].map((d) => d.factor),
  );
  const [cutJournals, cutBushes] = [drawnPair(journals, from, drawn), drawnPair(bushes, 0, drawn)];
  return {
    before: drawnPair(before, from, drawn),
    after: drawnPair(after, to, drawn),
    cutTo: before.map((_, i) => ({ journal: cutJournals.seats[i]!.journal, bush: cutBushes.seats[i]!.journal })),
  };
}
