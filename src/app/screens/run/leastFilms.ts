/** Film and drag before anything warms and once all is warm, and what both must keep to. */
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { watts } from '../../../report/film/figures.ts';
import type { CutPoint, LimitPoint } from '../../../report/film/limits.ts';
import { neededFilm, SMALL_MOTOR } from '../../../report/film/neededFilm.ts';
import type { Line } from '../../charts/LineChart.tsx';

/** @param unit mm: what the chart counts films in */
export function coldAndWarm(points: readonly CutPoint[], unit: number): Line[] {
  const line = (name: string, style: number, of: (point: CutPoint) => number | null): Line => ({
    name,
    style,
    points: points.map((point) => [point.at, (of(point) ?? Number.NaN) / unit] as const),
  });
  return [line('warm', 0, ({ leastFilm }) => leastFilm), line('cold, as it starts', 1, ({ coldFilm }) => coldFilm)];
}

export function powerColdAndWarm(points: readonly LimitPoint[]): Line[] {
  const line = (name: string, style: number, of: (point: LimitPoint) => number | null): Line => ({
    name,
    style,
    points: points.map((point) => [point.at, of(point) ?? Number.NaN] as const),
  });
  return [line('warm', 0, ({ power }) => power), line('cold, as it starts', 1, ({ coldPower }) => coldPower)];
}

/** Drawn where the drag comes near it: else the curves would lie on the axis. */
export function motorLevel(points: readonly LimitPoint[]) {
  const most = Math.max(0, ...points.flatMap(({ power, coldPower }) => [power ?? 0, coldPower ?? 0]));
  return most > SMALL_MOTOR / 2 ? { at: SMALL_MOTOR, text: `a small motor: ${watts(SMALL_MOTOR)}` } : null;
}

export function neededLevel(design: Design, system: System) {
  const needed = neededFilm(design.run!);
  return { at: needed / fineUnit(system).size, text: `parts the surfaces: ${fineText(needed, system)}` };
}
