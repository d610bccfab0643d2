/**
 * What charts are made of: the plot within its margins, axes with ticks and names, curves, and the names of the lines.
 * Pixels, y down.
 */
import { type ReactNode, type RefObject, useRef } from 'react';
import { useSize } from '../pictures/useSize.ts';
import { type CurveTable, holdsCurves } from './curveTables.ts';

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export type Scale = (value: number) => number;

/** A chart that fills the width it is given, and its plot. `usual`: its size before the page is laid out. */
export function usePlot(
  margin: Box,
  usual: { width: number; height: number },
  heightOf: (width: number) => number = () => usual.height,
) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, usual);
  const height = heightOf(width);
  const plot: Box = { left: margin.left, right: width - margin.right, top: margin.top, bottom: height - margin.bottom };
  return { box, width, height, plot };
}

interface FigureProps {
  box: RefObject<HTMLElement | null>;
  className?: string;
  size: { width: number; height: number };
  /** what is seen, for who does not */
  label: string;
  children: ReactNode;
  /** below the drawing */
  foot?: ReactNode;
  /** what is drawn, as numbers */
  curves?: () => CurveTable;
}

/** A chart with nothing to take hold of. */
export function ChartFigure({
  box,
  className = '',
  size: { width, height },
  label,
  children,
  foot,
  curves,
}: FigureProps) {
  return (
    <figure className={`chart ${className}`.trim()} ref={box}>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={label}
        ref={(drawing) => curves && holdsCurves(drawing, curves)}
      >
        {children}
      </svg>
      {foot}
    </figure>
  );
}

/** A number on an axis: a real minus, no noise of the last digit. */
const tickText = (value: number) => `${Number(value.toPrecision(6))}`.replace('-', '−');

/** How many numbers stand along an axis across the page. */
export const across = (width: number, many = 8) => (width < 500 ? 4 : many);

interface AxisProps {
  plot: Box;
  at: Scale;
  /** in the unit shown */
  ticks: readonly number[];
  /** size of that unit on the scale */
  unit?: number;
  text?: (tick: number) => string;
}

/** The ground below nought: metal in metal. */
export const BelowNought = ({ plot, at }: { plot: Box; at: (value: number) => number }) => (
  <rect
    x={plot.left}
    width={plot.right - plot.left}
    y={at(0)}
    height={Math.max(0, plot.bottom - at(0))}
    className="below"
  />
);

/** A line across the plot at every tick, with its number to the left. */
export function UpAxis({ plot, at, ticks, unit = 1, text = tickText }: AxisProps) {
  return ticks.map((t) => (
    <g key={t} className="grid">
      <path d={`M${plot.left} ${at(t * unit)}H${plot.right}`} className={t === 0 ? 'zero' : ''} />
      <text x={plot.left - 6} y={at(t * unit) + 4} textAnchor="end">
        {text(t)}
      </text>
    </g>
  ));
}

/** Numbers below the plot, `below` px under it; with a mark on its edge where `marked`. */
export function AcrossAxis({
  plot,
  at,
  ticks,
  unit = 1,
  text = tickText,
  below = 17,
  marked = false,
}: AxisProps & { below?: number; marked?: boolean }) {
  return ticks.map((t) => (
    <g key={t} className="grid">
      {marked && <path d={`M${at(t * unit)} ${plot.bottom}v4`} className="zero" />}
      <text x={at(t * unit)} y={plot.bottom + below} textAnchor="middle">
        {text(t)}
      </text>
    </g>
  ));
}

/** What stands on either axis, in the corners of the drawing. */
export function AxisNames({
  plot,
  height,
  up,
  across,
  left = 12,
}: {
  plot: Box;
  height: number;
  up: string;
  across: string;
  left?: number;
}) {
  return (
    <>
      <text x={left} y={14}>
        {up}
      </text>
      <text x={plot.right} y={height - 6} textAnchor="end">
        {across}
      </text>
    </>
  );
}

/** Keeps what is drawn within the plot. */
export function PlotClip({ id, plot }: { id: string; plot: Box }) {
  return (
    <clipPath id={id}>
      <rect
        x={plot.left}
        y={plot.top}
        width={Math.max(0, plot.right - plot.left)}
        height={Math.max(0, plot.bottom - plot.top)}
      />
    </clipPath>
  );
}

export type Points = readonly (readonly [x: number, y: number])[];

/** The path of a line; a point that is no number parts it. */
export const curvePath = (points: Points, x: Scale, y: Scale): string =>
  points
    .map(([px, py], i) =>
      Number.isFinite(py)
        ? `${i === 0 || !Number.isFinite(points[i - 1]![1]) ? 'M' : 'L'}${x(px).toFixed(2)} ${y(py).toFixed(2)}`
        : '',
    )
    .join('');

/** Which line is whose, by the dash and colour of its place; `told` adds to a name. */
export function LineNames({
  names,
  children,
}: {
  names: readonly { name: string; style: number; told?: string }[];
  children?: ReactNode;
}) {
  return (
    <figcaption className="legend">
      {names.map(({ name, style, told = '' }) => (
        <span key={name} className={`seat seat-${style % 4}`}>
          <svg width="34" height="10" aria-hidden="true">
            <path d="M1 5H33" className="curve" />
          </svg>
          {name}
          {told}
        </span>
      ))}
      {children}
    </figcaption>
  );
}
