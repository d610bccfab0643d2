/**
 * The drawing with its dimensions as fields: on a wide page they stand on it, on a phone below it, numbered. It is not
 * to scale, so that every figure has its room; where nought is and which way stations count is drawn on it.
 */
import { type CSSProperties, useId } from 'react';
import { hintText, quantityText, restingText } from '../../../design/quantity.ts';
import type { System } from '../../../design/units.ts';
import { keysFor } from '../../controls/keys.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { ANGLE_NAMES, ANGLE_TITLES, useAngles } from '../../state/angles.ts';
import type { Arrangement, SeatPlan } from './arrangements.ts';
import { type Ask, type Size, sizesOf } from './newDesign.ts';
import { AXIS, leftOf, rightOf, SketchParts } from './SketchParts.tsx';

/** Height of each row of figures in the drawing, and of the whole. */
const ROW: Record<Ask, number> = { bore: 34, angle: 98, diameter: 412, length: 474, behind: 536 };
export const DRAWN = { width: 1000, height: 572 };
const ROW_NAMES: Record<Ask, string> = {
  bore: 'Bore ⌀',
  angle: 'Angle',
  diameter: 'Journal ⌀',
  length: 'Journal length',
  behind: 'Gap between',
};
/** Half the room of a field. */
const HALF = 54;

export interface Held {
  text: string;
  why: string;
}

interface Props {
  plan: Arrangement;
  /** every size, typed or in proportion */
  sizes: Readonly<Record<string, number>>;
  known(id: string): boolean;
  held(id: string): Held | undefined;
  /** what a size does not go with */
  fault(id: string): string | undefined;
  take(size: Size, text: string): void;
  leave(id: string): void;
  system: System;
}

export function Sketch({ plan, sizes, known, held, fault, take, leave, system }: Props) {
  const way = useAngles();
  const fields = sizesOf(plan);
  return (
    <div className="sketch">
      <svg viewBox={`0 0 ${DRAWN.width} ${DRAWN.height}`} aria-hidden="true">
        <SketchParts plan={plan} />
        {fields.map((size) => (
          <Leader key={size.id} plan={plan} size={size} />
        ))}
        <Nought plan={plan} />
        <g className="row-names">
          {(Object.keys(ROW) as Ask[])
            .filter((ask) => fields.some((size) => size.ask === ask))
            .map((ask) => (
              <text key={ask} x={6} y={ROW[ask] + 6}>
                {ask === 'angle' ? ANGLE_TITLES[way] : ROW_NAMES[ask]}
              </text>
            ))}
        </g>
        <g className="numbers">
          {fields.map((size, i) => {
            const { x, y } = placeOf(plan, size);
            return (
              <g key={size.id}>
                <circle cx={x} cy={y} r={31} />
                <text x={x} y={y + 13} textAnchor="middle">
                  {i + 1}
                </text>
              </g>
            );
          })}
        </g>
      </svg>
      <ol>
        {fields.map((size) => (
          <SizeField
            key={size.id}
            size={size}
            place={placeOf(plan, size)}
            shown={plainText(quantityText(size.at.quantity, sizes[size.id]!, system, way))}
            resting={plainText(restingText(size.at.quantity, sizes[size.id]!, system, way))}
            known={known(size.id)}
            held={held(size.id)}
            fault={fault(size.id)}
            take={(text) => take(size, text)}
            leave={() => leave(size.id)}
            system={system}
          />
        ))}
      </ol>
    </div>
  );
}

/** A drawing says once what its figures are in. */
const plainText = (text: string) => text.replace(/ (mm|in)$/, '');

interface FieldProps {
  size: Size;
  place: { x: number; y: number };
  shown: string;
  resting: string;
  known: boolean;
  held: Held | undefined;
  fault: string | undefined;
  take(text: string): void;
  leave(): void;
  system: System;
}

