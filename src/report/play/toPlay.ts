/**
 * The edge between the file and the engine's rigid spindle: lobes, what is free to move, where the indicator stands.
 */
import type { Design, Surface } from '../../design/definition.ts';
import type { Lobe } from '../../engine/spindle/lobes.ts';
import type { Motion } from '../../engine/spindle/pose.ts';
import { type PlaySeat, type Spindle, spindleOf } from '../../engine/spindle/rigid.ts';
import { metres, radians, toSeat } from '../convert.ts';

/** What is free where the design does not say: everything but the axial position, which the adjuster holds. */
export const FREE: readonly Motion[] = ['x', 'y', 'tiltX', 'tiltY'];

export const toLobes = (surface: Surface): Lobe[] =>
  (surface.lobes ?? []).map(({ count, amplitude, phase }) => ({
    count,
    amplitude: metres(amplitude),
    phase: radians(phase ?? 0),
  }));

export const toPlaySeats = (design: Design): PlaySeat[] =>
  design.seats.map((seat) => ({ ...toSeat(seat), journalLobes: toLobes(seat.journal), bushLobes: toLobes(seat.bush) }));

export const freeOf = (design: Design): readonly Motion[] => design.play?.free ?? FREE;

export const toSpindle = (design: Design): Spindle => spindleOf(toPlaySeats(design), freeOf(design));

/** Station (mm) of the indicator: the nose end of the journal where the design does not say. */
export const indicatorOf = (design: Design): number =>
  design.play?.indicator ?? Math.max(...design.seats.map((seat) => seat.journal.to));
