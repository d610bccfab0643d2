/**
 * Where everything of the section stands on the screen: the scale that leaves room for notes and dimensions,
 * the dimension rows below and at both ends, the notes above. Pixels, x to the right, y down.
 */

import type { Millimetres } from '../../design/dimension.ts';
import { millimetres } from '../../report/convert.ts';
import { ARROW, dimensionRows, type PlacedSpan, type Room } from './dimensionRows.ts';
import type { AngleDimension, DiameterDimension, Dimensions, LengthDimension } from './dimensions.ts';
import type { Point } from './drawn.ts';
import type { SectionFrame } from './sectionFrame.ts';
import type { Size } from './useSize.ts';
import type { View } from './useView.ts';

/** Heights of lettering, px. */
export const NOTE = 14;
export const FIGURE = 12;
/** Between dimension lines, and from the part to the first. */
const ROW = 20;
const FIRST_ROW = 20;
const LINE = 18;
/** Half the handle at the end of the nose. */
const HANDLE = 12;
const BAR_ROOM = 42;
const EDGE = 8;
/** Room for leaders to lean from the seat to their label. */
export const LEAN = 20;

/** How much is dimensioned, from everything to nothing; the most that still leaves the parts large is taken. */
const LEVELS = ['full', 'figures', 'sizes', 'overall', 'none'] as const;
export type Level = (typeof LEVELS)[number];
/** The least share of the undimensioned scale at which the parts are still large. */
const LARGE = 0.6;

export interface Placing {
  level: Level;
  /** px to one mm */
  scale: number;
  /** px: where the middle of the bush on the axis stands */
  middle: { x: number; y: number };
  /** mm: the station there */
  station: number;
  /** px: lowest line of the notes */
  notesEnd: number;
}

export interface Measures {
  width(text: string, size: number): number;
}

export interface SpanOnScreen extends PlacedSpan {
  name: string;
  text: string;
  low: number;
  high: number;
  /** where the extension lines start: the other coordinate of both ends */
  starts: [number, number];
  /** the other coordinate of the dimension line */
  line: number;
  /** whether nobody has measured or typed it */
  assumed: boolean;
}

/** The placing of the whole view; zoom and pan go on top of it. */
export function placing(frame: SectionFrame, dimensions: Dimensions | null, size: Size, measures: Measures): Placing {
  const bare = placed(frame, null, 'none', size, measures);
  if (!dimensions) return bare;
  for (const level of LEVELS) {
    const at = placed(frame, dimensions, level, size, measures);
    if (at.scale >= LARGE * bare.scale && roomy(frame, dimensions, at, size, measures)) return at;
  }
  return bare;
}

function placed(
  frame: SectionFrame,
  dimensions: Dimensions | null,
  level: Level,
  size: Size,
  measures: Measures,
): Placing {
  const notesEnd = EDGE + (level === 'none' ? 1 : 2) * LINE;
  let rows = { bottom: 0, rear: 0, nose: 0 };
  let result: Placing;
  // Fewer pixels to a mm may want more rows, and more rows fewer pixels: it settles at once or nearly.
  for (let turn = 0; ; turn++) {
    const pad = {
      top: notesEnd + LEAN,
      bottom: BAR_ROOM + room(rows.bottom),
      left: EDGE + (rows.rear === 0 ? 0 : room(rows.rear) + FIGURE),
      right: EDGE + room(rows.nose) + HANDLE,
    };
    const along = size.width - pad.left - pad.right;
    const scale = Math.max(
      0.05,
      Math.min(
        along / (frame.right + frame.ahead - frame.left),
        (size.height - pad.top - pad.bottom) / (2 * frame.outer),
      ),
    );
    const middle = {
      x: pad.left + along / 2,
      y: pad.top + (size.height - pad.top - pad.bottom) / 2,
    };
    // In the middle, as far as a journal that stands out has its room.
    const station = Math.max((frame.left + frame.right) / 2, frame.right + frame.ahead - along / 2 / scale);
    result = { level, scale, middle, station, notesEnd };
    if (!dimensions || turn === 3) return result;
    const spans = dimensionsOnScreen(frame, dimensions, result, size, measures);
    const wanted = { bottom: count(spans.lengths), rear: count(spans.rear), nose: count(spans.nose) };
    if (wanted.bottom <= rows.bottom && wanted.rear <= rows.rear && wanted.nose <= rows.nose) return result;
    rows = {
      bottom: Math.max(rows.bottom, wanted.bottom),
      rear: Math.max(rows.rear, wanted.rear),
      nose: Math.max(rows.nose, wanted.nose),
    };
  }
}

const room = (rows: number) => (rows === 0 ? 0 : FIRST_ROW + (rows - 1) * ROW + 4);
const count = (spans: readonly SpanOnScreen[]) => spans.reduce((most, span) => Math.max(most, span.row + 1), 0);

/** A drawn point (m) on the screen, above the axis (side 1) or below it (side -1). */
export const onScreen = (at: Pick<Placing, 'scale' | 'middle' | 'station'>, [z, r]: Point, side: 1 | -1) => ({
  x: at.middle.x + (millimetres(z) - at.station) * at.scale,
  y: at.middle.y - side * millimetres(r) * at.scale,
});

