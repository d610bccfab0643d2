/**
 * A block of pairs drawn and answered: by the thousand where the sampler has that way and every line is straight
 * (straight.ts, bestPosition.ts), one by one otherwise (oneByOne.ts). Which draws are in a block, and so every answer,
 * hangs on the numbers of the draws alone.
 */
import type { Metres } from '../../design/dimension.ts';
import { SAME } from '../contact/film.ts';
import type { SeatInput } from '../contact/fit.ts';
import { holdsAt } from '../play/selfHolding.ts';
import { bestPositions, chosenFor, positionsFor } from './bestPosition.ts';
import { answerOne } from './oneByOne.ts';
import { columnsOf, NO_SHAPE, NONE_FIRST, type Outcomes, type Question, roomFor, scalesOf } from './outcomes.ts';
import type { Sampler, Varied } from './sampler.ts';
import { type Deviations, NO_LINE, ODD, type SeatColumns, seatColumns, straightSeat } from './straight.ts';

/** Answers draws: `u` a column for each dimension. What is handed back is used again by the next block. */
export type Kernel = (u: readonly Float64Array[]) => Outcomes;

/** `middle`: the pair about which is drawn; it says what is wanted of each seat. */
export function kernelOf(sampler: Sampler, middle: readonly SeatInput[], question: Question, count: number): Kernel {
  const out = roomFor(middle, count);
  const { varied } = sampler;
  const straight = middle.every(({ bush, journal }) => bush.profile.length === 0 && journal.profile.length === 0);
  const alone = new Float64Array(sampler.dimensions);
  const one = (u: readonly Float64Array[], k: number) => {
    for (let d = 0; d < alone.length; d++) alone[d] = u[d]![k]!;
    answerOne(sampler.shape(alone), middle, question, out, k);
  };
  if (varied && straight) return vectorised(varied, question, out, one);
  return (u) => {
    for (let k = 0; k < count; k++) one(u, k);
    bands(middle, out);
    return out;
  };
}

function vectorised(
  varied: Varied,
  question: Question,
  out: Outcomes,
  one: (u: readonly Float64Array[], k: number) => void,
): Kernel {
  const { seats } = varied;
  const { columns, rear, nose, touch } = touching(varied, question, out);
  const at = columnsOf(seats.length);
  return (u) => {
    touch(u);
    columns.forEach((seat, i) => {
      filmsAt(seat, question.position, out.values[at.film + i]!);
    });
    const best = out.values[at.bestPosition]!;
    bestPositions(seats, columns, question.reach, rear, nose, best);
    columns.forEach((seat, i) => {
      filmsAtEach(seat, best, out.values[at.filmAtBest + i]!);
    });
    relations(seats, columns, out);
    oddOnes(columns, out, (k) => one(u, k));
    bands(seats, out);
    return out;
  };
}

/** First touches alone, for whoever asks no more: as `Kernel`, the other columns left as they are. */
export function firstTouches(varied: Varied, question: Question, count: number): Kernel {
  const out = roomFor(varied.seats, count);
  const { touch } = touching(varied, question, out);
  return (u) => {
    touch(u);
    return out;
  };
}

/** The seats of a block and where they touch. */
function touching(varied: Varied, question: Question, out: Outcomes) {
  const { count } = out;
  const draw = deviationsOf(varied, count);
  const columns = varied.seats.map(() => seatColumns(count));
  const fill = varied.seats.map((seat, i) => straightSeat(seat, draw.of[i]!, count));
  const [rear, nose] = [new Float64Array(count), new Float64Array(count)];
  const touch = (u: readonly Float64Array[]) => {
    draw.fill(u);
    fill.forEach((seat, i) => {
      seat(columns[i]!);
    });
    touches(columns, question, out, rear, nose);
  };
  return { columns, rear, nose, touch };
}

/** What is added to each number of each surface, from the draws. */
function deviationsOf({ seats, sources, add }: Varied, count: number) {
  const of = seats.map((): Record<'bush' | 'journal', Deviations> => ({ bush: {}, journal: {} }));
  const columns = sources.map(({ seat, part, of: number }) => {
    const known = of[seat]![part];
    known[number] ??= new Float64Array(count);
    return known[number];
  });
  const fill = (u: readonly Float64Array[]) => {
    for (const column of columns) column.fill(0);
    add(u, columns);
  };
  return { of, fill };
}

