/**
 * Where the labels of the closing chart stand: each seat's name with its slope triangle on its own line, each film
 * wanted beside its band, none over a line or another label. Pixels, y down. Tried in turn from left to right, the
 * place furthest from everything taken; one that finds none is left to the legend.
 */
import type { Box } from './Axes.tsx';

export type { Box };

export type Polyline = readonly (readonly [x: number, y: number])[];

/** A line, and what its tag may be: the first of the shapes that finds a place is taken. */
export interface Tagged {
  line: Polyline;
  /** y of the line at x, null where it has none */
  at(x: number): number | null;
  shapes: readonly Shape[];
}

export interface Shape {
  /** run of the triangle, px; 0: no triangle */
  run: number;
  width: number;
  height: number;
}

export interface Tag {
  /** which of the shapes */
  shape: number;
  text: Box;
  /** triangle: both ends on the line and the corner off it */
  from: readonly [number, number];
  to: readonly [number, number];
  corner: readonly [number, number];
}

const CLEAR = 4;
/** px: a bend smaller than this is none. */
const STRAIGHT = 0.02;
const TRIES = 48;
/** Further than this from a line it is no better. */
const FAR = 36;
/** A tag without a triangle may stand this far off its line; nearer is better. */
const STEPS = [0, 12, 24];
/** What standing over something of the ground costs. */
const OVER_GROUND = 24;

/** `taken` is never stood on, `ground` only where there is no better place. */
export function placeTags(
  lines: readonly Tagged[],
  plot: Box,
  taken: readonly Box[],
  ground: readonly Box[],
): (Tag | null)[] {
  const boxes = [...taken];
  // The steepest line first: it is the shortest in the plot and has the fewest places.
  const order = lines.map((_, i) => i).sort((a, b) => steepness(lines[b]!) - steepness(lines[a]!));
  const tags: (Tag | null)[] = lines.map(() => null);
  for (const i of order) {
    let tag: Tag | null = null;
    for (let shape = 0; shape < lines[i]!.shapes.length && !tag; shape++)
      tag = bestTag(i, shape, lines, plot, boxes, ground);
    if (!tag) continue;
    tags[i] = tag;
    boxes.push(tag.text, triangleBox(tag));
  }
  return tags;
}

function steepness({ line }: Tagged): number {
  const [first, last] = [line[0], line[line.length - 1]];
  return first && last ? Math.abs(last[1] - first[1]) / Math.max(1, last[0] - first[0]) : 0;
}

function bestTag(
  own: number,
  shape: number,
  lines: readonly Tagged[],
  plot: Box,
  boxes: readonly Box[],
  ground: readonly Box[],
): Tag | null {
  let best: Tag | null = null;
  let bestScore = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= TRIES; k++) {
    const x = plot.left + ((plot.right - plot.left) * k) / TRIES;
    for (const { tag, off } of tagsAt(lines[own]!, shape, x)) {
      const room = roomOf(tag, own, lines, plot, boxes);
      if (room === 0) continue;
      const score = room - off - (ground.some((box) => apart(tag.text, box) === 0) ? OVER_GROUND : 0);
      if (score > bestScore) [best, bestScore] = [tag, score];
    }
  }
  return best;
}

/** Under the line and over it, the text from the triangle's start or to its end. */
function tagsAt({ at, shapes }: Tagged, shape: number, x: number): { tag: Tag; off: number }[] {
  const { run, width, height } = shapes[shape]!;
  const [y0, y1] = [at(x), at(x + run)];
  if (y0 === null || y1 === null) return [];
  const rising = y1 <= y0;
  return [true, false].flatMap((under) => {
    const corner = [under === rising ? x + run : x, under ? Math.max(y0, y1) : Math.min(y0, y1)] as const;
    return (run === 0 ? STEPS : [0]).flatMap((off) => {
      const top = under ? corner[1] + CLEAR + off : corner[1] - CLEAR - off - height;
      return [x, x + run - width].map((left) => ({
        off,
        tag: {
          shape,
          text: { left, top, right: left + width, bottom: top + height },
          from: [x, y0] as const,
          to: [x + run, y1] as const,
          corner,
        },
      }));
    });
  });
}

