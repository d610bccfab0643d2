/**
 * Where the nose can go, seen from in front: the region its axis reaches at the indicator with the position held,
 * the place it is pulled to, and which seats hold it there. Drag it, or use the arrow keys; Escape lets go.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { type KeyboardEvent, useRef } from 'react';
import { useStore } from 'zustand';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { axisAt } from '../../engine/play/rigid.ts';
import type { PlayReport } from '../../report/play/definition.ts';
import { metres, millimetres } from '../../report/toEngine.ts';
import type { Work } from '../store.ts';
import { useDrag } from '../useDrag.ts';
import type { Pulled } from './usePull.ts';

interface Props {
  work: Work;
  play: PlayReport;
  pulled: Pulled | null;
  system: System;
}

const SIZE = 340;
const MIDDLE = SIZE / 2;
/** Radius of the ring on which the seats' forces stand. */
const RING = 132;
const INNER = 96;

export function NoseMap({ work, play, pulled, system }: Props) {
  const pull = useStore(work.store, (state) => state.pull);
  const unit = fineUnit(system);
  const map = play.map ?? [];
  const most = Math.max(...map.map(([x, y]) => Math.hypot(x, y)), 1e-5);
  const scale = scaleLinear([-most, most], [-INNER, INNER]);
  const axis = pulled && axisAt(pulled.pose, metres(play.indicator));
  const now = axis ? { x: millimetres(axis.x), y: millimetres(axis.y) } : { x: 0, y: 0 };
  const start = useRef({ x: 0, y: 0 });
  const to = (x: number, y: number) => work.store.setState({ pull: { station: play.indicator, x, y } });
  const svg = useRef<SVGSVGElement>(null);
  const { handlers } = useDrag({
    start: () => {
      start.current = now;
      to(now.x, now.y);
    },
    move: (dx, dy) => {
      const perPixel = SIZE / (svg.current?.clientWidth || SIZE);
      to(start.current.x + scale.invert(dx * perPixel), start.current.y - scale.invert(dy * perPixel));
    },
    end: () => {},
  });
  const onKeyDown = (event: KeyboardEvent) => {
    const step = (most / 10) * (event.shiftKey ? 5 : 1);
    const by: Record<string, [number, number]> = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] };
    const move = by[event.key];
    if (event.key === 'Escape') work.store.setState({ pull: null });
    if (!move) return;
    event.preventDefault();
    to(now.x + move[0], now.y + move[1]);
  };
  const at = (x: number, y: number) => `${(MIDDLE + scale(x)).toFixed(2)} ${(MIDDLE - scale(y)).toFixed(2)}`;
  const said = `${fineText(now.x, system)} to the right, ${fineText(now.y, system)} up`;
  return (
    <figure className="nose-map">
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} role="group" aria-label="Where the nose can go, seen from in front" ref={svg} {...handlers}>
        <circle cx={MIDDLE} cy={MIDDLE} r={RING} className="ring" />
        <path d={`M${MIDDLE - INNER} ${MIDDLE}H${MIDDLE + INNER}M${MIDDLE} ${MIDDLE - INNER}V${MIDDLE + INNER}`} className="axis" />
        {ticks(-most / unit.size, most / unit.size, 5).map((t) => (
          <g key={t} className="tick">
            <path d={`M${MIDDLE + scale(t * unit.size)} ${MIDDLE - 3}v6`} />
            {t !== 0 && (
              <text x={MIDDLE + scale(t * unit.size)} y={MIDDLE + 17} textAnchor="middle">
                {`${t}`.replace('-', '−')}
              </text>
            )}
          </g>
        ))}
        {map.length > 0 && <path d={`M${map.map(([x, y]) => at(x, y)).join('L')}Z`} className="reach" />}
        {pull && axis && pull.station === play.indicator && <path d={`M${at(now.x, now.y)}L${at(pull.x, pull.y)}`} className="pulling" clipPath="circle(50%)" />}
        {pulled?.contacts.map((contact) => {
          const seat = Math.max(
            0,
            work.store.getState().design.seats.findIndex(({ name }) => name === contact.seat),
          );
          const long = 14 + 22 * Math.min(1, contact.share);
          return (
            <g key={`${contact.seat} ${contact.station} ${contact.angle}`} className={`force seat-${seat % 4}`} transform={`translate(${MIDDLE} ${MIDDLE}) rotate(${(-contact.angle * 180) / Math.PI})`}>
              <path d={`M${RING + 20} 0H${RING + 20 - long}m7 -5l-7 5l7 5`} />
            </g>
          );
        })}
        <g role="slider" tabIndex={0} aria-label="Nose of the spindle; arrow keys pull it, Escape lets go" aria-valuenow={Math.round(Math.hypot(now.x, now.y) * 1e6) / 1e3} aria-valuetext={said} onKeyDown={onKeyDown} className="nose">
          <circle cx={MIDDLE + scale(now.x)} cy={MIDDLE - scale(now.y)} r={20} className="grip" />
          <circle cx={MIDDLE + scale(now.x)} cy={MIDDLE - scale(now.y)} r={8} className="handle" />
        </g>
      </svg>
      <figcaption>
        <span>
          {pulled ? said : 'Drag the nose and feel the stops'}; {unit.name} at the indicator
        </span>
        {pull && (
          <button type="button" onClick={() => work.store.setState({ pull: null })}>
            Let go
          </button>
        )}
      </figcaption>
    </figure>
  );
}
