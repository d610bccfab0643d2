/** Between which films a curve lies 19 times in 20, by all that was read. */
import type { ScaleLinear } from 'd3-scale';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { isSettled } from '../../report/belief/filmTold.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { curvePath } from './Axes.tsx';
import type { Curve } from './chartCurves.ts';

/** mm, from the film that is drawn; hardly anything of it follows the position. */
interface Doubt {
  low: number;
  high: number;
}

/** Null where it is not to be had at this position, or the pair was moved far since it was worked out. */
export function doubtOf(belief: BeliefReport | null, fit: FitReport, seat: string): Doubt | null {
  const film = belief && isSettled(belief) ? belief.films[seat] : null;
  const drawn = fit.seats.find(({ name }) => name === seat);
  if (!belief || !film || !drawn || drawn.leastFilm === null || drawn.sensitivity === null) return null;
  const there = drawn.leastFilm + (belief.position - fit.position) * drawn.sensitivity;
  return { low: film.low - there, high: film.high - there };
}

interface Props {
  curve: Curve;
  doubt: Doubt | null;
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
}

export function DoubtBand({ curve, doubt, x, y }: Props) {
  const there = curve.filter(([, film]) => Number.isFinite(film));
  if (!doubt || there.length < 2) return null;
  const side = (by: number): Curve => there.map(([position, film]) => [position, film + by]);
  const [over, under] = [side(doubt.high), side(doubt.low).reverse()];
  return <path d={`${curvePath(over, x, y)}L${curvePath(under, x, y).slice(1)}Z`} className="doubt" />;
}
