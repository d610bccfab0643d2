/**
 * A notebook of readings as a table (RFC 4180): to and from a spreadsheet.
 * Over 300 lines and left whole: what is written and what is read back stand side by side.
 *
 * One row a reading below a row of names; a column that a kind does not have stays empty. A name may say the unit of
 * its column, value (mm), as a table written here does, so that it is read alike in a metric and an inch shop; under
 * a name without one a number alone is in mm (or in inches, where so asked). Any entry may carry its own unit: 0.0002
 * in,
 * 2 tenths, 5 µm. A table without the column `after` was read after all the trials so far. Columns may stand
 * in any order and be parted by commas, semicolons or tabs; with the latter two, decimals may have a comma.
 */
import Papa from 'papaparse';
import { type Design, reading } from '../../design/definition.ts';
import { lengthUnit, plainTyped, type System, type Typed, typedLength } from '../../design/units.ts';
import { validateDesign } from '../../design/validate.ts';
import type { Reading } from './kinds.ts';
import { doneSoFar } from './metalBetween.ts';
import { LENGTHS } from './toReading.ts';

const WORDS = ['kind', 'seat', 'part'] as const;
const ANGLES = ['direction'] as const;
/** Plain numbers. */
const COUNTS = ['after'] as const;
/** A person's own words, and the day; as they stand. */
const TEXTS = ['date', 'stage', 'by', 'note'] as const;
/** Every column, in the order in which they are written. */
export const COLUMNS = [...WORDS, ...LENGTHS, ...ANGLES, ...COUNTS, ...TEXTS] as const;
type Column = (typeof COLUMNS)[number];

export interface TableError {
  /** as the spreadsheet counts them: the row of names is row 1 */
  row: number;
  /** name of the column; empty where the row as a whole is meant */
  column: string;
  message: string;
}

export type Table =
  /** `ignored`: names of columns that are none of ours */
  | { ok: true; readings: Reading[]; ignored: string[] }
  /** `heading`: the row of names that the rows want above them, where they have none */
  | { ok: false; errors: TableError[]; heading?: string };

/** Digits of a number that are its own; the sixteenth and after are what inches and binary fractions leave. */
const DIGITS = 15;

/**
 * Characters, rows and columns of a table: many times a notebook of 5,000 readings. What is more is refused before it
 * is taken apart.
 */
const LONGEST_TABLE = 8_000_000;
const MOST_ROWS = 20_000;
const MOST_COLUMNS = 200;

/**
 * The readings as a table; lengths in mm or inches, directions in degrees, as the names say. A word that a spreadsheet
 * would take for a formula (a seat called =A1) has an apostrophe before it.
 */
export function readingsToCsv(readings: readonly Reading[], system: System = 'metric'): string {
  const { size } = lengthUnit(system);
  const cellOf = (value: string | number | undefined, column: Column) =>
    typeof value === 'number' ? Number((isLength(column) ? value / size : value).toPrecision(DIGITS)) : (value ?? '');
  const rows = readings.map((entry) =>
    COLUMNS.map((column) => {
      const value = (entry as Partial<Record<Column, string | number>>)[column];
      return isText(column) && typeof value === 'string' ? defused(value) : cellOf(value, column);
    }),
  );
  return Papa.unparse(
    [
      COLUMNS.map((column) =>
        isWord(column) || isCount(column) || isText(column)
          ? column
          : `${column} (${isAngle(column) ? 'deg' : system === 'metric' ? 'mm' : 'in'})`,
      ),
      ...rows,
    ],
    { escapeFormulae: true },
  );
}

/**
 * The readings of a table, or everything that is wrong with it. `design` has the seats they name; `bare` says what a
 * number alone is in.
 */
