/**
 * The position at which the pair touches first on trial assembly, going rearward.
 *   value = greatest over the seats of the position at which each touches alone (contact/firstTouch.ts)
 * It follows the two surfaces of the seat that touches first, at the place of contact (filmGradient.ts), and is
 * the greatest of many: where two seats, or two ends of one, touch almost together, all of those are told.
 */

import { type Followed, positionBranches, positionFollowed } from '../../belief/filmGradient.ts';
import type { Branch } from '../../belief/unknowns.ts';
import { type SeatInput, type SeatLines, seatLines } from '../../contact/fit.ts';
import { impossible, ofLineAlone, type ReadingKind } from '../reading.ts';

/** A film (m) at first touch below which a place may become the one that touches, when the shape is corrected. */
const NEAR = 1e-5;

export const standOff: ReadingKind<'standOff'> = {
  kind: 'standOff',
  tells: 'position',
  usualSigma: 2e-6,
  profileAt: ofLineAlone,
  surfaces: (_, seats) =>
    closing(seats).flatMap(({ seat }) => [
      { seat, part: 'journal' as const },
      { seat, part: 'bush' as const },
    ]),
  predict: (_, seats) => {
    const all = closing(seats);
    if (all.length === 0) return impossible({ what: 'nothingCloses' });
    const touches = all.flatMap(({ seat, lines }) => followed(lines, seat));
    if (touches.length === 0) return impossible({ what: 'neverTouches' });
    const first = touches.reduce((a, b) => (b.value > a.value ? b : a));
    const branches = (): Branch[] =>
      touches.flatMap(({ lines, seat, value }) => positionBranches(lines, seat, value, 0, NEAR));
    return { value: first.value, influences: first.influences, fault: null, branches };
  },
};

const closing = (seats: readonly SeatInput[]) =>
  seats.map((input, seat) => ({ seat, lines: seatLines(input) })).filter(({ lines }) => lines.closes === 'rearward');

function followed(lines: SeatLines, seat: number): (Followed & { lines: SeatLines; seat: number })[] {
  const touch = positionFollowed(lines, seat, 0);
  return touch ? [{ ...touch, lines, seat }] : [];
}