function SizeField({ size, place, shown, resting, known, held, fault, take, leave, system }: FieldProps) {
  const id = useId();
  const way = useAngles();
  const at = {
    '--x': `${(100 * place.x) / DRAWN.width}%`,
    '--y': `${(100 * place.y) / DRAWN.height}%`,
  } as CSSProperties;
  return (
    <li style={at} className={known ? '' : 'open'}>
      <label htmlFor={id} data-way={size.ask === 'angle' ? ` (${ANGLE_NAMES[way]})` : undefined}>
        {size.title}
      </label>
      <TypedField
        id={id}
        keys={keysFor(size.at, system)}
        shown={shown}
        // What is assumed need not be exact, and has its room.
        resting={known ? shown : resting}
        about={`${hintText(size.at, system)}.`}
        take={(text) => {
          take(text);
          return null;
        }}
        held={held}
        fault={fault}
        leave={leave}
        assumed={!known}
      />
    </li>
  );
}

const middle = ({ x }: SeatPlan) => (x[0] + x[1]) / 2;
/** Where the diameter is told: at the large end, or at the nose end of a straight seat. */
const told = ({ x, halfAngle }: SeatPlan) => (halfAngle < 0 ? x[0] : x[1]);

function placeOf({ seats }: Arrangement, { seat, ask }: Size): { x: number; y: number } {
  const plan = seats[seat]!;
  const y = ROW[ask];
  if (ask === 'bore' || ask === 'diameter') return { x: told(plan), y };
  if (ask === 'behind') return { x: (plan.x[0] + seats[seat - 1]!.x[1]) / 2, y };
  return { x: middle(plan), y };
}

/** What a figure belongs to: dimension and extension lines. */
function Leader({ plan, size }: { plan: Arrangement; size: Size }) {
  const seat = plan.seats[size.seat]!;
  const { x, y } = placeOf(plan, size);
  const end = told(seat);
  const r = seat.halfAngle < 0 ? seat.r[0] : seat.r[1];
  switch (size.ask) {
    case 'bore':
      return <path className="leader" d={`M${x} ${y + 20}V${AXIS - r - 5}m-4 -9l4 9l4 -9`} />;
    case 'angle':
      return <path className="leader" d={`M${x} ${y + 20}V${AXIS - (seat.r[0] + seat.r[1]) / 2}m-4 -9l4 9l4 -9`} />;
    case 'diameter':
      return (
        <path
          className="leader"
          d={`M${end - 3} ${AXIS - r}m-4 9l4 -9l4 9m-4 -9V${y - 20}M${end - 3} ${AXIS + r}m-4 -9l4 9l4 -9`}
        />
      );
    case 'length':
      return <Span from={seat.x[0]} to={seat.x[1]} y={y} starts={[AXIS + seat.r[0], AXIS + seat.r[1]]} />;
    case 'behind': {
      const behind = plan.seats[size.seat - 1]!;
      return <Span from={behind.x[1]} to={seat.x[0]} y={y} starts={[AXIS + behind.r[1], AXIS + seat.r[0]]} />;
    }
  }
}

function Span({ from, to, y, starts }: { from: number; to: number; y: number; starts: readonly [number, number] }) {
  // Where the figure fills the span the arrows come from outside.
  const outside = to - from < 2 * HALF + 30;
  const heads = outside
    ? `M${from - 26} ${y}h26m-9 -4l9 4l-9 4M${to + 26} ${y}h-26m9 -4l-9 4l9 4`
    : `M${from} ${y}H${to}M${from + 9} ${y - 4}l-9 4l9 4M${to - 9} ${y - 4}l9 4l-9 4`;
  return <path className="leader" d={`M${from} ${starts[0]}V${y + 8}M${to} ${starts[1]}V${y + 8}${heads}`} />;
}

/** The nought of all stations, and the way they count. */
function Nought({ plan }: { plan: Arrangement }) {
  const { seat, end } = plan.zero;
  const x = plan.zero.x ?? plan.seats[seat]!.x[end === 'rear' ? 0 : 1];
  const [left, right] = [leftOf(plan), rightOf(plan)];
  return (
    <g className="nought">
      <path d={`M${x} ${AXIS - 16}v32`} />
      <circle cx={x} cy={AXIS} r={7} />
      <text x={x - 12} y={AXIS - 12} textAnchor="end">
        0
      </text>
      <path d={`M${right + 16} ${AXIS}h62m-13 -7l13 7l-13 7`} />
      <text x={right + 16} y={AXIS - 14}>
        nose +
      </text>
      <path d={`M${left - 16} ${AXIS}h-50m13 -7l-13 7l13 7`} />
      <text x={left - 16} y={AXIS - 14} textAnchor="end">
        − rear
      </text>
    </g>
  );
}
