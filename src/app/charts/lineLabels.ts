/** Where the names of a level and of places along the axis stand on a line chart: clear of curves and each other. */
import type { Box } from './Axes.tsx';

/** px: height of a line of such a name, and its distance from what it names. */
const LINE = 17;
const GAP = 5;
/** Of a font as large as this, px. */
export const NAME_SIZE = 13;

type Pixel = readonly [x: number, y: number];

interface Named {
  /** px: of a level the place up the page, else the place across it */
  at: number;
  text: string;
}

export interface PlacedName {
  text: string;
  x: number;
  /** of its foot */
  y: number;
  anchor: 'start' | 'end';
}

interface Room {
  plot: Box;
  /** every curve, point by point; a point that is no number parts it */
  curves: readonly (readonly Pixel[])[];
  level: Named | null;
  /** lines that stand upright: their names keep off each other's lines too */
  upright: readonly Named[];
  width(text: string): number;
}

interface Place extends PlacedName {
  left: number;
  right: number;
}

/** In the order given, the level last; each where least is in its way, the first of those that are as good. */
export function namesOn({ plot, curves, level, upright, width }: Room): {
  upright: PlacedName[];
  level: PlacedName | null;
} {
  const taken: Place[] = [];
  const clashes = ({ left, right, y }: Place, own: number) =>
    curves.reduce((sum, points) => sum + crossings(points, { left, right, top: y - LINE + 4, bottom: y + 4 }), 0) +
    10 * taken.filter((one) => one.left < right && left < one.right && Math.abs(one.y - y) < LINE).length +
    10 * upright.filter(({ at }) => at !== own && at > left - 2 && at < right + 2).length +
    100 * (left < plot.left || right > plot.right ? 1 : 0);
  const best = (places: readonly Place[], own: number): Place => {
    const found = places.reduce((a, b) => (clashes(b, own) < clashes(a, own) ? b : a));
    taken.push(found);
    return found;
  };
  const beside = ({ at, text }: Named): Place[] =>
    [plot.bottom - 6, plot.bottom - 6 - LINE, plot.top + LINE, plot.top + 2 * LINE].flatMap((y) => [
      { text, x: at + GAP, y, anchor: 'start' as const, left: at + GAP, right: at + GAP + width(text) },
      { text, x: at - GAP, y, anchor: 'end' as const, left: at - GAP - width(text), right: at - GAP },
    ]);
  const along = ({ at, text }: Named): Place[] =>
    [at - GAP, at + LINE - 2].flatMap((y) => [
      { text, x: plot.right - 4, y, anchor: 'end' as const, left: plot.right - 4 - width(text), right: plot.right - 4 },
      { text, x: plot.left + 4, y, anchor: 'start' as const, left: plot.left + 4, right: plot.left + 4 + width(text) },
    ]);
  return {
    upright: upright.map((named) => best(beside(named), named.at)),
    level: level && best(along(level), Number.NaN),
  };
}

/** How often a curve is met on its way through a box, looked at every few pixels. */
function crossings(
  points: readonly Pixel[],
  { left, right, top, bottom }: { left: number; right: number; top: number; bottom: number },
): number {
  let met = 0;
  for (let i = 1; i < points.length; i++) {
    const [[ax, ay], [bx, by]] = [points[i - 1]!, points[i]!];
    if (!(Math.max(ax, bx) >= left && Math.min(ax, bx) <= right)) continue;
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / GAP));
    for (let k = 0; k <= steps; k++) {
      const [x, y] = [ax + ((bx - ax) * k) / steps, ay + ((by - ay) * k) / steps];
      if (x >= left && x <= right && y >= top && y <= bottom) met++;
    }
  }
  return met;
}
