/**
 * A pair drawn whose lines are not straight, answered by the fit itself (contact/). The best position is found between
 * the positions for the single films, where the greatest of the rising parts of the misses meets the greatest of the
 * falling ones (bestPosition.ts): one crosses the other there, once.
 */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, type SeatLines, type Stretch, seatLines } from '../contact/fit.ts';
import { isSelfHolding } from '../play/selfHolding.ts';
import { chosenFor } from './bestPosition.ts';
import { columnsOf, NO_SHAPE, NONE_FIRST, type Outcomes, type Question, scalesOf } from './outcomes.ts';

/** `drawn`: null where the numbers make no shape. `middle`: the pair about which it is drawn. */
export function answerOne(
  drawn: readonly SeatInput[] | null,
  middle: readonly SeatInput[],
  question: Question,
  out: Outcomes,
  k: number,
): void {
  const at = columnsOf(middle.length);
  for (const column of out.values) column[k] = Number.NaN;
  out.first[k] = NO_SHAPE;
  out.inBand[k] = out.inBandAtBest[k] = out.holds[k] = 0;
  if (drawn === null) return;
  const lines = drawn.map(seatLines);
  let first = NONE_FIRST;
  let rear = Number.NEGATIVE_INFINITY;
  let nose = Number.POSITIVE_INFINITY;
  lines.forEach((seat, i) => {
    const touch = positionForFilm(seat, 0);
    if (touch === null) return;
    out.values[at.seatPosition + i]![k] = touch;
    if (seat.closes === 'rearward' && touch > rear) [rear, first] = [touch, i];
    if (seat.closes === 'noseward') nose = Math.min(nose, touch);
  });
  out.first[k] = first;
  if (first >= 0) {
    out.values[at.firstPosition]![k] = rear;
    out.holds[k] = isSelfHolding(drawn[first]!.bush.halfAngle, question.friction) ? 1 : 0;
  }
  const chosen = chosenFor(middle);
  const wanted = chosen.map((i) => positionForFilm(lines[i]!, middle[i]!.target!) ?? Number.NaN);
  relationsInto(out, k, middle, chosen, wanted);
  const best = clear(bestOf(lines, middle, chosen, wanted), question.reach, rear, nose);
  out.values[at.bestPosition]![k] = best;
  films(lines, question.position, out, k, at.film);
  films(lines, best, out, k, at.filmAtBest);
}

/** Of every two seats whose film is wanted, in the order of the columns. */
function relationsInto(
  out: Outcomes,
  k: number,
  seats: readonly SeatInput[],
  chosen: readonly number[],
  wanted: ArrayLike<number>,
): void {
  let column = columnsOf(seats.length).relations;
  for (; column < out.values.length; column++) {
    const { of, between } = out.answered[column]! as { of: string; between: [number, number] };
    if (of !== 'relation') continue;
    const [one, other] = between.map((seat) => chosen.indexOf(seat)) as [number, number];
    // NaN where one of them has no such position, or is not looked for.
    out.values[column]![k] = wanted[one]! - wanted[other]!;
  }
}

function films(lines: readonly SeatLines[], position: Metres, out: Outcomes, k: number, from: number): void {
  lines.forEach((seat, i) => {
    out.values[from + i]![k] = leastFilm(seat.gap, position) ?? Number.NaN;
  });
}

function clear(best: number, reach: Stretch | undefined, rear: number, nose: number): number {
  const low = Math.max(rear, reach?.from ?? Number.NEGATIVE_INFINITY);
  const high = Math.min(nose, reach?.to ?? Number.POSITIVE_INFINITY);
  return low <= high ? Math.min(high, Math.max(low, best)) : Number.NaN;
}

const STEPS = 200;
/** m: a thousandth of the least distance that the engine tells apart */
const CLOSE = 1e-15;

/** The position of the least worst miss, anywhere. */
function bestOf(
  lines: readonly SeatLines[],
  seats: readonly SeatInput[],
  chosen: readonly number[],
  wanted: readonly number[],
): number {
  const scales = scalesOf(seats);
  const found = wanted.filter((p) => !Number.isNaN(p));
  if (found.length === 0) return Number.NaN;
  /** Greatest rising part less greatest falling part: grows with the position. */
  const lean = (p: number) => {
    let [rising, falling] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    chosen.forEach((i, x) => {
      if (Number.isNaN(wanted[x]!)) return;
      const film = leastFilm(lines[i]!.gap, p) ?? Number.POSITIVE_INFINITY;
      const part = ((film - seats[i]!.target!) / scales[i]!) * (lines[i]!.closes === 'rearward' ? 1 : -1);
      rising = Math.max(rising, part);
      falling = Math.max(falling, -part);
    });
    return rising - falling;
  };
  return crossing(lean, Math.min(...found), Math.max(...found));
}

/** Where a rising function is 0, by false position with halving of the end that stays. */
function crossing(f: (p: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [fLow, fHigh] = [f(low), f(high)];
  if (!(fLow < 0)) return low;
  if (!(fHigh > 0)) return high;
  let side = 0;
  for (let step = 0; step < STEPS && high - low > CLOSE; step++) {
    const guess = low + ((high - low) * fLow) / (fLow - fHigh);
    const p = Number.isFinite(fHigh) && guess > low && guess < high ? guess : (low + high) / 2;
    const here = f(p);
    if (here === 0 || p === low || p === high) return p;
    if (here < 0) {
      [low, fLow] = [p, here];
      if (side === -1) fHigh /= 2;
      side = -1;
    } else {
      [high, fHigh] = [p, here];
      if (side === 1) fLow /= 2;
      side = 1;
    }
  }
  return (low + high) / 2;
}
