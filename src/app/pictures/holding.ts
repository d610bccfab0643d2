/** Where the seats hold a journal that is pulled aside, for the labels that say they touch. */
import type { Drawn, DrawnForce, Point } from './drawn.ts';
import { middleOf } from './SeatNotes.tsx';

/** The contact of a seat; of several the one that presses hardest. */
export const holdOf = ({ forces }: Drawn, seat: string): DrawnForce | null =>
  forces.filter((force) => force.seat === seat).sort((a, b) => b.share - a.share)[0] ?? null;

/** Where a label of the section ends, as seen from the side: on what holds, else amid the film of the upper half. */
export function noteEnd(drawn: Drawn, seat: number): Point {
  const held = holdOf(drawn, drawn.seats[seat]!.name);
  return held ? [held.at[0], held.at[1] * Math.sin(held.angle)] : middleOf(drawn.seats[seat]!);
}
