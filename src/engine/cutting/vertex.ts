/**
 * The exact amounts at a vertex of the linear programme.
 *
 * At a vertex most amounts stand at an end of their room. Of the rest, a seat with a stock between its ends has its film
 * set by that stock; a seat without one sets the position (or a face), since for given parts the position of a film
 * is known in closed form (contact/fit.ts). So the positions wanted by the second kind are solved for position and
 * faces, then the stock of the first kind, one unknown a seat, by secants on the least film, which is piecewise linear.
 */
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, seatLines } from '../contact/fit.ts';
import { cutParts, faceShift, type Problem } from './problem.ts';
import { withStock } from './stock.ts';

/** Nearer than this (m) to an end of its room an amount stands at it. */
const AT_END = 1e-11;
/** A film within this of its target (m) is the target; a thousandth of the 1e-9 mm promised. */
export const EXACT = 1e-15;

export interface Vertex {
  position: number;
  amounts: number[];
  /** greatest difference of a film from its target (m) */
  residual: number;
  /** how far amounts (m) lie outside their room, added up */
  outside: number;
}

/** The exact vertex near a solution of the linear programme; `pinned` where the position itself is at an end. */
export function exactVertex(problem: Problem, position: number, amounts: readonly number[], pinned: boolean): Vertex {
  const { rooms } = problem;
  const between = rooms.map(({ least, most }, k) => amounts[k]! > least + AT_END && amounts[k]! < most - AT_END);
  const snapped = rooms.map(({ least, most }, k) => (between[k] ? amounts[k]! : amounts[k]! - least < most - amounts[k]! ? least : most));
  const wanted = problem.base.flatMap(({ target }, i) => (target === undefined ? [] : [i]));
  const movable = (seat: number) => rooms.findIndex(({ of }, k) => between[k] && of.kind === 'surface' && of.seat === seat);
  const setters = wanted.filter((i) => movable(i) < 0);
  const shared = [...(pinned ? [] : [-1]), ...rooms.flatMap(({ of }, k) => (between[k] && of.kind === 'face' ? [k] : []))];

  let best: Vertex | null = null;
  for (const chosen of choices(setters, Math.min(shared.length, setters.length))) {
    const moved = placed(problem, position, snapped, shared, chosen);
    if (!moved) continue;
    const vertex = stocked(problem, moved, wanted, chosen, movable);
    if (!best || vertex.outside + vertex.residual < best.outside + best.residual) best = vertex;
  }
  return best ?? measured(problem, { position, amounts: [...snapped] }, wanted);
}

/** Every choice of `count` from a list. */
function choices(from: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return from.flatMap((first, i) => choices(from.slice(i + 1), count - 1).map((rest) => [first, ...rest]));
}

interface Place {
  position: number;
  amounts: number[];
}

/** Position and faces that give the chosen seats their films, by elimination; null where they cannot. */
function placed(problem: Problem, position: number, amounts: readonly number[], shared: readonly number[], chosen: readonly number[]): Place | null {
  const place: Place = { position, amounts: [...amounts] };
  const surfacesOnly = amounts.map((x, k) => (problem.rooms[k]!.of.kind === 'face' ? 0 : x));
  const parts = cutParts(problem, surfacesOnly);
  const rateOf = (seat: number, k: number) => (k < 0 ? 1 : shiftRate(problem, seat, k));
  const rows: number[][] = [];
  for (const seat of chosen) {
    const at = positionForFilm(seatLines(parts[seat]!), parts[seat]!.target!);
    if (at === null) return null;
    rows.push([...shared.map((k) => rateOf(seat, k)), at - seenAt(problem, seat, place)]);
  }
  const steps = eliminated(rows, shared.length);
  if (!steps) return null;
  for (const [j, k] of shared.entries()) {
    if (k < 0) place.position += steps[j]!;
    else place.amounts[k]! += steps[j]!;
  }
  return place;
}

function shiftRate({ rooms, input }: Problem, seat: number, k: number): number {
  const { of } = rooms[k]!;
  return of.kind === 'face' ? faceShift(input.faces![of.face]!, seat) : 0;
}

/** Position of the journal as a seat sees it whose faces have not moved. */
const seenAt = (problem: Problem, seat: number, { position, amounts }: Place): number => amounts.reduce((sum, x, k) => sum + shiftRate(problem, seat, k) * x, position);

