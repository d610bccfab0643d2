/** Least film of every seat against axial position: two slopes, where each touches, where each has its film. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { leastFilm } from '../../engine/contact/film.ts';
import { positionForFilm, type SeatLines } from '../../engine/contact/fit.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { metres, millimetres } from '../../report/toEngine.ts';
import { landmarks, moveByKey, snapped } from '../journalMove.ts';
import type { Work } from '../store.ts';
import { useDrag } from '../useDrag.ts';
import { useSize } from '../useSize.ts';

interface Props {
  design: Design;
  seats: readonly SeatLines[];
  fit: FitReport;
  system: System;
  work: Work;
}

const SAMPLES = 160;
const SNAP_PIXELS = 5;

export function ClosingChart({ design, seats, fit, system, work }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 800, height: 400 });
  const height = width < 500 ? 280 : 320;
  const margin = { left: 52, right: 16, top: 22, bottom: 44 };
  const unit = fineUnit(system);
  // The range is held during a drag, so that the ground does not move under the hand.
  const held = useRef<[number, number] | null>(null);
  const range = held.current ?? rangeOf(fit, design);
  const curves = seats.map((seat) => curveOf(seat, range));
  const films = curves.flatMap((curve) => curve.map(([, film]) => film));
  const targets = design.seats.map((s) => s.film?.target ?? 0);
  const top = Math.max(3 * Math.max(...targets), Math.min(Math.max(...films), 6 * Math.max(0.001, ...targets)), 0.004);
  const bottom = Math.max(Math.min(0, ...films), -0.35 * top);
  const x = scaleLinear(range, [margin.left, width - margin.right]);
  const y = scaleLinear([bottom, top], [height - margin.bottom, margin.top]);

  const start = useRef(0);
  const drag = useDrag({
    start: () => {
      start.current = fit.position;
      held.current = range;
      work.dragStart();
    },
    move: (dx) => {
      const perPixel = (range[1] - range[0]) / (width - margin.left - margin.right);
      work.moveTo(snapped(start.current + dx * perPixel, landmarks(fit), SNAP_PIXELS * perPixel));
    },
    end: () => {
      held.current = null;
      work.dragEnd();
    },
  });
  const path = (curve: Curve) => curve.map(([p, film], i) => `${i === 0 ? 'M' : 'L'}${x(p).toFixed(2)} ${y(film).toFixed(2)}`).join('');
  const xTicks = ticks(range[0] / unit.size, range[1] / unit.size, width < 500 ? 4 : 8);
  const yTicks = ticks(bottom / unit.size, top / unit.size, 5);
  return (
    <figure className="chart" ref={box}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="group" aria-label="Least film of every seat against axial position; drag sideways to move the journal" {...drag.handlers}>
        <clipPath id="plot">
          <rect x={margin.left} y={margin.top} width={width - margin.left - margin.right} height={height - margin.top - margin.bottom} />
        </clipPath>
        {yTicks.map((t) => (
          <g key={t} className="grid">
            <path d={`M${margin.left} ${y(t * unit.size)}H${width - margin.right}`} className={t === 0 ? 'zero' : ''} />
            <text x={margin.left - 6} y={y(t * unit.size) + 4} textAnchor="end">
              {`${t}`.replace('-', '−')}
            </text>
          </g>
        ))}
        {xTicks.map((t) => (
          <text key={t} x={x(t * unit.size)} y={height - margin.bottom + 16} textAnchor="middle">
            {`${t}`.replace('-', '−')}
          </text>
        ))}
        <text x={margin.left - 40} y={13}>
          least film, {unit.name}
        </text>
        <text x={width - margin.right} y={height - 8} textAnchor="end">
          position, {unit.name} · ← rearward · noseward →
        </text>
        <g clipPath="url(#plot)">
          <rect x={margin.left} width={width - margin.left - margin.right} y={y(0)} height={Math.max(0, y(bottom) - y(0))} className="below" />
          {curves.map((curve, i) => {
            const good = goodStretch(seats[i]!, design.seats[i]!);
            return (
              <g key={seats[i]!.name} className={`seat seat-${i % 4}`}>
                {good.length === 2 && <path d={path(good)} className="within" />}
                <path d={path(curve)} className="curve" />
              </g>
            );
          })}
        </g>
        {fit.seats.map((seat, i) => (
          <g key={seat.name} className={`seat seat-${i % 4}`}>
            {seat.seatPosition !== null && inside(seat.seatPosition, range) && <circle cx={x(seat.seatPosition)} cy={y(0)} r={5} className="touch-point" />}
          </g>
        ))}
        <g
          role="slider"
          tabIndex={0}
          className="now"
          aria-label="Axial position of the journal, on the chart"
          aria-valuenow={Math.round(fit.position * 1e6) / 1e3}
          aria-valuetext={`${fineText(fit.position, system)} toward the nose`}
          onKeyDown={(event) => moveByKey(event, work, fit)}
        >
          <rect x={x(fit.position) - 14} y={margin.top} width={28} height={height - margin.top - margin.bottom} className="grip" />
          <path d={`M${x(fit.position)} ${margin.top}V${height - margin.bottom}`} />
          {fit.seats.map((seat, i) => seat.leastFilm !== null && seat.leastFilm <= top && seat.leastFilm >= bottom && <circle key={seat.name} cx={x(fit.position)} cy={y(seat.leastFilm)} r={4} className={`dot seat-${i % 4}`} />)}
        </g>
      </svg>
      <figcaption className="legend">
        {fit.seats.map((seat, i) => (
          <span key={seat.name} className={`seat seat-${i % 4}`}>
            <svg width="34" height="10" aria-hidden="true">
              <path d="M1 5H33" className="curve" />
            </svg>
            {seat.name}
            {seat.sensitivity !== null && `: ${fineText(Math.abs(seat.sensitivity) * 10 * unit.size, system)} of film for 10 ${unit.name} of travel`}
          </span>
        ))}
        <span>thick: film within tolerance · ring: first touch</span>
      </figcaption>
    </figure>
  );
}

type Curve = [position: number, film: number][];

/** mm, sampled for the eye; the figures and the marks on it are exact. */
function curveOf(seat: SeatLines, [low, high]: [number, number]): Curve {
  const curve: Curve = [];
  for (let i = 0; i <= SAMPLES; i++) {
    const position = low + ((high - low) * i) / SAMPLES;
    const film = leastFilm(seat.gap, metres(position));
    if (film !== null) curve.push([position, millimetres(film)]);
  }
  return curve;
}

/** From where to where the film is within its tolerance. */
function goodStretch(lines: SeatLines, { film }: Design['seats'][number]): Curve {
  if (!film) return [];
  return [film.target - (film.tolerance ?? 0), film.target + (film.tolerance ?? 0)].flatMap((h): Curve => {
    const position = positionForFilm(lines, metres(h));
    return position === null ? [] : [[millimetres(position), h]];
  });
}

function rangeOf(fit: FitReport, design: Design): [number, number] {
  const marks = [...landmarks(fit), fit.position];
  const reach = Math.max(0.02, ...design.seats.map((s) => 2 * (s.film?.target ?? 0)));
  const [low, high] = [Math.min(...marks), Math.max(...marks)];
  const pad = Math.max(reach - (high - low), 0) / 2 + 0.12 * Math.max(high - low, reach);
  return [low - pad, high + pad];
}

const inside = (value: number, [low, high]: [number, number]) => value >= low && value <= high;
