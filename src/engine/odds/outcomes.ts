/**
 * What is asked of every pair drawn, and the room for the answers: a column for each quantity, a row for each draw, so
 * that nothing is made in the loop.
 */
import type { Metres } from '../../design/dimension.ts';
import type { SeatInput, Stretch } from '../contact/fit.ts';

export interface Question {
  /** position at which the films are told beside the best one (m) */
  position: Metres;
  /** where the journal can be set (m); anywhere when left out */
  reach?: Stretch;
  /** dry friction coefficient, for self-holding */
  friction: number;
}

/** A number (m, `worstMiss`: in tolerances) that every pair drawn has, or has not: NaN. */
export type Answered =
  | { of: 'seatPosition'; seat: number }
  /** the rearward stop */
  | { of: 'firstPosition' }
  /** least film at the position asked */
  | { of: 'film'; seat: number }
  /** position with the least worst miss of the films wanted, metal clear of metal, within reach */
  | { of: 'bestPosition' }
  | { of: 'filmAtBest'; seat: number }
  | { of: 'worstMiss' }
  /** error of the axial relation (contact/relation.ts) */
  | { of: 'relation'; between: [number, number] };

/** Every quantity of a pair, in the order of the columns. */
export function answeredOf(seats: readonly SeatInput[]): Answered[] {
  const each = seats.map((_, seat) => seat);
  const wanted = each.filter((seat) => seats[seat]!.target !== undefined);
  return [
    ...each.map((seat): Answered => ({ of: 'seatPosition', seat })),
    { of: 'firstPosition' },
    ...each.map((seat): Answered => ({ of: 'film', seat })),
    { of: 'bestPosition' },
    ...each.map((seat): Answered => ({ of: 'filmAtBest', seat })),
    { of: 'worstMiss' },
    ...wanted.flatMap((one, i) =>
      wanted.slice(i + 1).map((other): Answered => ({ of: 'relation', between: [one, other] })),
    ),
  ];
}

export interface Outcomes {
  count: number;
  answered: Answered[];
  /** in the order of `answered` */
  values: Float64Array[];
  /** seat that touches first, -1 where none closes rearward, -2 where the draw is no shape */
  first: Int8Array;
  /** seats with their film in its band at the position asked: seat k the bit 2^k; and at the best position */
  inBand: Uint8Array;
  inBandAtBest: Uint8Array;
  /** 1 where the first seat holds by itself once pressed home */
  holds: Uint8Array;
}

export const NONE_FIRST = -1;
export const NO_SHAPE = -2;

export function roomFor(seats: readonly SeatInput[], count: number): Outcomes {
  const answered = answeredOf(seats);
  return {
    count,
    answered,
    values: answered.map(() => new Float64Array(count)),
    first: new Int8Array(count),
    inBand: new Uint8Array(count),
    inBandAtBest: new Uint8Array(count),
    holds: new Uint8Array(count),
  };
}

/** Where the columns of a pair of so many seats begin. */
export const columnsOf = (seats: number) => ({
  seatPosition: 0,
  firstPosition: seats,
  film: seats + 1,
  bestPosition: 2 * seats + 1,
  filmAtBest: 2 * seats + 2,
  worstMiss: 3 * seats + 2,
  relations: 3 * seats + 3,
});

/** What a tolerance counts: a miss is told in tolerances, or in metres where one of the films wanted has none. */
export function scalesOf(seats: readonly SeatInput[]): Float64Array {
  const none = seats.some(({ target, tolerance = 0 }) => target !== undefined && tolerance === 0);
  return Float64Array.from(seats, ({ tolerance = 0 }) => (none ? 1 : tolerance));
}
