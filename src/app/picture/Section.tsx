/** The longitudinal section, as a drawing office would show it: both parts hatched, the films open between them. */
import { useEffect, useId, useRef, useState } from 'react';
import { fineText, placeText, type System, TENTH } from '../../design/units.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { landmarks, moveByKey, snapped } from '../journalMove.ts';
import type { Work } from '../store.ts';
import { useDrag } from '../useDrag.ts';
import { type Size, useSize } from '../useSize.ts';
import { type Drawn, type Point, relieved } from './drawn.ts';

interface Props {
  drawn: Drawn;
  fit: FitReport;
  system: System;
  work: Work;
}

const SNAP_PIXELS = 5;
const MM = 1000;
const NOTES_PIXELS = 56;
const BAR_PIXELS = 48;

export function Section({ drawn, fit, system, work }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const [view, setView] = useState({ zoom: 1, x: 0, y: 0 });
  const size = useSize(svg, { width: 900, height: 500 });
  const frame = frameOf(drawn, size);
  const width = frame.width / view.zoom;
  const height = frame.height / view.zoom;
  const left = frame.left + (frame.width - width) / 2 + view.x;
  const top = frame.top + (frame.height - height) / 2 + view.y;
  const mmPerPixel = Math.max(width / size.width, height / size.height);
  const label = 14 * mmPerPixel;

  const start = useRef(0);
  const journalDrag = useDrag({
    start: () => {
      start.current = fit.position;
      work.dragStart();
    },
    move: (dx) => {
      const perPixel = mmPerPixel / drawn.factor;
      work.moveTo(snapped(start.current + dx * perPixel, landmarks(fit), SNAP_PIXELS * perPixel));
    },
    end: work.dragEnd,
  });
  const panFrom = useRef(view);
  const pan = useDrag({
    start: () => {
      panFrom.current = view;
    },
    move: (dx, dy) => setView({ ...panFrom.current, x: panFrom.current.x - dx * mmPerPixel, y: panFrom.current.y - dy * mmPerPixel }),
    end: () => {},
  });
  const zoomBy = (by: number) => setView((v) => ({ ...v, zoom: Math.min(40, Math.max(0.5, v.zoom * by)) }));
  useEffect(() => {
    const node = svg.current;
    // With Ctrl (as a pinch on a touch pad sends it), so that the plain wheel still scrolls the page.
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      setView((v) => ({ ...v, zoom: Math.min(40, Math.max(0.5, v.zoom * (event.deltaY < 0 ? 1.15 : 1 / 1.15))) }));
    };
    node?.addEventListener('wheel', onWheel, { passive: false });
    return () => node?.removeEventListener('wheel', onWheel);
  }, []);

  const bar = scaleBar(drawn.factor, mmPerPixel * size.width, system);
  const barAt = { x: left + width / 2 - (mmPerPixel * size.width) / 2 + label, y: top + height / 2 + (mmPerPixel * size.height) / 2 - label };
  const touching = new Set(fit.seats.filter((s) => s.leastFilm !== null && Math.abs(s.leastFilm) <= 1e-9).map((s) => s.name));
  return (
    <figure className="picture">
      <svg ref={svg} viewBox={`${left} ${top} ${width} ${height}`} {...pan} role="group" aria-label="Longitudinal section of the pair; drag the journal along its axis">
        <defs>
          <pattern id={`${id}b`} width={frame.width / 70} height={frame.width / 70} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="100%" height="100%" className="bush-fill" />
            <path d={`M0 0V${frame.width}`} className="hatch" />
          </pattern>
          <pattern id={`${id}j`} width={frame.width / 55} height={frame.width / 55} patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
            <rect width="100%" height="100%" className="journal-fill" />
            <path d={`M0 0V${frame.width}`} className="hatch" />
          </pattern>
        </defs>
        <g
          {...journalDrag}
          className="journal"
          role="slider"
          tabIndex={0}
          aria-label="Axial position of the journal"
          aria-valuenow={Math.round(fit.position * 1e6) / 1e3}
          aria-valuetext={`${fineText(fit.position, system)} toward the nose`}
          onKeyDown={(event) => moveByKey(event, work, fit)}
        >
          <path d={frame.journal} fill={`url(#${id}j)`} className="outline" />
        </g>
        {[1, -1].map((side) => (
          <path key={side} d={frame.bush(side)} fill={`url(#${id}b)`} className="outline bush" />
        ))}
        {drawn.seats.flatMap((seat) =>
          [1, -1].map((side) => {
            const film = seat.film;
            if (film.length < 2) return null;
            const least = Math.min(...film.map((place) => place.film));
            const d = pathOf([...film.map((f) => f.bush), ...film.map((f) => f.journal).reverse()], side);
            return <path key={`${seat.name}${side}`} d={d} className={least < -1e-12 ? 'film clash' : 'film'} />;
          }),
        )}
        {fit.seats.flatMap((seat, i) =>
          touching.has(seat.name)
            ? [1, -1].map((side) => {
                const places = drawn.seats[i]!.film.filter((f) => Math.abs(f.film) <= 1e-12).map((f) => f.bush);
                return places.length === 0 ? null : <path key={`${seat.name}${side}`} d={pathOf(places.length === 1 ? [places[0]!, places[0]!] : places, side, false)} className="touch" />;
              })
            : [],
        )}
        <path d={`M${frame.left} 0H${frame.left + frame.width}`} className="axis" />
        {fit.seats.map((seat, i) => {
          const points = drawn.seats[i]!.bush;
          const [z, r] = points[Math.floor((points.length - 1) / 2)]!;
          const mid = points.length === 2 ? [(points[0]![0] + points[1]![0]) / 2, (points[0]![1] + points[1]![1]) / 2] : [z, r];
          const x = mid[0]! * MM;
          const y = -frame.outer - label * (i % 2 === 0 ? 0.7 : 2.1);
          return (
            <g key={seat.name} className="note">
              <path d={`M${x} ${-mid[1]! * MM}V${y + label * 0.3}`} />
              <text x={x} y={y} fontSize={label} textAnchor="middle">
                {seat.name} {seat.leastFilm === null ? 'apart' : fineText(seat.leastFilm, system)}
              </text>
            </g>
          );
        })}
        <g className="bar">
          <path d={`M${barAt.x} ${barAt.y - label * 0.5}V${barAt.y}H${barAt.x + bar.width}V${barAt.y - label * 0.5}`} />
          <text x={barAt.x} y={barAt.y - label * 0.8} fontSize={label}>
            {bar.text} of gap
          </text>
        </g>
      </svg>
      <figcaption>
        <span>
          Gaps drawn ×{Math.round(drawn.factor).toLocaleString('en')} · overall {placeText(frame.length, system)}
        </span>
        <span className="buttons">
          <button type="button" onClick={() => zoomBy(1.4)} aria-label="Zoom in">
            +
          </button>
          <button type="button" onClick={() => zoomBy(1 / 1.4)} aria-label="Zoom out">
            −
          </button>
          <button type="button" onClick={() => setView({ zoom: 1, x: 0, y: 0 })}>
            Whole
          </button>
        </span>
      </figcaption>
    </figure>
  );
}

