/**
 * The words on the closing chart and where they stand: they do not depend on where the journal is, so a drag leaves
 * them.
 */
import type { ScaleLinear } from 'd3-scale';
import type { Design } from '../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { filmAtPosition, type SeatLines } from '../../report/inFrame.ts';
import { textWidth } from '../pictures/textWidth.ts';
import { type Band, bandsOf, type Curve, type Range } from './chartCurves.ts';
import { type Box, bends, placeBandLabel, placeTags, type Tag, type Tagged } from './chartTags.ts';

export const LABEL = 13;
const LINE = 16;
/** The longest runs of a slope triangle, as shares of the positions shown. */
const RUNS = [0.18, 0.09, 0.045];
/** Of the whole rise: a curve no further off its chord is straight. */
const STRAIGHT = 1e-6;

interface Chart {
  seats: readonly SeatLines[];
  wanted: Design['seats'];
  curves: readonly Curve[];
  range: Range;
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  system: System;
}

export interface PlacedTag extends Tag {
  lines: string[];
}

export interface PlacedBand extends Band {
  top: number;
  middle: number;
  bottom: number;
  text: string;
  /** null: no room; the figures below the chart say it too */
  label: Box | null;
}

export function chartLabels({ seats, wanted, curves, range, x, y, system }: Chart): {
  tags: (PlacedTag | null)[];
  bands: PlacedBand[];
} {
  const [left, right] = x.range() as [number, number];
  const [bottom, top] = y.range() as [number, number];
  const plot: Box = { left, right, top, bottom };
  const lines = curves.map((curve) => bends(curve.map(([p, film]) => [x(p), y(film)] as const)));
  // Rings at the touches, and the ticks' own row, are kept clear by their boxes.
  const rings = curves.flatMap((curve) =>
    crossings(curve).map((p): Box => ({ left: x(p) - 7, right: x(p) + 7, top: y(0) - 7, bottom: y(0) + 7 })),
  );
  const taken: Box[] = [...rings];
  const bands = bandsOf(wanted).map((band): PlacedBand => {
    const edges = {
      top: y(band.target + band.tolerance),
      middle: y(band.target),
      bottom: y(band.target - band.tolerance),
    };
    const text = `${band.seats.map((i) => seats[i]!.name).join(', ')}: ${fineText(band.target, system)} ± ${fineText(band.tolerance, system).replace(/ .*$/, '')} wanted`;
    const label = placeBandLabel(
      { left, right, top: edges.top, bottom: edges.bottom },
      textWidth(text, LABEL),
      LINE,
      lines,
      plot,
      taken,
    );
    if (label) taken.push(label);
    return { ...band, ...edges, text, label };
  });
  const unit = fineUnit(system).size;
  const runs = RUNS.map((share) => roundRun(share * (range[1] - range[0]), unit));
  const told = seats.map((seat, i) => words(seat.name, curves[i]!, runs, system));
  const tagged = seats.map(
    (seat, i): Tagged => ({
      line: lines[i]!,
      at: (px) => {
        const film = filmAtPosition(seat, x.invert(px));
        return film === null ? null : y(film);
      },
      shapes: told[i]!.map(({ lines: text, run }) => ({
        run: x(run) - x(0),
        width: Math.max(...text.map((line, k) => textWidth(line, LABEL, k === 0 ? 700 : 400))) + 2,
        height: LINE * text.length,
      })),
    }),
  );
  const ground = [
    ...bands.map((band): Box => ({ left, right, top: band.top, bottom: band.bottom })),
    { left, right, top: y(0) - 1, bottom: y(0) + 1 },
  ];
  const tags = placeTags(tagged, plot, taken, ground);
  return { bands, tags: tags.map((tag, i) => tag && { ...tag, lines: told[i]![tag.shape]!.lines }) };
}

interface Told {
  lines: string[];
  /** mm */
  run: number;
}

/**
 * Name and slope, with a shorter triangle where there is no room, and then none. A seat whose film does not change says
 * so; one whose slope changes has no one triangle.
 */
function words(name: string, curve: Curve, runs: readonly number[], system: System): Told[] {
  const bare: Told = { lines: [name], run: 0 };
  const first = curve[0];
  const last = curve[curve.length - 1];
  if (!first || !last) return [bare];
  const slope = (last[1] - first[1]) / (last[0] - first[0] || 1);
  if (Math.abs(slope) < 1e-9) return [{ lines: [name, 'stays the same'], run: 0 }, bare];
  const straight = curve.every(
    ([p, film]) => Math.abs(film - first[1] - slope * (p - first[0])) < STRAIGHT * Math.abs(last[1] - first[1]),
  );
  if (!straight) return [bare];
  return [
    ...runs.map((run) => ({
      lines: [name, `${travelText(run, system)} → ${fineText(Math.abs(slope) * run, system)}`],
      run,
    })),
    bare,
  ];
}

const travelText = (run: number, system: System) => {
  const { size, name } = fineUnit(system);
  const count = Number((run / size).toPrecision(1));
  return `${count} ${count === 1 && name === 'tenths' ? 'tenth' : name}`;
};

/** The greatest of 1, 2, 5 × 10ⁿ units not above a length, mm. */
function roundRun(length: number, unit: number): number {
  const power = 10 ** Math.floor(Math.log10(length / unit));
  return ([5, 2, 1].find((n) => n * power * unit <= length) ?? 1) * power * unit;
}

/** Positions at which the film passes nothing. */
function crossings(curve: Curve): number[] {
  return curve.slice(1).flatMap(([p, film], i) => {
    const [before, filmBefore] = curve[i]!;
    return filmBefore * film <= 0 && filmBefore !== film
      ? [before + ((p - before) * filmBefore) / (filmBefore - film)]
      : [];
  });
}
