/**
 * From a face down to the top (noseward point) of a ball resting in the bush.
 *   value = F - (Z + d/2)        on a straight line Z is where r(Z)·cos a = d/2
 *   ∂Z/∂r = -r/√(d²/4 - r²)      r radius of the bush at the place of contact; on a straight line -1/tan a
 * F station of the face (m) · Z of the ball's centre (touching.ts) · d ball diameter (m) · a half angle. Two balls
 * d₁ > d₂ in one straight bore, centres C apart, give the handbook's sin a = (d₁ - d₂)/(2·C).
 * @source derived (tangency); MachinerysHandbook Measuring taper holes with balls
 */

import { lineOn } from '../../belief/unknowns.ts';
import type { SeatInput } from '../../contact/fit.ts';
import { type Fault, impossible, ofLineAlone, type ReadingKind } from '../reading.ts';
import { ballIn, distanceTo, type Touch } from '../touching.ts';

/** Slope of a bore (rise over run) below which it is straight to a ball. */
const STEEP = 1e-7;

export const ballDepth: ReadingKind<'ballDepth'> = {
  kind: 'ballDepth',
  tells: 'depth',
  usualSigma: 2e-6,
  profileAt: ofLineAlone,
  surfaces: ({ seat, part }) => [{ seat, part }],
  predict: ({ seat, part, ball, face }, seats) => {
    if (part === 'journal') return impossible({ what: 'wrongPart', part });
    const bush = seats[seat]!.bush;
    if (bush.halfAngle === 0) return impossible({ what: 'straight' });
    const closes = bush.halfAngle > 0 ? 'rearward' : 'noseward';
    const line = lineOn(bush, 'bush');
    const touch = ballIn(line, ball / 2, closes);
    if (!touch) return impossible({ what: 'falls', ball, bore: 2 * Math.min(...line.r) });
    const arm = Math.sqrt(Math.max(0, (ball * ball) / 4 - touch.radius ** 2));
    // All but along the axis where it touches: rounding of the bore alone would move the ball by its own size.
    if (arm < STEEP * touch.radius) return impossible({ what: 'straight' });
    const rate = (closes === 'rearward' ? 1 : -1) * (touch.radius / arm);
    return {
      value: face - (touch.centre + ball / 2),
      influences: [{ seat, part, by: 'radius', station: touch.station, rate }],
      fault: faultOf(seat, ball / 2, touch, closes, seats),
    };
  },
};

function faultOf(
  seat: number,
  q: number,
  touch: Touch,
  closes: 'rearward' | 'noseward',
  seats: readonly SeatInput[],
): Fault | null {
  if (touch.edge)
    return {
      what: 'edge',
      end: (touch.edge === 'rear') === (closes === 'rearward') ? 'small' : 'large',
      station: touch.station,
    };
  for (const [k, other] of seats.entries()) {
    if (k === seat) continue;
    const line = lineOn(other.bush, 'bush');
    const before = closes === 'rearward' ? line.z[0]! > touch.centre : line.z[line.z.length - 1]! < touch.centre;
    const narrowest = Math.min(...line.r);
    if (before && narrowest < q) return { what: 'blocked', seat: k, bore: 2 * narrowest };
    if (distanceTo(line, touch.centre, 0) < q) return { what: 'otherSeat', seat: k };
  }
  return null;
}
