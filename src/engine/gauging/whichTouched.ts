/**
 * On which seat a stand-off was read. It tells of the seat that touched, and of that alone; which one it was, the other
 * readings say only as well as they know where each seat touches (T, normal, m), v the stand-off and σ its uncertainty:
 *
 *   chance of seat k  ∝  N(v; T_k, s_k² + σ²) · Π_j P(T_j < T_k | v)
 *
 *   T_k given v           mean t = T_k + s_k²/(s_k² + σ²)·(v - T_k)      variance τ² = s_k²·σ²/(s_k² + σ²)
 *   T_k - T_j given v     mean t - T_j - b·(t - T_k)                     variance s_j² - b·c + (1 - b)²·τ²
 *
 * c covariance of T_j and T_k, b = c/s_k². Exact for two seats whose touches are normal; of more the others are taken
 * one by one, as if each came behind alone.
 * @source derived (Bayes' rule, conditional normal: MacKay chapter 3)
 */
import { covarianceOf } from '../belief/decomposition.ts';
import { normalCdf } from '../belief/distributions.ts';
import { positionFollowed } from '../belief/filmGradient.ts';
import { gradientOf } from '../belief/unknowns.ts';
import { seatLines } from '../contact/fit.ts';
import type { WholeBelief } from './believe.ts';
import { seenBy } from './cutsBetween.ts';
import type { ReadingOf } from './reading.ts';

/** A seat that may have touched, with its chance. */
export interface Toucher {
  seat: number;
  chance: number;
}

/** Less than this chance is none. */
export const HARDLY = 0.025;

/** Those that may have touched, by what is known without this stand-off. */
export function touchersOf(belief: WholeBelief, reading: ReadingOf<'standOff'>): Toucher[] {
  const seats = seenBy(reading, belief.seats);
  const touches = seats.flatMap((input, seat) => {
    const lines = seatLines(input);
    const touch = lines.closes === 'rearward' ? positionFollowed(lines, seat, 0) : null;
    return touch ? [{ seat, at: touch.value, row: gradientOf(touch.influences, seats, belief.unknowns) }] : [];
  });
  const noise = reading.sigma ** 2;
  const logs = touches.map((one) => {
    const own = covarianceOf(belief.decomposition, one.row, one.row);
    const off = reading.value - one.at;
    const gain = own / (own + noise);
    const ahead = touches.reduce((sum, other) => {
      if (other === one) return sum;
      const both = covarianceOf(belief.decomposition, one.row, other.row);
      const shared = own > 0 ? both / own : 0;
      const mean = one.at - other.at + (1 - shared) * gain * off;
      const rest = covarianceOf(belief.decomposition, other.row, other.row) - shared * both;
      const sd = Math.sqrt(Math.max(0, rest) + (1 - shared) ** 2 * gain * noise);
      return sum + Math.log(sd > 0 ? normalCdf(mean / sd) : mean >= 0 ? 1 : 0);
    }, 0);
    return ahead - off ** 2 / (2 * (own + noise)) - Math.log(own + noise) / 2;
  });
  const most = Math.max(...logs);
  if (!Number.isFinite(most)) return [];
  const all = logs.reduce((sum, log) => sum + Math.exp(log - most), 0);
  return touches
    .map(({ seat }, k) => ({ seat, chance: Math.exp(logs[k]! - most) / all }))
    .filter(({ chance }) => chance >= HARDLY);
}

/**
 * Whether the stand-off tells anything yet: where more than one seat may have touched and one of those was never read,
 * it would be taken for a reading of the wrong seat.
 */
export const isOpen = (belief: WholeBelief, touchers: readonly Toucher[]): boolean =>
  touchers.length > 1 && touchers.some(({ seat }) => belief.unread.some((prior) => prior.seat === seat));
