/** The edge between the file and the engine's rigid spindle: what is free to move, where the indicator stands. */
import type { Design } from '../../design/definition.ts';
import type { Motion } from '../../engine/spindle/pose.ts';
import { type Spindle, spindleOf } from '../../engine/spindle/rigid.ts';
import { toSeats } from '../convert.ts';

export { MOTIONS, type Motion } from '../../engine/spindle/pose.ts';

/** What is free where the design does not say: everything but the axial position, which the adjuster holds. */
export const FREE: readonly Motion[] = ['x', 'y', 'tiltX', 'tiltY'];

export const freeOf = (design: Design): readonly Motion[] => design.play?.free ?? FREE;

export const toSpindle = (design: Design): Spindle => spindleOf(toSeats(design), freeOf(design));

/** Station (mm) of the indicator: the nose end of the journal where the design does not say. */
export const indicatorOf = (design: Design): number =>
  design.play?.indicator ?? Math.max(...design.seats.map((seat) => seat.journal.to));
