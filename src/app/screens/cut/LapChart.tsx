/**
 * Lapping against the travel: above, how much of every seat bears; below, how far the cones stand wrong to each other;
 * where to stop.
 */
import { ticks } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { fineUnit, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { AcrossAxis, across, ChartFigure, curvePath, LineNames, UpAxis, usePlot } from '../../charts/Axes.tsx';

export type Lap = NonNullable<CutReport['lap']>;

const LEFT = 46;
const RIGHT = 14;
const UPPER = { top: 24, bottom: 130 };
const LOWER = { top: 162, bottom: 246 };
/** Ticks and name of the travel. */
const FOOT = 40;

interface Plot {
  lap: Lap;
  /** mm of travel, state by state */
  travel: readonly number[];
  x: ScaleLinear<number, number>;
  system: System;
}

export function LapChart({ lap, system }: { lap: Lap; system: System }) {
  const { box, width } = usePlot({ left: LEFT, right: RIGHT, ...LOWER }, { width: 600, height: LOWER.bottom + FOOT });
  const unit = fineUnit(system);
  const start = lap.states[0]!.position;
  const travel = lap.states.map(({ position }) => start - position);
  const x = scaleLinear([0, travel[travel.length - 1]!], [LEFT, width - RIGHT]);
  // Cones that have no relation to keep have no plot of it.
  const related = lap.states.every(({ relationError }) => relationError !== null);
  const bottom = (related ? LOWER : UPPER).bottom;
  return (
    <ChartFigure
      box={box}
      className="lap"
      size={{ width, height: bottom + FOOT }}
      label="Lapping: share of each seat that bears, and how far the cones stand wrong to each other, against the travel"
      curves={() => ({
        across: `travel rearward, ${unit.name}`,
        up: 'share that bears',
        lines: lap.states[0]!.seats.map(({ name }, i) => ({
          name,
          points: lap.states.map(({ seats }, k) => [travel[k]! / unit.size, seats[i]!.bearing] as const),
        })),
      })}
      foot={
        <LineNames names={lap.states[0]!.seats.map(({ name }, style) => ({ name, style }))}>
          {related && <span>shaded: what the films allow</span>}
        </LineNames>
      }
    >
      <Bearing lap={lap} travel={travel} x={x} system={system} />
      {related && <Relation lap={lap} travel={travel} x={x} system={system} />}
      <AcrossAxis
        plot={{ left: LEFT, right: width - RIGHT, top: UPPER.top, bottom }}
        at={x}
        ticks={ticks(0, travel[travel.length - 1]! / unit.size, across(width))}
        unit={unit.size}
      />
      <text x={width - RIGHT} y={bottom + 34} textAnchor="end">
        travel rearward, {unit.name}
      </text>
      <Stop at={x(travel[lap.stop.at]!)} bottom={bottom} middle={width / 2} reached={lap.stop.why !== 'notYet'} />
    </ChartFigure>
  );
}

const line = (values: readonly number[], { travel, x }: Plot, y: (value: number) => number) =>
  curvePath(
    values.map((value, i) => [travel[i]!, value] as const),
    x,
    y,
  );

function Bearing(plot: Plot) {
  const { lap, x } = plot;
  const y = scaleLinear([0, 1], [UPPER.bottom, UPPER.top]);
  return (
    <>
      <text x={6} y={14}>
        share that bears
      </text>
      <UpAxis plot={{ left: LEFT, right: x.range()[1]!, ...UPPER }} at={y} ticks={[0, 0.5, 1]} />
      {lap.states[0]!.seats.map(({ name }, i) => {
        const shares = lap.states.map((state) => state.seats[i]!.bearing);
        return (
          <g key={name} className={`seat seat-${i % 4}`}>
            <path d={line(shares, plot, y)} className="curve" />
          </g>
        );
      })}
    </>
  );
}

function Relation(plot: Plot) {
  const { lap, x, system } = plot;
  const unit = fineUnit(system);
  const [left, right] = x.range() as [number, number];
  const errors = lap.states.map(({ relationError }) => relationError ?? 0);
  const most = Math.max(unit.size, lap.allowance ?? 0, ...errors.map(Math.abs)) * 1.08;
  const y = scaleLinear([-most, most], [LOWER.bottom, LOWER.top]);
  return (
    <>
      <text x={6} y={LOWER.top - 10}>
        cones wrong to each other, {unit.name}
      </text>
      {lap.allowance !== null && (
        <rect
          x={left}
          width={right - left}
          y={y(lap.allowance)}
          height={y(-lap.allowance) - y(lap.allowance)}
          className="allowed"
        />
      )}
      <UpAxis
        plot={{ left, right, ...LOWER }}
        at={y}
        ticks={ticks(-most / unit.size, most / unit.size, 4)}
        unit={unit.size}
      />
      <path d={line(errors, plot, y)} className="lap-wrong" />
    </>
  );
}

function Stop({ at, bottom, middle, reached }: { at: number; bottom: number; middle: number; reached: boolean }) {
  const left = at > middle;
  return (
    <>
      <path d={`M${at} ${UPPER.top}V${bottom}`} className="lap-stop" />
      <text x={at + (left ? -6 : 6)} y={UPPER.top + 14} textAnchor={left ? 'end' : 'start'} className="lap-stop-name">
        {reached ? 'stop here' : 'end of the travel'}
      </text>
    </>
  );
}
