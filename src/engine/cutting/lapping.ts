/**
 * Lapping the pair together: the journal turns in its bush, pressed rearward by a steady force, abrasive between them.
 *
 *   depth worn      dh = k·p·ds      k = k_j + k_b of both parts together, each taking its own share of it
 *   slide           ds = r·dθ
 *   balance         F = ∫ p·sin a dA over every contact
 *
 * Both parts are rigid and lie on one axis, so one small advance dx of the journal settles what is worn: wherever the
 * lines would overlap, by c, just c is worn off. From the law p = c/(k·r·dθ), and from the balance the turning it took:
 *   F·dθ = ∫ (c/(k·r))·sin a dA = (2π/k) Σ sin a ∫ c du
 * u along the bush line (m) · h, c (m) · p (Pa) · k (m³/(N·m), that is 1/Pa: Archard's coefficient over hardness) ·
 * F (N) · θ (rad) · a half angle (rad). The work pressed and slid is ∫ p ds dA = (1/k)·∫ c dA, so volume worn is k
 * times work: to the order of c/r of a step where the parts' shares differ, exactly where they are equal. Depths are
 * along the normal of the bush line and known exactly, piece by piece (wear.ts); a pair that touches all along keeps
 * doing so. Metal that stands out beyond the other part is not worn and stays as a ridge. For half angles that differ
 * by a degree at most. Straight seats and those that close noseward do not touch.
 * @source Archard1953
 */
import type { Metres, Radians } from '../../design/dimension.ts';
import { filmAlong, stationAt } from '../contact/film.ts';
import { type Fit, fit, positionForFilm, radiusAt, type SeatInput, type SeatLines, seatLines } from '../contact/fit.ts';
import { type Line, type Part, radiusOf, type Surface } from '../parts/line.ts';
import { added, depthAt, depthBeside, integral, SHORT, type WornPiece, withoutJumps } from './wear.ts';

export interface Lap {
  /** axial force (N) */
  force: number;
  /** m³ worn off each part for a newton pressed and a metre slid */
  coefficient: Record<Part, number>;
  /** axial advance of one small step, and of all (m) */
  step: number;
  advance: number;
  /** share of a seat's length that should bear */
  bearing: number;
  /** greatest depth (m) that may be worn off a surface */
  limit: number;
}

export interface LapState {
  /** position of the journal (m), and how far it turned (rad) so far */
  position: Metres;
  angle: Radians;
  /** N·m slid under pressure, m³ worn off each part */
  work: number;
  volume: Record<Part, number>;
  seats: {
    /** share of the overlap that bears */
    bearing: number;
    /** greatest depth worn (m) */
    depth: Record<Part, number>;
  }[];
  /** the parts as they now are, ridges chamfered to a slope a design file can hold, and their fit */
  parts: SeatInput[];
  fit: Fit;
}

type LapStop = 'bearing' | 'relation' | 'limit' | 'notYet';

export type Lapped =
  | {
      status: 'lapped' /** from before the first step on */;
      states: LapState[] /** index of the state at which to stop, and why */;
      stop: { at: number; why: LapStop };
    }
  /** no seat stops the journal going rearward, so nothing is lapped */
  | { status: 'nothingTouches' };

interface LappedSeat {
  lines: SeatLines;
  bush: WornPiece[];
  journal: WornPiece[];
  work: number;
  bearing: number;
}

/** A state is kept every so many steps. */
const STATES = 50;

export function lapped(inputs: readonly SeatInput[], lap: Lap): Lapped {
  const seats = inputs.map(
    (input): LappedSeat => ({ lines: seatLines(input), bush: [], journal: [], work: 0, bearing: 0 }),
  );
  const touches = seats.flatMap(({ lines }) => (lines.closes === 'rearward' ? (positionForFilm(lines, 0) ?? []) : []));
  if (touches.length === 0) return { status: 'nothingTouches' };
  const start = Math.max(...touches);
  const steps = Math.max(1, Math.round(lap.advance / lap.step));
  const every = Math.max(1, Math.floor(steps / STATES));
  let angle = 0;
  const states = [stateOf(inputs, seats, start, angle)];
  for (let i = 1; i <= steps; i++) {
    const position = start - i * lap.step;
    for (const seat of seats) if (seat.lines.closes === 'rearward') angle += wornBy(seat, position, lap);
    if (i % every === 0 || i === steps) states.push(stateOf(inputs, seats, position, angle));
  }
  return { status: 'lapped', states, stop: stopOf(inputs, states, lap) };
}

