/** Two sections over each other: the first state filled, the second as a line; above the axis, one factor for both. */
import { useMemo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { seatLines } from '../../../engine/contact/fit.ts';
import { metres, toSeats } from '../../../report/convert.ts';
import type { Point } from '../../pictures/drawn.ts';
import { drawnOver, type SeatOver } from '../../pictures/drawnOver.ts';
import { SaveSvg } from '../../pictures/SaveSvg.tsx';
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
/** Metal drawn behind a surface, as a share of the greatest radius. */
const METAL = 0.12;

export function Overlay({ before, after, system }: { before: Named; after: Named; system: System }) {
  const svg = useRef<SVGSVGElement>(null);
  const size = useSize(svg, { width: 800, height: 320 });
  const { factor, seats, apart } = useMemo(() => {
    const state = ({ seats, position = 0, ...rest }: Design) => ({
      seats: toSeats({ seats, position, ...rest }).map(seatLines),
      position: metres(position),
    });
    return drawnOver(state(before.design), state(after.design), FACTOR);
  }, [before.design, after.design]);
  const apartText = apart.length > 0 ? ` Not drawn, too different or in one only: ${apart.join(', ')}.` : '';
  if (seats.length === 0) return <p className="fine">The sections have no seat in common.{apartText}</p>;
  const { at, scale } = placing(seats, size);
  const bar = scaleBar(scale * factor, 0.2 * size.width, system);
  const label = `${bar.text} of gap`;
  return (
    <figure className="overlay">
      <svg
        ref={svg}
        role="img"
        aria-label={`Sections of both states over each other: ${before.name} filled, ${after.name} as a line`}
      >
        {seats.map((seat) => (
          <g key={seat.name}>
            <path className="bush-fill" d={bandOf(seat.before.bush, METAL, seats, at)} />
            <path className="journal-fill" d={bandOf(seat.before.journal, -METAL, seats, at)} />
            <path className="after bush-after" d={pathOf(seat.after.bush, at)} />
            <path className="after" d={pathOf(seat.after.journal, at)} />
          </g>
        ))}
        {seats.map(({ name, before: { bush } }) => {
          const middle = at(middleOf(bush, METAL * widest(seats)));
          return (
            <text key={name} x={middle.x} y={middle.y + NOTE / 3} fontSize={NOTE} textAnchor="middle">
              {name}
            </text>
          );
        })}
        <g className="bar">
          <path d={`M10 ${size.height - 14}V${size.height - 8}H${10 + bar.width}V${size.height - 14}`} />
          <text x={10} y={size.height - 19} fontSize={NOTE}>
            {label}
          </text>
        </g>
      </svg>
      <figcaption>
        <span>
          <span className="swatch filled" /> {before.name}
        </span>
        <span>
          <span className="swatch line" /> {after.name}, journal
        </span>
        <span>
          <span className="swatch line broken" /> {after.name}, bush
        </span>
        <span>
          Bush above, journal below; differences drawn ×{Math.round(factor)}.{apartText}
        </span>
        <span className="buttons">
          <SaveSvg name="comparison" />
        </span>
      </figcaption>
    </figure>
  );
}

type At = (point: Point) => { x: number; y: number };

const widest = (seats: readonly SeatOver[]) => Math.max(...allOf(seats).map(([, r]) => r));

const allOf = (seats: readonly SeatOver[]): Point[] =>
  seats.flatMap(({ before, after }) => [...before.bush, ...before.journal, ...after.bush, ...after.journal]);

/** px to a mm, and where a point (m) stands: the surfaces fill the drawing, the axis need not be on it. */
function placing(seats: readonly SeatOver[], { width, height }: Size): { at: At; scale: number } {
  const points = allOf(seats);
  const metal = METAL * widest(seats);
  const [left, right] = [Math.min(...points.map(([z]) => z)), Math.max(...points.map(([z]) => z))];
  const [low, high] = [Math.min(...points.map(([, r]) => r)) - metal, widest(seats) + metal];
  const perMetre = Math.min((width - 2 * EDGE) / (right - left), (height - EDGE - FOOT - NOTE) / (high - low));
  const [z0, r0] = [(left + right) / 2, high];
  return {
    at: ([z, r]) => ({ x: width / 2 + (z - z0) * perMetre, y: NOTE + EDGE / 2 + (r0 - r) * perMetre }),
    scale: perMetre * metres(1),
  };
}

/** The middle of the metal behind a surface, where its name has room. */
function middleOf(line: readonly Point[], metal: number): Point {
  const [first, last] = [line[0]!, line[line.length - 1]!];
  return [(first[0] + last[0]) / 2, (first[1] + last[1] + metal) / 2];
}

const pathOf = (points: readonly Point[], at: At) =>
  `M${points
    .map((point) =>
      Object.values(at(point))
        .map((v) => v.toFixed(2))
        .join(' '),
    )
    .join('L')}`;

/** The metal behind a surface, as far as `share` of the greatest radius. */
function bandOf(points: readonly Point[], share: number, seats: readonly SeatOver[], at: At): string {
  const depth = share * widest(seats);
  return `${pathOf([...points, ...points.map(([z, r]) => [z, r + depth] as const).reverse()], at)}Z`;
}
