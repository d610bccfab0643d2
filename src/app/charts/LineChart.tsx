/** Lines over a plain or logarithmic axis, in the units shown. Nothing where no line has a point. */
import './lineChart.css';
import { ticks } from 'd3-array';
import { scaleLinear, scaleLog } from 'd3-scale';
import { useId } from 'react';
import { figures } from '../../design/measures.ts';
import type { Condition } from '../../report/film/limits.ts';
import { textWidth } from '../pictures/textWidth.ts';
import {
  AcrossAxis,
  AxisNames,
  ChartFigure,
  curvePath,
  LineNames,
  PlotClip,
  type Points,
  type Scale,
  UpAxis,
  usePlot,
} from './Axes.tsx';
import { Hatches } from './conditions.tsx';
import { NAME_SIZE, namesOn, type PlacedName } from './lineLabels.ts';

export interface Line {
  name: string;
  points: Points;
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
  /** where it stands now, and what that is called */
  now?: number | null;
  nowText?: string;
  /** a place along it, dashed, with its name */
  mark?: { at: number; text: string } | null;
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

function Chart({
  values,
  title,
  across,
  up,
  lines,
  domain,
  log = false,
  level = null,
  now = null,
  nowText = 'now',
  mark = null,
  stretches = [],
  lowest = 0,
  height = 230,
}: Props & { values: readonly number[] }) {
  const id = useId();
  const { box, width, plot } = usePlot(MARGIN, { width: 420, height });
  const greatest = Math.max(...values, level?.at ?? lowest, lowest);
  const x = (log ? scaleLog() : scaleLinear()).domain(domain as [number, number]).range([plot.left, plot.right]);
  const y = scaleLinear([lowest, lowest + 1.08 * Math.max(greatest - lowest, 1e-9)], [plot.bottom, plot.top]);
  const acrossTicks = log ? logTicks(domain, width) : ticks(domain[0], domain[1], width < 380 ? 4 : 6);
  const names = namesOn({
    plot,
    curves: lines.map(({ points }) => points.map(([px, py]) => [x(px), y(py)] as const)),
    level: level && { at: y(level.at), text: level.text },
    upright: [
      ...(mark ? [{ at: x(mark.at), text: mark.text }] : []),
      ...(now === null ? [] : [{ at: x(now), text: nowText }]),
    ],
    width: (text) => textWidth(text, NAME_SIZE),
  });
  const [markName, nowName] = mark ? names.upright : [undefined, ...names.upright];
  return (
    <ChartFigure
      box={box}
      className="line-chart"
      size={{ width, height }}
      label={title}
      curves={() => ({ across, up, lines })}
      foot={lines.length > 1 && <LineNames names={lines} />}
    >
      <PlotClip id={`${id}plot`} plot={plot} />
      <Hatches id={id} />
      <g clipPath={`url(#${id}plot)`}>
        {stretches.map(({ from, to, kind }) => {
          const place = {
            x: x(from),
            width: Math.max(0, x(to) - x(from)),
            y: plot.top,
            height: plot.bottom - plot.top,
          };
          return (
            <g key={`${from} ${kind}`} className={`condition ${kind}`}>
              <rect {...place} className="ground" />
              <rect {...place} fill={`url(#${id}${kind})`} className="pattern" />
            </g>
          );
        })}
      </g>
      <g className="grid">
        <path d={`M${plot.left} ${plot.bottom}H${plot.right}`} className="zero" />
      </g>
      <UpAxis plot={plot} at={y} ticks={ticks(lowest, y.domain()[1]!, 4)} text={figures} />
      <AcrossAxis plot={plot} at={x} ticks={acrossTicks} text={figures} marked />
      <AxisNames plot={plot} height={height} up={up} across={across} />
      <g clipPath={`url(#${id}plot)`}>
        {level && <path d={`M${plot.left} ${y(level.at)}H${plot.right}`} className="level" />}
        {now !== null && <path d={`M${x(now)} ${plot.top}V${plot.bottom}`} className="now-line" />}
        {mark && <path d={`M${x(mark.at)} ${plot.top}V${plot.bottom}`} className="level" />}
        {lines.map((line) => (
          <Curve key={line.name} line={line} x={x} y={y} />
        ))}
      </g>
      {mark && <Name {...markName!} kind="level-text" />}
      {now !== null && <Name {...nowName!} kind="now-text" />}
      {names.level && <Name {...names.level} kind="level-text" />}
    </ChartFigure>
  );
}

const Name = ({ text, x, y, anchor, kind }: PlacedName & { kind: string }) => (
  <text x={x} y={y} textAnchor={anchor} fontSize={NAME_SIZE} className={kind}>
    {text}
  </text>
);

/** More points than this are a line of their own. */
const DOTS = 30;

function Curve({ line: { points, style }, x, y }: { line: Line; x: Scale; y: Scale }) {
  return (
    <g className={`seat seat-${style % 4}`}>
      <path d={curvePath(points, x, y)} className="curve" />
      {points.length < DOTS &&
        points
          .filter(([, py]) => Number.isFinite(py))
          .map(([px, py]) => <circle key={px} cx={x(px)} cy={y(py)} r={3} className="dot" />)}
    </g>
  );
}

/** 1, 2 and 5 in every decade; only 1 where that is too many. */
function logTicks([low, high]: readonly [number, number], width: number): number[] {
  const all: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++)
    for (const step of [1, 2, 5]) all.push(step * 10 ** power);
  const within = all.filter((t) => t >= low * (1 - 1e-9) && t <= high * (1 + 1e-9));
  return within.length * 46 > width ? within.filter((t) => Number.isInteger(Number(Math.log10(t).toFixed(9)))) : within;
}
