/**
 * A pair before and after a cut, drawn with one factor and as one thing: in both states the maps of drawn.ts stand
 * on the bush as it is before, and the journal stands after where it will, moved along the axis as far as it goes
 * times the factor. So on the screen what came off, the move and every film are each as large as they are, by one
 * factor: where a steep cone loses metal the journal is seen to go further, and the other seats' films to change by
 * that alone. On the state before lie the lines to which it will be cut, by the same map.
 */
import type { Metres } from '../../design/dimension.ts';
import { millimetres } from '../../report/convert.ts';
import { gapOf, type Line, type SeatLines } from '../../report/inFrame.ts';
import { type Drawn, drawnAt, type Point } from './drawn.ts';
import { type Ground, groundOf, heightOf, type SeatMap } from './drawnMap.ts';
import { factorFor } from './factor.ts';
import { type SectionFrame, sectionFrame } from './sectionFrame.ts';

/** What is drawn of a cut, without its factor. Positions in m. */
export interface CutPair {
  before: readonly SeatLines[];
  after: readonly SeatLines[];
  from: Metres;
  to: Metres;
}

export interface DrawnCut {
  before: Drawn;
  /** the journal where it will stand, seen from where it stands before */
  after: Drawn;
  /** by seat: the lines after the cut as they would lie in the state before */
  cutTo: { journal: Point[]; bush: Point[] }[];
}

interface State {
  seats: readonly SeatLines[];
  position: Metres;
  ground: Ground;
}

function statesOf({ before, after, from, to }: CutPair): State[] {
  const { maps } = groundOf(before);
  // A line is drawn by the map of the pair before as the journal of a pair is, and none is moved along.
  const asJournal = (line: (seat: SeatLines) => Line) =>
    before.map((seat, i): SeatLines => ({ ...seat, journal: line(after[i]!), gap: gapOf(seat.bush, line(after[i]!)) }));
  const onBefore = groundOf(after).maps.map((map, i) => standingOn(map, before[i]!));
  return [
    { seats: before, position: from, ground: { maps, home: from } },
    { seats: after, position: to, ground: { maps: onBefore, home: from } },
    { seats: asJournal(({ journal }) => journal), position: from, ground: { maps, home: from } },
    { seats: asJournal(({ bush }) => bush), position: 0, ground: { maps, home: 0 } },
  ];
}

/** A map that stands on the bush of another state, so that a bush that was cut is drawn off it by what came off. */
function standingOn(map: SeatMap, { gap }: SeatLines): SeatMap {
  const turn = map.angle - gap.halfAngle;
  const { u, v } = gap.bush;
  return { ...map, v0: Math.min(...Array.from(v, (height, i) => heightOf({ turn }, u[i]!, height))) };
}

/** The greatest factor up to the one asked for at which the picture holds both states and what comes off. */
export const cutFactor = (pair: CutPair, asked: number): number =>
  Math.min(...statesOf(pair).map(({ seats, position, ground }) => factorFor(seats, position, asked, null, [], ground)));

/** Drawn with this very factor. */
export function drawnCut(pair: CutPair, factor: number): DrawnCut {
  const [before, after, journals, bushes] = statesOf(pair).map(({ seats, position, ground }) =>
    drawnAt(seats, position, factor, null, ground),
  ) as [Drawn, Drawn, Drawn, Drawn];
  return {
    before,
    after,
    cutTo: pair.before.map((_, i) => ({ journal: journals.seats[i]!.journal, bush: bushes.seats[i]!.journal })),
  };
}

/**
 * The outlines of both states: the same journal broken off at the same places of itself, wherever it stands, in a bush
 * of one outside.
 */
export function cutFrames({ before, after }: DrawnCut): readonly [SectionFrame, SectionFrame] {
  const moved = millimetres(after.moved);
  const frames = [sectionFrame(before), sectionFrame(after)] as const;
  const left = Math.min(frames[0].journalLeft, frames[1].journalLeft - moved);
  const right = Math.max(frames[0].journalRight, frames[1].journalRight - moved);
  const outer = Math.max(frames[0].outer, frames[1].outer);
  const brokenAt = (frame: SectionFrame, by: number): SectionFrame => {
    const line = frame.journal.above;
    const above = [[left + by, line[0]![1]] as const, ...line.slice(1, -1), [right + by, line.at(-1)![1]] as const];
    const bush = [...frame.bush.above.slice(0, -2), [frame.nose, outer] as const, [frame.rear, outer] as const];
    return {
      ...frame,
      outer,
      journalLeft: left + by,
      journalRight: right + by,
      journal: { above, below: above },
      bush: { above: bush, below: bush },
    };
  };
  return [brokenAt(frames[0], 0), brokenAt(frames[1], moved)];
}
