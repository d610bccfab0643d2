/**
 * Rows of a table with the unit of a column in its heading, where every figure of the column has the same one: then a
 * cell is a number that can be reckoned with.
 */

/** A number alone, and what stands after it: 22.000 mm, 3.0°, 1.5 µm. */
const FIGURE = /^([+-]?\d+(?:[.,]\d+)*(?:e[+-]?\d+)?)(?: |\u00a0)?(°|[^\d\s°][^\d\s]*(?:[ \u00a0][^\d\s]+)?)?$/i;
/** What stands for no figure. */
const NONE = new Set(['', '—', '-', 'open', 'none']);

type Row = readonly string[];

/** Without a row of headings, or of one row, as they are. */
export function withUnits(rows: readonly Row[]): Row[] {
  const [head, ...body] = rows;
  if (!head || body.length === 0) return [...rows];
  const units = head.map((_, k) => unitOf(body.map((row) => row[k] ?? '')));
  return [
    head.map((title, k) => (units[k] ? `${title}, ${units[k]}` : title)),
    ...body.map((row) => row.map((cell, k) => (units[k] ? cell.replace(FIGURE, '$1') : cell))),
  ];
}

/** The one unit of all figures of a column; null where they have none, or several, or where words stand among them. */
function unitOf(cells: readonly string[]): string | null {
  const told = cells.filter((cell) => !NONE.has(cell));
  const units = new Set(told.map((cell) => FIGURE.exec(cell)?.[2] ?? null));
  const [unit] = units;
  return units.size === 1 && unit ? unit : null;
}
