/**
 * The deviation of a surface's line at a station from its own end-to-end straight line, metal proud positive.
 *   value = d(Z) - [d(from)·(to - Z) + d(to)·(Z - from)]/(to - from)
 * d profile of the surface (m), from and to its ends (m). By definition 0 at both ends, whatever the shape:
 * another reading there was told from another line.
 * @source ISO12780-1 (end-point reference line)
 */

import type { Influence } from '../../belief/unknowns.ts';
import { deviationAt } from '../../parts/line.ts';
import { type Fault, NOWHERE, type ReadingKind } from '../reading.ts';

/** Uncertainties within which an indicator set to nothing may come back to it. @source practice */
const SEEN = 3;

export const straightness: ReadingKind<'straightness'> = {
  kind: 'straightness',
  tells: 'deviation',
  usualSigma: 5e-7,
  profileAt: ({ station }) => [station],
  surfaces: ({ seat, part }) => [{ seat, part }],
  predict: ({ seat, part, station, value, sigma }, seats) => {
    const { profile, from, to } = seats[seat]![part];
    const toNose = (station - from) / (to - from);
    const influence = (at: number, rate: number): Influence => ({ seat, part, by: 'deviation', station: at, rate });
    const faultOf = (): Fault | null => {
      if (station < from || station > to) return { what: 'missed', station, from, to };
      const atEnd = Math.min(station - from, to - station) < NOWHERE;
      return atEnd && Math.abs(value) > SEEN * sigma ? { what: 'ofEnd', station, value } : null;
    };
    return {
      value:
        deviationAt(profile, station) - (1 - toNose) * deviationAt(profile, from) - toNose * deviationAt(profile, to),
      influences: [influence(station, 1), influence(from, toNose - 1), influence(to, -toNose)],
      fault: faultOf(),
    };
  },
};
