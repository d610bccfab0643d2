/** The least film before anything warms and once all is warm, against what is cut; and the film both must have. */
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import type { CutPoint } from '../../../report/film/limits.ts';
import { neededFilm } from '../../../report/film/neededFilm.ts';
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

export function neededLevel(design: Design, system: System) {
  const needed = neededFilm(design.run!);
  return { at: needed / fineUnit(system).size, text: `parts the surfaces: ${fineText(needed, system)}` };
}
