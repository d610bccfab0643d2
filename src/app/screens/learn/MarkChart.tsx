/**
 * An answer as a mark on a chart: drawn up and down, or by arrow keys, before the true curve is drawn beside it.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { Curve, DealtQuestion } from '../../../lessons/deal.ts';
import type { Chart, ToldAs } from '../../../lessons/definition.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { AcrossAxis, AxisNames, across, PlotClip, UpAxis, usePlot } from '../../charts/Axes.tsx';
import { keepsTouch } from '../../pictures/useDrag.ts';
import { useHandle } from '../../pictures/useMove.ts';
import { askingEnds, endsBetween, markBegins, openEnds } from './markScale.ts';
import { unitOf } from './typed.ts';
import { type Phase, useShare } from './useShare.ts';

interface Props {
  chart: Chart;
  dealt: DealtQuestion;
  curve: Curve;
  /** what the answer is told as */
  as: ToldAs;
  /** null: no mark yet */
  mark: number | null;
  setMark(value: number): void;
  /** once it is let go the curve is shown, and the mark is fixed */
  phase: Phase;
  seed: number;
  speech: Speech;
}

const HEIGHT = 224;
const MARGIN = { left: 56, right: 18, top: 34, bottom: 52 };
/** Presses of a key from the foot of the chart to its top. */
const STEPS = 60;

export function MarkChart({ chart, dealt, curve, as, mark, setMark, phase, seed, speech }: Props) {
  const id = useId();
  const { box, width, height, plot } = usePlot(MARGIN, { width: 560, height: HEIGHT }, () => HEIGHT);
  const open = phase !== 'frozen';
  const share = useShare(phase, 0);
  const asking = askingEnds(curve, dealt);
  const { low, high } = open ? endsBetween(asking, openEnds(curve, mark ?? 0), share) : asking;
  const [first, last] = [curve.points[0]![0], curve.points[curve.points.length - 1]![0]];
  const x = scaleLinear([first, last], [plot.left, plot.right]);
  const y = scaleLinear([low, high], [plot.bottom, plot.top]);
  const at = mark ?? markBegins(asking, Number(dealt.right), seed);
  const bounded = (value: number) => Math.min(high, Math.max(low, value));
  const begins = !open && curve.known ? curve.points[0]! : null;
  const move = useHandle({
    at: { x: 0, y: at },
    to: (_, up) => setMark(bounded(up)),
    perPixel: () => (high - low) / (plot.bottom - plot.top),
    step: (high - low) / STEPS,
    upright: true,
  });
  const [acrossUnit, upUnit] = [unitOf(chart.as, speech), unitOf(as, speech)];
  const handle = y(bounded(at));
  return (
    <figure className="chart mark-chart" ref={box}>
      <svg
        width={width}
        height={height}
        role="group"
        aria-label={`${chart.upTitle} against ${chart.title}; the mark is your answer`}
      >
        <PlotClip id={`${id}plot`} plot={plot} />
        <UpAxis plot={plot} at={y} ticks={ticks(low / upUnit.size, high / upUnit.size, 5)} unit={upUnit.size} />
        <AcrossAxis
          plot={plot}
          at={x}
          ticks={ticks(first / acrossUnit.size, last / acrossUnit.size, across(width, 6))}
          unit={acrossUnit.size}
        />
        <AxisNames
          plot={plot}
          height={height}
          up={withUnit(chart.upTitle, upUnit.name)}
          across={withUnit(chart.title, acrossUnit.name)}
        />
        <path d={`M${x(curve.at)} ${plot.top}V${plot.bottom}`} className="asked-at" />
        {begins && (
          <g className="as-it-is">
            <circle cx={x(begins[0])} cy={y(begins[1])} r={5} />
            <text x={x(begins[0]) + 9} y={y(begins[1]) - 8}>
              now
            </text>
          </g>
        )}
        {open && (
          <g clipPath={`url(#${id}plot)`} className="engine-curve">
            <path
              d={`M${curve.points.map(([across, up]) => `${x(across).toFixed(1)} ${y(up).toFixed(1)}`).join('L')}`}
            />
          </g>
        )}
        {(mark !== null || !open) && (
          <g
            {...(open ? {} : { ...move.handlers, ref: keepsTouch })}
            className={`answer-mark ${mark === null ? 'unset' : ''}`}
            role="slider"
            aria-orientation="vertical"
            aria-label="Your answer, on the chart"
            aria-disabled={open}
            aria-valuemin={round(low / upUnit.size)}
            aria-valuemax={round(high / upUnit.size)}
            aria-valuenow={round(at / upUnit.size)}
            aria-valuetext={mark === null ? 'no mark yet' : told(at, as, speech)}
            tabIndex={open ? -1 : 0}
            onKeyDown={open ? undefined : move.onKeyDown}
          >
            <rect x={x(curve.at) - 26} y={plot.top} width={52} height={plot.bottom - plot.top} className="grip" />
            <path d={`M${x(curve.at) - 16} ${handle}h32`} />
            <circle cx={x(curve.at)} cy={handle} r={9} className="handle" />
          </g>
        )}
      </svg>
      <figcaption>
        {open
          ? `Line: what is so. Ring: your mark.${share === 1 && high < asking.high ? ' The scale has closed in on them.' : ''}`
          : mark === null
            ? 'Drag the ring, or type your answer.'
            : `Your mark: ${told(at, as, speech)}`}
      </figcaption>
    </figure>
  );
}

const round = (value: number) => Number(value.toPrecision(4));
const withUnit = (title: string, unit: string) => (unit === '' ? title : `${title}, ${unit}`);
