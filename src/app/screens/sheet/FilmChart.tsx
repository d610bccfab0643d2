/**
 * Film of every seat against position, with the degrees of the adjuster from where the journal shall run. Stands alone
 * when saved.
 */
import { ticks } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { toSeats } from '../../../report/convert.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { seatLines } from '../../../report/inFrame.ts';
import { bandsOf, type Curve, curveOf, filmsShown } from '../../charts/chartCurves.ts';
import { CLASS_COLOUR, cssColour } from '../../pictures/filmColour.ts';
import { textWidth } from '../../pictures/textWidth.ts';
import { chartRange } from './chartRange.ts';
import { DASHES, FIGURE, FONT, lettering, OUTLINE, PER_MM, SMALL, THIN, WIDTH } from './ink.ts';

const MARGIN = { left: 50, right: 20, bottom: 42 };
/** Names of the seats and, above the plot, the degrees. */
const ROW = 22;
const DEGREES = 24;
/** Units between two films told. */
const APART = 28;
const EDGE = 6;
const DASH = 36;
const TICKS = 9;
const AS_WANTED = cssColour(CLASS_COLOUR.right);

const minus = (value: number) => `${value}`.replace('-', '−');

/** @param design the parts as they shall be, at the position where they shall run · height mm of paper */
export function FilmChart({ design, system, height }: { design: Design; system: System; height: number }) {
  const id = useId();
  const tall = height * PER_MM;
  const fit = fitSection(design);
  const range = chartRange(fit, design);
  const curves = toSeats(design).map((seat) => curveOf(seatLines(seat), range));
  const [bottom, top] = filmsShown(curves, design.seats);
  const x = scaleLinear([...range], [MARGIN.left, WIDTH - MARGIN.right]);
  const pitch = design.adjuster?.pitch;
  const legend = legendOf(design, system, pitch !== undefined);
  const plot = {
    left: MARGIN.left,
    right: WIDTH - MARGIN.right,
    top: legend.foot + (pitch === undefined ? 8 : DEGREES),
    bottom: tall - MARGIN.bottom,
  };
  const y = scaleLinear([bottom, top], [plot.bottom, plot.top]);
  const path = (curve: Curve) => `M${curve.map(([p, film]) => `${x(p).toFixed(2)} ${y(film).toFixed(2)}`).join('L')}`;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${tall}`}
      fontFamily={FONT}
      role="img"
      aria-label="Least film of every seat against position, with degrees of the adjuster"
    >
      <rect width={WIDTH} height={tall} fill="#fff" />
      <clipPath id={`${id}plot`}>
        <rect x={plot.left} y={plot.top} width={plot.right - plot.left} height={plot.bottom - plot.top} />
      </clipPath>
      {bandsOf(design.seats).map(({ target, tolerance }) => (
        <rect
          key={`${target} ${tolerance}`}
          x={plot.left}
          width={plot.right - plot.left}
          y={y(target + tolerance)}
          height={Math.max(1, y(target - tolerance) - y(target + tolerance))}
          fill={AS_WANTED}
          fillOpacity={0.5}
        />
      ))}
      <Grid x={x} plot={plot} unit={fineUnit(system).size} />
      <Axes x={x} y={y} plot={plot} position={fit.position} pitch={pitch} system={system} />
      <g clipPath={`url(#${id}plot)`}>
        {curves.map(
          (curve, i) =>
            curve.length > 1 && (
              <path
                key={design.seats[i]!.name}
                {...OUTLINE}
                strokeWidth={2.2}
                strokeDasharray={DASHES[i % DASHES.length]}
                d={path(curve)}
              />
            ),
        )}
      </g>
      <path {...OUTLINE} d={`M${x(fit.position).toFixed(2)} ${plot.top}V${plot.bottom}`} />
      <Legend {...legend} />
    </svg>
  );
}

/** Upright lines at every position told, so that a film is read off by rule and eye. */
function Grid({
  x,
  plot,
  unit,
}: {
  x: ScaleLinear<number, number>;
  plot: { top: number; bottom: number };
  unit: number;
}) {
  const [low, high] = x.domain() as [number, number];
  return (
    <path
      {...THIN}
      strokeOpacity={0.35}
      d={ticks(low / unit, high / unit, TICKS)
        .map((t) => `M${x(t * unit).toFixed(2)} ${plot.top}V${plot.bottom}`)
        .join('')}
    />
  );
}

