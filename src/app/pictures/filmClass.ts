/**
 * What a film is to a seat that wants one: too thin, right, too thick; nothing where they touch, less where the parts
 * are in each other. Every picture and chart tells them apart by hue, lightness and pattern, the same everywhere.
 */
import type { Metres } from '../../design/dimension.ts';
import { SAME, type Wanted } from '../../report/inFrame.ts';

/** `plain`: no film is wanted there. */
export type FilmClass = 'pressed' | 'touch' | 'thin' | 'right' | 'thick' | 'plain';

/** m: a film nearer to an edge of its tolerance than this is within it, as the verdict says too. */
const EDGE = 1e-12;

export const bandOf = ({ target, tolerance }: Wanted): [low: number, high: number] => [
  target - tolerance - EDGE,
  target + tolerance + EDGE,
];

/** Of a film (m). */
export function classOf(film: Metres, wanted: Wanted | null): FilmClass {
  if (film < -SAME) return 'pressed';
  if (film <= SAME) return 'touch';
  if (!wanted) return 'plain';
  const [low, high] = bandOf(wanted);
  return film < low ? 'thin' : film <= high ? 'right' : 'thick';
}

export const CLASS_TEXT: Record<FilmClass, string> = {
  pressed: 'pressed in',
  touch: 'touches',
  thin: 'too thin',
  right: 'as wanted',
  thick: 'too thick',
  plain: 'film',
};

export interface FilmRun<T> {
  /** its kind, and which of that kind along the seat: what it stays as the film moves */
  name: string;
  kind: FilmClass;
  places: T[];
}

/**
 * A film along its seat in runs of one class, cut exactly where it passes from one to the next. `between` is the place
 * at a share of the way from one to the other; the film between two places is straight.
 */
export function filmRuns<T extends { film: Metres }>(
  places: readonly T[],
  wanted: Wanted | null,
  between: (from: T, to: T, share: number) => T,
): FilmRun<T>[] {
  const edges = [0, ...(wanted ? bandOf(wanted) : [])];
  const runs: FilmRun<T>[] = [];
  const add = (from: T, to: T) => {
    const kind = classOf((from.film + to.film) / 2, wanted);
    const last = runs[runs.length - 1];
    if (last?.kind === kind) last.places.push(to);
    else runs.push({ name: `${kind} ${runs.filter((run) => run.kind === kind).length}`, kind, places: [from, to] });
  };
  for (let i = 1; i < places.length; i++) {
    const [from, to] = [places[i - 1]!, places[i]!];
    const shares = edges
      .map((edge) => (edge - from.film) / (to.film - from.film))
      .filter((share) => share > 0 && share < 1)
      .sort((a, b) => a - b);
    const stops = [from, ...shares.map((share) => between(from, to, share)), to];
    for (let k = 1; k < stops.length; k++) add(stops[k - 1]!, stops[k]!);
  }
  return runs;
}
