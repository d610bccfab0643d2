/**
 * Which colour and dash each seat has, as style sheets take them: by what it is, cones from the shallowest to the
 * steepest and straight seats last, of equals the one nearer the rear, and not by where it stands in the list. Of more
 * seats than there are colours each keeps that of its place.
 */
import type { CSSProperties } from 'react';
import type { Design } from '../../design/definition.ts';

const COLOURS = 4;

/** The colour of every seat, in the order of the design. */
export function seatColours(seats: Design['seats']): number[] {
  const places = seats.map((_, i) => i);
  if (seats.length > COLOURS) return places.map((i) => i % COLOURS);
  const steepness = (i: number) => Math.abs(seats[i]!.bush.halfAngle) || 90;
  const station = (i: number) => seats[i]!.bush.station;
  const inOrder = places.toSorted(
    (a, b) => steepness(a) - steepness(b) || station(a) - station(b) || (seats[a]!.name < seats[b]!.name ? -1 : 1),
  );
  return places.map((i) => inOrder.indexOf(i));
}

/** For the element that all pictures stand in. */
export const seatColoursStyle = (colours: readonly number[]): CSSProperties =>
  Object.fromEntries(
    colours.slice(0, COLOURS).flatMap((colour, i) => [
      [`--of-${i}`, `var(--seat-${colour})`],
      [`--dash-of-${i}`, `var(--dash-${colour})`],
    ]),
  );
