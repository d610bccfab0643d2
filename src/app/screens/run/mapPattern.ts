/**
 * Lines over a film map, which grey paper and any eye keep: across where there is less film than parts the surfaces,
 * crossed where the parts are pressed into each other. The same lines as on a film too thin in the other pictures.
 */
import type { SeatFields } from '../../../report/film/fields.ts';

/** px on the screen, from line to line and across one */
const APART = 5;
const THICK = 1;
const INK = 'rgb(34 40 44 / 0.6)';

type Cells = Pick<SeatFields, 'rows' | 'columns' | 'film'>;

/** Cells of a map that are lined, by what they are: place among the values of the field. */
export function linedCells({ film }: Cells, needed: number): { thin: number[]; pressed: number[] } {
  const [thin, pressed]: [number[], number[]] = [[], []];
  film.forEach((value, i) => {
    if (value < 0) pressed.push(i);
    else if (value < needed) thin.push(i);
  });
  return { thin, pressed };
}

/** `needed`: the film that parts the surfaces, in the unit of the field; `ratio`: dots to a px. */
export function patternFilm(context: CanvasRenderingContext2D, cells: Cells, needed: number, ratio: number): void {
  const { thin, pressed } = linedCells(cells, needed);
  within(context, cells, thin, () => lines(context, ratio, 0));
  within(context, cells, pressed, () => {
    lines(context, ratio, Math.PI / 4);
    lines(context, ratio, -Math.PI / 4);
  });
}

/** Angle 0 is the middle of column 0, which stands at both ends of the page. */
function within(context: CanvasRenderingContext2D, { rows, columns }: Cells, places: number[], draw: () => void): void {
  if (places.length === 0) return;
  const [wide, high] = [context.canvas.width / columns, context.canvas.height / rows];
  context.save();
  context.beginPath();
  for (const place of places) {
    const [column, row] = [Math.floor(place / rows), place % rows];
    for (const turn of column === 0 ? [0, columns] : [0])
      context.rect((column + turn - 0.5) * wide, (rows - 1 - row) * high, wide, high);
  }
  context.clip();
  draw();
  context.restore();
}

function lines(context: CanvasRenderingContext2D, ratio: number, angle: number): void {
  const { width, height } = context.canvas;
  const reach = Math.hypot(width, height) / 2;
  context.save();
  context.translate(width / 2, height / 2);
  context.rotate(angle);
  context.strokeStyle = INK;
  context.lineWidth = THICK * ratio;
  context.beginPath();
  for (let y = -reach; y <= reach; y += APART * ratio) {
    context.moveTo(-reach, y);
    context.lineTo(reach, y);
  }
  context.stroke();
  context.restore();
}