interface AxesProps {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  plot: { left: number; right: number; top: number; bottom: number };
  /** mm: where the journal shall run */
  position: number;
  pitch: number | undefined;
  system: System;
}

/** Films up the page; below the position, above it the degrees of the adjuster where there is one. */
function Axes({ x, y, plot, position, pitch, system }: AxesProps) {
  const unit = fineUnit(system);
  const [low, high] = x.domain() as [number, number];
  const [bottom, top] = y.domain() as [number, number];
  const degrees = (at: number) => ((at - position) / (pitch ?? 1)) * 360;
  return (
    <g>
      {ticks(bottom / unit.size, top / unit.size, Math.max(2, (plot.bottom - plot.top) / APART)).map((t) => (
        <g key={t}>
          <path
            {...THIN}
            strokeOpacity={t === 0 ? 1 : 0.35}
            strokeWidth={t === 0 ? 1.4 : 0.7}
            d={`M${plot.left} ${y(t * unit.size).toFixed(2)}H${plot.right}`}
          />
          <text {...lettering(FIGURE)} x={plot.left - 6} y={y(t * unit.size) + 4} textAnchor="end">
            {minus(t)}
          </text>
        </g>
      ))}
      {ticks(low / unit.size, high / unit.size, TICKS).map((t) => (
        <g key={t}>
          <path {...THIN} d={`M${x(t * unit.size).toFixed(2)} ${plot.bottom}v5`} />
          <text {...lettering(FIGURE)} x={x(t * unit.size)} y={plot.bottom + 19} textAnchor="middle">
            {minus(t)}
          </text>
        </g>
      ))}
      {pitch !== undefined &&
        ticks(degrees(low), degrees(high), TICKS).map((t) => (
          <g key={t}>
            <path {...THIN} d={`M${x(position + (t / 360) * pitch).toFixed(2)} ${plot.top}v-5`} />
            <text {...lettering(FIGURE)} x={x(position + (t / 360) * pitch)} y={plot.top - 8} textAnchor="middle">
              {minus(t)}°
            </text>
          </g>
        ))}
      <text {...lettering(SMALL)} x={EDGE} y={plot.bottom + 36}>
        shaded: film wanted · upright line: where it runs, {fineText(position, system)}
      </text>
      <text {...lettering(SMALL)} x={plot.right} y={plot.bottom + 36} textAnchor="end">
        position, {unit.name}: ← rearward · noseward →
      </text>
    </g>
  );
}

interface LegendProps {
  /** x: where its dash begins */
  entries: { name: string; dash: string | undefined; x: number; y: number }[];
  unit: string;
  /** what the degrees mean, where there are any */
  degrees: { text: string; y: number } | null;
  foot: number;
}

/** Which line is whose, within the drawing: in as many rows as they need. */
function legendOf({ seats }: Design, system: System, turned: boolean): LegendProps {
  const unit = `film, ${fineUnit(system).name}:`;
  const first = EDGE + textWidth(unit, FIGURE) + 12;
  let [x, y] = [first, 18];
  const entries = seats.map(({ name }, i) => {
    const size = DASH + 6 + textWidth(name, FIGURE) + 16;
    if (x > first && x + size > WIDTH) [x, y] = [first, y + ROW];
    const entry = { name, dash: DASHES[i % DASHES.length], x, y };
    x += size;
    return entry;
  });
  const text = 'above the plot: degrees of the adjuster from where it runs';
  if (turned && x + textWidth(text, SMALL) > WIDTH - MARGIN.right) y += ROW;
  return { entries, unit, degrees: turned ? { text, y } : null, foot: y + 4 };
}

function Legend({ entries, unit, degrees }: LegendProps) {
  return (
    <g>
      <text {...lettering(FIGURE)} x={EDGE} y={18}>
        {unit}
      </text>
      {entries.map(({ name, dash, x, y }) => (
        <g key={name}>
          <path {...OUTLINE} strokeWidth={2.2} strokeDasharray={dash} d={`M${x} ${y - 5}h${DASH}`} />
          <text {...lettering(FIGURE)} x={x + DASH + 6} y={y}>
            {name}
          </text>
        </g>
      ))}
      {degrees && (
        <text {...lettering(SMALL)} x={WIDTH - MARGIN.right} y={degrees.y} textAnchor="end">
          {degrees.text}
        </text>
      )}
    </g>
  );
}
