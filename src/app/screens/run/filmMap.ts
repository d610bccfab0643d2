/**
 * The film map: every place in the colour and the lines that its film has in all pictures, ruled across as well where
 * the metals rub. Films are sampled finer than the grid, straight between its places, so that one class ends where the
 * next begins.
 */
import { metres, radians } from '../../../report/convert.ts';
import type { SeatFields } from '../../../report/film/fields.ts';
import type { Wanted } from '../../../report/inFrame.ts';
import { PATTERN } from '../../pictures/FilmPaint.tsx';
import { classOf, type FilmClass } from '../../pictures/filmClass.ts';
import { CLASS_COLOUR, PLAIN, touchColour } from '../../pictures/filmColour.ts';
import type { Held } from './runningFilm.ts';

/** Samples to a place of the grid, each way. */
const FINER = 3;
/** px of a line */
const THICK = 1;
const INK = 'rgb(34 40 44 / 0.6)';
/** Lines over all else where the metals rub. */
const RUBS = { angle: 90, apart: 4 };

type Cells = Pick<SeatFields, 'rows' | 'columns' | 'film'>;

/** Values across and down a map, from its upper left corner. */
export interface Sampled {
  wide: number;
  high: number;
  values: Float64Array;
}

/** Angle 0 is the middle of column 0 and stands at both ends; row 0 is the lowest, its place half a row up. */
export function sampled({ rows, columns, film }: Cells, finer = FINER): Sampled {
  const [wide, high] = [columns * finer, rows * finer];
  const values = new Float64Array(wide * high);
  for (let j = 0; j < high; j++) {
    const up = Math.min(rows - 1, Math.max(0, rows - (j + 0.5) / finer - 0.5));
    const low = Math.min(rows - 1, Math.floor(up));
    const next = Math.min(rows - 1, low + 1);
    for (let i = 0; i < wide; i++) {
      const across = (i + 0.5) / finer;
      const left = Math.floor(across) % columns;
      const right = (left + 1) % columns;
      const at = (row: number) => {
        const [a, b] = [film[left * rows + row]!, film[right * rows + row]!];
        return a + (b - a) * (across - Math.floor(across));
      };
      values[j * wide + i] = at(low) + (at(next) - at(low)) * (up - low);
    }
  }
  return { wide, high, values };
}

/** Stretches of one class, row by row. */
export interface ClassRun {
  kind: FilmClass;
  row: number;
  from: number;
  to: number;
}

/** `values` in mm. */
export function classRunsOf({ wide, high, values }: Sampled, wanted: Wanted | null): ClassRun[] {
  const runs: ClassRun[] = [];
  for (let row = 0; row < high; row++)
    for (let i = 0; i < wide; i++) {
      const kind = classOf(metres(values[row * wide + i]!), wanted);
      const last = runs[runs.length - 1];
      if (i > 0 && last!.kind === kind) last!.to = i + 1;
      else runs.push({ kind, row, from: i, to: i + 1 });
    }
  return runs;
}

export const colourOf = (kind: FilmClass, dark: boolean) =>
  kind === 'touch' ? touchColour(dark) : kind === 'plain' ? PLAIN : CLASS_COLOUR[kind];

/** Whether a film (mm) is oil, and too little to part the metals. */
export const rubs = (film: number, { needed }: Held) => film < needed && !METAL.has(classOf(metres(film), null));
const METAL: ReadonlySet<FilmClass> = new Set(['touch', 'pressed']);

/** `ratio`: dots to a px. */
export function paintFilm(
  context: CanvasRenderingContext2D,
  cells: Cells,
  held: Held,
  ratio: number,
  dark: boolean,
): void {
  const { width, height } = context.canvas;
  const grid = sampled(cells);
  const [wide, high] = [width / grid.wide, height / grid.high];
  const runs = classRunsOf(grid, held.wanted);
  for (const kind of new Set(runs.map((run) => run.kind))) {
    const [r, g, b] = colourOf(kind, dark).map((part) => Math.round(255 * part));
    context.save();
    context.beginPath();
    for (const run of runs)
      if (run.kind === kind) context.rect(run.from * wide, run.row * high, (run.to - run.from) * wide, high);
    context.clip();
    context.fillStyle = `rgb(${r}, ${g}, ${b})`;
    context.fillRect(0, 0, width, height);
    const pattern = PATTERN[kind];
    for (const angle of pattern?.angles ?? []) lines(context, ratio, pattern!.apart, angle);
    context.restore();
  }
  if (!grid.values.some((film) => rubs(film, held))) return;
  context.save();
  context.beginPath();
  grid.values.forEach((film, k) => {
    if (rubs(film, held)) context.rect((k % grid.wide) * wide, Math.floor(k / grid.wide) * high, wide, high);
  });
  context.clip();
  lines(context, ratio, RUBS.apart, RUBS.angle);
  context.restore();
}

/** Upright, turned by an angle (degrees), as in the drawings. */
function lines(context: CanvasRenderingContext2D, ratio: number, apart: number, angle: number): void {
  const { width, height } = context.canvas;
  const reach = Math.hypot(width, height) / 2;
  context.save();
  context.translate(width / 2, height / 2);
  context.rotate(radians(angle));
  context.strokeStyle = INK;
  context.lineWidth = THICK * ratio;
  context.beginPath();
  for (let x = -reach; x <= reach; x += apart * ratio) {
    context.moveTo(x, -reach);
    context.lineTo(x, reach);
  }
  context.stroke();
  context.restore();
}
