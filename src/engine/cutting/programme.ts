/**
 * The linear programme of a plan about one point (filmPieces.ts), scaled to micrometres:
 *
 *   least   Σ c_k·|x_k| + WORTH·Σ m_i + KEEP·|p - p now|      with  m_i ≥ 0, the amounts in their rooms, p in its reach
 *   film_i ≥ target_i - share·t_i - m_i      at every place of the seat
 *   film_i ≤ target_i + share·t_i + m_i      at the place where it is least
 *
 * x amounts of stock, p position, m_i what the film of seat i misses, t_i its tolerance, share how much of that may be
 * used. So no film is bought with more than WORTH times its miss in stock: where cones can be brought to their films
 * they are, exactly and with the least stock, and where a film can hardly be moved (a straight seat, or one a second of
 * arc off it) no metal is spent on it. A film without target misses what it is below 0. It always has a solution.
 *
 * c_k is 1, SPARE for the part that is spared. KEEP counts only where the nose is to stay; it is less than what a film
 * is worth as long as the cone is steeper than KEEP/WORTH (1.1°). Among plans equally good the earlier of what may be
 * cut is cut, then the journal is moved the least.
 */

import type { Metres } from '../../design/dimension.ts';
import { minimised, type Optimum, type Programme, type Row, type Variable } from '../algebra/simplex.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { LinearFilm } from './filmPieces.ts';
import type { Problem, Room } from './problem.ts';

/** Stock that a film's miss is worth at most. */
export const WORTH = 100;
const SPARE = 2;
const KEEP = 2;
const SCALE = 1e6;

export interface Point {
  /** m */
  position: Metres;
  /** m, one for each room */
  amounts: number[];
}

/** By how much the cost would fall for each metre that a bound is let go: of every room, and of the reach. */
export interface Multipliers {
  least: number[];
  most: number[];
  from: number;
  to: number;
}

export type Step =
  | { status: 'solved'; point: Point; multipliers: Multipliers }
  | { status: 'infeasible' | 'unbounded' | 'stalled' };

export function solvedAbout(problem: Problem, about: Point, pieces: readonly LinearFilm[][]): Step {
  const found: Optimum = minimised(programmeOf(problem, about, pieces));
  if (found.status !== 'solved') return found;
  const { rooms } = problem;
  const at = new Unknowns(rooms.length);
  const { least, most } = found.multipliers;
  return {
    status: 'solved',
    point: {
      position: found.values[at.position]! / SCALE,
      amounts: rooms.map((_, k) => (found.values[at.off(k)]! - found.values[at.on(k)]!) / SCALE),
    },
    multipliers: {
      least: rooms.map((room, k) => (room.least > 0 ? least[at.off(k)]! : most[at.on(k)]!)),
      most: rooms.map((_, k) => most[at.off(k)]!),
      from: least[at.position]!,
      to: most[at.position]!,
    },
  };
}

/** What is left of the stock and the move for each metre of a room, and for the move of the journal. */
export const stockCost = ({ input }: Problem, { of }: Room): number =>
  (of.kind === 'face' ? input.faces![of.face]!.part : of.part) === input.prefer?.spare ? SPARE : 1;
export const moveCost = ({ input }: Problem): number => (input.prefer?.keepPosition ? KEEP : 0);

/** What a film (m) misses; a film that is not there misses everything. */
export function missOf({ target, tolerance = 0 }: SeatInput, film: Metres | null, share: number): number {
  if (film === null) return target === undefined ? 0 : Number.POSITIVE_INFINITY;
  if (target === undefined) return Math.max(0, -film);
  return Math.max(0, Math.abs(film - target) - share * tolerance);
}

/** A film that misses less (m) misses nothing. */
export const MISSED = 1e-9;
export const isMet = ({ misses }: { misses: readonly number[] }): boolean => misses.every((miss) => miss < MISSED);

