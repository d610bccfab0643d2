/** Two sections over each other, seat by seat: the first state filled, the second as a line; one factor for all. */
import { useMemo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import { linesOf } from '../../../report/inFrame.ts';
import type { Point } from '../../pictures/drawn.ts';
import { drawnOver, type SeatOver } from '../../pictures/drawnOver.ts';
import { scaleBar } from '../../pictures/scaleBar.ts';
import { type Size, useSize } from '../../pictures/useSize.ts';

interface Named {
  name: string;
  design: Design;
}

const FACTOR = 400;
const NOTE = 14;
const EDGE = 14;
/** Room below for the scale, px. */
const FOOT = 44;
/** Metal drawn behind a surface, as a share of the seat. */
const METAL = 0.16;

export function Overlay({ before, after, system }: { before: Named; after: Named; system: System }) {
  const { factor, seats, apart } = useMemo(() => {
    const state = (design: Design) => ({
      seats: linesOf(design),
      position: metres(design.position ?? 0),
    });
    return drawnOver(state(before.design), state(after.design), FACTOR);
  }, [before.design, after.design]);
  return (
    <div className="overlay">
      <div className="seats">
        {seats.map((seat) => (
          <SeatOverlay
            key={seat.name}
            seat={seat}
            factor={factor}
            system={system}
            said={`${seat.name}: ${before.name} filled, ${after.name} as a line`}
          />
        ))}
      </div>
      <p className="fine legend">
        <span>
          <span className="swatch filled" /> {before.name}, bush above, journal below
        </span>
        <span>
          <span className="swatch line" /> {after.name}, journal
        </span>
        <span>
          <span className="swatch line broken" /> {after.name}, bush
        </span>
        <span>Differences drawn ×{Math.round(factor)}.</span>
        {apart.length > 0 && <span>Not drawn, in one only or too different: {apart.join(', ')}.</span>}
      </p>
    </div>
  );
}

interface SeatProps {
  seat: SeatOver;
  factor: number;
  system: System;
  said: string;
}

/** One seat as large as its room: the seats of a long spindle lie far apart. */
function SeatOverlay({ seat, factor, system, said }: SeatProps) {
  const svg = useRef<SVGSVGElement>(null);
  const size = useSize(svg, { width: 360, height: 240 });
  const { at, scale, metal } = placing(seat, size);
  const bar = scaleBar(scale * factor, 0.3 * size.width, system);
  return (
    <figure>
      <svg ref={svg} role="img" aria-label={said}>
        <path className="bush-fill" d={bandOf(seat.before.bush, metal, at)} />
        <path className="journal-fill" d={bandOf(seat.before.journal, -metal, at)} />
        <path className="after bush-after" d={pathOf(seat.after.bush, at)} />
        <path className="after" d={pathOf(seat.after.journal, at)} />
        <g className="bar">
          <path d={`M10 ${size.height - 14}V${size.height - 8}H${10 + bar.width}V${size.height - 14}`} />
          <text x={10} y={size.height - 19} fontSize={NOTE}>
            {bar.text} of gap
          </text>
        </g>
      </svg>
      <figcaption>
        <span>{seat.name}</span>
      </figcaption>
    </figure>
  );
}

type At = (point: Point) => { x: number; y: number };

/** px to a mm, where a point (m) stands, and how thick metal is drawn (m): the surfaces fill the drawing. */
function placing({ before, after }: SeatOver, { width, height }: Size): { at: At; scale: number; metal: number } {
  const points = [...before.bush, ...before.journal, ...after.bush, ...after.journal];
  const [left, right] = [Math.min(...points.map(([z]) => z)), Math.max(...points.map(([z]) => z))];
  const [low, high] = [Math.min(...points.map(([, r]) => r)), Math.max(...points.map(([, r]) => r))];
  const metal = METAL * Math.max(right - left, high - low);
  const perMetre = Math.min((width - 2 * EDGE) / (right - left), (height - EDGE - FOOT) / (high - low + 2 * metal));
  return {
    at: ([z, r]) => ({
      x: width / 2 + (z - (left + right) / 2) * perMetre,
      y: EDGE + (high + metal - r) * perMetre,
    }),
    scale: perMetre * metres(1),
    metal,
  };
}

const pathOf = (points: readonly Point[], at: At) =>
  `M${points
    .map(at)
    .map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`)
    .join('L')}`;

/** The metal behind a surface, so far (m) away from the film. */
const bandOf = (points: readonly Point[], depth: number, at: At) =>
  `${pathOf([...points, ...points.map(([z, r]) => [z, r + depth] as const).reverse()], at)}Z`;
