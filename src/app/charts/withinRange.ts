/**
 * What of a line lies within a range of its ordinates. A dashed line that runs on far beyond its plot, clipped or not,
 * is painted dash by dash: a hundred of them stop the page for a minute.
 */
import type { Points } from './Axes.tsx';

/** A point that is no number parts it, in what is given and in the answer. */
export function withinRange(points: Points, low: number, high: number): Points {
  const shown: [x: number, y: number][] = [];
  for (let i = 1; i < points.length; i++) {
    const [[x0, y0], [x1, y1]] = [points[i - 1]!, points[i]!];
    if (!Number.isFinite(y0) || !Number.isFinite(y1)) continue;
    // From where to where of the way from one to the next.
    const ends = y0 === y1 ? [0, 1] : [(low - y0) / (y1 - y0), (high - y0) / (y1 - y0)].sort((a, b) => a - b);
    const [from, to] = [Math.max(0, ends[0]!), Math.min(1, ends[1]!)];
    if (from > to || Math.max(y0, y1) < low || Math.min(y0, y1) > high) continue;
    const at = (share: number): [number, number] =>
      share === 0 ? [x0, y0] : share === 1 ? [x1, y1] : [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
    const [start, end] = [at(from), at(to)];
    const last = shown.at(-1);
    if (!last || last[0] !== start[0] || last[1] !== start[1]) {
      if (last) shown.push([start[0], Number.NaN]);
      shown.push(start);
    }
    shown.push(end);
  }
  return shown;
}
