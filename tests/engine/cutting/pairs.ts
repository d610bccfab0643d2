/** Pairs for the tests of cutting: lengths in mm and angles in degrees where they are made, SI where they are used. */
import fc from 'fast-check';
import type { FilmsBefore } from '../../../src/engine/belief/accounts.ts';
import { decompose, unit } from '../../../src/engine/belief/decomposition.ts';
import { atEnds } from '../../../src/engine/belief/filmsBelieved.ts';
import { numbersOf } from '../../../src/engine/belief/unknowns.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import type { Allowed } from '../../../src/engine/cutting/problem.ts';
import type { Known } from '../../../src/engine/cutting/proposals.ts';
import { startingShape } from '../../../src/engine/gauging/shape.ts';
import type { Surface } from '../../../src/engine/parts/line.ts';

export const MM = 1e-3;
export const UM = 1e-6;
export const rad = (degrees: number) => (degrees * Math.PI) / 180;

export const surface = (
  halfAngle: number,
  diameter: number,
  station: number,
  from: number,
  to: number,
  profile: readonly (readonly [number, number])[] = [],
): Surface => ({
  halfAngle: rad(halfAngle),
  radius: (diameter / 2) * MM,
  station: station * MM,
  from: from * MM,
  to: to * MM,
  profile: profile.map(([z, d]) => [z * MM, d * MM] as const),
});

export const withFilm = (
  seat: Omit<SeatInput, 'target' | 'tolerance'>,
  target = 0.0025,
  tolerance = 0.0005,
): SeatInput => ({ ...seat, target: target * MM, tolerance: tolerance * MM });

/** A shallow and a steep cone; the numbers are how much each bush is larger in diameter (mm). */
export const pair = (shallow: number, steep: number): SeatInput[] => [
  withFilm({ name: 'shallow', journal: surface(3, 22, 0, -26, 0), bush: surface(3, 22 + shallow, 0, -25, -0.5) }),
  withFilm({ name: 'steep', journal: surface(45, 24, 1.2, 1.2, 4.2), bush: surface(45, 24 + steep, 1.2, 1, 4) }),
];

/** The same doubt of every film, a standard uncertainty (m), each independent of the others, none off what is drawn. */
export const evenDoubt = (seats: number, sigma: number): FilmsBefore => ({
  mean: new Array<number>(seats).fill(0),
  covariance: Array.from({ length: seats }, (_, i) =>
    Array.from({ length: seats }, (__, j) => (i === j ? sigma * sigma : 0)),
  ),
  errors: [],
});

/** A belief in which the bushes alone are in doubt, and of them the size alone: their films by sigma (m). */
export function filmsInDoubt(seats: readonly SeatInput[], sigma: number): Pick<Known, 'belief' | 'films' | 'errors'> {
  const bushes = seats.map((_, seat) => ({ seat, part: 'bush' as const }));
  const { unknowns } = startingShape(seats, bushes, [], () => true);
  const rows = seats.map(({ bush }, i) => unit(seats.length, i).map((one) => (one * Math.cos(bush.halfAngle)) / sigma));
  const belief = {
    seats: [...seats],
    unknowns,
    numbers: numbersOf(seats, unknowns),
    decomposition: decompose(rows, seats.length, []),
    unread: [],
    disagreeing: [],
  };
  return { belief, errors: [], films: atEnds({ belief, design: seats, position: 0, places: [], doubt: sigma }) };
}

/** Every surface, from 0 to a limit (m). */
export const allowAll = (seats: readonly SeatInput[], limit: number): Allowed[] =>
  seats.flatMap((_, seat) => (['journal', 'bush'] as const).map((part) => ({ seat, part, cleanup: 0, limit })));

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export interface DrawnSeat {
  angle: number;
  diameter: number;
  clearance: number;
  target: number;
  rooms: [cleanup: number, limit: number][];
}

/** A seat of one half angle, its parts of one station and length, with room for stock (mm) on some of its surfaces. */
export const drawnSeat = (angle: fc.Arbitrary<number>): fc.Arbitrary<DrawnSeat> =>
  fc.record({
    angle,
    diameter: between(15, 40),
    clearance: between(-0.03, 0.03),
    target: between(0.001, 0.006),
    rooms: fc.tuple(room(), room()).map((rooms) => [...rooms]),
  });

const room = () => fc.oneof(fc.constant<[number, number]>([0, 0]), fc.tuple(between(0, 0.006), between(0.006, 0.2)));

/** Rearward, noseward and straight seats. */
export const anyAngle = fc.oneof(
  between(2, 8),
  between(20, 60),
  between(2, 60).map((a) => -a),
  fc.constant(0),
);
export const rearwardAngle = fc.oneof(between(2, 8), between(20, 60));

export const seatOf = ({ angle, diameter, clearance, target }: DrawnSeat, k: number): SeatInput =>
  withFilm(
    {
      name: `seat ${k}`,
      journal: surface(angle, diameter, 0, -3, 3),
      bush: surface(angle, diameter + 2 * clearance, 0, -3, 3),
    },
    target,
  );

export const roomsOf = ({ rooms }: DrawnSeat, seat: number): Allowed[] =>
  rooms.flatMap(([cleanup, limit], k) =>
    limit === 0
      ? []
      : [{ seat, part: k === 0 ? ('journal' as const) : ('bush' as const), cleanup: cleanup * MM, limit: limit * MM }],
  );
