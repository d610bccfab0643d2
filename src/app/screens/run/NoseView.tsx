/**
 * The spindle from in front of the nose: where its axis lies in each seat, how far it could go there, and the load on
 * it as an arrow.
 * The arrow is dragged, or moved by the arrow keys; where a pose is held by hand, the axis is.
 */

import { type RefObject, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { measureText } from '../../../design/measures.ts';
import { withValue } from '../../../design/place.ts';
import { fineText, type System } from '../../../design/units.ts';
import { degrees as inDegrees, radians } from '../../../report/convert.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { asideText } from '../../pictures/asideText.ts';
import { roundAbove } from '../../pictures/sceneGeometry.ts';
import { useHandle } from '../../pictures/useMove.ts';
import type { Work } from '../../state/store.ts';
import { useHeld } from '../../state/useHeld.ts';
import { isPosed } from './runEdits.ts';
import { stationsOf } from './seatMarks.ts';

interface Props {
  work: Work;
  design: Design;
  fields: RunFields | null;
  system: System;
}

const SIZE = 300;
const MIDDLE = SIZE / 2;
/** Radius of the ring for the greatest room of all seats, and of the longest arrow. */
const ROOM = 100;
const ARROW = 125;

/** What the hand holds: places of the handle in its own unit (N or mm), and how it is put into the design. */
interface Grip {
  x: number;
  y: number;
  most: number;
  reach: number;
  path: 'run.load' | 'run.pose';
  about: string;
  text: string;
}

export function NoseView({ work, design, fields, system }: Props) {
  const { load, speed } = design.run!;
  const posed = isPosed(design.run!);
  const rooms = fitSection(design).seats.map(({ leastFilm }) => Math.max(0, leastFilm ?? 0));
  const room = useHeld(Math.max(...rooms, 0.0005), work);
  const grip = useGrip(work, design, room, system);
  const svg = useRef<SVGSVGElement>(null);
  const { handlers, onKeyDown } = useMoving(work, grip, svg);
  const [hx, hy] = within(MIDDLE + (grip.x * grip.reach) / grip.most, MIDDLE - (grip.y * grip.reach) / grip.most);
  return (
    <figure className="nose-view">
      <svg
        viewBox={`0 0 ${SIZE} ${SIZE}`}
        role="group"
        aria-label="The spindle seen from in front of the nose"
        ref={svg}
        {...handlers}
      >
        <circle cx={MIDDLE} cy={MIDDLE} r={ROOM} className="ring" />
        <path d={`M${MIDDLE - ROOM} ${MIDDLE}h${2 * ROOM}M${MIDDLE} ${MIDDLE - ROOM}v${2 * ROOM}`} className="cross" />
        <Turning speed={speed} />
        {fields && <Axes fields={fields} design={design} perMm={ROOM / room} />}
        {!posed && (load?.x || load?.y) ? <Arrow x={hx} y={hy} /> : null}
        <g
          role="slider"
          tabIndex={0}
          aria-label={`${grip.about}; arrow keys change it`}
          aria-valuenow={Number(Math.hypot(grip.x, grip.y).toPrecision(3))}
          aria-valuetext={grip.text}
          onKeyDown={onKeyDown}
          className="hold"
        >
          <circle cx={hx} cy={hy} r={20} className="grip" />
          <circle cx={hx} cy={hy} r={7} className="handle" />
        </g>
      </svg>
      <figcaption>
        <span>
          {posed ? 'Held: ' : 'Load: '}
          {grip.text}
        </span>
        <span className="hint">
          Dots: where the axis lies in each seat; ring: {fineText(room, system)} aside. Drag the{' '}
          {posed ? 'axis' : 'arrow'}.
        </span>
      </figcaption>
    </figure>
  );
}

/** The load, or the axis where a pose is held. `room` in mm. */
function useGrip(work: Work, design: Design, room: number, system: System): Grip {
  const { pose, load } = design.run!;
  const most = useHeld(roundAbove(Math.max(5, 1.4 * Math.hypot(load?.x ?? 0, load?.y ?? 0))), work);
  if (isPosed(design.run!)) {
    const [x, y] = [pose?.x ?? 0, pose?.y ?? 0];
    return {
      x,
      y,
      most: room,
      reach: ROOM,
      path: 'run.pose',
      about: 'Axis of the journal as it is held',
      text: asideText(x, y, system),
    };
  }
  const [x, y] = [load?.x ?? 0, load?.y ?? 0];
  return { x, y, most, reach: ARROW, path: 'run.load', about: 'Load on the spindle', text: loadText(x, y, system) };
}

/** By the pointer, and by the arrow keys in twentieths of what the picture holds. */
function useMoving(work: Work, grip: Grip, svg: RefObject<SVGSVGElement | null>) {
  return useHandle({
    at: grip,
    to: (x, y) => work.change((d) => withValue(withValue(d, `${grip.path}.x`, tidy(x)), `${grip.path}.y`, tidy(y))),
    perPixel: () => ((SIZE / (svg.current?.clientWidth || SIZE)) * grip.most) / grip.reach,
    step: grip.most / 20,
    start: () => work.dragStart(),
    end: () => work.dragEnd(),
  });
}

const tidy = (value: number) => Number(value.toPrecision(4));
/** Stays in the picture, where the handle can be got hold of again. */
const within = (x: number, y: number): [number, number] => [
  Math.min(SIZE - 10, Math.max(10, x)),
  Math.min(SIZE - 10, Math.max(10, y)),
];

function loadText(x: number, y: number, system: System): string {
  const told = (force: number) => measureText('force', Math.abs(force), system);
  const parts = [
    x === 0 ? '' : `${told(x)} to the ${x > 0 ? 'right' : 'left'}`,
    y === 0 ? '' : `${told(y)} ${y > 0 ? 'up' : 'down'}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing sideways' : parts.join(', ');
}

function Arrow({ x, y }: { x: number; y: number }) {
  const angle = inDegrees(Math.atan2(y - MIDDLE, x - MIDDLE));
  return (
    <g className="load">
      <path d={`M${MIDDLE} ${MIDDLE}L${x} ${y}`} />
      <path d="M-24 -8L-10 0L-24 8" transform={`translate(${x} ${y}) rotate(${angle})`} />
    </g>
  );
}

/** Which way it turns: from x toward y is against the clock, seen from the nose. */
function Turning({ speed }: { speed: number }) {
  if (speed === 0) return null;
  const r = ROOM + 16;
  const [a, b] = speed > 0 ? [20, 70] : [70, 20];
  const at = (degrees: number) =>
    `${(MIDDLE + r * Math.cos(radians(degrees))).toFixed(1)} ${(MIDDLE - r * Math.sin(radians(degrees))).toFixed(1)}`;
  const [tx, ty] = at(b).split(' ');
  const turn = speed > 0 ? -b - 90 : -b + 90;
  return (
    <g className="turning">
      <path d={`M${at(a)}A${r} ${r} 0 0 ${speed > 0 ? 0 : 1} ${at(b)}`} />
      <path d="M-9 -5L0 0L-9 5" transform={`translate(${tx} ${ty}) rotate(${turn})`} />
    </g>
  );
}

/**
 * The axis where it passes the middle of every seat, and the line between. To first order: x + tiltY·z, y - tiltX·z.
 */
function Axes({ fields, design, perMm }: { fields: RunFields; design: Design; perMm: number }) {
  const { x, y, tiltX, tiltY } = fields.pose;
  const points = fields.seats.map((seat) => {
    const { from, to } = stationsOf(seat);
    const z = (from + to) / 2;
    const [px, py] = within(MIDDLE + perMm * (x + tiltY * z), MIDDLE - perMm * (y - tiltX * z));
    return { name: seat.name, index: design.seats.findIndex(({ name }) => name === seat.name), px, py, z };
  });
  const inOrder = points.toSorted((a, b) => a.z - b.z);
  return (
    <g className="axes">
      {inOrder.length > 1 && (
        <path d={`M${inOrder.map(({ px, py }) => `${px.toFixed(1)} ${py.toFixed(1)}`).join('L')}`} />
      )}
      {points.map(({ name, index, px, py }) => (
        <circle key={name} cx={px} cy={py} r={6} className={`seat-${index % 4} dot`}>
          <title>{name}</title>
        </circle>
      ))}
    </g>
  );
}
