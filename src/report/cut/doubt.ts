/**
 * How sure one is of the films before any trial: what the readings say; where they do not, what the person states, or
 * the default.
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { filmDoubt } from '../../engine/belief/filmDoubt.ts';
import { type Doubt, evenDoubt } from '../../engine/cutting/trial.ts';
import { estimate } from '../../engine/gauging/estimate.ts';
import { metres, millimetres } from '../convert.ts';
import { toPriors } from '../measure/toReading.ts';
import { usedReadings } from '../measure/usedReadings.ts';
import { toPlaySeats } from '../play/toPlay.ts';
import type { CutReport } from './definition.ts';
import type { Cut } from './toCut.ts';

export interface FilmDoubt {
  /** m² */
  covariance: Doubt;
  from: CutReport['doubt'][string]['from'][];
}

export function doubtOf(design: Design, { doubt }: Cut): FilmDoubt {
  const even = evenDoubt(design.seats.length, metres(doubt ?? defaultAt('cut.doubt')));
  const read = readDoubt(design);
  const isRead = (i: number) => read?.[i]?.[i] != null;
  return {
    covariance: even.map((row, i) => row.map((own, j) => (isRead(i) && isRead(j) ? read![i]![j]! : own))),
    from: design.seats.map((_, i) => (isRead(i) ? 'readings' : doubt === undefined ? 'default' : 'stated')),
  };
}

function readDoubt(design: Design): (number | null)[][] | null {
  if (!design.readings || design.readings.length === 0) return null;
  const seats = toPlaySeats(design);
  const found = estimate(seats, usedReadings(design, seats).readings, toPriors(design));
  return found.kind === 'unusable' ? null : filmDoubt(found, seats, metres(design.position ?? 0));
}

export const doubtSection = (design: Design, { covariance, from }: FilmDoubt): CutReport['doubt'] =>
  Object.fromEntries(
    design.seats.map(({ name }, i) => [name, { sigma: millimetres(Math.sqrt(covariance[i]![i]!)), from: from[i]! }]),
  );
