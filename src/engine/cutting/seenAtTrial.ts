/**
 * What a trial assembly shows of a pair, all seats on one axis: where it touches first as the journal goes home, and
 * which seats print there: those whose least film is within the thickness of the blue.
 */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, seatLines } from '../contact/fit.ts';

interface SeenAtTrial {
  /** position of first touch (m) */
  at: number;
  /** by seat */
  prints: boolean[];
}

/** m: a film this near to the thickness is within it; so the seat that touches prints in any blue. */
const SAME = 1e-13;

/** Null where nothing stops the journal. @param thickness of the blue (m) */
export function seenAtTrial(seats: readonly SeatInput[], thickness: Metres): SeenAtTrial | null {
  const lines = seats.map(seatLines);
  let at = Number.NEGATIVE_INFINITY;
  for (const seat of lines) {
    const touch = seat.closes === 'rearward' ? positionForFilm(seat, 0) : null;
    if (touch !== null && touch > at) at = touch;
  }
  if (at === Number.NEGATIVE_INFINITY) return null;
  const prints = lines.map(({ gap }) => {
    const film = leastFilm(gap, at);
    return film !== null && film <= thickness + SAME;
  });
  return { at, prints };
}