export function readingsFromCsv(text: string, design: Design, bare: System = 'metric'): Table {
  if (text.length > LONGEST_TABLE)
    return refused(`the table has ${text.length} characters; at most ${LONGEST_TABLE} are read`);
  const { delimiter, cells: whole } = tableOf(text);
  const [names = [], ...rows] = whole;
  if (rows.length > MOST_ROWS) return refused(`the table has ${rows.length} rows; at most ${MOST_ROWS} are read`);
  if (names.length > MOST_COLUMNS)
    return refused(`the first row names ${names.length} columns; at most ${MOST_COLUMNS} are read`);
  const heads = names.map((name) => headOf(name, lengthUnit(bare).size));
  const columns = heads.map(({ name }) => name);
  if (isHeadless(columns)) return headless([names, ...rows], delimiter);
  const unknown = unknownErrors(columns);
  const headErrors = [
    ...headerErrors(columns),
    ...heads.flatMap(({ name, wrong }) =>
      wrong === null || !isColumn(name) ? [] : [{ row: 1, column: name, message: wrong }],
    ),
  ];
  if (headErrors.length > 0) return { ok: false, errors: [...unknown, ...headErrors] };
  const errors: TableError[] = [];
  const readings: Record<string, unknown>[] = [];
  // A table that does not speak of trials was read now.
  const now = columns.includes('after') || doneSoFar(design) === 0 ? {} : { after: doneSoFar(design) };
  /** Row of each reading, as the spreadsheet counts. */
  const rowOf: number[] = [];
  rows.forEach((cells, i) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const row = i + 2;
    const surplus = cells.slice(columns.length).find((cell) => cell.trim() !== '');
    if (surplus !== undefined)
      errors.push({ row, column: '', message: `found "${surplus.slice(0, 40)}" beyond the last named column` });
    readings.push({
      ...now,
      ...readingOf(cells, heads, design, (column, message) => errors.push({ row, column, message })),
    });
    rowOf.push(row);
  });
  for (const error of designErrors(design, readings, rowOf, errors)) errors.push(error);
  // A column too many is no harm, unless it is one that is missing under another name.
  if (errors.length > 0 || readings.length === 0) errors.push(...unknown);
  if (errors.length > 0) return { ok: false, errors: errors.sort((a, b) => a.row - b.row) };
  return { ok: true, readings: readings as unknown as Reading[], ignored: unknown.map(({ column }) => column) };
}

const refused = (message: string): Table => ({ ok: false, errors: [{ row: 1, column: '', message }] });

/** The cells; parted by what parts the names, since a comma may be a decimal sign below them. */
function tableOf(text: string): { delimiter: string; cells: string[][] } {
  const plain = text.replace(/^\uFEFF/, '');
  const head = plain.split(/\r?\n/, 1)[0]!;
  const delimiter = ['\t', ';'].find((sign) => head.includes(sign)) ?? ',';
  return { delimiter, cells: Papa.parse<string[]>(plain, { delimiter }).data };
}

/** A first row that names no column but has a kind of reading, or a number, in it: rows that begin at once. */
const isHeadless = (first: readonly string[]): boolean =>
  !first.some((cell) => isColumn(cell)) &&
  first.some((cell) => ownColumns(cell) !== null || /^[−+-]?[.,]?\d/.test(cell));

const isWord = (column: string) => (WORDS as readonly string[]).includes(column);
const isAngle = (column: string) => (ANGLES as readonly string[]).includes(column);
const isCount = (column: string) => (COUNTS as readonly string[]).includes(column);
const isText = (column: string) => (TEXTS as readonly string[]).includes(column);

