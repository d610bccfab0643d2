/**
 * The parts as they stand: what was measured or drawn, changed by what was done to it, each change a transform Surface
 * → Surface.
 *
 *   measured → stock taken off (stock.ts) → moved along the axis by the metal off a face (shift.ts) → warmed
 *   (growth.ts)
 *
 * Stock and shift go in the order in which they happened, and for lines they may go in any. What metal off makes of
 * the parts, measure and cut see; growth stands in the error budget alone, and fit, play and run take the design's own
 * lines (report/convert.ts), what warms of them as growth of the film (heat/filmGrowth.ts). A tool off the centre
 * (offCentre.ts) leaves a profile on the line it cuts.
 */
import type { Part, Surface } from './line.ts';
import { movedAxially } from './shift.ts';
import { withStock } from './stock.ts';

/**
 * Metal off a surface, or off a face that moves the part of some seats along the axis: 1 toward the nose, -1 toward the
 * rear.
 */
type MetalOff =
  | { of: 'surface'; seat: number; part: Part; normal: number }
  | { of: 'face'; part: Part; seats: readonly number[]; moves: 1 | -1; normal: number };

type Pair = Record<Part, Surface>;

/** The parts with this much metal off (m; put back where negative), one after another. */
export function withMetalOff<S extends Pair>(seats: readonly S[], amounts: readonly MetalOff[]): S[] {
  const stand = seats.map((seat) => ({ ...seat }));
  const change = (seat: number, part: Part, by: (surface: Surface) => Surface) => {
    stand[seat] = { ...stand[seat]!, [part]: by(stand[seat]![part]) };
  };
  for (const off of amounts) {
    if (off.of === 'surface') change(off.seat, off.part, (surface) => withStock(surface, off.part, off.normal));
    else
      for (const seat of off.seats) change(seat, off.part, (surface) => movedAxially(surface, off.moves * off.normal));
  }
  return stand;
}
