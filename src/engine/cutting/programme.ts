/**
 * The linear programme of a plan about one point (problem.ts): position first, then every amount twice where metal may
 * also be put on, scaled to micrometres.
 *
 *   exact    every wanted film at its target, the others clear:        film_i = target_i,  film_j ≥ 0
 *   nearest  the greatest miss e as small as can be, and with it held the sum of the misses m_i, so that a seat beyond
 *            mending draws no other along with it:   |film_i - target_i| ≤ m_i·w_i,  m_i ≤ e,  film_i ≥ 0
 *   pressed  the same where no amounts keep the parts from pressing into each other: film_i of either sign
 *
 * w_i tolerance of the film, or 1 µm for all where not every film wanted has one. Objectives in turn: the greatest
 * miss e; the sum of the misses; the move of the journal, where it is to stay; stock off a spared part; all stock; and among plans equally good, stock
 * in the bush, since an outside is easier to grind and to gauge (common practice, no source); and where the position is
 * still free the least move of the journal.
 */
import type { SeatInput } from '../contact/fit.ts';
import type { Part } from '../gauging/reading.ts';
import { minimised, type Optimum, type Programme, type Row, type Variable } from './linear.ts';
import type { Linear, Problem, Room } from './problem.ts';

const SCALE = 1e6;
/** How much more stock in the bush counts: enough to break ties, too little to be seen in the total. */
const EVEN = 1e-6;

export interface Point {
  /** m */
  position: number;
  /** m, one for each room */
  amounts: number[];
}

export type Goal = 'exact' | 'nearest' | 'pressed';

export type Step = { status: 'solved'; point: Point /** greatest miss, in the films' own weights */; miss: number } | { status: 'infeasible' | 'unbounded' | 'stalled' };

export function solvedAbout(problem: Problem, about: Point, linear: Linear, goal: Goal): Step {
  const found: Optimum = minimised(programmeOf(problem, about, linear, goal));
  if (found.status !== 'solved') return found;
  const at = new Unknowns(problem.rooms.length, problem.input.seats.length);
  const amounts = problem.rooms.map((_, k) => (found.values[at.off(k)]! - found.values[at.on(k)]!) / SCALE);
  return { status: 'solved', point: { position: found.values[at.position]! / SCALE, amounts }, miss: found.values[at.miss]! };
}

/** What a miss of 1 is, for every seat (m). */
export function weightsOf(seats: readonly SeatInput[]): number[] {
  const wanted = seats.filter(({ target }) => target !== undefined);
  const toleranced = wanted.every(({ tolerance }) => tolerance !== undefined && tolerance > 0);
  return seats.map(({ tolerance }) => (toleranced ? (tolerance ?? 1 / SCALE) : 1 / SCALE));
}

/** The unknowns by their places: position, metal off of every room, metal put on, the greatest miss, the move of the journal, the miss of every seat. */
class Unknowns {
  readonly size: number;
  constructor(
    private readonly rooms: number,
    readonly seats: number,
  ) {
    this.size = 2 * rooms + 3 + seats;
  }
  readonly position = 0;
  readonly off = (k: number) => 1 + k;
  readonly on = (k: number) => 1 + this.rooms + k;
  get miss() {
    return 1 + 2 * this.rooms;
  }
  get move() {
    return 2 + 2 * this.rooms;
  }
  readonly missOf = (seat: number) => 3 + 2 * this.rooms + seat;
  row(entries: Iterable<readonly [number, number]>): number[] {
    const coefficients = new Array<number>(this.size).fill(0);
    for (const [v, value] of entries) coefficients[v]! += value;
    return coefficients;
  }
}

function programmeOf(problem: Problem, about: Point, linear: Linear, goal: Goal): Programme {
  const { rooms, input } = problem;
  const at = new Unknowns(rooms.length, input.seats.length);
  const variables: Variable[] = [
    { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY },
    ...rooms.map(({ least, most }) => ({ least: Math.max(0, least) * SCALE, most: most * SCALE })),
    ...rooms.map(({ least }) => ({ least: 0, most: Math.max(0, -least) * SCALE })),
    { least: 0, most: goal === 'exact' ? 0 : Number.POSITIVE_INFINITY },
    { least: 0, most: Number.POSITIVE_INFINITY },
    ...input.seats.map(() => ({ least: 0, most: goal === 'exact' ? 0 : Number.POSITIVE_INFINITY })),
  ];
  const rows = filmRows(problem, about, linear, goal, at);
  const { from, to } = input.reach ?? { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  if (Number.isFinite(from) || Number.isFinite(to)) rows.push({ coefficients: at.row([[at.position, 1]]), min: from * SCALE, max: to * SCALE });
  // the move is at least as large as |position - position now|
  for (const sign of [1, -1]) {
    const coefficients = at.row([
      [at.position, sign],
      [at.move, -1],
    ]);
    rows.push({ coefficients, max: sign * SCALE * input.position });
  }
  return { variables, rows, objectives: objectivesOf(problem, goal, at) };
}

function filmRows(problem: Problem, about: Point, linear: Linear, goal: Goal, at: Unknowns): Row[] {
  const weights = weightsOf(problem.input.seats);
  return problem.input.seats.flatMap(({ target }, i): Row[] => {
    const film = linear.films[i];
    if (film === null || film === undefined) return [];
    const gains = linear.perAmount[i]!;
    const entries: [number, number][] = [
      [at.position, linear.perPosition[i]!],
      ...gains.flatMap((gain, k): [number, number][] => [
        [at.off(k), gain],
        [at.on(k), -gain],
      ]),
    ];
    const here = SCALE * (film - linear.perPosition[i]! * about.position - gains.reduce((sum, gain, k) => sum + gain * about.amounts[k]!, 0));
    if (target === undefined) return [{ coefficients: at.row(entries), min: -here }];
    const missing = SCALE * target - here;
    if (goal === 'exact') return [{ coefficients: at.row(entries), min: missing, max: missing }];
    const miss = SCALE * weights[i]!;
    const own = at.missOf(i);
    return [
      ...(goal === 'nearest' ? [{ coefficients: at.row(entries), min: -here }] : []),
      { coefficients: at.row([...entries, [own, miss]]), min: missing },
      { coefficients: at.row([...entries, [own, -miss]]), max: missing },
      {
        coefficients: at.row([
          [own, 1],
          [at.miss, -1],
        ]),
        max: 0,
      },
    ];
  });
}

function objectivesOf({ rooms, input }: Problem, goal: Goal, at: Unknowns): number[][] {
  const stock = (counts: (room: Room) => boolean) =>
    at.row(
      rooms.flatMap((room, k): [number, number][] =>
        counts(room)
          ? [
              [at.off(k), 1],
              [at.on(k), 1],
            ]
          : [],
      ),
    );
  const ofPart = (part: Part) => stock(({ of }) => (of.kind === 'face' ? input.faces![of.face]!.part : of.part) === part);
  const { keepPosition, spare } = input.prefer ?? {};
  const bush = ofPart('bush');
  const total = stock(() => true).map((one, v) => one + EVEN * bush[v]!);
  const move = at.row([[at.move, 1]]);
  const misses = [at.row([[at.miss, 1]]), at.row(input.seats.map((_, i): [number, number] => [at.missOf(i), 1]))];
  return [...(goal === 'exact' ? [] : misses), ...(keepPosition ? [move] : []), ...(spare ? [ofPart(spare)] : []), total, ...(keepPosition ? [] : [move])];
}