/** The place of a room in the order in which equal plans are told apart: as they are allowed, faces last. */
export function turnOf({ input, rooms }: Problem, k: number): number {
  const { of } = rooms[k]!;
  if (of.kind === 'face') return input.allow.length + of.face;
  const turn = input.allow.findIndex(({ seat, part }) => seat === of.seat && part === of.part);
  return turn < 0 ? input.allow.length : turn;
}

/**
 * The unknowns by their places: position, metal off and put on of every room, the move of the journal, the miss of
 * every seat.
 */
class Unknowns {
  constructor(private readonly rooms: number) {}
  readonly position = 0;
  readonly off = (k: number) => 1 + k;
  readonly on = (k: number) => 1 + this.rooms + k;
  get move() {
    return 1 + 2 * this.rooms;
  }
  readonly missOf = (seat: number) => 2 + 2 * this.rooms + seat;
}

function programmeOf(problem: Problem, about: Point, pieces: readonly LinearFilm[][]): Programme {
  const { rooms, input } = problem;
  const at = new Unknowns(rooms.length);
  const size = at.missOf(input.seats.length);
  const row = (entries: Iterable<readonly [number, number]>): number[] => {
    const coefficients = new Array<number>(size).fill(0);
    for (const [v, value] of entries) coefficients[v]! += value;
    return coefficients;
  };
  const { from, to } = input.reach ?? { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  const endless = { least: 0, most: Number.POSITIVE_INFINITY };
  const variables: Variable[] = [
    { least: from * SCALE, most: to * SCALE },
    ...rooms.map(({ least, most }) => ({ least: Math.max(0, least) * SCALE, most: most * SCALE })),
    ...rooms.map(({ least }) => ({ least: 0, most: Math.max(0, -least) * SCALE })),
    endless,
    ...input.seats.map(() => endless),
  ];
  const stock = rooms.flatMap((room, k): [number, number][] =>
    [at.off(k), at.on(k)].map((v) => [v, stockCost(problem, room)]),
  );
  const turns = rooms.flatMap((_, k): [number, number][] => [at.off(k), at.on(k)].map((v) => [v, turnOf(problem, k)]));
  const misses = input.seats.map((_, i): [number, number] => [at.missOf(i), WORTH]);
  return {
    variables,
    rows: [...filmRows(problem, about, pieces, at, row), ...moveRows(input.position, at, row)],
    objectives: [row([...stock, ...misses, [at.move, moveCost(problem)]]), row(turns), row([[at.move, 1]])],
  };
}

type RowOf = (entries: Iterable<readonly [number, number]>) => number[];

/** The move is at least as large as |position - position now|. */
const moveRows = (now: number, at: Unknowns, row: RowOf): Row[] =>
  [1, -1].map((sign) => ({
    coefficients: row([
      [at.position, sign],
      [at.move, -1],
    ]),
    max: sign * SCALE * now,
  }));

function filmRows(
  { input, rooms }: Problem,
  about: Point,
  pieces: readonly LinearFilm[][],
  at: Unknowns,
  row: RowOf,
): Row[] {
  return input.seats.flatMap(({ target, tolerance = 0 }, i) =>
    pieces[i]!.flatMap(({ film, perPosition, perAmount }, place): Row[] => {
      const entries: [number, number][] = [
        [at.position, perPosition],
        ...rooms.flatMap((_, k): [number, number][] => [
          [at.off(k), perAmount[k]!] as [number, number],
          [at.on(k), -perAmount[k]!],
        ]),
      ];
      const here =
        film - perPosition * about.position - perAmount.reduce((sum, gain, k) => sum + gain * about.amounts[k]!, 0);
      const band = (input.share ?? 0) * tolerance;
      const own = at.missOf(i);
      const atLeast: Row = {
        coefficients: row([...entries, [own, 1]]),
        min: SCALE * ((target === undefined ? 0 : target - band) - here),
      };
      if (target === undefined || place > 0) return [atLeast];
      return [atLeast, { coefficients: row([...entries, [own, -1]]), max: SCALE * (target + band - here) }];
    }),
  );
}
