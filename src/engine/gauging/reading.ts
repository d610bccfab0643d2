/**
 * What a reading is to the engine: a value with its standard uncertainty, both in metres, and the set-up it was
 * taken with. Seats are named by their place in the design. Every kind of reading has a forward model of its
 * own (readings/): from the shape of the parts to the value that would be read.
 */

import type { Metres } from '../../design/dimension.ts';
import type { Branch, Influence, On } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { Part } from '../parts/line.ts';
import type { Motion } from '../spindle/pose.ts';
import type { Since } from './cutsBetween.ts';

interface Read {
  /** m */
  value: number;
  /** standard uncertainty of the value (m), above 0 */
  sigma: number;
  /** metal that came off between this reading and the state in which the parts are sought; left out: none */
  since?: readonly Since[];
}

/** Stations, diameters and travels in m, angles in rad, as in the design file otherwise. */
export type Reading =
  | (Read & On & { kind: 'diameter'; station: Metres })
  | (Read & On & { kind: 'overRolls'; roll: number; station: Metres })
  | (Read & On & { kind: 'ballDepth'; ball: number; face: number })
  | (Read & On & { kind: 'sineRise'; bar: number; stack: number; travel: number })
  | (Read & On & { kind: 'straightness'; station: Metres })
  | (Read & { kind: 'standOff' })
  | (Read & { kind: 'shake'; indicator: Metres; position: Metres; direction: number; free: readonly Motion[] });

export type Kind = Reading['kind'];
export type ReadingOf<K extends Kind> = Extract<Reading, { kind: K }>;

/** Why a reading cannot have been taken like this from these parts. Lengths m. */
export type Fault =
  | { what: 'wrongPart'; part: Part }
  | { what: 'straight' }
  | { what: 'falls'; ball: number; bore: number }
  | { what: 'edge'; end: 'small' | 'large'; station: Metres }
  | { what: 'missed'; station: Metres; from: number; to: number }
  | { what: 'otherSeat'; seat: number }
  | { what: 'blocked'; seat: number; bore: number }
  | { what: 'stackBeyondBar'; stack: number; bar: number }
  | { what: 'travelBeyondLine'; travel: number; line: number }
  | { what: 'riseBeyondBar'; rise: number; bar: number }
  /** a sine bar reading that leans the line across the axis of the part */
  | { what: 'crossesAxis'; rise: number; travel: number }
  /** told from the end-to-end line, which has its ends by definition */
  | { what: 'ofEnd'; station: Metres; value: number }
  /** a travel from side to side, less than nothing */
  | { what: 'negative'; value: number }
  | { what: 'nothingCloses' }
  | { what: 'neverTouches' }
  | { what: 'interferes'; interference: Metres }
  | { what: 'unbounded' }
  /** a fault of ours: a search did not come to rest */
  | { what: 'stalled' };

/**
 * What a set-up would read on a shape. With a fault the value may still be known (a ball resting on a sharp
 * edge has a depth), but nobody should trust it; it is null where there is none.
 */
export interface Prediction {
  /** m */
  value: number | null;
  influences: Influence[];
  fault: Fault | null;
  /**
   * where the value is the greatest of several: those near it, the deciding one among them; worked out when asked for
   */
  branches?: () => Branch[];
}

/**
 * What the value of a reading is. Of a diameter or a depth it is a size of the part, read on a thimble; a deviation, a
 * position or a travel is small and read on an indicator, a travel having no sign.
 */
export type Tells = 'diameter' | 'depth' | 'deviation' | 'position' | 'travel';
export const isSize = (tells: Tells) => tells === 'diameter' || tells === 'depth';

export interface ReadingKind<K extends Kind> {
  kind: K;
  tells: Tells;
  /** standard uncertainty (m) where the notebook holds none of its kind. @source practice */
  usualSigma: number;
  /**
   * where on the surface it is taken from its profile is sought (stations, m), in the frame it was taken in; none where
   * it tells of the line alone
   */
  profileAt: (reading: ReadingOf<K>) => Metres[];
  /** the surfaces the value depends on */
  surfaces: (reading: ReadingOf<K>, seats: readonly SeatInput[]) => On[];
  predict: (reading: ReadingOf<K>, seats: readonly SeatInput[]) => Prediction;
}

/** m: stations nearer than this to an end, or to each other, are the same place. */
export const NOWHERE = 1e-9;

/** Of a kind that tells of the line alone: no profile is sought. */
export const ofLineAlone = (): Metres[] => [];

export const impossible = (fault: Fault): Prediction => ({ value: null, influences: [], fault });
