/** The closing chart as a cloud: the least films of pairs drawn against position, over the films wanted. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useId, useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineUnit, type System } from '../../../design/units.ts';
import { filmAtPosition, type SeatInput, seatLines } from '../../../report/inFrame.ts';
import type { StateReport } from '../../../report/odds/definition.ts';
import {
  AcrossAxis,
  AxisNames,
  across,
  BelowNought,
  ChartFigure,
  curvePath,
  LineNames,
  PlotClip,
  type Points,
  UpAxis,
  usePlot,
} from '../../charts/Axes.tsx';
import { bandsOf } from '../../charts/chartCurves.ts';
import { withinRange } from '../../charts/withinRange.ts';

interface Props {
  design: Design;
  state: StateReport;
  pairs: readonly SeatInput[][];
  system: System;
}

const MARGIN = { left: 52, right: 16, top: 26, bottom: 46 };
const SAMPLES = 24;
/** Films shown, in those wanted. */
const SHOWN = { above: 3, below: 0.7 };
/** mm, of position to either side at least; and of film where none is wanted */
const AROUND = 0.01;
const FILM = 0.003;

export function Cloud({ design, state, pairs, system }: Props) {
  const id = useId();
  const { box, width, height, plot } = usePlot(MARGIN, { width: 620, height: 400 }, (w) => (w < 500 ? 330 : 400));
  const unit = fineUnit(system);
  const [low, high] = rangeOf(state);
  const most = Math.max(FILM, ...design.seats.map(({ film }) => (film ? film.target + (film.tolerance ?? 0) : 0)));
  const [bottom, top] = [-SHOWN.below * most, SHOWN.above * most];
  // Lines end out of sight.
  const pad = (top - bottom) / 20;
  const curves = useMemo(() => curvesOf(pairs, low, high), [pairs, low, high]);
  const x = scaleLinear([low, high], [plot.left, plot.right]);
  const y = scaleLinear([bottom, top], [plot.bottom, plot.top]);
  return (
    <ChartFigure
      box={box}
      className="cloud"
      size={{ width, height }}
      label={`Least film against position of ${pairs.length} pairs drawn, over the films wanted`}
      curves={() => ({
        across: `position, ${unit.name}`,
        up: `least film, ${unit.name}`,
        lines: curves.flatMap((each, pair) =>
          each.map((points, seat) => ({
            name: `${design.seats[seat]!.name} ${pair + 1}`,
            points: points.map(([p, film]) => [p / unit.size, film / unit.size] as const),
          })),
        ),
      })}
      foot={
        <LineNames names={design.seats.map(({ name }, i) => ({ name, style: i }))}>
          <span>
            {pairs.length} pairs drawn, a line a seat · shaded: film wanted
            {state.best.position && ' · upright band: best position, 9 times in 10'}
            {state.position >= low && state.position <= high && ' · upright line: where it is set'}
          </span>
        </LineNames>
      }
    >
      <PlotClip id={`${id}plot`} plot={plot} />
      <UpAxis plot={plot} at={y} ticks={ticks(bottom / unit.size, top / unit.size, 5)} unit={unit.size} />
      <AcrossAxis
        plot={plot}
        at={x}
        ticks={ticks(low / unit.size, high / unit.size, across(width, 6))}
        unit={unit.size}
      />
      <AxisNames plot={plot} height={height} up={`least film, ${unit.name}`} across={`position, ${unit.name}`} />
      <g clipPath={`url(#${id}plot)`}>
        <BelowNought plot={plot} at={y} />
        {state.best.position && (
          <rect
            x={x(state.best.position.p05)}
            width={Math.max(1, x(state.best.position.p95) - x(state.best.position.p05))}
            y={plot.top}
            height={plot.bottom - plot.top}
            className="best-stretch"
          />
        )}
        {bandsOf(design.seats).map(({ target, tolerance, seats }) => (
          <rect
            key={`${target} ${tolerance}`}
            x={plot.left}
            width={plot.right - plot.left}
            y={y(target + tolerance)}
            height={Math.max(2, y(target - tolerance) - y(target + tolerance))}
            className={seats.length === 1 ? `wanted-band seat-${seats[0]! % 4}` : 'wanted-band'}
          />
        ))}
        {curves.map((each, pair) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a pair is known by its place alone
          <g key={pair}>
            {each.map((points, seat) => (
              <path
                key={design.seats[seat]!.name}
                d={curvePath(withinRange(points, bottom - pad, top + pad), x, y)}
                className={`drawn-line seat-${seat % 4}`}
              />
            ))}
          </g>
        ))}
        <path d={`M${x(state.position)} ${plot.top}V${plot.bottom}`} className="now-line" />
      </g>
    </ChartFigure>
  );
}

/** Where the pairs have their films, and where the journal is left. */
function rangeOf({ best, position }: StateReport): [low: number, high: number] {
  if (!best.position) return [position - 2 * AROUND, position + 2 * AROUND];
  const { p05, p95 } = best.position;
  const pad = Math.max(AROUND, (p95 - p05) / 3);
  const [low, high] = [p05 - pad, p95 + pad];
  return position >= low - pad && position <= high + pad
    ? [Math.min(low, position - pad / 4), Math.max(high, position + pad / 4)]
    : [low, high];
}

function curvesOf(pairs: readonly SeatInput[][], low: number, high: number): Points[][] {
  return pairs.map((pair) =>
    pair.map((seat) => {
      const lines = seatLines(seat);
      return Array.from({ length: SAMPLES + 1 }, (_, i) => {
        const position = low + ((high - low) * i) / SAMPLES;
        return [position, filmAtPosition(lines, position) ?? Number.NaN] as const;
      });
    }),
  );
}