const triangleBox = ({ from, to, corner }: Tag): Box => ({
  left: Math.min(from[0], to[0]),
  right: Math.max(from[0], to[0]),
  top: Math.min(from[1], to[1], corner[1]),
  bottom: Math.max(from[1], to[1], corner[1]),
});

/** Pixels to what is nearest, FAR at most; 0 where it would be over something. */
function roomOf(tag: Tag, own: number, lines: readonly Tagged[], plot: Box, boxes: readonly Box[]): number {
  const triangle = triangleBox(tag);
  if (!within(tag.text, plot) || !within(triangle, plot)) return 0;
  if (crosses(lines[own]!.line, tag.text, 1)) return 0;
  let room = FAR;
  for (const box of boxes) room = Math.min(room, apart(tag.text, box), apart(triangle, box));
  for (let i = 0; i < lines.length && room > CLEAR; i++) {
    if (i === own) continue;
    while (room > CLEAR && (crosses(lines[i]!.line, tag.text, room) || crosses(lines[i]!.line, triangle, room)))
      room -= CLEAR;
  }
  return room > CLEAR ? room : 0;
}

const within = (box: Box, plot: Box) =>
  box.left >= plot.left + 2 && box.right <= plot.right - 2 && box.top >= plot.top + 1 && box.bottom <= plot.bottom - 1;

/** Distance between two boxes, 0 where they meet. */
const apart = (a: Box, b: Box) =>
  Math.max(0, Math.max(a.left - b.right, b.left - a.right), Math.max(a.top - b.bottom, b.top - a.bottom));

/** The same line without the points between which it does not bend. */
export function bends(line: Polyline): Polyline {
  const kept: (readonly [number, number])[] = [];
  line.forEach((point, i) => {
    const [before, after] = [kept[kept.length - 1], line[i + 1]];
    if (
      before &&
      after &&
      Math.abs((point[0] - before[0]) * (after[1] - before[1]) - (point[1] - before[1]) * (after[0] - before[0])) <
        STRAIGHT * (after[0] - before[0])
    )
      return;
    kept.push(point);
  });
  return kept;
}

/** Whether a line passes nearer to a box than `near`. */
export function crosses(line: Polyline, { left, top, right, bottom }: Box, near: number): boolean {
  const grown = { left: left - near, top: top - near, right: right + near, bottom: bottom + near };
  for (let i = 1; i < line.length; i++) if (passes(line[i - 1]!, line[i]!, grown)) return true;
  return false;
}

/** Whether a straight piece has a part in a box: what is left of it after each side has cut off its own. */
function passes(
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  { left, top, right, bottom }: Box,
): boolean {
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [x0 - x1, x0 - left],
    [x1 - x0, right - x0],
    [y0 - y1, y0 - top],
    [y1 - y0, bottom - y0],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
    } else if (step > 0) to = Math.min(to, room / step);
    else from = Math.max(from, room / step);
    if (from > to) return false;
  }
  return true;
}

/**
 * A place for the label of a band: just over or under it, clear of every line and of what is there; null where there is
 * none.
 */
export function placeBandLabel(
  band: Box,
  width: number,
  height: number,
  lines: readonly Polyline[],
  plot: Box,
  taken: readonly Box[],
): Box | null {
  for (let k = 0; k <= TRIES; k++) {
    const left = plot.left + 14 + ((plot.right - plot.left - width - 28) * k) / TRIES;
    for (const top of [band.top - height - 1, band.bottom + 1]) {
      const box = { left, top, right: left + width, bottom: top + height };
      if (
        within(box, plot) &&
        lines.every((line) => !crosses(line, box, 2)) &&
        taken.every((other) => apart(box, other) > 0)
      )
        return box;
    }
  }
  return null;
}
