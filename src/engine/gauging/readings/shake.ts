/**
 * The total travel of an indicator as the journal is pulled from side to side, its axial position held.
 *   value = travel along the pull less travel back (play/shake.ts)
 *   dvalue = Σ share·dh over the contacts of both pulls
 * share normal force at a contact for a pull of 1 N, the multiplier of its film in the linear programme · h the
 * film there as the shape has it (filmGradient.ts), the pose kept:
 *   h = g - d - cos a·[(x + tiltY·Zn)·cos φ + (y - tiltX·Zn)·sin φ]        Zn = Z + r·tan a
 *   ∂h/∂a beyond that of g = sin a·[…] - cos a·(tiltY·cos φ - tiltX·sin φ)·r/cos²a      ∂h/∂r likewise through Zn
 * Z, r the breakpoint (of bush or journal) where the contact stands (m) · a half angle of the bush.
 * @source Luenberger 4.4 (sensitivity of a linear programme)
 */

import type { Metres } from '../../../design/dimension.ts';
import { breakpointsAt } from '../../belief/filmGradient.ts';
import type { Influence } from '../../belief/unknowns.ts';
import { filmAlong } from '../../contact/film.ts';
import { radiusAt, type SeatInput, type SeatLines, seatLines } from '../../contact/fit.ts';
import type { SeatContact } from '../../play/contacts.ts';
import { type Pulled, shakeAt } from '../../play/shake.ts';
import { axisAt, type Pose } from '../../spindle/pose.ts';
import { spindleOf } from '../../spindle/rigid.ts';
import { impossible, ofLineAlone, type ReadingKind } from '../reading.ts';

export const shake: ReadingKind<'shake'> = {
  kind: 'shake',
  tells: 'travel',
  usualSigma: 1e-6,
  profileAt: ofLineAlone,
  surfaces: (_, seats) =>
    seats.flatMap((_, seat) => [
      { seat, part: 'journal' as const },
      { seat, part: 'bush' as const },
    ]),
  predict: ({ indicator, position, direction, free, value }, seats) => {
    const spindle = spindleOf(seats, free);
    const found = shakeAt(spindle, position, { station: indicator, direction });
    switch (found.status) {
      case 'solved':
        return {
          value: found.total,
          // Of the thousands of pairs that are weighed only the value is asked.
          get influences() {
            return [found.along, found.back].flatMap((pulled) => influencesOf(seats, position, pulled));
          },
          fault: value < 0 ? { what: 'negative', value } : null,
        };
      case 'infeasible':
        return impossible({ what: 'interferes', interference: found.interference });
      case 'unbounded':
        return impossible({ what: 'unbounded' });
      case 'stalled':
        return impossible({ what: 'stalled' });
    }
  },
};

function influencesOf(seats: readonly SeatInput[], position: Metres, { pose, contacts }: Pulled): Influence[] {
  const lines = new Map<string, { index: number; seat: SeatLines }>(
    seats.map((input, index) => [input.name, { index, seat: seatLines(input) }]),
  );
  return contacts.flatMap((contact) => {
    const { index, seat } = lines.get(contact.seat)!;
    return contactInfluences(seat, index, position, pose, contact);
  });
}

function contactInfluences(
  seat: SeatLines,
  index: number,
  position: Metres,
  pose: Pose,
  { station, journalStation, angle, share }: SeatContact,
): Influence[] {
  const [sin, cos] = [Math.sin(seat.gap.halfAngle), Math.cos(seat.gap.halfAngle)];
  const u = placeOf(seat, position, station * cos + radiusAt(seat.bush, station) * sin);
  const found = breakpointsAt(seat, index, position, u.u, u.film);
  return found.flatMap(({ of, influences }) => {
    const place =
      of === 'bush'
        ? { station, radius: radiusAt(seat.bush, station) }
        : { station: journalStation, radius: radiusAt(seat.journal, journalStation) };
    const normalStation = (of === 'bush' ? place.station : place.station + position) + (place.radius * sin) / cos;
    const axis = axisAt(pose, normalStation);
    const along = axis.x * Math.cos(angle) + axis.y * Math.sin(angle);
    const tilted = -cos * (pose.tiltY * Math.cos(angle) - pose.tiltX * Math.sin(angle));
    const moved: Influence[] = [
      { seat: index, part: of, by: 'radius', station: place.station, rate: (tilted * sin) / cos },
      {
        seat: index,
        part: 'bush',
        by: 'halfAngle',
        station,
        rate: sin * along + (tilted * place.radius) / (cos * cos),
      },
    ];
    return [...influences, ...moved].map((influence) => ({
      ...influence,
      rate: (influence.rate * share) / found.length,
    }));
  });
}

/** The breakpoint of the film nearest to a place u (m) of the bush line. */
function placeOf({ gap }: SeatLines, position: Metres, u: number): { u: number; film: Metres } {
  const chain = filmAlong(gap, position);
  let best = 0;
  for (let i = 1; i < chain.count; i++) if (Math.abs(chain.u[i]! - u) < Math.abs(chain.u[best]! - u)) best = i;
  return { u: chain.u[best]!, film: chain.film[best]! };
}
