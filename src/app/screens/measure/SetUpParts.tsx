/**
 * What the drawings of set-ups are put together from: the parts in half section, axis, sizes, an indicator. mm,
 * stations to the right, y down.
 */
import type { ReactNode } from 'react';
import type { Design, Part } from '../../../design/definition.ts';
import { type PartLine, partLine } from '../../../report/measure/setUps.ts';

/** mm: the places a drawing must show; as far down as up where nothing is said. */
export type Extent = { left: number; right: number; up: number; down?: number };

export interface Drawing {
  extent: Extent;
  body: ReactNode;
  said: string;
}

/** The places of a line, or of its mirror image below the axis, as a path has them. */
export const points = ({ z, r }: PartLine, side: 1 | -1 = 1) =>
  z.map((at, i) => `${at.toFixed(4)} ${(-side * r[i]!).toFixed(4)}`);

/** What shows lines, and more. */
export function extentOf(lines: readonly PartLine[], more: Partial<Extent> = {}): Extent {
  const zs = lines.flatMap(({ z }) => [z[0]!, z[z.length - 1]!]);
  const up = Math.max(...lines.flatMap(({ r }) => r));
  return {
    left: Math.min(...zs, more.left ?? Number.POSITIVE_INFINITY),
    right: Math.max(...zs, more.right ?? Number.NEGATIVE_INFINITY),
    up: Math.max(up, more.up ?? 0),
  };
}

/**
 * Every surface of one part: a journal filled, a bush as a wall outside its bore; the one read stands out. Between the
 * surfaces what joins them, of which the design tells nothing.
 */
export function PartOf({ design, part, seat, wall }: { design: Design; part: Part; seat?: string; wall: number }) {
  return (
    <>
      {joints(design, part).map(([from, to, radius]) => (
        <path
          key={from}
          d={
            part === 'journal'
              ? `M${from} ${-radius}H${to}V${radius}H${from}Z`
              : [-1, 1].map((side) => `M${from} ${side * radius}H${to}V${side * wall}H${from}Z`).join('')
          }
          className={`part ${part} other`}
        />
      ))}
      {design.seats.map(({ name }) => (
        <path
          key={name}
          d={outlineOf(partLine(design, name, part)!, part, wall)}
          className={`part ${part} ${seat === undefined || seat === name ? '' : 'other'}`}
        />
      ))}
    </>
  );
}

function outlineOf(line: PartLine, part: Part, wall: number): string {
  if (part === 'journal') return `M${points(line).join('L')}L${points(line, -1).reverse().join('L')}Z`;
  return ([1, -1] as const)
    .map(
      (side) =>
        `M${points(line, side).join('L')}L${end(line, 'nose')} ${-side * wall}L${end(line, 'rear')} ${-side * wall}Z`,
    )
    .join('');
}

/** Where two surfaces of a part stand apart: from, to, and the radius of what joins them, that of the nearer end. mm */
export function joints(design: Design, part: Part): [from: number, to: number, radius: number][] {
  const lines = design.seats.map(({ name }) => partLine(design, name, part)!).sort((a, b) => a.z[0]! - b.z[0]!);
  return lines.slice(1).flatMap((line, k): [number, number, number][] => {
    const before = lines[k]!;
    const [from, to] = [end(before, 'nose'), end(line, 'rear')];
    const ends = [before.r[before.r.length - 1]!, line.r[0]!];
    return to > from ? [[from, to, part === 'journal' ? Math.min(...ends) : Math.max(...ends)]] : [];
  });
}

export const end = ({ z }: PartLine, which: 'rear' | 'nose') => (which === 'rear' ? z[0]! : z[z.length - 1]!);

export const Axis = ({ left, right }: Extent) => <path d={`M${left} 0H${right}`} className="axis" />;

/** A size from one place to another, with its figure beside it. */
export function Size({
  from,
  to,
  text,
  size,
  within,
}: {
  from: readonly [number, number];
  to: readonly [number, number];
  text: string;
  size: number;
  within: Extent;
}) {
  const upright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]);
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const width = widthOf(text, size);
  const middle = clamped(upright ? x + size * 0.5 + width / 2 : x, width, within);
  return (
    <g className="size">
      <path d={`M${from.join(' ')}L${to.join(' ')}`} />
      {[from, to].map(([u, v]) => (
        <path
          key={`${u} ${v}`}
          d={upright ? `M${u - size * 0.4} ${v}H${u + size * 0.4}` : `M${u} ${v - size * 0.4}V${v + size * 0.4}`}
        />
      ))}
      <text x={middle} y={upright ? y - size * 0.6 : y - size * 0.5} fontSize={size} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}

/** Of the height of the figures; a little more than any of them needs. */
const WIDEST = 0.62;
const widthOf = (text: string, size: number) => WIDEST * size * text.length;
/** The middle of a text, moved so that it keeps within the drawing. */
const clamped = (middle: number, width: number, { left, right }: Extent) =>
  Math.max(Math.min(middle, right - width / 2), left + width / 2);

/** Height of the figures of a drawing: none is wider than the drawing itself. */
export const textSize = ({ left, right, up }: Extent) =>
  Math.min(0.07 * Math.max(right - left, 2 * up, 1), (right - left) / (WIDEST * 16));
/** What a pointer and its dial reach beyond the surface they stand on, in heights of its figures. */
export const POINTER = 3.4;

/** An indicator's point on a surface. */
export function Pointer({
  x,
  y,
  size,
  text,
  inward,
  within,
}: {
  x: number;
  y: number;
  size: number;
  text: string;
  inward: boolean;
  within: Extent;
}) {
  const width = widthOf(text, size);
  // Beside the dial, on the side where there is room.
  const middle =
    x + size * 1.3 + width <= within.right
      ? x + size * 1.3 + width / 2
      : clamped(x - size * 1.3 - width / 2, width, within);
  const away = inward ? -1 : 1;
  return (
    <g className="size">
      <path d={`M${x} ${y}v${away * size * 1.2}`} />
      <circle cx={x} cy={y + away * size * 2.2} r={size} className="dial" />
      <text x={middle} y={y + away * size * 2.2 + size * 0.35} fontSize={size} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}
