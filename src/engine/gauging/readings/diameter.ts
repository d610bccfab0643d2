/**
 * A diameter read at a station.
 *   value = 2·r(Z)
 * r(Z) radius of the line (m), profile included (parts/line.ts).   @source derived (definition)
 */

import { radiusOf } from '../../parts/line.ts';
import { ofLineAlone, type ReadingKind } from '../reading.ts';

export const diameter: ReadingKind<'diameter'> = {
  kind: 'diameter',
  tells: 'diameter',
  usualSigma: 1e-6,
  profileAt: ofLineAlone,
  surfaces: ({ seat, part }) => [{ seat, part }],
  predict: ({ seat, part, station }, seats) => {
    const surface = seats[seat]![part];
    const { from, to } = surface;
    return {
      value: 2 * radiusOf(surface, part, station),
      influences: [{ seat, part, by: 'radius', station, rate: 2 }],
      fault: station < from || station > to ? { what: 'missed', station, from, to } : null,
    };
  },
};