/** Seat positions, the first of them, the stops, and whether the first holds. */
function touches(
  columns: readonly SeatColumns[],
  { friction }: Question,
  out: Outcomes,
  rear: Float64Array,
  nose: Float64Array,
): void {
  const at = columnsOf(columns.length);
  rear.fill(Number.NEGATIVE_INFINITY);
  nose.fill(Number.POSITIVE_INFINITY);
  out.first.fill(NONE_FIRST);
  columns.forEach((seat, i) => {
    const positions = out.values[at.seatPosition + i]!;
    const { closes } = seat;
    positionsFor(seat, 0, positions);
    for (let k = 0; k < positions.length; k++) {
      const touch = positions[k]!;
      // No comparison holds with what is no number.
      if (closes[k] === 1 && touch > rear[k]!) {
        rear[k] = touch;
        out.first[k] = i;
      } else if (closes[k] === -1 && touch < nose[k]!) nose[k] = touch;
    }
  });
  const first = out.values[at.firstPosition]!;
  for (let k = 0; k < first.length; k++) {
    const seat = out.first[k]!;
    first[k] = seat < 0 ? Number.NaN : rear[k]!;
    out.holds[k] = seat >= 0 && holdsAt(columns[seat]!.tan[k]!, friction) ? 1 : 0;
  }
}

function filmsAt(seat: SeatColumns, position: Metres, films: Float64Array): void {
  for (let k = 0; k < films.length; k++) films[k] = filmOf(seat, position, k);
}

function filmsAtEach(seat: SeatColumns, positions: Float64Array, films: Float64Array): void {
  for (let k = 0; k < films.length; k++) films[k] = filmOf(seat, positions[k]!, k);
}

function filmOf({ a1, s1, a2, s2, least, most }: SeatColumns, p: number, k: number): number {
  return p >= least[k]! && p <= most[k]! ? Math.max(a1[k]! + s1[k]! * p, a2[k]! + s2[k]! * p) : Number.NaN;
}

function relations(seats: readonly SeatInput[], columns: readonly SeatColumns[], out: Outcomes): void {
  const chosen = chosenFor(seats);
  const other = new Float64Array(out.count);
  out.answered.forEach((answered, c) => {
    if (answered.of !== 'relation') return;
    const [i, j] = answered.between;
    const values = out.values[c]!;
    if (!chosen.includes(i) || !chosen.includes(j)) values.fill(Number.NaN);
    else {
      positionsFor(columns[i]!, seats[i]!.target!, values);
      positionsFor(columns[j]!, seats[j]!.target!, other);
      for (let k = 0; k < values.length; k++) values[k]! -= other[k]!;
    }
  });
}

/** Draws that the straight way does not answer. */
function oddOnes(columns: readonly SeatColumns[], out: Outcomes, answer: (k: number) => void): void {
  for (let k = 0; k < out.count; k++)
    for (const { closes } of columns)
      if (closes[k] === ODD || closes[k] === NO_LINE) {
        answer(k);
        break;
      }
}

/**
 * Which seats have their film in the band: as far from the film wanted as its tolerance allows, or where none is wanted
 * no interference or apart (contact/relation.ts); and the worst miss of those wanted.
 */
export function bands(seats: readonly SeatInput[], out: Outcomes): void {
  const at = columnsOf(seats.length);
  const scales = scalesOf(seats);
  const worst = out.values[at.worstMiss]!;
  worst.fill(Number.NaN);
  out.inBand.fill(0);
  out.inBandAtBest.fill(0);
  seats.forEach(({ target, tolerance = 0 }, i) => {
    const set = out.values[at.film + i]!;
    const best = out.values[at.filmAtBest + i]!;
    const position = out.values[at.bestPosition]!;
    const bit = 1 << i;
    for (let k = 0; k < out.count; k++) {
      if (out.first[k] === NO_SHAPE) continue;
      if (isInBand(set[k]!, target, tolerance)) out.inBand[k]! |= bit;
      if (Number.isNaN(position[k]!)) continue;
      if (isInBand(best[k]!, target, tolerance)) out.inBandAtBest[k]! |= bit;
      if (target === undefined) continue;
      // Apart, a film is missed by more than any tolerance.
      const miss = Number.isNaN(best[k]!) ? Number.POSITIVE_INFINITY : Math.abs(best[k]! - target) / scales[i]!;
      if (!(miss <= worst[k]!)) worst[k] = miss;
    }
  });
}

const isInBand = (film: Metres, target: Metres | undefined, tolerance: number) =>
  target === undefined ? !(film < -SAME) : Math.abs(film - target) <= tolerance + SAME && film >= -SAME;
