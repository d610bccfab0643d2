/**
 * The point of a convex body nearest to a wanted one.
 *
 *   minimise ½·|y - t|²   subject to   n·y ≤ b for every cut of the body
 *
 * y unknowns in perpendicular directions (body.ts), scaled · t the wanted point.
 *
 * Active set on the dual (Goldfarb & Idnani): y starts at t, free of every cut; the cut it violates most is
 * taken in, and any cut whose multiplier would turn negative on the way is let go. Each step lengthens
 * |y - t|, so that no set of cuts returns and the search ends, rings of equal contacts included. Where a
 * violated cut can neither be met nor paid for by letting another go, the cuts contradict each other: the
 * body is empty. When no known cut is violated the oracle of the body looks round every station for another.
 *
 * The multipliers u ≥ 0 satisfy t - y = Σ u·n.
 * @source GoldfarbIdnani1983 algorithm of section 3
 */
import { dot } from '../algebra/dot.ts';
import { lowerSolved, upperSolved } from '../algebra/triangular.ts';
import { type Body, type Constraint, cutOff, SIZE, TOUCH } from './body.ts';

type NearestStatus = 'solved' | 'empty' | 'stalled';

export interface Nearest {
  status: NearestStatus;
  /** unknowns along the directions */
  y: Float64Array;
  /** the same as a vector of the body */
  v: Float64Array;
  /** cuts that hold y, and their multipliers */
  active: Constraint[];
  multipliers: number[];
}

interface NearestQuestion {
  /** directions of the unknowns: vectors of the body, one an unknown */
  directions: readonly Float64Array[];
  target: Float64Array;
  /** what may be violated (scaled) before another cut is looked for; the tolerance of a touch when left out */
  allowed?: number;
  /** looks round lobes until no angle can be worse; true when left out */
  certain?: boolean;
}

/** More steps than this are a fault of rounding, not of the question. */
const STEPS = 600;
/** Cuts a body keeps from one question to the next. */
const KEPT = 300;
/** A cut whose part square to the active ones is less than this of its length lies within their span. */
const DEPENDENT = 1e-9;

export function nearest(
  body: Body,
  { directions, target, allowed = TOUCH / body.scale, certain = true }: NearestQuestion,
): Nearest {
  if (body.cuts.length > KEPT) body.cuts.length = 0;
  const search = new ActiveSet(directions, target);
  const v = new Float64Array(SIZE);
  for (let step = 0; step < STEPS; step++) {
    const violated = search.mostViolated(body.cuts, allowed);
    if (violated === null) {
      search.pointOf(v);
      // The quick look comes first; what it lets pass is looked at with certainty.
      if (cutOff(body, v, allowed, false) > allowed) continue;
      if (certain && cutOff(body, v, allowed, true) > allowed) continue;
      return search.result('solved', v);
    }
    if (!search.takeIn(violated)) return search.result('empty', search.pointOf(v));
  }
  return search.result('stalled', search.pointOf(v));
}

/** The cuts that hold y at present, with their normals in the unknowns as an orthogonal times a triangular matrix. */
class ActiveSet {
  private readonly size: number;
  private readonly y: Float64Array;
  private readonly cuts: Constraint[] = [];
  private normals: Float64Array[] = [];
  private u: number[] = [];
  /** orthonormal columns, and the triangle: normals = q·r */
  private q: Float64Array[] = [];
  private r: number[][] = [];
  private readonly seen: Float64Array[] = [];
  private readonly seenCuts: Constraint[] = [];

  constructor(
    private readonly directions: readonly Float64Array[],
    private readonly target: Float64Array,
  ) {
    this.size = directions.length;
    this.y = target.slice();
  }

  /** The cut violated most by y, and by more than `allowed`; null when none is. */
  mostViolated(cuts: readonly Constraint[], allowed: number): number | null {
    while (this.seen.length < cuts.length) {
      const cut = cuts[this.seen.length]!;
      this.seen.push(Float64Array.from(this.directions, (d) => dot(d, cut.n)));
      this.seenCuts.push(cut);
    }
    let most = allowed;
    let found: number | null = null;
    for (let k = 0; k < this.seen.length; k++) {
      const excess = dot(this.seen[k]!, this.y) - this.seenCuts[k]!.b;
      if (excess > most) {
        most = excess;
        found = k;
      }
    }
    return found;
  }

