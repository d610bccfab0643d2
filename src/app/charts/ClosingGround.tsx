/** What of the closing chart stands still while the journal moves: axes, bands, curves, where each seat touches. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { memo, useId } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import type { SeatFitReport } from '../../report/fit/definition.ts';
import type { SeatLines } from '../../report/inFrame.ts';
import {
  AcrossAxis,
  AxisNames,
  across,
  BelowNought,
  type Box,
  curvePath,
  LineNames,
  PlotClip,
  UpAxis,
} from './Axes.tsx';
import { ChartBands, ChartTag } from './ChartMarks.tsx';
import { type Curve, curveOf, filmsShown, goodStretch, type Range } from './chartCurves.ts';
import { chartLabels } from './chartLabels.ts';
import { DoubtBand, type doubtOf } from './DoubtBand.tsx';

/** Above the plot a line for the axis and one for what is off the chart; below it the same with the ticks between. */
export const MARGIN = { left: 52, right: 16, top: 46, bottom: 62 };

export function closingDrawing(
  seats: readonly SeatLines[],
  wanted: Design['seats'],
  range: Range,
  width: number,
  height: number,
  system: System,
) {
  const curves = seats.map((seat) => curveOf(seat, range));
  const [bottom, top] = filmsShown(curves, wanted);
  const x = scaleLinear(range, [MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear([bottom, top], [height - MARGIN.bottom, MARGIN.top]);
  const labels = chartLabels({ seats, wanted, curves, range, x, y, system });
  return { wanted, range, width, curves, x, y, top, bottom, labels };
}
export type ClosingDrawing = ReturnType<typeof closingDrawing>;

interface Props {
  seats: readonly SeatLines[];
  fits: readonly SeatFitReport[];
  doubts: readonly ReturnType<typeof doubtOf>[] | null;
  drawing: ClosingDrawing;
  plot: Box;
  height: number;
  system: System;
}

export const ClosingGround = memo(function ClosingGround({
  seats,
  fits,
  doubts,
  drawing,
  plot,
  height,
  system,
}: Props) {
  const { wanted, range, width, curves, x, y, top, bottom, labels } = drawing;
  const [low, high] = range;
  const id = useId();
  const unit = fineUnit(system);
  const path = (curve: Curve) => curvePath(curve, x, y);
  return (
    <>
      <PlotClip id={`${id}plot`} plot={plot} />
      <UpAxis plot={plot} at={y} ticks={ticks(bottom / unit.size, top / unit.size, 5)} unit={unit.size} />
      <AcrossAxis
        plot={plot}
        at={x}
        ticks={ticks(low / unit.size, high / unit.size, across(width))}
        unit={unit.size}
        below={34}
      />
      <AxisNames
        plot={plot}
        height={height}
        up={`least film, ${unit.name}`}
        across={`position, ${unit.name} · ← rearward · noseward →`}
      />
      <g clipPath={`url(#${id}plot)`}>
        <BelowNought plot={plot} at={y} />
        <ChartBands bands={labels.bands} plot={plot} id={id} />
        {curves.map((curve, i) => {
          const good = goodStretch(seats[i]!, wanted[i]!);
          return (
            <g key={seats[i]!.name} className={`seat seat-${i % 4}`}>
              <DoubtBand curve={curve} doubt={doubts?.[i] ?? null} x={x} y={y} />
              {good.length === 2 && <path d={path(good)} className="within" />}
              <path d={path(curve)} className="curve" />
            </g>
          );
        })}
      </g>
      {fits.map((seat, i) => (
        <g key={seat.name} className={`seat seat-${i % 4}`}>
          {seat.seatPosition !== null && seat.seatPosition >= low && seat.seatPosition <= high && (
            <circle cx={x(seat.seatPosition)} cy={y(0)} r={5} className="touch-point" />
          )}
        </g>
      ))}
    </>
  );
});

export const ClosingTags = memo(function ClosingTags({
  seats,
  labels,
}: Pick<Props, 'seats'> & Pick<ClosingDrawing, 'labels'>) {
  return labels.tags.map((tag, i) => tag && <ChartTag key={seats[i]!.name} tag={tag} seat={i} />);
});

interface LegendProps {
  fits: readonly SeatFitReport[];
  believed: boolean;
  system: System;
}

export const ClosingLegend = memo(function ClosingLegend({ fits, believed, system }: LegendProps) {
  return (
    <LineNames
      names={fits.map(({ name, sensitivity }, i) => ({ name, style: i, told: travelText(sensitivity, system) }))}
    >
      <span>
        hatched: film wanted · yellow: where the seat has it · blue: it touches · triangle: film for travel
        {believed && ' · pale: 19 times in 20, by what is known'}
      </span>
    </LineNames>
  );
});

function travelText(sensitivity: number | null, system: System): string {
  if (sensitivity === null) return '';
  if (Math.abs(sensitivity) < 1e-9) return ': the same film at every position';
  const { size, name } = fineUnit(system);
  return `: ${fineText(Math.abs(sensitivity) * 10 * size, system)} of film for 10 ${name} of travel`;
}
