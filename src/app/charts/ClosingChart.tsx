/** Least film of every seat against axial position: two slopes, where each touches, where each has its film. */

import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { type CSSProperties, useId, useMemo } from 'react';
import { useStore } from 'zustand';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { metres, micrometres } from '../../report/convert.ts';
import { fitOf } from '../../report/fit/fitOf.ts';
import type { SeatLines, Wanted } from '../../report/inFrame.ts';
import { axialValues } from '../pictures/axialValues.ts';
import { classOf } from '../pictures/filmClass.ts';
import { CLASS_COLOUR, cssColour } from '../pictures/filmColour.ts';
import { useAxialMove } from '../pictures/useMove.ts';
import type { Work } from '../state/store.ts';
import { AcrossAxis, AxisNames, across, curvePath, LineNames, PlotClip, UpAxis, usePlot } from './Axes.tsx';
import { ChartBands, ChartTag, OffChart } from './ChartMarks.tsx';
import { type Curve, curveOf, filmsShown, goodStretch, type Range } from './chartCurves.ts';
import { chartLabels } from './chartLabels.ts';
import { holdsCurves } from './curveTables.ts';
import { DoubtBand, doubtOf } from './DoubtBand.tsx';
import { useHeldRange } from './useHeldRange.ts';

interface Props {
  seats: readonly SeatLines[];
  work: Work;
  /** how far the films may be other than drawn, where something was read */
  belief?: BeliefReport | null;
}

/** Above the plot a line for the axis and one for what is off the chart; below it the same with the ticks between. */
const MARGIN = { left: 52, right: 16, top: 46, bottom: 62 };

export default function ClosingChart({ seats, work, belief = null }: Props) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const fit = fitOf(design);
  const id = useId();
  const { box, width, height, plot } = usePlot(MARGIN, { width: 800, height: 400 }, (w) => (w < 500 ? 360 : 400));
  const unit = fineUnit(system);
  const [low, high] = useHeldRange(design, fit, work);
  const wanted = design.seats;
  const { curves, x, y, labels, top, bottom } = useMemo(() => {
    const range: Range = [low, high];
    const curves = seats.map((seat) => curveOf(seat, range));
    const [bottom, top] = filmsShown(curves, wanted);
    const x = scaleLinear(range, [MARGIN.left, width - MARGIN.right]);
    const y = scaleLinear([bottom, top], [height - MARGIN.bottom, MARGIN.top]);
    return { curves, x, y, top, bottom, labels: chartLabels({ seats, wanted, curves, range, x, y, system }) };
  }, [seats, wanted, low, high, width, height, system]);

  const move = useAxialMove(work, fit, () => (high - low) / (plot.right - plot.left));
  const tableOf = () => ({
    across: `position, ${unit.name}`,
    up: `least film, ${unit.name}`,
    lines: curves.map((curve, i) => ({
      name: seats[i]!.name,
      points: curve.map(([p, film]) => [p / unit.size, film / unit.size] as const),
    })),
  });
  const path = (curve: Curve) => curvePath(curve, x, y);
  const now = x(fit.position);
  return (
    <figure className="chart" ref={box}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-label="Least film of every seat against axial position; drag sideways to move the journal"
        ref={(drawing) => holdsCurves(drawing, tableOf)}
        {...move.handlers}
      >
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
          <rect
            x={plot.left}
            width={plot.right - plot.left}
            y={y(0)}
            height={Math.max(0, plot.bottom - y(0))}
            className="below"
          />
          <ChartBands bands={labels.bands} plot={plot} id={id} />
          {curves.map((curve, i) => {
            const good = goodStretch(seats[i]!, design.seats[i]!);
            return (
              <g key={seats[i]!.name} className={`seat seat-${i % 4}`}>
                <DoubtBand curve={curve} doubt={doubtOf(belief, fit, seats[i]!.name)} x={x} y={y} />
                {good.length === 2 && <path d={path(good)} className="within" />}
                <path d={path(curve)} className="curve" />
              </g>
            );
          })}
        </g>
        {fit.seats.map((seat, i) => (
          <g key={seat.name} className={`seat seat-${i % 4}`}>
            {seat.seatPosition !== null && seat.seatPosition >= low && seat.seatPosition <= high && (
              <circle cx={x(seat.seatPosition)} cy={y(0)} r={5} className="touch-point" />
            )}
          </g>
        ))}
        <g
          role="slider"
          tabIndex={0}
          className="now"
          aria-label="Axial position of the journal, on the chart"
          aria-valuenow={micrometres(fit.position)}
          {...axialValues(fit, system)}
          onKeyDown={move.onKeyDown}
        >
          <rect x={now - 20} y={plot.top} width={40} height={plot.bottom - plot.top} className="grip" />
          <path d={`M${now} ${plot.top}V${plot.bottom}`} />
          {fit.seats.map(
            (seat, i) =>
              seat.leastFilm !== null &&
              seat.leastFilm <= top &&
              seat.leastFilm >= bottom && (
                <circle
                  key={seat.name}
                  cx={now}
                  cy={y(seat.leastFilm)}
                  r={5}
                  className={`dot seat-${i % 4}`}
                  style={dotStyle(seat.leastFilm, seats[i]!.wanted)}
                />
              ),
          )}
        </g>
        {labels.tags.map((tag, i) => tag && <ChartTag key={seats[i]!.name} tag={tag} seat={i} />)}
        <OffChart fit={fit} shown={[bottom, top]} now={now} plot={plot} system={system} />
      </svg>
      <LineNames
        names={fit.seats.map(({ name, sensitivity }, i) => ({ name, style: i, told: travelText(sensitivity, system) }))}
      >
        <span>
          hatched: film wanted · thick: where the seat has it · ring: first touch · triangle: film for travel
          {belief && ' · pale: 19 times in 20, by what was read'}
        </span>
      </LineNames>
    </figure>
  );
}

/** Of the same colour as the film in every picture. */
function dotStyle(film: number, wanted: Wanted | null): CSSProperties | undefined {
  const kind = classOf(metres(film), wanted);
  return kind === 'plain' ? undefined : { fill: cssColour(CLASS_COLOUR[kind]) };
}

function travelText(sensitivity: number | null, system: System): string {
  if (sensitivity === null) return '';
  if (Math.abs(sensitivity) < 1e-9) return ': the same film at every position';
  const { size, name } = fineUnit(system);
  return `: ${fineText(Math.abs(sensitivity) * 10 * size, system)} of film for 10 ${name} of travel`;
}
