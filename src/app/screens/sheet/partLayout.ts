/**
 * Where everything stands on the drawing of a part: as large as it can be with its notes above, its diameters at both
 * ends and its stations below. Stations are running dimensions from the datum, each figure at the foot of its own
 * extension line (ISO 129-1, from memory), so that any number of them takes the same room. Units of the drawing.
 */
import { dimensionRows, type PlacedSpan } from '../../pictures/dimensionRows.ts';
import { spread } from '../../pictures/spread.ts';
import { fitted } from '../../pictures/textWidth.ts';
import { FIGURE, SMALL } from './ink.ts';

/** What is drawn of a part, mm: z along the axis, r from it. */
export interface PartShape {
  left: number;
  right: number;
  /** greatest radius drawn */
  outer: number;
}

export interface StationToTell {
  /** mm: the station, and the radius from which its extension line starts */
  z: number;
  r: number;
  text: string;
  exact: boolean;
  /** whether nobody has measured or typed it; here and below, left out: somebody has */
  assumed?: boolean;
}

export interface DiameterToTell {
  z: number;
  r: number;
  /** size, and its tolerance where it has one */
  lines: readonly string[];
  assumed?: boolean;
}

export interface NoteToTell {
  name: string;
  /** beside the name, with room for the symbol of a taper before it */
  cone: string;
  hasSymbol: boolean;
  /** 1: toward the nose */
  widens: 1 | -1;
  /** below it */
  angle: string;
  assumed?: boolean;
  /** mm: what the leader points at */
  z: number;
  r: number;
}

export interface PartLayout {
  /** units to a mm */
  scale: number;
  x(z: number): number;
  /** above the axis (side 1) or below it (-1) */
  y(r: number, side: 1 | -1): number;
  stations: (StationToTell & { figureAt: number })[];
  /** the line on which the arrow heads of the stations stand, and where their figures begin */
  line: number;
  figures: number;
  rear: PlacedDiameter[];
  nose: PlacedDiameter[];
  notes: PlacedNote[];
  notesEnd: number;
}

export interface PlacedDiameter extends PlacedSpan {
  lines: readonly string[];
  low: number;
  high: number;
  /** where the extension lines start, and the place of the dimension line */
  start: number;
  line: number;
  assumed: boolean;
}

export interface PlacedNote extends NoteToTell {
  x: number;
  lines: [string, string];
  /** to the middle of the symbol from the left end of the first line */
  symbol: number;
}

/** Of a text, its height and its weight. */
export type Width = (text: string, size: number, weight?: number) => number;

const EDGE = 8;
/** Foot of the second line of the notes, and room for their leaders to lean. */
const NOTES_END = 42;
const LETTER_END = 26;
const LEAN = 16;
/** Two lines of figures before a dimension line. */
const FIGURES = 40;
/** From the part to the first dimension line: at the nose its figures stand between; and between two lines. */
const FIRST = { rear: 18, nose: FIGURES + 4 };
const ROW = FIGURES + 2;
/** From the part to the line of the stations, from there to their figures, and past these. */
const TO_LINE = 12;
const TO_FIGURES = 18;
const PAST = 5;
/** Between stations' figures, and between notes. */
const BESIDE = 5;
const APART = 18;
/** Room in the text of a note for the symbol of a taper. */
export const SYMBOL = 24;

const SMALLER = 0.97;
const TRIES = 16;

