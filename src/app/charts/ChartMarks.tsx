/** The marks of the closing chart: films wanted as bands, names with slope triangles, what is off the chart. */
import { fineText, type System } from '../../design/units.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { textWidth } from '../pictures/textWidth.ts';
import type { Box } from './Axes.tsx';
import { LABEL, type PlacedBand, type PlacedTag } from './chartLabels.ts';

const LINE = 16;
/** Width of a seat's mark at the ends of its band. */
const MARK = 6;
/** Degrees of each seat's hatching, so that two that share a band are both seen in it. */
const HATCH = [45, -45, 0, 90];

/** A film wanted, hatched in the way and colour of each seat that wants it, with a mark of each at both ends. */
export function ChartBands({ bands, plot, id }: { bands: readonly PlacedBand[]; plot: Box; id: string }) {
  return bands.map(({ seats, top, middle, bottom, text, label }) => (
    <g key={text} className="band">
      {seats.map((seat, k) => (
        <g key={seat} className={`seat seat-${seat % 4}`}>
          <pattern
            id={`${id}band${seat}`}
            width={9}
            height={9}
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${HATCH[seat % 4]})`}
          >
            <path d="M0 0V9" className="band-hatch" />
          </pattern>
          <rect
            x={plot.left}
            width={plot.right - plot.left}
            y={top}
            height={bottom - top}
            fill={`url(#${id}band${seat})`}
          />
          <rect
            x={plot.left + k * MARK}
            width={MARK - 1}
            y={top}
            height={Math.max(2, bottom - top)}
            className="band-mark"
          />
          <rect
            x={plot.right - (k + 1) * MARK}
            width={MARK - 1}
            y={top}
            height={Math.max(2, bottom - top)}
            className="band-mark"
          />
        </g>
      ))}
      <path d={`M${plot.left} ${top}H${plot.right}M${plot.left} ${bottom}H${plot.right}`} className="band-edge" />
      <path d={`M${plot.left} ${middle}H${plot.right}`} className="band-middle" />
      {label && (
        <text x={label.left} y={label.bottom - 4} fontSize={LABEL}>
          {text}
        </text>
      )}
    </g>
  ));
}

/** The name of a line on the line, with how much film a travel gives. */
export function ChartTag({ tag, seat }: { tag: PlacedTag; seat: number }) {
  const { from, to, corner, text, lines } = tag;
  return (
    <g className={`tag seat seat-${seat % 4}`}>
      {from[0] !== to[0] && <path d={`M${from.join(' ')}L${corner.join(' ')}L${to.join(' ')}Z`} />}
      {lines.map((line, k) => (
        <text
          key={line}
          x={text.left}
          y={text.top + LINE * (k + 1) - 4}
          fontSize={LABEL}
          fontWeight={k === 0 ? 700 : 400}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

interface OffChartProps {
  fit: FitReport;
  /** films shown, mm */
  shown: readonly [number, number];
  now: number;
  plot: Box;
  system: System;
}

/** At the edge where the journal stands: the seats whose film is beyond it, by name and value. */
export function OffChart({ fit, shown: [low, high], now, plot, system }: OffChartProps) {
  const told = fit.seats.map(({ name, leastFilm }, seat) => ({
    seat,
    text: leastFilm === null ? `${name} apart` : `${name} ${fineText(leastFilm, system)}`,
    over: leastFilm === null || leastFilm > high,
    under: leastFilm !== null && leastFilm < low,
  }));
  return ([1, -1] as const).map((way) => {
    const off = told.filter(({ over, under }) => (way === 1 ? over : under));
    if (off.length === 0) return null;
    const edge = way === 1 ? plot.top : plot.bottom;
    const whole = off.map(({ text }) => text).join(', ');
    const width = textWidth(whole, LABEL);
    const left = Math.min(plot.right - width, Math.max(plot.left - 40, now + 10));
    const beside = left > now + 5 ? left : Math.max(0, now - 10 - width);
    return (
      <g key={way} className="off-chart">
        <path d={`M${now - 6} ${edge - way * 4}h12L${now} ${edge - way * 14}Z`} />
        <text x={beside} y={way === 1 ? edge - 6 : edge + 15} fontSize={LABEL}>
          {off.map(({ seat, text }, k) => (
            <tspan key={seat} className={`seat-${seat % 4}`}>
              {k > 0 && ', '}
              {text}
            </tspan>
          ))}
        </text>
      </g>
    );
  });
}
