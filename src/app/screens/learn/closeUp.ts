/**
 * Where the section of a lesson stands on the screen: as near as its seats can be seen whole, before and after what is
 * let go, so that on a phone too the films are seen and not the outside of the bush. Pixels, y down.
 */
import { millimetres } from '../../../report/convert.ts';
import type { Drawn, DrawnSeat } from '../../pictures/drawn.ts';
import type { SectionFrame } from '../../pictures/sectionFrame.ts';
import { LEAN, type Placing } from '../../pictures/sectionLayout.ts';
import type { Size } from '../../pictures/useSize.ts';

/** mm, station and radius: what must be in sight. */
export interface Box {
  left: number;
  right: number;
  low: number;
  high: number;
}

/** Of the room: metal left in sight round the seats, along and across. */
const ALONG = 0.06;
const ACROSS = 0.16;
/** px: the notes above, the bar below, the edges beside */
const NOTES = 26;
/** What is known of a seat has a line of its own. */
const NOTES_TOLD = 44;
/** px: of the strip below the drawing, with the bar and the whole pair */
export const STRIP = 48;
const EDGE = 8;
/** px: a picture is no lower, and no higher. */
export const LOWEST = 190;
export const HIGHEST = 300;

/** Both faces of every seat, in all the drawings given. */
export function boxOf(drawings: readonly Drawn[]): Box {
  const points = drawings.flatMap(({ seats }) =>
    seats.flatMap(({ bush, film }) => [...bush, ...film.flatMap((place) => [place.bush, place.journal])]),
  );
  const [z, r] = [points.map((point) => millimetres(point[0])), points.map((point) => millimetres(point[1]))];
  const box = { left: Math.min(...z), right: Math.max(...z), low: Math.min(...r), high: Math.max(...r) };
  const [along, across] = [ALONG * (box.right - box.left), ACROSS * Math.max(box.high - box.low, MIN_HIGH * box.high)];
  return { left: box.left - along, right: box.right + along, low: box.low - across, high: box.high + across };
}
/** A straight seat has no height of its own. */
const MIN_HIGH = 0.3;

/** px: how high the picture is in a room so wide, that the seats fill it across. `told`: what is known of each seat. */
export function heightFor(box: Box, width: number, told = false): number {
  const scale = (width - 2 * EDGE) / (box.right - box.left);
  return Math.round(
    Math.min(HIGHEST, Math.max(LOWEST, (told ? NOTES_TOLD : NOTES) + LEAN + STRIP + scale * (box.high - box.low))),
  );
}

const PAST_AXIS = 1.1;

export function closeUp(box: Box, frame: SectionFrame, { width, height }: Size, told = false): Placing {
  const notesEnd = told ? NOTES_TOLD : NOTES;
  const top = notesEnd + LEAN;
  const station = (frame.left + frame.right) / 2;
  const scale = Math.max(
    0.05,
    Math.min((width - 2 * EDGE) / (box.right - box.left), (height - top - STRIP) / (box.high - box.low)),
  );
  // Room that is over shows the journal down to its axis, and is shared once that is in sight.
  const lift = Math.max(0, height - top - STRIP - PAST_AXIS * scale * box.high) / 2;
  return {
    level: told ? 'figures' : 'none',
    scale,
    middle: { x: width / 2 + scale * (station - (box.left + box.right) / 2), y: top + lift + scale * box.high },
    station,
    notesEnd,
  };
}

/** Of the smaller of the two: parts that lean so far apart on the screen are seen to lean otherwise than they do. */
const OTHERWISE = 0.3;

/** What is said of the sides where the factor of the gaps turns them; '' where they lean as they are. */
export const leansText = ({ seats }: Drawn): string =>
  seats.some(({ bush, journal }) => {
    const [a, b] = [leanOf(bush), leanOf(journal)];
    return Math.abs(a - b) > OTHERWISE * Math.min(Math.abs(a), Math.abs(b));
  })
    ? ', so the sides lean otherwise than they do'
    : '';

function leanOf(line: DrawnSeat['bush']): number {
  const [first, last] = [line[0]!, line[line.length - 1]!];
  return Math.atan((last[1] - first[1]) / (last[0] - first[0]));
}
