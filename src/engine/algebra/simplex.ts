/**
 * Small linear programmes with several objectives, each minimised among what those before it leave equally good.
 *
 *   minimise  c₁·x, then c₂·x, …   subject to   least ≤ x ≤ most,   each row  min ≤ a·x ≤ max
 *
 * Simplex on a dense tableau in two phases (tableau.ts). Every variable is counted from its least value, from its
 * greatest downward where it has only that, or as the difference of two where it has neither; every finite bound is a
 * row, every row an equation with a slack. Plans of cutting are degenerate by nature (several limits meet in one
 * point), and packages were found to cycle there, so it is our own, with a rule that cannot. Numbers are to be scaled
 * near 1; meant for a hundred rows, not for thousands.
 */
import { Tableau } from './tableau.ts';

export interface Variable {
  /** may be -Infinity */
  least: number;
  /** may be Infinity */
  most: number;
}

export interface Row {
  coefficients: readonly number[];
  min?: number;
  max?: number;
}

export interface Programme {
  variables: readonly Variable[];
  rows: readonly Row[];
  /** coefficients of each objective, the first counts most */
  objectives: readonly (readonly number[])[];
}

export type Optimum =
  | {
      status: 'solved';
      values: number[];
      /** by how much the first objective would fall for each unit that a bound of a variable is let go, 0 or more */
      multipliers: { least: number[]; most: number[] };
    }
  | { status: 'infeasible' | 'unbounded' | 'stalled' };

/** How a variable stands in the tableau: x = origin + sign·first column, less the second where it has two. */
interface Place {
  origin: number;
  sign: 1 | -1;
  first: number;
  second: number | null;
}

type Relation = '<=' | '>=' | '=';

export function minimised({ variables, rows, objectives }: Programme): Optimum {
  if (variables.some(({ least, most }) => least > most)) return { status: 'infeasible' };
  const { places, columns } = placesOf(variables);
  const spread = (coefficients: readonly number[]) => {
    const row = new Float64Array(columns);
    for (const [v, { sign, first, second }] of places.entries()) {
      row[first]! += sign * coefficients[v]!;
      if (second !== null) row[second]! -= sign * coefficients[v]!;
    }
    return row;
  };
  const origin = (coefficients: readonly number[]) =>
    places.reduce((sum, p, v) => sum + coefficients[v]! * p.origin, 0);
  const equations: { row: Float64Array; relation: Relation; value: number }[] = [];
  /** the slack of each variable that has two bounds */
  const slacks = new Map<number, number>();
  for (const [v, { least, most }] of variables.entries()) {
    if (!Number.isFinite(least) || !Number.isFinite(most)) continue;
    const row = new Float64Array(columns);
    row[places[v]!.first] = 1;
    slacks.set(v, columns + equations.length);
    equations.push({ row, relation: '<=', value: most - least });
  }
  for (const { coefficients, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } of rows) {
    const [row, from] = [spread(coefficients), origin(coefficients)];
    if (min === max) equations.push({ row, relation: '=', value: min - from });
    else {
      if (Number.isFinite(min)) equations.push({ row, relation: '>=', value: min - from });
      if (Number.isFinite(max)) equations.push({ row, relation: '<=', value: max - from });
    }
  }
  const tableau = new Tableau(columns, equations);
  const entry = tableau.makeFeasible();
  if (entry !== 'solved') return { status: entry };
  let costs: number[] = [];
  for (const [turn, objective] of objectives.entries()) {
    const status = tableau.minimise(spread(objective));
    if (status !== 'solved') return { status };
    if (turn === 0) costs = tableau.reducedCosts(spread(objective));
  }
  const found = tableau.values();
  const costOf = (column: number | undefined) => (column === undefined ? 0 : Math.max(0, costs[column]!));
  const own = (v: number) => (places[v]!.second === null ? places[v]!.first : undefined);
  const multipliers = {
    least: variables.map(({ least }, v) => (Number.isFinite(least) ? costOf(own(v)) : 0)),
    most: variables.map(({ least, most }, v) =>
      Number.isFinite(least) ? costOf(slacks.get(v)) : Number.isFinite(most) ? costOf(own(v)) : 0,
    ),
  };
  return {
    status: 'solved',
    multipliers,
    values: places.map((p) => p.origin + p.sign * (found[p.first]! - (p.second === null ? 0 : found[p.second]!))),
  };
}

function placesOf(variables: readonly Variable[]): { places: Place[]; columns: number } {
  let columns = 0;
  const places = variables.map(({ least, most }): Place => {
    const first = columns++;
    if (Number.isFinite(least)) return { origin: least, sign: 1, first, second: null };
    if (Number.isFinite(most)) return { origin: most, sign: -1, first, second: null };
    return { origin: 0, sign: 1, first, second: columns++ };
  });
  return { places, columns };
}
