/**
 * How deep the lenses of a lesson look. Where one seat touches and another stands off by a little, lenses that show how
 * far the spindle went show that gap as a line: others look so many times closer that it is seen to be open still.
 */
import type { Design } from '../../../design/definition.ts';
import { metres } from '../../../report/convert.ts';
import { linesOf, SAME } from '../../../report/inFrame.ts';
import { type DrawnSeat, drawnAt } from '../../pictures/drawn.ts';
import { lensDepth } from '../fit/lens.ts';

export const seatsOf = (design: Design): DrawnSeat[] => drawnAt(linesOf(design), metres(design.position ?? 0), 1).seats;

/** m: how deep the lenses look, so that both designs are seen in them. */
export const deepFor = (...designs: Design[]): number => Math.max(...designs.map(seatsOf).map(depthOf));

function depthOf(seats: readonly DrawnSeat[]): number {
  const films = seats.flatMap(({ film }) => film.map((place) => place.film));
  const open = films.length === 0 ? 0 : Math.max(...films);
  return Math.max(lensDepth(seats), ROOM * open);
}
const ROOM = 1.25;

/** Of a lens's depth: a gap has room above it, and no more than twice as much again. */
const FULL = 1.5;
/** Nearer than this the others show it well enough. */
const WORTH = 4;

/** `deep` (m): of the lenses that they go with. null: nothing is seen better from closer. */
export function timesCloser(seats: readonly DrawnSeat[], deep: number): number | null {
  const least = seats.map(({ film }) => Math.min(...film.map((place) => place.film)));
  const open = least.filter((film) => film > SAME && Number.isFinite(film));
  // Of seats that are all open, or pressed in, the one scale is what is to be seen.
  if (open.length === 0 || !least.some((film) => Math.abs(film) <= SAME)) return null;
  const times = 2 ** Math.floor(Math.log2(deep / (FULL * Math.max(...open))));
  return times >= WORTH ? times : null;
}
