/**
 * The deviation of a surface's line at a station from its own end-to-end straight line, metal proud positive.
 *   value = d(Z) - [d(from)·(to - Z) + d(to)·(Z - from)]/(to - from)
 * d profile of the surface (m), from and to its ends (m). By definition 0 at both ends, whatever the shape.
 * @source definition; end-point reference line, ISO 12780-1 (from memory)
 */
import type { Influence, ReadingKind } from '../reading.ts';
import { deviationAt } from '../shape.ts';

export const straightness: ReadingKind<'straightness'> = {
  kind: 'straightness',
  surfaces: ({ seat, part }) => [{ seat, part }],
  predict: ({ seat, part, station }, seats) => {
    const { profile, from, to } = seats[seat]![part];
    const toNose = (station - from) / (to - from);
    const influence = (at: number, rate: number): Influence => ({ seat, part, by: 'deviation', station: at, rate });
    return {
      value: deviationAt(profile, station) - (1 - toNose) * deviationAt(profile, from) - toNose * deviationAt(profile, to),
      influences: [influence(station, 1), influence(from, toNose - 1), influence(to, -toNose)],
      fault: station < from || station > to ? { what: 'missed', station, from, to } : null,
    };
  },
};
