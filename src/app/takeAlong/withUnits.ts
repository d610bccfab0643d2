/**
 * Rows of a table with the unit of its figures in the heading, of the column or, where the rows differ, of the row: a
 * cell is then a number that can be reckoned with.
 */

/** A number alone, and what stands after it: 22.000 mm, 3.0°, −1.5 µm. */
const FIGURE = /^([+−-]?\d+(?:[.,]\d+)*(?:e[+-]?\d+)?)(?: |\u00a0)?(°|[^\d\s°][^\d\s]*(?:[ \u00a0][^\d\s]+)?)?$/i;
/** What stands for no figure: —, open, all round. */
const isWord = (cell: string) => !/\d/.test(cell);

type Row = readonly string[];

/** Without a row of headings, or of one row, as they are. */
export function withUnits(rows: readonly Row[]): Row[] {
  const [head, ...body] = rows;
  if (!head || body.length === 0) return [...rows];
  const columns = head.map((_, k) => unitsIn(body.map((row) => row[k] ?? '')));
  const inRows = body.map(([, ...cells]) => unitsIn(cells));
  const along = columns.slice(1).some((units) => units.size > 1) && inRows.every((units) => units.size <= 1);
  const byColumn = columns.map(oneOf);
  const byRow = inRows.map(oneOf);
  if (along)
    return [
      head,
      ...body.map(([name, ...cells], i) => [
        titled(name ?? '', byRow[i]!),
        ...cells.map((cell) => bare(cell, byRow[i]!)),
      ]),
    ];
  return [
    head.map((title, k) => titled(title, byColumn[k]!)),
    ...body.map((row) => row.map((cell, k) => bare(cell, byColumn[k]!))),
  ];
}

const titled = (title: string, unit: string | null) => (unit ? `${title}, ${unit}` : title);

/** Without its unit, and with the minus that a spreadsheet knows. */
function bare(cell: string, unit: string | null): string {
  const found = FIGURE.exec(cell);
  return found && (unit || !found[2]) ? found[1]!.replace('−', '-') : cell;
}

/** Units of all figures among cells; null among them for a figure without, or for a name with figures in it. */
const unitsIn = (cells: readonly string[]): Set<string | null> =>
  new Set(cells.filter((cell) => !isWord(cell)).map((cell) => FIGURE.exec(cell)?.[2] ?? null));

/** The one unit of them all, if there is one. */
function oneOf(units: ReadonlySet<string | null>): string | null {
  const [unit] = units;
  return units.size === 1 && unit ? unit : null;
}