/** Solves rows [coefficients…, right side] for `size` unknowns; those left over stay 0. Null: contradictory or singular. */
function eliminated(rows: number[][], size: number): number[] | null {
  const solution = new Array<number>(size).fill(0);
  const left = rows.map((row) => [...row]);
  const order: [row: number[], column: number][] = [];
  while (left.length > 0) {
    const row = left.pop()!;
    const used = new Set(order.map(([, c]) => c));
    let column = -1;
    for (let c = 0; c < size; c++) if (!used.has(c) && Math.abs(row[c]!) > 1e-9 && (column < 0 || Math.abs(row[c]!) > Math.abs(row[column]!))) column = c;
    if (column < 0) return null;
    for (const other of [...left, ...order.map(([r]) => r)]) {
      const share = other[column]! / row[column]!;
      for (let c = 0; c <= size; c++) other[c]! -= share * row[c]!;
    }
    order.push([row, column]);
  }
  for (const [row, column] of order) solution[column] = row[size]! / row[column]!;
  return solution;
}

/** The stocks that set the films of the other seats. */
function stocked(problem: Problem, place: Place, wanted: readonly number[], chosen: readonly number[], movable: (seat: number) => number): Vertex {
  const amounts = [...place.amounts];
  const parts = cutParts(problem, amounts);
  for (const seat of wanted) {
    if (chosen.includes(seat)) continue;
    const own = movable(seat);
    const missing = parts[seat]!.target! - (filmOf(parts[seat]!, place.position) ?? 0);
    // Where the vertex is degenerate its stock stands at an end; it moves into its room.
    const k = own >= 0 ? own : Math.abs(missing) <= EXACT ? -1 : roomFor(problem, seat, amounts, missing);
    if (k < 0) continue;
    const { of } = problem.rooms[k]!;
    if (of.kind === 'surface') amounts[k]! += stockToTarget(parts[seat]!, of.part, place.position);
  }
  return measured(problem, { position: place.position, amounts }, wanted);
}

const roomFor = ({ rooms }: Problem, seat: number, amounts: readonly number[], missing: number): number =>
  rooms.findIndex(({ of, least, most }, k) => of.kind === 'surface' && of.seat === seat && (missing > 0 ? amounts[k]! < most : amounts[k]! > least));

const filmOf = (seat: SeatInput, position: number): number | null => leastFilm(seatLines(seat).gap, position);

/** Further stock (m, below 0: less) off one part that gives the seat its film at a position. */
function stockToTarget(seat: SeatInput, part: 'journal' | 'bush', position: number): number {
  const missing = (normal: number) => {
    const film = filmOf({ ...seat, [part]: withStock(seat[part], part, normal) }, position);
    return film === null ? Number.NaN : seat.target! - film;
  };
  let [before, now] = [0, missing(0)];
  // Where the parts do not overlap no stock is found; the plan is told so by what is measured of it.
  if (Number.isNaN(now)) return 0;
  let [missingBefore, missingNow] = [now, missing(now)];
  for (let step = 0; step < 60 && Math.abs(missingNow) > EXACT; step++) {
    const slope = (missingNow - missingBefore) / (now - before);
    // A kink can make the secant run away; a film never gains less than a tenth of the stock, nor more than ten times.
    const next = now - missingNow / (slope < -0.1 && slope > -10 ? slope : -1);
    const missingNext = missing(next);
    if (next === now || Number.isNaN(missingNext)) break;
    [before, missingBefore, now, missingNow] = [now, missingNow, next, missingNext];
  }
  return now;
}

function measured(problem: Problem, { position, amounts }: Place, wanted: readonly number[]): Vertex {
  const parts = cutParts(problem, amounts);
  let residual = 0;
  for (const seat of wanted) {
    const film = filmOf(parts[seat]!, position);
    residual = Math.max(residual, film === null ? Number.POSITIVE_INFINITY : Math.abs(film - parts[seat]!.target!));
  }
  const { reach } = problem.input;
  let outside = reach ? Math.max(0, reach.from - position, position - reach.to) : 0;
  for (const [k, { least, most }] of problem.rooms.entries()) outside += Math.max(0, least - amounts[k]!, amounts[k]! - most);
  return { position, amounts, residual, outside };
}
