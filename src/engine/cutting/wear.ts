/**
 * Depth worn off a line, as pieces along it: linear on each, with jumps allowed where one piece ends and the next
 * begins, as at the edge of a contact. Where there is no piece nothing is worn.
 */
export interface WornPiece {
  /** m along the line, from < to */
  from: number;
  to: number;
  /** depth (m) just inside either end */
  start: number;
  end: number;
}

/** Pieces shorter than this (m) are left out. */
export const SHORT = 1e-13;
/** Depths (m) nearer than this to each other are one. */
const EVEN = 1e-18;

const depthIn = ({ from, to, start, end }: WornPiece, u: number): number =>
  start + ((end - start) * (u - from)) / (to - from);

/** Depth at u as seen from the stretch between u and `toward`. */
export function depthBeside(pieces: readonly WornPiece[], u: number, toward: number): number {
  const inside = (u + toward) / 2;
  const piece = pieces[pieceFrom(pieces, inside)];
  return piece && piece.from <= inside && inside <= piece.to ? depthIn(piece, u) : 0;
}

/** The last piece that starts at or before u. */
function pieceFrom(pieces: readonly WornPiece[], u: number): number {
  let low = 0;
  let high = pieces.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (pieces[middle]!.from <= u) low = middle;
    else high = middle;
  }
  return low;
}

/** The ends of all pieces, rising; those that meet stand there twice. */
function risingEnds(lists: readonly (readonly WornPiece[])[]): Float64Array {
  const ends = new Float64Array(2 * lists.reduce((sum, list) => sum + list.length, 0));
  let k = 0;
  for (const list of lists) {
    for (const { from, to } of list) {
      ends[k++] = from;
      ends[k++] = to;
    }
  }
  return ends.sort();
}

/** Both wears together; pieces in rising order, those in line with their neighbour joined. */
export function added(pieces: readonly WornPiece[], more: readonly WornPiece[]): WornPiece[] {
  const cuts = risingEnds([pieces, more]);
  const sum: WornPiece[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const from = cuts[i - 1]!;
    const to = cuts[i]!;
    if (to - from < SHORT) continue;
    const start = depthBeside(pieces, from, to) + depthBeside(more, from, to);
    const end = depthBeside(pieces, to, from) + depthBeside(more, to, from);
    if (start <= 0 && end <= 0) continue;
    const last = sum[sum.length - 1];
    if (last && from - last.to < SHORT && inLine(last, { from, to, start, end }))
      sum[sum.length - 1] = { from: last.from, to, start: last.start, end };
    else sum.push({ from, to, start, end });
  }
  return sum;
}

function inLine(a: WornPiece, b: WornPiece): boolean {
  if (Math.abs(a.end - b.start) > EVEN) return false;
  const straight = a.start + ((b.end - a.start) * (a.to - a.from)) / (b.to - a.from);
  return Math.abs(straight - a.end) <= EVEN;
}

/** ∫ f du over a piece for f at most cubic along it: Simpson's rule, exact there. */
export const integral = ({ from, to }: Pick<WornPiece, 'from' | 'to'>, f: (u: number) => number): number =>
  ((to - from) / 6) * (f(from) + 4 * f((from + to) / 2) + f(to));

/** Depth of a piece at u inside it. */
export const depthAt = depthIn;

/**
 * The depths as points, no steeper than `steepest`: of what stands proud beside a jump as much goes as makes the slope,
 * and nothing is put back.  depth(u) = greatest over w of depth(w) - steepest·|u - w|
 */
export function withoutJumps(
  pieces: readonly WornPiece[],
  from: number,
  to: number,
  steepest: number,
): (readonly [number, number])[] {
  const points: [number, number][] = [];
  let at = from;
  for (const piece of pieces) {
    if (piece.from > at + SHORT) points.push([at, 0], [piece.from, 0]);
    points.push([piece.from, piece.start], [piece.to, piece.end]);
    at = piece.to;
  }
  if (to > at + SHORT) points.push([at, 0], [to, 0]);
  const mirrored = (list: readonly (readonly [number, number])[]) =>
    list.map(([u, d]) => [-u, d] as [number, number]).reverse();
  return mirrored(descending(mirrored(descending(points, steepest)), steepest));
}

/** Lets no depth fall faster than `steepest` toward rising u. */
function descending(points: readonly [number, number][], steepest: number): [number, number][] {
  const out: [number, number][] = [];
  let [u0, d0] = points[0]!;
  out.push([u0, d0]);
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const floor = (u: number) => d0 - steepest * (u - u0);
    if (b[0] - a[0] < SHORT) {
      if (b[1] > out[out.length - 1]![1]) out.push([b[0], b[1]]);
    } else {
      // where the ramp from before comes down to this stretch
      const slope = (b[1] - a[1]) / (b[0] - a[0]);
      const above = floor(a[0]) - a[1];
      const meet = a[0] + above / (slope + steepest);
      if (above > EVEN && slope > -steepest && meet > a[0] && meet < b[0])
        out.push([meet, a[1] + slope * (meet - a[0])]);
      out.push([b[0], Math.max(b[1], floor(b[0]))]);
    }
    [u0, d0] = out[out.length - 1]!;
  }
  return out;
}