/** An apostrophe keeps a spreadsheet from reckoning; words that have one of their own there get another. */
const defused = (text: string) => (/^'*[=+\-@\t\r]/.test(text) ? `'${text}` : text);
const undefused = (cell: string) => (/^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell);
const isLength = (column: string) => !isWord(column) && !isAngle(column) && !isCount(column) && !isText(column);

/** The name of a column, what a number alone below it is in (mm), and what is wrong with its unit. */
interface Head {
  name: string;
  size: number;
  wrong: string | null;
}

function headOf(cell: string, bare: number): Head {
  const whole = cell.trim().toLowerCase();
  const bracket = /[)\]]$/.test(whole) ? Math.max(whole.lastIndexOf('('), whole.lastIndexOf('[')) : -1;
  const name = bracket < 0 ? whole : whole.slice(0, bracket).trim();
  const unit = bracket < 0 ? undefined : whole.slice(bracket + 1, -1).trim();
  if (unit === undefined || unit === '' || !isLength(name)) return { name, size: bare, wrong: null };
  const one = typedLength(`1 ${unit}`, bare);
  return one.ok ? { name, size: one.value, wrong: null } : { name, size: bare, wrong: one.message };
}

const isColumn = (name: string) => (COLUMNS as readonly string[]).includes(name);

const KINDS: readonly string[] = reading.def.options.flatMap(({ shape }) => shape.kind.def.values as readonly string[]);

/** What a kind must be told, in the order of the columns; null where there is no such kind. */
function ownColumns(kind: string): Column[] | null {
  const option = reading.def.options.find(({ shape }) =>
    (shape.kind.def.values as readonly string[]).some((name) => name.toLowerCase() === kind.toLowerCase()),
  );
  return option ? COLUMNS.filter((column) => column in option.shape && !isCount(column) && !isText(column)) : null;
}

/**
 * Said once, with the heading that goes over these rows: that of the kinds they begin with, or of a table of every
 * kind.
 */
function headless(rows: readonly string[][], delimiter: string): Table {
  const kinds = new Set(rows.map(([kind = '']) => kind.trim()).filter((kind) => kind !== ''));
  const wanted = new Set([...kinds].flatMap((kind) => ownColumns(kind) ?? []));
  const widest = Math.max(...rows.map((row) => row.length));
  // All columns where the rows are those of a whole table, or begin with no kind.
  const columns =
    wanted.size === 0 || widest === COLUMNS.length ? [...COLUMNS] : COLUMNS.filter((column) => wanted.has(column));
  const heading = columns.join(delimiter);
  return {
    ok: false,
    errors: [
      {
        row: 1,
        column: '',
        message: `there is no heading: the first row must name the columns, here ${heading.replaceAll('\t', ' ⇥ ')}`,
      },
    ],
    heading,
  };
}

function headerErrors(columns: readonly string[]): TableError[] {
  if (columns.every((name) => name === ''))
    return [{ row: 1, column: '', message: `the first row must name the columns: ${COLUMNS.join(', ')}` }];
  const errors: TableError[] = [];
  columns.forEach((name, i) => {
    if (isColumn(name) && columns.indexOf(name) < i)
      errors.push({ row: 1, column: name, message: `column "${name}" stands here a second time` });
  });
  for (const name of ['kind', 'value', 'sigma'])
    if (!columns.includes(name)) errors.push({ row: 1, column: name, message: `column "${name}" is missing` });
  return errors;
}

/** Columns that are none of ours, each once. */
const unknownErrors = (columns: readonly string[]): TableError[] =>
  [...new Set(columns)].flatMap((name) =>
    name === '' || isColumn(name)
      ? []
      : [
          {
            row: 1,
            column: name,
            message: `no column is called "${name.slice(0, 40)}"; they are ${COLUMNS.join(', ')}`,
          },
        ],
  );

/** A word of ours, or the name of a seat, in whatever capitals it was written; as it stands where it is none. */
function wordOf(column: string, cell: string, design: Design): string {
  const words =
    column === 'seat' ? design.seats.map(({ name }) => name) : column === 'part' ? ['journal', 'bush'] : KINDS;
  if (words.includes(cell)) return cell;
  // The apostrophe that keeps a spreadsheet from reckoning.
  if (/^'[=+\-@]/.test(cell)) return wordOf(column, cell.slice(1), design);
  const alike = words.filter((word) => word.toLowerCase() === cell.toLowerCase());
  return alike.length === 1 ? alike[0]! : cell;
}

function readingOf(
  cells: readonly string[],
  heads: readonly Head[],
  design: Design,
  say: (column: string, message: string) => void,
): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  heads.forEach(({ name: column, size }, i) => {
    const cell = cells[i]?.trim() ?? '';
    if (!isColumn(column) || cell === '') return;
    if (isWord(column)) {
      found[column] = wordOf(column, cell, design);
      return;
    }
    if (isText(column)) {
      found[column] = column === 'date' ? isoDay(cell) : undefused(cell);
      return;
    }
    const written = cell.replace('−', '-');
    const typed = isCount(column)
      ? typedCount(written)
      : isAngle(column)
        ? typedDegrees(written)
        : typedLength(written, size);
    if (typed.ok) found[column] = typed.value;
    else {
      say(column, typed.message);
      // Not missing: wrong, and said.
      found[column] = Number.NaN;
    }
  });
  return found;
}

/** The day as the file has it, where a spreadsheet wrote it year/month/day or day.month.year; else as it stands. */
function isoDay(cell: string): string {
  const [, year, month, day] = /^(\d{4})[/.](\d{1,2})[/.](\d{1,2})$/.exec(cell) ?? [];
  const [, d, m, y] = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(cell) ?? [];
  const parts = year ? [year, month!, day!] : y ? [y, m!, d!] : null;
  return parts ? parts.map((part) => part.padStart(2, '0')).join('-') : cell;
}

function typedCount(text: string): Typed {
  return /^\d+$/.test(text)
    ? { ok: true, value: Number(text) }
    : { ok: false, message: `found "${text}"; type a whole number of trials` };
}

function typedDegrees(text: string): Typed {
  const plain = plainTyped(text);
  if (!plain.ok) return plain;
  const match = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?) ?(?:°|deg|d)?$/i.exec(plain.text);
  return match
    ? { ok: true, value: Number(match[1]!.replace(',', '.')) }
    : { ok: false, message: `found "${text}"; type degrees` };
}

/** What the rules of the design file say against the readings, by row and column. */
function designErrors(
  design: Design,
  readings: readonly Record<string, unknown>[],
  rowOf: readonly number[],
  said: readonly TableError[],
): TableError[] {
  const result = validateDesign({ ...design, readings });
  if (result.ok) return [];
  const told = new Set(said.map(({ row, column }) => `${row} ${column}`));
  return result.errors.flatMap(({ path, message }) => {
    const place = /^readings(?:\[(\d+)\](?:\.(\w+))?)?$/.exec(path);
    if (!place) return [];
    const row = place[1] === undefined ? 1 : rowOf[Number(place[1])]!;
    const column = place[2] ?? '';
    return told.has(`${row} ${column}`) ? [] : [{ row, column, message }];
  });
}
