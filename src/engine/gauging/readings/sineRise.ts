/**
 * The rise of an indicator over a travel along the surface's own line, the part held with its axis on a sine bar.
 *   value = T·tan(a - asin(H/L))
 * T travel along the plate (m) · a half angle · H stack, L bar between its rolls (m). The profile does not enter:
 * where along the line the travel stood is not told. A reading tells a - asin(H/L) = atan(value/T); where a line as
 * steep as that,
 * of the radius it has, would cross the axis of the part, nobody can have read it.
 * @source derived (sine rule of the bar)
 */
import { type Fault, impossible, ofLineAlone, type ReadingKind } from '../reading.ts';
import { angleOfStack } from '../sineBar.ts';

export const sineRise: ReadingKind<'sineRise'> = {
  kind: 'sineRise',
  tells: 'deviation',
  usualSigma: 1e-6,
  profileAt: ofLineAlone,
  surfaces: ({ seat, part }) => [{ seat, part }],
  predict: ({ seat, part, bar, stack, travel, value }, seats) => {
    const { halfAngle, from, to, radius, station } = seats[seat]![part];
    const held = angleOfStack(stack, bar);
    if (held === null || Math.abs(stack) >= bar) return impossible({ what: 'stackBeyondBar', stack, bar });
    const lean = halfAngle - held;
    // Square to the plate and beyond, the line cannot be followed by an indicator from above.
    const rise = Math.abs(lean) < Math.PI / 2 ? travel * Math.tan(lean) : null;
    const line = (to - from) / Math.cos(halfAngle);
    let fault: Fault | null = null;
    if (travel > line) fault = { what: 'travelBeyondLine', travel, line };
    else if (rise === null || Math.abs(value) > bar) fault = { what: 'riseBeyondBar', rise: value, bar };
    else if ([from, to].some((z) => radius + (z - station) * Math.tan(held + Math.atan(value / travel)) <= 0))
      fault = { what: 'crossesAxis', rise: value, travel };
    return {
      value: rise,
      influences: [{ seat, part, by: 'halfAngle', station: from, rate: travel / Math.cos(lean) ** 2 }],
      fault,
    };
  },
};
