/**
 * The simplex method on a dense tableau.
 *
 *   rows  x_B + Σ t_j·x_j = b,   b ≥ 0,   one basic variable x_B a row, all others 0
 *
 * A column whose cost falls enters, the row that first becomes 0 leaves. The column of the greatest fall is taken
 * while that gains; after a few steps that gain nothing the first such column and the first such row (Bland's rule),
 * under which no basis returns. Phase one minimises artificial variables until none is left. An objective once
 * minimised is kept: columns that would raise it may not enter any more, so that the next is minimised among its
 * optima without any slack.
 * @source Chvatal chapters 2, 3 and 8 (simplex and phases); Bland1977 (rule against cycling)
 */
interface Equation {
  row: Float64Array;
  relation: '<=' | '>=' | '=';
  value: number;
}

/** A coefficient or cost smaller than this is rounding. */
const ZERO = 1e-10;
/** Artificial variables together smaller than this times the largest value of a row that has one are none. */
const FEASIBLE = 1e-9;
/** Steps without gain before Bland's rule. */
const PATIENCE = 20;
/** More steps than this are a fault of rounding. */
const STEPS = 5_000;

export class Tableau {
  private readonly size: number;
  private readonly rows: Float64Array[] = [];
  private readonly right: number[] = [];
  private readonly basis: number[] = [];
  private readonly firstArtificial: number;
  private readonly barred: Uint8Array;
  private readonly largest: number;

  /** @param columns variables, all from 0 upward */
  constructor(
    private readonly columns: number,
    equations: readonly Equation[],
  ) {
    const slacks = equations.filter(({ relation }) => relation !== '=').length;
    this.firstArtificial = columns + slacks;
    this.size = this.firstArtificial + equations.length;
    this.barred = new Uint8Array(this.size);
    let slack = columns;
    for (const [i, { row, relation, value }] of equations.entries()) {
      const sign = value < 0 ? -1 : 1;
      const own = new Float64Array(this.size);
      for (let j = 0; j < columns; j++) own[j] = sign * row[j]!;
      let basic = this.firstArtificial + i;
      if (relation !== '=') {
        own[slack] = sign * (relation === '<=' ? 1 : -1);
        if (own[slack] === 1) basic = slack;
        slack++;
      }
      if (basic >= this.firstArtificial) own[basic] = 1;
      this.rows.push(own);
      this.right.push(sign * value);
      this.basis.push(basic);
    }
    this.largest = Math.max(1, ...this.right.filter((_, i) => this.basis[i]! >= this.firstArtificial));
  }

  /** Phase one. */
  makeFeasible(): 'solved' | 'infeasible' | 'stalled' {
    const cost = new Float64Array(this.size).fill(0);
    cost.fill(1, this.firstArtificial);
    if (this.descend(cost) !== 'solved') return 'stalled';
    const left = this.basis.reduce((sum, b, i) => sum + (b >= this.firstArtificial ? this.right[i]! : 0), 0);
    if (left > FEASIBLE * this.largest) return 'infeasible';
    this.barred.fill(1, this.firstArtificial);
    for (let i = 0; i < this.rows.length; i++) if (this.basis[i]! >= this.firstArtificial) this.driveOut(i);
    return 'solved';
  }

  minimise(objective: Float64Array): 'solved' | 'unbounded' | 'stalled' {
    const cost = new Float64Array(this.size);
    cost.set(objective.subarray(0, this.columns));
    const status = this.descend(cost);
    if (status === 'solved') for (let j = 0; j < this.size; j++) if (this.reduced(cost, j) > ZERO) this.barred[j] = 1;
    return status;
  }

  /** What one unit of every column, slacks after the variables, adds to an objective from where the variables stand. */
  reducedCosts(objective: Float64Array): number[] {
    const cost = new Float64Array(this.size);
    cost.set(objective.subarray(0, this.columns));
    return Array.from({ length: this.firstArtificial }, (_, j) => this.reduced(cost, j));
  }

  /** The variables as they stand. */
  values(): Float64Array {
    const found = new Float64Array(this.columns);
    for (const [i, b] of this.basis.entries()) if (b < this.columns) found[b] = this.right[i]!;
    return found;
  }

  /** What one unit of a column adds to the cost. */
  private reduced(cost: Float64Array, column: number): number {
    let value = cost[column]!;
    for (let i = 0; i < this.rows.length; i++) value -= cost[this.basis[i]!]! * this.rows[i]![column]!;
    return value;
  }

  private descend(cost: Float64Array): 'solved' | 'unbounded' | 'stalled' {
    let idle = 0;
    for (let step = 0; step < STEPS; step++) {
      const column = this.entering(cost, idle > PATIENCE);
      if (column < 0) return 'solved';
      const row = this.leaving(column);
      if (row < 0) return 'unbounded';
      idle = this.right[row]! > ZERO ? 0 : idle + 1;
      this.pivot(row, column);
    }
    return 'stalled';
  }

  private entering(cost: Float64Array, first: boolean): number {
    let best = -1;
    let fall = -ZERO;
    for (let j = 0; j < this.size; j++) {
      if (this.barred[j]) continue;
      const value = this.reduced(cost, j);
      if (value >= fall) continue;
      if (first) return j;
      [best, fall] = [j, value];
    }
    return best;
  }

  /** The row that first becomes 0; of several the one whose basic variable comes first. */
  private leaving(column: number): number {
    let found = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.rows.length; i++) {
      const t = this.rows[i]![column]!;
      if (t <= ZERO) continue;
      const ratio = this.right[i]! / t;
      if (ratio < least - ZERO || (ratio <= least + ZERO && found >= 0 && this.basis[i]! < this.basis[found]!)) {
        found = i;
        least = Math.min(least, ratio);
      }
    }
    return found;
  }

  private pivot(row: number, column: number): void {
    const own = this.rows[row]!;
    const by = own[column]!;
    for (let j = 0; j < this.size; j++) own[j]! /= by;
    this.right[row]! /= by;
    for (let i = 0; i < this.rows.length; i++) {
      const share = this.rows[i]![column]!;
      if (i === row || share === 0) continue;
      const other = this.rows[i]!;
      for (let j = 0; j < this.size; j++) other[j]! -= share * own[j]!;
      other[column] = 0;
      this.right[i] = Math.max(0, this.right[i]! - share * this.right[row]!);
    }
    this.basis[row] = column;
  }

  /** An artificial variable left in the basis at 0 makes room for a real one; where it cannot, its row says nothing. */
  private driveOut(row: number): void {
    let best = -1;
    for (let j = 0; j < this.firstArtificial; j++)
      if (Math.abs(this.rows[row]![j]!) > Math.max(1e-7, best < 0 ? 0 : Math.abs(this.rows[row]![best]!))) best = j;
    if (best >= 0) this.pivot(row, best);
    else {
      this.rows[row]!.fill(0);
      this.rows[row]![this.basis[row]!] = 1;
      this.right[row] = 0;
    }
  }
}