export function partLayout(
  shape: PartShape,
  tell: { stations: readonly StationToTell[]; diameters: readonly DiameterToTell[]; notes: readonly NoteToTell[] },
  size: { width: number; height: number },
  width: Width,
): PartLayout {
  const middle = (shape.left + shape.right) / 2;
  const ends = {
    rear: tell.diameters.filter(({ z }) => z < middle),
    nose: tell.diameters.filter(({ z }) => z >= middle),
  };
  const side = (count: number, first: number) => EDGE + (count === 0 ? 0 : first + (count - 1) * ROW);
  const room = {
    left: side(ends.rear.length, FIRST.rear + FIGURES),
    right: side(ends.nose.length, FIRST.nose),
    foot: TO_LINE + TO_FIGURES + Math.max(0, ...tell.stations.map(({ text }) => width(text, FIGURE))) + PAST,
  };
  const top = tell.notes.length === 0 ? EDGE + FIGURE : NOTES_END + LEAN;
  const largest = Math.min(
    (size.width - room.left - room.right) / (shape.right - shape.left),
    (size.height - top - room.foot) / (2 * shape.outer),
  );
  const upright = { low: tell.notes.length === 0 ? EDGE : NOTES_END + 4, high: size.height - EDGE };
  const at = (scale: number): PartLayout => {
    const left = room.left + (size.width - room.left - room.right - (shape.right - shape.left) * scale) / 2;
    const axis = top + (size.height - top - 2 * shape.outer * scale - room.foot) / 2 + shape.outer * scale;
    const x = (z: number) => left + (z - shape.left) * scale;
    const y = (r: number, side: 1 | -1) => axis - side * r * scale;
    const rear = placedDiameters(ends.rear, x, y, x(shape.left), -1, upright, width);
    const nose = placedDiameters(ends.nose, x, y, x(shape.right), 1, upright, width);
    const line = y(shape.outer, -1) + TO_LINE;
    // A figure that stands between its extension lines leaves the room below it free.
    const low = rear.filter(({ within }) => !within).map((placed) => placed.line + BESIDE);
    const high = nose.filter(({ within }) => !within).map((placed) => placed.line - FIGURES);
    const beside = { low: Math.max(EDGE, ...low), high: Math.min(size.width - EDGE, ...high) };
    return {
      scale,
      x,
      y,
      stations: placedStations(tell.stations, x, beside),
      line,
      figures: line + TO_FIGURES,
      rear,
      nose,
      notes: placedNotes(tell.notes, x, size.width, width),
      notesEnd: tell.notes.some(({ angle }) => angle !== '') ? NOTES_END : LETTER_END,
    };
  };
  const scales = Array.from({ length: TRIES }, (_, k) => largest * SMALLER ** k);
  const fitting = scales.find((scale) => {
    const { rear, nose } = at(scale);
    return [...rear, ...nose].every(({ from, to }) => from >= upright.low && to <= upright.high);
  });
  return at(fitting ?? largest);
}

function placedDiameters(
  diameters: readonly DiameterToTell[],
  x: (z: number) => number,
  y: (r: number, side: 1 | -1) => number,
  edge: number,
  outward: 1 | -1,
  room: { low: number; high: number },
  width: Width,
): PlacedDiameter[] {
  const spans = diameters.map(({ r, lines }) => ({
    low: y(r, 1),
    high: y(r, -1),
    figure: Math.max(...lines.map((text) => width(text, FIGURE))),
  }));
  return dimensionRows(spans, room).map((placed, i) => ({
    ...placed,
    lines: diameters[i]!.lines,
    assumed: diameters[i]!.assumed === true,
    low: spans[i]!.low,
    high: spans[i]!.high,
    start: x(diameters[i]!.z),
    line: edge + outward * (FIRST[outward < 0 ? 'rear' : 'nose'] + placed.row * ROW),
  }));
}

/** In the order of their stations, each figure as near as can be to the foot of its line. */
function placedStations(
  stations: readonly StationToTell[],
  x: (z: number) => number,
  beside: { low: number; high: number },
): PartLayout['stations'] {
  const sorted = [...stations].sort((a, b) => a.z - b.z);
  const wanted = sorted.map(({ z, exact, assumed }) => ({ at: x(z), size: FIGURE + (exact || assumed ? 4 : 0) }));
  const middles = spread(wanted, beside.low, beside.high, BESIDE) ?? spread(wanted, -1e4, 1e4, 0)!;
  return sorted.map((station, i) => ({ ...station, figureAt: middles[i]! }));
}

/** In the order of what they point at; a name too long for its room is cut. */
function placedNotes(
  notes: readonly NoteToTell[],
  x: (z: number) => number,
  across: number,
  width: Width,
): PlacedNote[] {
  const sorted = [...notes].sort((a, b) => a.z - b.z);
  const room = (across - 2 * EDGE - APART * (sorted.length - 1)) / Math.max(1, sorted.length);
  const bold = (text: string, size: number) => width(text, size, 700);
  const labels = sorted.map((note) => {
    const beside = note.cone === '' ? 0 : width(` ${note.cone}`, FIGURE) + (note.hasSymbol ? SYMBOL : 0);
    const name = fitted(note.name, FIGURE, Math.max(room - beside, 30), bold);
    const lines: [string, string] = [name, note.angle];
    return {
      note,
      lines,
      symbol: bold(name, FIGURE),
      size: Math.max(bold(name, FIGURE) + beside, width(note.angle, SMALL)),
    };
  });
  const wanted = labels.map(({ note, size }) => ({ at: x(note.z), size }));
  const middles =
    spread(wanted, EDGE, across - EDGE, APART) ?? spread(wanted, EDGE, across - EDGE, 0) ?? wanted.map(({ at }) => at);
  return labels.map(({ note, lines, symbol, size }, i) => ({ ...note, lines, symbol, x: middles[i]! - size / 2 }));
}
