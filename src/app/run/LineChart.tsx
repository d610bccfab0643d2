/** Lines over a plain or logarithmic axis, in the units shown. Nothing where no line has a point. */
import { ticks } from 'd3-array';
import { scaleLinear, scaleLog } from 'd3-scale';
import { useId, useRef } from 'react';
import { figures } from '../../design/measures.ts';
import type { Condition } from '../../engine/run/limits.ts';
import { useSize } from '../useSize.ts';
import { Hatches } from './conditions.tsx';

export interface Line {
  name: string;
  points: readonly (readonly [x: number, y: number])[];
  /** which dash and colour: 0 to 3 */
  style: number;
}

/** A stretch of the axis across the page, filled in its own way. */
export interface Stretch {
  from: number;
  to: number;
  kind: Condition;
}

interface Props {
  title: string;
  /** on the axis across the page and the one up it */
  across: string;
  up: string;
  lines: readonly Line[];
  /** ends of the axis across the page */
  domain: readonly [number, number];
  log?: boolean;
  /** a level drawn dashed, with its name */
  level?: { at: number; text: string } | null;
  /** where it stands now */
  now?: number | null;
  stretches?: readonly Stretch[];
  /** the axis up the page begins at 0 unless told */
  lowest?: number;
  height?: number;
}

const MARGIN = { left: 52, right: 16, top: 26, bottom: 44 };

export function LineChart(props: Props) {
  const values = props.lines.flatMap(({ points }) => points.map(([, y]) => y)).filter(Number.isFinite);
  return values.length === 0 ? null : <Chart {...props} values={values} />;
}

function Chart({ values, title, across, up, lines, domain, log = false, level = null, now = null, stretches = [], lowest = 0, height = 230 }: Props & { values: readonly number[] }) {
  const box = useRef<HTMLElement>(null);
  const id = useId();
  const { width } = useSize(box, { width: 420, height });
  const greatest = Math.max(...values, level?.at ?? lowest, lowest);
  const plot = { left: MARGIN.left, right: width - MARGIN.right, top: MARGIN.top, bottom: height - MARGIN.bottom };
  const x = (log ? scaleLog() : scaleLinear()).domain(domain as [number, number]).range([plot.left, plot.right]);
  const y = scaleLinear([lowest, lowest + 1.08 * Math.max(greatest - lowest, 1e-9)], [plot.bottom, plot.top]);
  const acrossTicks = log ? logTicks(domain, width) : ticks(domain[0], domain[1], width < 380 ? 4 : 6);
  return (
    <figure className="chart run-chart" ref={box}>
      <svg width={width} height={height} role="img" aria-label={title}>
        <clipPath id={`${id}plot`}>
          <rect x={plot.left} y={plot.top} width={Math.max(0, plot.right - plot.left)} height={plot.bottom - plot.top} />
        </clipPath>
        <Hatches id={id} />
        <g clipPath={`url(#${id}plot)`}>
          {stretches.map(({ from, to, kind }) => {
            const place = { x: x(from), width: Math.max(0, x(to) - x(from)), y: plot.top, height: plot.bottom - plot.top };
            return (
              <g key={`${from} ${kind}`} className={`condition ${kind}`}>
                <rect {...place} className="ground" />
                <rect {...place} fill={`url(#${id}${kind})`} className="pattern" />
              </g>
            );
          })}
        </g>
        <Axes plot={plot} x={x} y={y} across={acrossTicks} up={ticks(lowest, y.domain()[1]!, 4)} />
        <text x={12} y={15}>
          {up}
        </text>
        <text x={plot.right} y={height - 6} textAnchor="end">
          {across}
        </text>
        <g clipPath={`url(#${id}plot)`}>
          {level && <path d={`M${plot.left} ${y(level.at)}H${plot.right}`} className="level" />}
          {now !== null && <path d={`M${x(now)} ${plot.top}V${plot.bottom}`} className="now-line" />}
          {lines.map((line) => (
            <Curve key={line.name} line={line} x={x} y={y} />
          ))}
        </g>
        {level && (
          <text x={plot.right - 4} y={y(level.at) - 5} textAnchor="end" className="level-text">
            {level.text}
          </text>
        )}
      </svg>
      {lines.length > 1 && <Names lines={lines} />}
    </figure>
  );
}

type Scale = (value: number) => number;
interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

function Axes({ plot, x, y, across, up }: { plot: Box; x: Scale; y: Scale; across: readonly number[]; up: readonly number[] }) {
  return (
    <>
      <g className="grid">
        <path d={`M${plot.left} ${plot.bottom}H${plot.right}`} className="zero" />
      </g>
      {up.map((t) => (
        <g key={t} className="grid">
          <path d={`M${plot.left} ${y(t)}H${plot.right}`} />
          <text x={plot.left - 6} y={y(t) + 4} textAnchor="end">
            {figures(t)}
          </text>
        </g>
      ))}
      {across.map((t) => (
        <g key={t} className="grid">
          <path d={`M${x(t)} ${plot.bottom}v4`} className="zero" />
          <text x={x(t)} y={plot.bottom + 17} textAnchor="middle">
            {figures(t)}
          </text>
        </g>
      ))}
    </>
  );
}

/** More points than this are a line of their own. */
const DOTS = 30;

function Curve({ line: { points, style }, x, y }: { line: Line; x: Scale; y: Scale }) {
  return (
    <g className={`seat seat-${style % 4}`}>
      {runsOf(points).map((run) => (
        <path key={run[0]![0]} d={`M${run.map(([px, py]) => `${x(px).toFixed(1)} ${y(py).toFixed(1)}`).join('L')}`} className="curve" />
      ))}
      {points.length < DOTS && points.filter(([, py]) => Number.isFinite(py)).map(([px, py]) => <circle key={px} cx={x(px)} cy={y(py)} r={3} className="dot" />)}
    </g>
  );
}

function Names({ lines }: { lines: readonly Line[] }) {
  return (
    <figcaption className="legend">
      {lines.map(({ name, style }) => (
        <span key={name} className={`seat seat-${style % 4}`}>
          <svg width="34" height="10" aria-hidden="true">
            <path d="M1 5H33" className="curve" />
          </svg>
          {name}
        </span>
      ))}
    </figcaption>
  );
}

/** Unbroken pieces of a line: one that is no number parts it. */
function runsOf(points: Line['points']): (readonly [number, number])[][] {
  const runs: (readonly [number, number])[][] = [[]];
  for (const point of points) {
    if (Number.isFinite(point[1])) runs[runs.length - 1]!.push(point);
    else runs.push([]);
  }
  return runs.filter((run) => run.length > 0);
}

/** 1, 2 and 5 in every decade; only 1 where that is too many. */
function logTicks([low, high]: readonly [number, number], width: number): number[] {
  const all: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) for (const step of [1, 2, 5]) all.push(step * 10 ** power);
  const within = all.filter((t) => t >= low * (1 - 1e-9) && t <= high * (1 + 1e-9));
  return within.length * 46 > width ? within.filter((t) => Number.isInteger(Math.round(Math.log10(t) * 1e9) / 1e9)) : within;
}
