/** What the readings are taken for: the quantities of the fit, and how each follows the shape. */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, type SeatLines, seatLines } from '../contact/fit.ts';
import { type Followed, leastFilmFollowed, positionFollowed } from './filmGradient.ts';
import type { Influence } from './unknowns.ts';

export type Quantity =
  /** position for the film of the first seat that has one, less that of the second (m) */
  | { of: 'relation' }
  /** position at which the pair touches first (m) */
  | { of: 'firstPosition' }
  /** position at which a seat alone would touch (m) */
  | { of: 'seatPosition'; seat: number }
  /** least film of a seat at the position (m) */
  | { of: 'film'; seat: number };

/** Every quantity of a pair. */
export const quantitiesOf = (seats: readonly SeatInput[]): Quantity[] => [
  { of: 'relation' },
  { of: 'firstPosition' },
  ...seats.map((_, seat) => ({ of: 'seatPosition', seat }) as const),
  ...seats.map((_, seat) => ({ of: 'film', seat }) as const),
];

/**
 * A quantity (m) of a shape with the journal at `position` (m), and how it follows the shape; null where there is none.
 */
export function followed(quantity: Quantity, seats: readonly SeatInput[], position: Metres): Followed | null {
  switch (quantity.of) {
    case 'relation':
      return relationFollowed(seats);
    case 'firstPosition': {
      const touches = seats.flatMap((input, seat) => rearwardTouch(seatLines(input), seat));
      return touches.length === 0 ? null : touches.reduce((a, b) => (b.value > a.value ? b : a));
    }
    case 'seatPosition':
      return positionFollowed(seatLines(seats[quantity.seat]!), quantity.seat, 0);
    case 'film':
      return leastFilmFollowed(seatLines(seats[quantity.seat]!), quantity.seat, position);
  }
}

function rearwardTouch(lines: SeatLines, seat: number): Followed[] {
  if (lines.closes !== 'rearward') return [];
  const touch = positionFollowed(lines, seat, 0);
  return touch ? [touch] : [];
}

/** The first two seats that ask for a film and that a move brings to it: those whose relation is told. */
export function relatedSeats(seats: readonly SeatInput[]): [number, number] | null {
  const [one, other] = seats.flatMap((input, seat) =>
    input.target === undefined || positionForFilm(seatLines(input), input.target) === null ? [] : [seat],
  );
  return one === undefined || other === undefined ? null : [one, other];
}

function relationFollowed(seats: readonly SeatInput[]): Followed | null {
  const [one, other] = (relatedSeats(seats) ?? []).map((seat) =>
    positionFollowed(seatLines(seats[seat]!), seat, seats[seat]!.target!),
  );
  if (!one || !other) return null;
  const less = other.influences.map((i): Influence => ({ ...i, rate: -i.rate }));
  return { value: one.value - other.value, influences: [...one.influences, ...less] };
}

/** Every quantity of a shape, in the order of `quantitiesOf`, without how it follows: for many shapes. */
export function valuesOf(seats: readonly SeatInput[], position: Metres): (number | null)[] {
  const lines = seats.map(seatLines);
  const touches = lines.map((seat) => positionForFilm(seat, 0));
  const targets = lines.flatMap((seat, i) => {
    const target = seats[i]!.target;
    const found = target === undefined ? null : positionForFilm(seat, target);
    return found === null ? [] : [found];
  });
  const rearward = touches.filter((touch, i): touch is number => touch !== null && lines[i]!.closes === 'rearward');
  return [
    targets.length < 2 ? null : targets[0]! - targets[1]!,
    rearward.length === 0 ? null : Math.max(...rearward),
    ...touches,
    ...lines.map((seat) => leastFilm(seat.gap, position)),
  ];
}