/** Wears one seat down to the position and returns the turning (rad) it took. */
function wornBy(seat: LappedSeat, position: Metres, { force, coefficient }: Lap): number {
  const { gap, bush } = seat.lines;
  const du = position * Math.cos(gap.halfAngle);
  const k = coefficient.journal + coefficient.bush;
  const share = coefficient.bush / k;
  const { contacts, length } = overlaps(seat, position);
  const scaled = (pieces: readonly WornPiece[], by: number, moved: number) =>
    pieces.map(({ from, to, start, end }) => ({
      from: from - moved,
      to: to - moved,
      start: start * by,
      end: end * by,
    }));
  seat.bush = added(seat.bush, scaled(contacts, share, 0));
  seat.journal = added(seat.journal, scaled(contacts, 1 - share, du));
  let worn = 0;
  let touching = 0;
  for (const c of contacts) {
    worn += integral(c, (u) => depthAt(c, u));
    touching += c.to - c.from;
    // the surface at which they now meet
    const r = (u: number) =>
      radiusAt(bush, stationAt(gap.bush, u)) +
      depthBeside(seat.bush, u, u === c.to ? c.from : c.to) * Math.cos(gap.halfAngle);
    seat.work += ((2 * Math.PI) / k) * integral(c, (u) => r(u) * depthAt(c, u));
  }
  seat.bearing = length > 0 ? touching / length : 0;
  return (2 * Math.PI * Math.sin(gap.halfAngle) * worn) / (k * force);
}

/** Where the lines would overlap at a position, by how much, and the length (m) of bush that the journal covers. */
function overlaps({ lines, bush, journal }: LappedSeat, position: Metres): { contacts: WornPiece[]; length: number } {
  const { gap } = lines;
  const { count, u, film } = filmAlong(gap, position);
  if (count === 0) return { contacts: [], length: 0 };
  const du = position * Math.cos(gap.halfAngle);
  const [first, last] = [u[0]!, u[count - 1]!];
  const knots = knotsOf(u.subarray(0, count), bush, journal, du);
  const contacts: WornPiece[] = [];
  let i = 0;
  for (let k = 1; k < knots.length; k++) {
    const from = Math.max(first, knots[k - 1]!);
    const to = Math.min(last, knots[k]!);
    if (to - from < SHORT) continue;
    while (i < count - 2 && u[i + 1]! <= from) i++;
    const line = (at: number) => film[i]! + ((film[i + 1]! - film[i]!) * (at - u[i]!)) / (u[i + 1]! - u[i]!);
    const pressed = (at: number, toward: number) =>
      -(line(at) + depthBeside(bush, at, toward) + depthBeside(journal, at - du, toward - du));
    const [start, end] = [pressed(from, to), pressed(to, from)];
    if (start <= 0 && end <= 0) continue;
    const zero = from + ((to - from) * start) / (start - end);
    if (start > 0 && end > 0) contacts.push({ from, to, start, end });
    else if (start > 0) contacts.push({ from, to: zero, start, end: 0 });
    else contacts.push({ from: zero, to, start: 0, end });
  }
  return { contacts: contacts.filter((c) => c.to - c.from >= SHORT), length: last - first };
}

/** Every place where film or wear may bend, rising. */
function knotsOf(u: Float64Array, bush: readonly WornPiece[], journal: readonly WornPiece[], du: number): Float64Array {
  const knots = new Float64Array(u.length + 2 * (bush.length + journal.length));
  knots.set(u);
  let k = u.length;
  for (const { from, to } of bush) {
    knots[k++] = from;
    knots[k++] = to;
  }
  for (const { from, to } of journal) {
    knots[k++] = from + du;
    knots[k++] = to + du;
  }
  return knots.sort();
}