/** A gap of 1, 2 or 5 × 10ⁿ µm (or tenths) that draws a bar of up to a fifth of the view. */
function scaleBar(factor: number, width: number, system: System): { width: number; text: string } {
  const unit = system === 'metric' ? 0.001 : TENTH;
  const room = (width * 0.2) / factor / unit;
  const power = 10 ** Math.floor(Math.log10(room));
  const size = (room / power >= 5 ? 5 : room / power >= 2 ? 2 : 1) * power;
  return { width: size * unit * factor, text: `${+size.toPrecision(1)} ${system === 'metric' ? 'µm' : size === 1 ? 'tenth' : 'tenths'}` };
}

function pathOf(points: readonly Point[], side: number, closed = true): string {
  return `M${points.map(([z, r]) => `${(z * MM).toFixed(5)} ${(-side * r * MM).toFixed(5)}`).join('L')}${closed ? 'Z' : ''}`;
}

/** The outlines in mm and the room they need; the seats stand in the order of their stations. */
function frameOf(drawn: Drawn, size: Size) {
  const byStation = [...drawn.seats].sort((a, b) => a.bush[0]![0] - b.bush[0]![0]);
  const bores = byStation.map((s) => s.bush);
  const bush = relieved(bores, bores, 'outside');
  const journal = relieved(
    byStation.map((s) => s.journal),
    bores,
    'inside',
  );
  const rear = Math.min(...bush.map(([z]) => z));
  const nose = Math.max(...bush.map(([z]) => z));
  const reach = (nose - rear) * 0.14;
  const outer = Math.max(...bush.map(([, r]) => r), ...journal.map(([, r]) => r)) * 1.28;
  const first = journal[0]!;
  const last = journal[journal.length - 1]!;
  const upper: Point[] = [[Math.min(first[0], rear) - reach, first[1] * 0.94], [first[0], first[1] * 0.94], ...journal, [Math.max(last[0], nose) + reach, last[1]]];
  const left = upper[0]![0] * MM;
  const right = upper[upper.length - 1]![0] * MM;
  const tall = outer * MM;
  const margin = (right - left) * 0.03;
  // Room in pixels for the notes above and the bar below, whatever the shape of the pair and of the page.
  const mmPerPixel = Math.max((right - left + 2 * margin) / size.width, (2 * tall) / Math.max(60, size.height - NOTES_PIXELS - BAR_PIXELS));
  return {
    left: left - margin,
    width: right - left + 2 * margin,
    top: -tall - NOTES_PIXELS * mmPerPixel,
    height: 2 * tall + (NOTES_PIXELS + BAR_PIXELS) * mmPerPixel,
    outer: tall,
    length: (nose - rear) * MM,
    journal: `${pathOf([...upper, ...[...upper].reverse().map(([z, r]) => [z, -r] as const)], 1)}`,
    bush: (side: number) => pathOf([...bush, [nose, outer], [rear, outer]], side),
  };
}
