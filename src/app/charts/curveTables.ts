/** The curves of a chart as a table, for who would have the numbers: in the units of its axes. */
import type { Points } from './Axes.tsx';

export interface CurveTable {
  /** on the axis across the page, and on the one up it */
  across: string;
  up: string;
  lines: readonly { name: string; points: Points }[];
}

/** Made when asked for; gone with the drawing. */
const tables = new WeakMap<Element, () => CurveTable>();

/** To be called with the drawing of a chart as it is put on the page. */
export const holdsCurves = (drawing: Element | null, table: () => CurveTable): void => {
  if (drawing) tables.set(drawing, table);
};

export const curvesOf = (drawing: Element): CurveTable | null => tables.get(drawing)?.() ?? null;

/** A row a place on the axis across the page, a column a line; empty where a line has no point there. */
export function curveRows({ across, up, lines }: CurveTable): (string | number)[][] {
  const places = [...new Set(lines.flatMap(({ points }) => points.map(([x]) => x)))].sort((a, b) => a - b);
  const values = lines.map(({ points }) => new Map(withoutRounding(points)));
  return [
    [across, ...lines.map(({ name }) => `${name}: ${up}`)],
    ...places.map((x) => [x, ...values.map((at) => (Number.isFinite(at.get(x)) ? at.get(x)! : ''))]),
  ];
}

/** Of the largest value of a curve: what is less is what solving leaves of a nought. */
const NOUGHT = 1e-9;

function withoutRounding(points: Points): [number, number][] {
  const largest = points.reduce((most, [, y]) => (Number.isFinite(y) ? Math.max(most, Math.abs(y)) : most), 0);
  return points.map(([x, y]) => [x, Math.abs(y) < NOUGHT * largest ? 0 : y]);
}