  /** Moves y on to a violated cut, letting go of others on the way; false when no move can. */
  takeIn(index: number): boolean {
    const cut = this.seenCuts[index]!;
    const n = this.seen[index]!;
    const length = Math.sqrt(dot(n, n));
    let own = 0;
    for (;;) {
      const coefficients = this.q.map((column) => dot(column, n));
      const z = this.squareTo(n);
      const zz = dot(z, z);
      const independent = this.cuts.length < this.size && Math.sqrt(zz) > DEPENDENT * length;
      const r = upperSolved(this.r, coefficients);
      let first = -1;
      let partial = Number.POSITIVE_INFINITY;
      for (let j = 0; j < r.length; j++) {
        if (r[j]! > 1e-12 && this.u[j]! / r[j]! < partial) {
          partial = this.u[j]! / r[j]!;
          first = j;
        }
      }
      const full = independent ? (dot(n, this.y) - cut.b) / zz : Number.POSITIVE_INFINITY;
      if (full === Number.POSITIVE_INFINITY && first < 0) return false;
      const step = Math.max(0, Math.min(partial, full));
      if (independent) for (let i = 0; i < this.size; i++) this.y[i]! -= step * z[i]!;
      for (let j = 0; j < r.length; j++) this.u[j]! = Math.max(0, this.u[j]! - step * r[j]!);
      own += step;
      if (full <= partial) {
        this.cuts.push(cut);
        this.normals.push(n);
        this.u.push(own);
        this.append(n);
        this.settle();
        return true;
      }
      this.letGo(first);
    }
  }

  /** y and the multipliers afresh from the active cuts, so that no rounding is handed on. */
  private settle(): void {
    // Rᵀ·c = b gives the point of the cuts' meet nearest to the origin, q·c; the rest of y is the target's own.
    const c = lowerSolved(
      this.r,
      this.cuts.map((cut) => cut.b),
    );
    const along = this.q.map((column) => dot(column, this.target));
    const rest = this.squareTo(this.target);
    for (let i = 0; i < this.size; i++)
      this.y[i] = rest[i]! + this.q.reduce((sum, column, j) => sum + column[i]! * c[j]!, 0);
    const u = upperSolved(
      this.r,
      along.map((a, j) => a - c[j]!),
    );
    for (let j = 0; j < u.length; j++) this.u[j] = Math.max(0, u[j]!);
  }

  private letGo(index: number): void {
    this.cuts.splice(index, 1);
    this.u.splice(index, 1);
    const normals = this.normals;
    normals.splice(index, 1);
    this.normals = [];
    this.q = [];
    this.r = [];
    for (const n of normals) {
      this.normals.push(n);
      this.append(n);
    }
  }

  /** Another column of q and r. */
  private append(n: Float64Array): void {
    const column = this.squareTo(n);
    const length = Math.sqrt(dot(column, column));
    this.r.push([...this.q.map((q) => dot(q, n)), length]);
    this.q.push(column.map((value) => value / length));
  }

  /** A vector less its part in the span of the active normals (twice, for the digits). */
  private squareTo(n: Float64Array): Float64Array {
    const z = n.slice();
    for (let pass = 0; pass < 2; pass++) {
      for (const column of this.q) {
        const along = dot(column, z);
        for (let i = 0; i < z.length; i++) z[i]! -= along * column[i]!;
      }
    }
    return z;
  }

  /** y as a vector of the body. */
  pointOf(v: Float64Array): Float64Array {
    v.fill(0);
    this.directions.forEach((d, i) => {
      for (let k = 0; k < SIZE; k++) v[k]! += d[k]! * this.y[i]!;
    });
    return v;
  }

  result(status: NearestStatus, v: Float64Array): Nearest {
    return { status, y: this.y, v: v.slice(), active: this.cuts, multipliers: this.u };
  }
}
