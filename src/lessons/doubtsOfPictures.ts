/** What contradicts itself in what a question draws: its chart, its notes, its layer, or that there is nothing. */
import type { DealtQuestion } from './deal.ts';
import type { Question } from './definition.ts';
import type { Doubt } from './doubts.ts';

/** Of what the line spans: between its points it is drawn straight. */
const STRAIGHT = 0.05;

/** The answer is asked for along the chart, and the line there is what is right. */
export function chartDoubts({ answer }: Question, { curve, right, within }: DealtQuestion): Doubt[] {
  if (answer.kind !== 'number' || !answer.chart || !curve) return [];
  const across = curve.points.map(([x]) => x);
  const [low, high] = [Math.min(...across), Math.max(...across)];
  if (curve.at < low || curve.at > high)
    return [{ path: 'answer.chart.at', message: 'the mark lies outside the chart: between where it begins and ends' }];
  const there = heightAt(curve.points, curve.at);
  const up = curve.points.map(([, y]) => y);
  const near = Math.max(within, STRAIGHT * (Math.max(...up) - Math.min(...up)));
  return Math.abs(there - Number(right)) > near
    ? [{ path: 'answer.chart.up', message: 'where it is asked the line is not at what is right' }]
    : [];
}

function heightAt(points: readonly (readonly [number, number])[], x: number): number {
  const after = Math.max(
    1,
    points.findIndex(([across]) => across >= x),
  );
  const [[x0, y0], [x1, y1]] = [points[after - 1]!, points[after]!];
  return x1 === x0 ? y0 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

export function pictureDoubts({ answer, view }: Question, { from, layer }: DealtQuestion): Doubt[] {
  const { notes = [], setUps = [] } = view;
  const doubts: Doubt[] = notes.flatMap(({ seat }, i) =>
    seat < from.seats.length
      ? []
      : [{ path: `view.notes[${i}].seat`, message: `the design has no seat ${seat}: 0 to ${from.seats.length - 1}` }],
  );
  const readings = from.readings?.length ?? 0;
  if (setUps.some((place) => place >= readings))
    doubts.push({ path: 'view.setUps', message: `the design has no such reading: it has ${readings}` });
  if (layer && Math.min(layer.from, layer.to) < 0)
    doubts.push({ path: 'view.layer', message: 'a layer of oil thinner than nothing cannot be drawn' });
  const chart = answer.kind === 'number' && answer.chart;
  if (!(view.section || view.lenses || view.layer || view.spread || view.print || view.setUps || chart))
    doubts.push({ path: 'view', message: 'nothing is drawn: there is nothing to see once it is let go' });
  return doubts;
}