function stateOf(
  inputs: readonly SeatInput[],
  seats: readonly LappedSeat[],
  position: Metres,
  angle: Radians,
): LapState {
  const parts = inputs.map((input, i) => ({
    ...input,
    bush: wornSurface(input.bush, 'bush', seats[i]!),
    journal: wornSurface(input.journal, 'journal', seats[i]!),
  }));
  const sum = (of: (seat: LappedSeat) => number) => seats.reduce((total, seat) => total + of(seat), 0);
  const deepest = (pieces: readonly WornPiece[]) =>
    pieces.reduce((most, { start, end }) => Math.max(most, start, end), 0);
  return {
    position,
    angle,
    work: sum(({ work }) => work),
    volume: { journal: sum((seat) => volumeOf(seat, 'journal')), bush: sum((seat) => volumeOf(seat, 'bush')) },
    seats: seats.map(({ bearing, bush, journal }) => ({
      bearing,
      depth: { bush: deepest(bush), journal: deepest(journal) },
    })),
    parts,
    fit: fit(parts, position),
  };
}

/** Volume (m³) worn off: the solid between the line before and after, by Pappus. */
function volumeOf(seat: LappedSeat, part: Part): number {
  const { gap } = seat.lines;
  const [pieces, chain, line]: [WornPiece[], typeof gap.bush, Line] =
    part === 'bush' ? [seat.bush, gap.bush, seat.lines.bush] : [seat.journal, gap.journal, seat.lines.journal];
  const outward = (part === 'bush' ? 1 : -1) * Math.cos(gap.halfAngle);
  const layer = (piece: WornPiece) => (u: number) => {
    const d = depthAt(piece, u);
    return (radiusAt(line, stationAt(chain, u)) + (d / 2) * outward) * d;
  };
  return pieces.reduce((sum, piece) => sum + 2 * Math.PI * integral(piece, layer(piece)), 0);
}

/** Slope of a ridge's flank, gentle enough for the rule on profiles of the design file. */
const RIDGE = 0.4;

/** The surface with its wear as a profile. */
function wornSurface(surface: Surface, part: Part, seat: Pick<LappedSeat, 'lines' | Part>): Surface {
  const pieces = seat[part];
  if (pieces.length === 0) return surface;
  const { gap } = seat.lines;
  const chain = gap[part];
  const [sin, cos] = [Math.sin(gap.halfAngle), Math.cos(gap.halfAngle)];
  const last = chain.u.length - 1;
  const depths = withoutJumps(pieces, chain.u[0]!, chain.u[last]!, RIDGE * cos);
  let k = 0;
  const worn = (u: number) => {
    while (k < depths.length && depths[k]![0] < u) k++;
    if (k === 0 || k === depths.length) return depths[k === 0 ? 0 : k - 1]![1];
    const [[u0, d0], [u1, d1]] = [depths[k - 1]!, depths[k]!];
    return d0 + ((d1 - d0) * (u - u0)) / (u1 - u0);
  };
  const straight = { ...surface, profile: [] };
  const outward = part === 'journal' ? 1 : -1;
  // rising, so that one walk along the depths serves them all
  const knots = [...new Set([...depths.map(([u]) => u), ...chain.u])].sort((a, b) => a - b);
  const profile: [number, number][] = [];
  for (const u of knots) {
    const z = stationAt(chain, u);
    const d = worn(u);
    // the worn point lies square to the bush line, beside the old one
    const at = z + (part === 'bush' ? -d * sin : d * sin);
    const r = radiusOf(surface, part, z) + (part === 'bush' ? d * cos : -d * cos);
    const deviation = outward * (r - radiusOf(straight, part, at)) * Math.cos(surface.halfAngle);
    if (profile.length === 0 || at > profile[profile.length - 1]![0] + SHORT) profile.push([at, deviation]);
  }
  return { ...surface, profile };
}

/** When to stop: as soon as all bear, or the relation leaves what the films allow, or a surface has lost too much. */
function stopOf(inputs: readonly SeatInput[], states: readonly LapState[], lap: Lap): { at: number; why: LapStop } {
  const closing = inputs.flatMap((input, i) => (seatLines(input).closes === 'rearward' ? [i] : []));
  const good = ({ fit: { relation } }: LapState) => relation !== null && Math.abs(relation.error) <= relation.allowance;
  for (const [at, state] of states.entries()) {
    if (state.seats.some(({ depth }) => Math.max(depth.journal, depth.bush) > lap.limit))
      return { at: Math.max(0, at - 1), why: 'limit' };
    if (at > 0 && good(states[at - 1]!) && !good(state)) return { at: at - 1, why: 'relation' };
    if (at > 0 && closing.every((i) => state.seats[i]!.bearing >= lap.bearing)) return { at, why: 'bearing' };
  }
  return { at: states.length - 1, why: 'notYet' };
}
