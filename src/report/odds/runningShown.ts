/** What the screen draws of the odds of the run: the report so far, and films counted in even steps. */
import type { Design } from '../../design/definition.ts';
import { millimetres } from '../convert.ts';
import type { RunningReport } from './definition.ts';
import type { Counted } from './pictures.ts';
import { type Asked, type Done, runningReport } from './running.ts';

export interface RunningShown {
  report: RunningReport;
  /** by seat: least films from cold to warm, of those that run; null where too few do */
  films: (Counted | null)[];
}

/** Null while nothing that counts is done. */
export function runningShown(design: Design, asked: Asked, done: readonly Done[]): RunningShown | null {
  const report = runningReport(design, asked, done);
  if (!report) return null;
  const runs = done.flatMap(({ piece, block }) =>
    piece.fine ? [] : block.draws.flatMap(({ end, films }) => (end === 'runs' ? [films] : [])),
  );
  return { report, films: design.seats.map((_, i) => countedRuns(runs.map((films) => millimetres(films[i]!)))) };
}

/** Fewer films than this make no shape. */
const FEW = 16;
const MOST_STEPS = 36;

/** As many steps as so many films fill: 2·n^⅓. @source practice */
export function countedRuns(films: readonly number[]): Counted | null {
  const count = films.length;
  if (count < FEW) return null;
  const [low, high] = films.reduce(([a, b], x) => [Math.min(a, x), Math.max(b, x)], [Infinity, -Infinity]);
  const steps = Math.min(MOST_STEPS, Math.round(2 * Math.cbrt(count)));
  const step = Math.max((high - low) / steps, 1e-9);
  const times = new Array<number>(steps).fill(0);
  for (const film of films) times[Math.min(steps - 1, Math.floor((film - low) / step))]!++;
  return { from: low, step, shares: times.map((n) => n / count), below: 0, above: 0, touching: 0 };
}
