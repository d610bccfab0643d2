/**
 * Dimension lines set in rows beside a view, as a drawing office does: the shortest next to the part, none over
 * another, no extension line through a figure. A dimension too short for its figure has its arrow heads outside
 * and the figure beyond one of them. One direction at a time, in pixels along the dimension lines.
 */
export interface Span {
  low: number;
  high: number;
  /** length of the figure */
  figure: number;
}

export interface PlacedSpan {
  row: number;
  /** whether arrow heads and figure stand between the extension lines */
  within: boolean;
  /** middle of the figure */
  figureAt: number;
  /** the dimension line, with what reaches past the extension lines */
  from: number;
  to: number;
}

/** Length of an arrow head, and of the tail of one that stands outside. */
export const ARROW = 9;
export const TAIL = 15;
const SPACE = 6;
/** Least clearance of an extension line from a figure. */
const CLOSE = 3;

const overlaps = (a0: number, a1: number, b0: number, b1: number) => a0 < b1 + SPACE && b0 < a1 + SPACE;

export interface Room {
  low: number;
  high: number;
}

/**
 * Rows from 0, next to the part, outward; in the order of the spans given. Figures beyond their extension lines keep to
 * the room where they can.
 */
export function dimensionRows(spans: readonly Span[], room: Room): PlacedSpan[] {
  const placed: (PlacedSpan | undefined)[] = spans.map(() => undefined);
  const order = spans
    .map((_, i) => i)
    .sort((a, b) => spans[a]!.high - spans[a]!.low - (spans[b]!.high - spans[b]!.low));
  for (const i of order) {
    const span = spans[i]!;
    const lines = linesOf(span, room);
    placed[i] = bestOf(lines, span);
  }
  return placed as PlacedSpan[];

  /**
   * The innermost row that is free; where every row would have a figure pierced, the innermost with room for the line.
   */
  function bestOf(lines: readonly Line[], span: Span): PlacedSpan {
    for (const mayPierce of [false, true]) {
      for (let row = 0; row <= spans.length; row++) {
        const line = lines.find((candidate) => free(row, candidate, span, mayPierce));
        if (line) return { row, ...line };
      }
    }
    throw new Error('a row beyond all others is always free');
  }

  function free(row: number, line: Line, span: Span, mayPierce: boolean): boolean {
    const pierced = (at: number, figureAt: number, figure: number) =>
      !mayPierce && at > figureAt - figure / 2 - CLOSE && at < figureAt + figure / 2 + CLOSE;
    return placed.every((other, k) => {
      if (!other) return true;
      const { low, high, figure } = spans[k]!;
      if (other.row === row) return !overlaps(line.from, line.to, other.from, other.to);
      // The extension lines of the outer row pass through the inner one.
      if (other.row < row)
        return !pierced(span.low, other.figureAt, figure) && !pierced(span.high, other.figureAt, figure);
      return !pierced(low, line.figureAt, span.figure) && !pierced(high, line.figureAt, span.figure);
    });
  }
}

type Line = Omit<PlacedSpan, 'row'>;

/**
 * The figure between the lines where it has room; else beyond the one end or the other, first where the view has room
 * for it.
 */
function linesOf({ low, high, figure }: Span, room: Room): Line[] {
  if (high - low >= figure + 2 * ARROW + SPACE)
    return [{ within: true, figureAt: (low + high) / 2, from: low, to: high }];
  const after = { within: false, figureAt: high + TAIL + figure / 2, from: low - TAIL, to: high + TAIL + figure };
  const before = { within: false, figureAt: low - TAIL - figure / 2, from: low - TAIL - figure, to: high + TAIL };
  if (before.from < room.low) return [after];
  return after.to <= room.high ? [after, before] : [before];
}