export function dimensionsOnScreen(
  frame: SectionFrame,
  dimensions: Dimensions,
  at: Placing,
  size: Size,
  measures: Measures,
) {
  const { level } = at;
  const lengths =
    level === 'none'
      ? []
      : level === 'full' || level === 'figures'
        ? dimensions.lengths
        : dimensions.lengths.filter((length) => length.overall);
  const diameters = level === 'none' || level === 'overall' ? [] : dimensions.diameters;
  const x = (mm: Millimetres) => at.middle.x + (mm - at.station) * at.scale;
  const edge = {
    bottom: at.middle.y + frame.outer * at.scale,
    left: x(Math.min(frame.left, frame.journalLeft)),
    right: x(Math.max(frame.right, frame.journalRight)),
  };
  const ends = (side: DiameterDimension['side']) => diameters.filter((diameter) => diameter.side === side);
  return {
    lengths: lengthSpans(lengths, at, edge.bottom, { low: edge.left, high: edge.right }, measures),
    rear: diameterSpans(ends('rear'), at, edge.left, -1, size, measures),
    nose: diameterSpans(ends('nose'), at, edge.right, 1, size, measures),
  };
}

function lengthSpans(
  lengths: readonly LengthDimension[],
  at: Placing,
  bottom: number,
  room: Room,
  measures: Measures,
): SpanOnScreen[] {
  const points = lengths.map(({ low, high }) => [onScreen(at, low, -1), onScreen(at, high, -1)] as const);
  const rows = dimensionRows(
    lengths.map(({ text }, i) => ({
      low: points[i]![0].x,
      high: points[i]![1].x,
      figure: measures.width(text, FIGURE),
    })),
    room,
  );
  return rows.map((row, i) => {
    const [low, high] = points[i]!;
    return {
      ...row,
      name: lengths[i]!.name,
      assumed: lengths[i]!.assumed,
      text: lengths[i]!.text,
      low: low.x,
      high: high.x,
      starts: [low.y, high.y],
      line: bottom + FIRST_ROW + row.row * ROW,
    };
  });
}

function diameterSpans(
  diameters: readonly DiameterDimension[],
  at: Placing,
  edge: number,
  outward: 1 | -1,
  size: Size,
  measures: Measures,
): SpanOnScreen[] {
  const texts = diameters.map((diameter) => (at.level === 'full' ? diameter.full : diameter.text));
  const points = diameters.map((diameter) => [onScreen(at, diameter.at, 1), onScreen(at, diameter.at, -1)] as const);
  const rows = dimensionRows(
    texts.map((text, i) => ({ low: points[i]![0].y, high: points[i]![1].y, figure: measures.width(text, FIGURE) })),
    roomUpright(at, size),
  );
  return rows.map((row, i) => {
    const [low, high] = points[i]!;
    return {
      ...row,
      name: diameters[i]!.name,
      assumed: diameters[i]!.assumed,
      text: texts[i]!,
      low: low.y,
      high: high.y,
      starts: [low.x, high.x],
      line: edge + outward * (FIRST_ROW + row.row * ROW + (outward > 0 ? HANDLE : 0)),
    };
  });
}

/**
 * Whether every figure stands in the view and clear of the notes; with its station told, between its extension lines
 * too.
 */
function roomy(frame: SectionFrame, dimensions: Dimensions, at: Placing, size: Size, measures: Measures): boolean {
  const { lengths, rear, nose } = dimensionsOnScreen(frame, dimensions, at, size, measures);
  const upright = roomUpright(at, size);
  return (
    lengths.every(({ from, to }) => from >= 0 && to <= size.width) &&
    [...rear, ...nose].every(
      ({ within, from, to }) => from >= upright.low && to <= upright.high && (within || at.level !== 'full'),
    )
  );
}

const roomUpright = (at: Placing, size: Size) => ({ low: at.notesEnd + LEAN / 2, high: size.height - BAR_ROOM });

export interface AngleOnScreen {
  apex: { x: number; y: number };
  /** end of the reference line parallel to the axis */
  reference: { x: number; y: number };
  radius: number;
  toward: 1 | -1;
  halfAngle: number;
  /** whether the arrow heads stand between the two lines */
  within: boolean;
  text: string;
  assumed: boolean;
  /** middle of the foot of the figure */
  figure: { x: number; y: number };
}

/**
 * The angle at the small end of a line, below the axis; null where it is too small on the screen to be drawn with its
 * figure.
 */
export function angleOnScreen(angle: AngleDimension, at: Placing, measures: Measures): AngleOnScreen | null {
  if (at.level === 'none' || at.level === 'overall') return null;
  const apex = onScreen(at, angle.apex, -1);
  const slant = millimetres(angle.slant) * at.scale;
  const steep = angle.halfAngle > 0.3;
  const radius = steep ? Math.min(60, 1.3 * slant) : Math.min(150, 0.8 * slant);
  const arc = radius * angle.halfAngle;
  const within = arc >= 2 * ARROW;
  const width = measures.width(angle.text, FIGURE);
  // In the journal, between the reference line and the axis.
  const lift = within ? 5 : ARROW + 8;
  if (radius < 20 || apex.y - at.middle.y < lift + FIGURE + 6) return null;
  const reference = { x: apex.x + angle.toward * (radius + 6), y: apex.y };
  const figure = {
    x: within ? apex.x + angle.toward * (4 + Math.max(width, radius) / 2) : apex.x + angle.toward * radius,
    y: apex.y - lift,
  };
  return {
    apex,
    reference,
    radius,
    toward: angle.toward,
    halfAngle: angle.halfAngle,
    within,
    text: angle.text,
    assumed: angle.assumed,
    figure,
  };
}

/** The placing as zoomed and panned. */
export function seenThrough(whole: Placing, { zoom, x, y }: View, { width, height }: Size): Placing {
  const middle = {
    x: width / 2 + (whole.middle.x - width / 2) * zoom + x,
    y: height / 2 + (whole.middle.y - height / 2) * zoom + y,
  };
  return { ...whole, scale: whole.scale * zoom, middle };
}
