/**
 * Where the nose can go, seen from in front: the region its axis reaches at the indicator with the position held,
 * the place it is pulled to, and which seats hold it there. Drag it, or use the arrow keys; Escape lets go.
 */

import { ticks } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { useStore } from 'zustand';
import { unitOf } from '../../../design/measures.ts';
import { fineUnit, placeText, type System } from '../../../design/units.ts';
import { degrees, metres, micrometres, millimetres } from '../../../report/convert.ts';
import { axisAt, type SeatContact } from '../../../report/inFrame.ts';
import type { PlayReport } from '../../../report/play/definition.ts';
import type { Pulled } from '../../../report/play/pulling.ts';
import { asideText } from '../../pictures/asideText.ts';
import { useHandle } from '../../pictures/useMove.ts';
import type { Work } from '../../state/store.ts';

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
/** px a tick keeps from the edge of the map, where its figure would lie on the outline. */
const CLEAR = 18;
/** Play (mm) that no shop indicator shows. */
const STILL = 1e-5;
/** Half the width of the map (mm) where there is no play to measure it by. */
const NO_PLAY = 1e-3;

export function NoseMap({ work, play, pulled, system }: Props) {
  const pull = useStore(work.store, (state) => state.pull);
  const design = useStore(work.store, (state) => state.design);
  const unit = fineUnit(system);
  const map = play.map ?? [];
  const reach = Math.max(0, ...map.map(([x, y]) => Math.hypot(x, y)));
  const most = reach > STILL ? reach : NO_PLAY;
  const scale = scaleLinear([-most, most], [-INNER, INNER]);
  const axis = pulled && axisAt(pulled.pose, metres(play.indicator));
  const now = axis ? { x: millimetres(axis.x), y: millimetres(axis.y) } : { x: 0, y: 0 };
  const svg = useRef<SVGSVGElement>(null);
  const to = (x: number, y: number) => work.store.setState({ pull: { station: play.indicator, x, y } });
  const { handlers, onKeyDown } = useHandle({
    at: now,
    to,
    perPixel: () => scale.invert(SIZE / (svg.current?.clientWidth || SIZE)),
    step: most / 10,
    start: () => to(now.x, now.y),
    letGo: () => work.store.setState({ pull: null }),
  });
  const at = (x: number, y: number) => `${(MIDDLE + scale(x)).toFixed(2)} ${(MIDDLE - scale(y)).toFixed(2)}`;
  const said = asideText(now.x, now.y, system);
  const where = `station ${placeText(play.indicator, system)}`;
  return (
    <figure className="nose-map">
      <svg
        viewBox={`0 0 ${SIZE} ${SIZE}`}
        role="group"
        aria-label="Where the nose can go, seen from in front"
        ref={svg}
        {...handlers}
      >
        <circle cx={MIDDLE} cy={MIDDLE} r={RING} className="ring" />
        <path
          d={`M${MIDDLE - INNER} ${MIDDLE}H${MIDDLE + INNER}M${MIDDLE} ${MIDDLE - INNER}V${MIDDLE + INNER}`}
          className="axis"
        />
        {reach > STILL && <path d={`M${map.map(([x, y]) => at(x, y)).join('L')}Z`} className="reach" />}
        {reach > STILL && <Scale most={most} unit={unit} scale={scale} />}
        {reach <= STILL && (
          <text x={MIDDLE} y={MIDDLE + 46} textAnchor="middle" className="none">
            {NONE[play.shake.status]}
          </text>
        )}
        {pull && axis && pull.station === play.indicator && (
          <path d={`M${at(now.x, now.y)}L${at(pull.x, pull.y)}`} className="pulling" clipPath="circle(50%)" />
        )}
        {pulled && <Forces contacts={pulled.contacts} seats={design.seats.map(({ name }) => name)} system={system} />}
        <g
          role="slider"
          tabIndex={0}
          aria-label="Nose of the spindle; arrow keys pull it, Escape lets go"
          aria-valuenow={micrometres(Math.hypot(now.x, now.y))}
          aria-valuetext={said}
          onKeyDown={onKeyDown}
          className="nose"
        >
          <circle cx={MIDDLE + scale(now.x)} cy={MIDDLE - scale(now.y)} r={20} className="grip" />
          <circle cx={MIDDLE + scale(now.x)} cy={MIDDLE - scale(now.y)} r={8} className="handle" />
        </g>
      </svg>
      <figcaption>
        {!pull && <span className="hint">Drag the nose and feel the stops.</span>}
        <span>
          {pulled && pull
            ? `${said} at the indicator, ${where}. Arrows: what the seats press with for a pull of 1 ${unitOf('force', system).name} ${pull.station === play.indicator ? 'there' : `at station ${placeText(pull.station, system)}`}.`
            : `${unit.name} at the indicator, ${where}`}
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

/** Why there is no region to show. */
const NONE: Record<PlayReport['shake']['status'], string> = {
  solved: 'no play here',
  unbounded: 'nothing holds it sideways',
  infeasible: 'no play: pressed into a bush',
  stalled: 'not worked out',
};

/** Ticks across and up, clear of the outline, with the unit at the end of each line. */
function Scale({
  most,
  unit: { size, name },
  scale,
}: {
  most: number;
  unit: { size: number; name: string };
  scale: ScaleLinear<number, number>;
}) {
  const shown = ticks(-most / size, most / size, 5).filter(
    (t) => t !== 0 && Math.abs(scale(t * size)) <= INNER - CLEAR,
  );
  const marks = shown.map((t) => {
    const off = scale(t * size);
    const figure = `${t}`.replace('-', '−');
    return (
      <g key={t} className="tick">
        <path d={`M${MIDDLE + off} ${MIDDLE - 3}v6M${MIDDLE - 3} ${MIDDLE - off}h6`} />
        <text x={MIDDLE + off} y={MIDDLE + 17} textAnchor="middle">
          {figure}
        </text>
        <text x={MIDDLE - 8} y={MIDDLE - off + 4} textAnchor="end">
          {figure}
        </text>
      </g>
    );
  });
  return (
    <>
      {marks}
      <text x={MIDDLE + INNER - 5} y={MIDDLE - 7} textAnchor="end" className="unit">
        {name}
      </text>
      <text x={MIDDLE + 8} y={MIDDLE - INNER + 17} className="unit">
        {name}
      </text>
    </>
  );
}

interface Arrow {
  seat: number;
  angle: number;
  /** of a pull of 1 */
  share: number;
}

/** What the seats carry, by the angle they press at: places along one line of a seat are one arrow. */
function Forces({
  contacts,
  seats,
  system,
}: {
  contacts: readonly SeatContact[];
  seats: readonly string[];
  system: System;
}) {
  const arrows: Arrow[] = [];
  for (const { seat, angle, share } of contacts) {
    const same = arrows.find((arrow) => seats[arrow.seat] === seat && near(arrow.angle, angle));
    if (same) same.share += share;
    else arrows.push({ seat: Math.max(0, seats.indexOf(seat)), angle, share });
  }
  return arrows.map(({ seat, angle, share }, i) => {
    const long = 14 + 22 * Math.min(1, share);
    const from = RING + 20;
    // Those of different seats at one angle stand side by side.
    const aside = BESIDE * arrows.slice(0, i).filter((arrow) => near(arrow.angle, angle)).length;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const across = Math.abs(cos) > Math.abs(sin);
    const [x, y] = across
      ? [MIDDLE + from * cos, MIDDLE - from * sin + aside * cos - 10]
      : [MIDDLE + from * cos + aside * sin + 10, MIDDLE - (from - 8) * sin + 4];
    return (
      <g key={`${seat} ${angle}`} className={`force seat-${seat % 4}`}>
        <path
          transform={`translate(${MIDDLE} ${MIDDLE}) rotate(${degrees(-angle)})`}
          d={`M${from} ${aside}h${-long}m7 -5l-7 5l7 5`}
        />
        <text x={x} y={y} textAnchor={!across || cos < 0 ? 'start' : 'end'} className="amount">
          {share.toFixed(2)} {unitOf('force', system).name}
        </text>
      </g>
    );
  });
}

/** px */
const BESIDE = 26;
const near = (a: number, b: number) => Math.abs(Math.sin((a - b) / 2)) < 0.02;
