/**
 * Small linear programmes with several objectives, each minimised among what is left equally good by those before it.
 *
 *   minimise  c₁·x, then c₂·x, …   subject to   least ≤ x ≤ most,   each row  min ≤ a·x ≤ max
 *
 * Solved by a kept package (yalps, simplex on a dense tableau), which knows variables from 0 upward only: a variable
 * with a least value is counted from there, a free one is the difference of two. Numbers are to be scaled near 1.
 */
import { type Constraint, solve } from 'yalps';

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

export type Optimum = { status: 'solved'; values: number[] } | { status: 'infeasible' } | { status: 'unbounded' } | { status: 'stalled' };

/** Room (in scaled units) given to an objective already minimised while the next one is. */
const SLACK = 1e-9;

export function minimised({ variables, rows, objectives }: Programme): Optimum {
  const held: Row[] = [...rows];
  let best: Optimum = { status: 'infeasible' };
  for (const objective of objectives) {
    const found = single(variables, held, objective);
    if (found.status !== 'solved') return found;
    best = found;
    held.push({ coefficients: objective, max: dot(objective, found.values) + SLACK });
  }
  return best;
}

/** Where a variable is counted from, and whether it needs a second, negative half. */
const originOf = ({ least }: Variable) => (Number.isFinite(least) ? least : 0);
const isFree = ({ least }: Variable) => !Number.isFinite(least);

function single(variables: readonly Variable[], rows: readonly Row[], objective: readonly number[]): Optimum {
  if (variables.some(({ least, most }) => least > most)) return { status: 'infeasible' };
  const constraints = new Map<string, Constraint>();
  const columns = new Map<string, [string, number][]>();
  const put = (row: string, v: number, coefficient: number) => {
    if (coefficient === 0) return;
    columns.get(`${v}`)!.push([row, coefficient]);
    if (isFree(variables[v]!)) columns.get(`-${v}`)!.push([row, -coefficient]);
  };
  for (const [v, variable] of variables.entries()) {
    columns.set(`${v}`, []);
    if (isFree(variable)) columns.set(`-${v}`, []);
    if (!Number.isFinite(variable.most)) continue;
    constraints.set(`v${v}`, { max: variable.most - originOf(variable) });
    put(`v${v}`, v, 1);
  }
  for (const [r, { coefficients, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }] of rows.entries()) {
    const origin = dot(
      coefficients,
      variables.map((v) => originOf(v)),
    );
    constraints.set(`r${r}`, min === max ? { equal: min - origin } : { min: min - origin, max: max - origin });
    for (let v = 0; v < variables.length; v++) put(`r${r}`, v, coefficients[v]!);
  }
  for (let v = 0; v < variables.length; v++) put('cost', v, objective[v]!);
  const { status, variables: found } = solve({ direction: 'minimize', objective: 'cost', constraints, variables: columns }, { checkCycles: true, precision: 1e-9 });
  if (status === 'infeasible' || status === 'unbounded') return { status };
  if (status !== 'optimal') return { status: 'stalled' };
  const values = new Map(found);
  return { status: 'solved', values: variables.map((variable, v) => originOf(variable) + (values.get(`${v}`) ?? 0) - (values.get(`-${v}`) ?? 0)) };
}

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
