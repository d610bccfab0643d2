/**
 * Marking blue: the print a journal leaves when it is pushed home in a bush painted thinly with blue.
 *
 *   a place prints where its film is no more than the thickness of the blue
 *
 * The film is that of height.ts at the pose the push leads to (seating.ts), taken along the bush line at every
 * place of both parts, whether or not it can touch.
 *
 * One press: the journal is pushed straight home and drawn off without turning; journal and bush print in the
 * same places. Turned: the journal is turned through a whole turn while it is kept pressed, and finds its seat
 * anew at every angle; a place prints if it came within the thickness at any of them, so that a high place of
 * the bush is told from one of the journal, which smears into a ring on the other part. The turn is taken in
 * equal steps; between two steps of θ a lobe of count n moves by n·θ.
 */
import type { Metres } from '../../design/dimension.ts';
import { type Chain, filmAlong, stationAt } from '../contact/film.ts';
import { radiusAt, type SeatInput } from '../contact/fit.ts';
import { nearing } from '../spindle/height.ts';
import { proudAt } from '../spindle/lobes.ts';
import type { Motion, Pose, Push } from '../spindle/pose.ts';
import { type RigidSeat, spindleOf, turnedBy } from '../spindle/rigid.ts';
import { seat as pushHome, REARWARD, type Seating } from './seating.ts';

export interface PrintMap {
  seat: string;
  part: 'journal' | 'bush';
  /** stations of the part (m) from its rear to its nose, one a row, and its radius there (m) */
  stations: Float64Array;
  radii: Float64Array;
  /** angles are equal steps of 2π/columns from 0, in the part's own frame */
  columns: number;
  /** nearest the other part came (m), row after row; infinite where it does not reach */
  film: Float64Array;
}

interface PrintQuestion {
  /** m */
  thickness: Metres;
  /** the journal is turned, in this many steps; 1 is one press without turning */
  turns: number;
  push?: Push;
  rows?: number;
  /** a whole multiple of `turns` */
  columns?: number;
}

export type Print =
  | { status: 'solved'; thickness: Metres; pose: Pose; maps: PrintMap[] }
  | Exclude<Seating, { status: 'solved' }>;

export function printOf(seats: readonly SeatInput[], free: Iterable<Motion>, question: PrintQuestion): Print {
  const { thickness, turns, push = REARWARD, rows = 48, columns = 144 } = question;
  const first = spindleOf(seats, free);
  const maps = first.seats.flatMap((seat) => [
    emptyMap(seat, 'journal', rows, columns),
    emptyMap(seat, 'bush', rows, columns),
  ]);
  const lobed = first.seats.some(({ round }) => round.samples.length > 0 || round.pushX !== 0 || round.pushY !== 0);
  let pose: Pose | null = null;
  let seated: Seating | null = null;
  for (let k = 0; k < turns; k++) {
    const spindle = turnedBy(first, (2 * Math.PI * k) / turns);
    // True rounds sit the same however they are turned.
    if (seated === null || lobed) seated = pushHome(spindle, push);
    if (seated.status !== 'solved') return seated;
    pose ??= seated.pose;
    spindle.seats.forEach((seat, i) => {
      press(maps[2 * i]!, seat, seat.gap.journal, seated as SolvedSeating, (k * columns) / turns);
      press(maps[2 * i + 1]!, seat, seat.gap.bush, seated as SolvedSeating, 0);
    });
  }
  return { status: 'solved', thickness, pose: pose!, maps };
}

type SolvedSeating = Extract<Seating, { status: 'solved' }>;

function emptyMap(seat: RigidSeat, part: PrintMap['part'], rows: number, columns: number): PrintMap {
  const chain = seat.gap[part];
  const line = seat[part];
  const stations = Float64Array.from({ length: rows }, (_, i) => stationAt(chain, placeOf(chain, i, rows)));
  const radii = stations.map((station) => radiusAt(line, station));
  return {
    seat: seat.name,
    part,
    stations,
    radii,
    columns,
    film: new Float64Array(rows * columns).fill(Number.POSITIVE_INFINITY),
  };
}

/** Places evenly along a line, in its own coordinate u (m). */
const placeOf = (chain: Chain, row: number, rows: number) =>
  chain.u[0]! + ((chain.u[chain.u.length - 1]! - chain.u[0]!) * row) / (rows - 1);

/**
 * Brings one part's map as near as the film at this pose; `shift` columns lie between its own angles and those of the
 * bush.
 */
function press(map: PrintMap, seat: RigidSeat, chain: Chain, { pose }: SolvedSeating, shift: number): void {
  const { columns, film } = map;
  const rows = map.stations.length;
  const along = filmAlong(seat.gap, pose.z);
  const slide = map.part === 'journal' ? pose.z * seat.cos : 0;
  const proud = Float64Array.from({ length: columns }, (_, c) => proudAt(seat.round, (2 * Math.PI * c) / columns));
  const cosines = proud.map((_, c) => Math.cos((2 * Math.PI * c) / columns));
  const sines = proud.map((_, c) => Math.sin((2 * Math.PI * c) / columns));
  for (let row = 0; row < rows; row++) {
    const u = placeOf(chain, row, rows) + slide;
    const centred = filmOn(along, u);
    if (centred === null) continue;
    const { x, y } = nearing(pose, seat.cos, u);
    for (let c = 0; c < columns; c++) {
      const here = centred - proud[c]! - x * cosines[c]! - y * sines[c]!;
      const place = row * columns + ((c - shift + columns) % columns);
      if (here < film[place]!) film[place] = here;
    }
  }
}

/** A rounding beyond the ends of the overlap is still at its end (m). */
const EDGE = 1e-9;

/** Film of a chain at a place (m); null outside the overlap. */
function filmOn({ count, u, film }: { count: number; u: Float64Array; film: Float64Array }, at: number): number | null {
  if (count === 0 || at < u[0]! - EDGE || at > u[count - 1]! + EDGE) return null;
  let low = 0;
  let high = count - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (u[middle]! <= at) low = middle;
    else high = middle;
  }
  const width = u[high]! - u[low]!;
  return width === 0 ? film[low]! : film[low]! + ((film[high]! - film[low]!) * (at - u[low]!)) / width;
}
