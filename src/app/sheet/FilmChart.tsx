/** Film of every seat against position, with the degrees of the adjuster from where the journal shall run. Stands alone when saved. */
import { ticks } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { seatLines } from '../../engine/contact/fit.ts';
import { fitSection } from '../../report/fit/section.ts';
import { toSeats } from '../../report/toEngine.ts';
import { bandsOf, type Curve, curveOf, filmsShown, rangeOf } from '../picture/chartCurves.ts';
import { textWidth } from '../picture/textWidth.ts';
import { DASHES, FONT, lettering, OUTLINE, PER_MM, THIN, WIDTH } from './ink.ts';

const MARGIN = { left: 56, right: 16, top: 66, bottom: 66 };
const FIGURE = 13;

const minus = (value: number) => `${value}`.replace('-', '−');

/** @param design the parts as they shall be, at the position where they shall run · height mm of paper */
export function FilmChart({ design, system, height }: { design: Design; system: System; height: number }) {
  const id = useId();
  const tall = height * PER_MM;
  const fit = fitSection(design);
  const range = rangeOf(fit, design);
  const curves = toSeats(design).map((seat) => curveOf(seatLines(seat), range));
  const [bottom, top] = filmsShown(curves, design.seats);
  const x = scaleLinear([...range], [MARGIN.left, WIDTH - MARGIN.right]);
  const y = scaleLinear([bottom, top], [tall - MARGIN.bottom, MARGIN.top]);
  const pitch = design.adjuster?.pitch;
  const plot = { left: MARGIN.left, right: WIDTH - MARGIN.right, top: MARGIN.top, bottom: tall - MARGIN.bottom };
  const path = (curve: Curve) => `M${curve.map(([p, film]) => `${x(p).toFixed(2)} ${y(film).toFixed(2)}`).join('L')}`;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${tall}`} fontFamily={FONT} role="img" aria-label="Least film of every seat against position, with degrees of the adjuster">
      <rect width={WIDTH} height={tall} fill="#fff" />
      <clipPath id={`${id}plot`}>
        <rect x={plot.left} y={plot.top} width={plot.right - plot.left} height={plot.bottom - plot.top} />
      </clipPath>
      {bandsOf(design.seats).map(({ target, tolerance }) => (
        <rect key={`${target} ${tolerance}`} x={plot.left} width={plot.right - plot.left} y={y(target + tolerance)} height={Math.max(1, y(target - tolerance) - y(target + tolerance))} fill="#000" fillOpacity={0.14} />
      ))}
      <Axes x={x} y={y} plot={plot} position={fit.position} pitch={pitch} system={system} />
      <g clipPath={`url(#${id}plot)`}>{curves.map((curve, i) => curve.length > 1 && <path key={design.seats[i]!.name} {...OUTLINE} strokeWidth={2.2} strokeDasharray={DASHES[i % DASHES.length]} d={path(curve)} />)}</g>
      <path {...OUTLINE} d={`M${x(fit.position).toFixed(2)} ${plot.top}V${plot.bottom}`} />
      <Legend design={design} system={system} position={fit.position} foot={tall - 8} />
    </svg>
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
      {ticks(bottom / unit.size, top / unit.size, 5).map((t) => (
        <g key={t}>
          <path {...THIN} strokeOpacity={t === 0 ? 1 : 0.35} strokeWidth={t === 0 ? 1.4 : 0.7} d={`M${plot.left} ${y(t * unit.size).toFixed(2)}H${plot.right}`} />
          <text {...lettering(FIGURE)} x={plot.left - 6} y={y(t * unit.size) + 4} textAnchor="end">
            {minus(t)}
          </text>
        </g>
      ))}
      {ticks(low / unit.size, high / unit.size, 8).map((t) => (
        <g key={t}>
          <path {...THIN} d={`M${x(t * unit.size).toFixed(2)} ${plot.bottom}v5`} />
          <text {...lettering(FIGURE)} x={x(t * unit.size)} y={plot.bottom + 19} textAnchor="middle">
            {minus(t)}
          </text>
        </g>
      ))}
      {pitch !== undefined &&
        ticks(degrees(low), degrees(high), 8).map((t) => (
          <g key={t}>
            <path {...THIN} d={`M${x(position + (t / 360) * pitch).toFixed(2)} ${plot.top}v-5`} />
            <text {...lettering(FIGURE)} x={x(position + (t / 360) * pitch)} y={plot.top - 9} textAnchor="middle">
              {minus(t)}°
            </text>
          </g>
        ))}
      <text {...lettering(FIGURE)} x={6} y={plot.top - (pitch === undefined ? 12 : 28)}>
        least film, {unit.name}
      </text>
      {pitch !== undefined && (
        <text {...lettering(FIGURE)} x={plot.right} y={plot.top - 28} textAnchor="end">
          degrees of the adjuster from where it shall run; noseward above 0
        </text>
      )}
      <text {...lettering(FIGURE)} x={plot.right} y={plot.bottom + 36} textAnchor="end">
        position, {unit.name} · ← rearward · noseward →
      </text>
    </g>
  );
}

/** Which line is whose, within the drawing. */
function Legend({ design, system, position, foot }: { design: Design; system: System; position: number; foot: number }) {
  const entries: { name: string; dash: string | undefined; x: number }[] = [];
  let x = 6;
  for (const [i, { name }] of design.seats.entries()) {
    entries.push({ name, dash: DASHES[i % DASHES.length], x });
    x += 46 + textWidth(name, FIGURE) + 14;
  }
  const words = `shaded: film wanted · upright line: where it shall run, ${fineText(position, system)}`;
  return (
    <g>
      {entries.map(({ name, dash, x: at }) => (
        <g key={name}>
          <path {...OUTLINE} strokeWidth={2.2} strokeDasharray={dash} d={`M${at} 14h40`} />
          <text {...lettering(FIGURE)} x={at + 46} y={18}>
            {name}
          </text>
        </g>
      ))}
      <text {...lettering(FIGURE)} x={6} y={foot}>
        {words}
      </text>
    </g>
  );
}
