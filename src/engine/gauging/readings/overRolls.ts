/**
 * The width over two equal rolls that stand square to the plane of the axis, one on each side of the journal.
 *   value = 2·c + d        on a straight line  = 2·r(Z) + d·(1 + 1/cos a)
 * c radius at which the roll centres stand (touching.ts) · Z their station (m) · d roll diameter (m) · a half
 * angle. With rolls on a plate at the small end, Z = d/2 above it, this is the handbook's
 * D + d·(1 + tan(45° + a/2)).
 * @source derived (tangency); MachinerysHandbook Measuring tapers with rolls
 */

import { lineOn } from '../../belief/unknowns.ts';
import { type Fault, impossible, ofLineAlone, type ReadingKind } from '../reading.ts';
import { distanceTo, rollOn } from '../touching.ts';

export const overRolls: ReadingKind<'overRolls'> = {
  kind: 'overRolls',
  tells: 'diameter',
  usualSigma: 1.5e-6,
  profileAt: ofLineAlone,
  surfaces: ({ seat, part }) => [{ seat, part }],
  predict: ({ seat, part, roll, station }, seats) => {
    if (part === 'bush') return impossible({ what: 'wrongPart', part });
    const surface = seats[seat]![part];
    const { from, to } = surface;
    const touch = rollOn(lineOn(surface, 'journal'), roll / 2, station);
    if (!touch) return impossible({ what: 'missed', station, from, to });
    const other = seats.findIndex(
      (s, k) => k !== seat && distanceTo(lineOn(s.journal, 'journal'), station, touch.centre) < roll / 2,
    );
    const smallEnd = surface.halfAngle >= 0 ? 'rear' : 'nose';
    let fault: Fault | null = null;
    if (touch.edge) fault = { what: 'edge', end: touch.edge === smallEnd ? 'small' : 'large', station: touch.station };
    else if (other >= 0) fault = { what: 'otherSeat', seat: other };
    return {
      value: 2 * touch.centre + roll,
      influences: [{ seat, part, by: 'radius', station: touch.station, rate: 2 }],
      fault,
    };
  },
};
