/** A small drawing of how a reading is taken, true to scale for the parts as they are in the design. */
import type { ReactNode } from 'react';
import type { Design, Part } from '../../design/definition.ts';
import { fineText, lengthText, type System } from '../../design/units.ts';
import { radiusAt } from '../../engine/contact/fit.ts';
import { ballIn, rollOn } from '../../engine/gauging/touching.ts';
import { type Line, lineOf } from '../../engine/geometry/line.ts';
import { metres, millimetres, toSurface } from '../../report/toEngine.ts';
import type { Reading } from './kinds.ts';

interface Props {
  design: Design;
  reading: Reading;
  system: System;
}

/** mm: the places a drawing must show. */
type Extent = { left: number; right: number; up: number };

export function SetUp({ design, reading, system }: Props) {
  const drawing = drawingOf(design, reading, system);
  if (!drawing) return null;
  const { extent, body, said } = drawing;
  const pad = 0.1 * Math.max(extent.right - extent.left, 2 * extent.up);
  const width = extent.right - extent.left + 2 * pad;
  const height = 2 * extent.up + 2 * pad;
  return (
    <svg className="set-up" viewBox={`${extent.left - pad} ${-extent.up - pad} ${width} ${height}`} style={{ aspectRatio: `${width} / ${height}` }} role="img" aria-label={said}>
      {body}
    </svg>
  );
}

interface Drawing {
  extent: Extent;
  body: ReactNode;
  said: string;
}

function drawingOf(design: Design, reading: Reading, system: System): Drawing | null {
  switch (reading.kind) {
    case 'diameter':
    case 'straightness':
      return atStation(design, reading, system);
    case 'overRolls':
      return overRolls(design, reading, system);
    case 'ballDepth':
      return ballDepth(design, reading, system);
    case 'sineRise':
      return sineRise(design, reading, system);
    case 'standOff':
    case 'shake':
      return onThePair(design, reading, system);
  }
}

const lineIn = (design: Design, seat: string, part: Part): Line | null => {
  const found = design.seats.find(({ name }) => name === seat);
  return found ? lineOf(toSurface(found[part]), part === 'journal' ? 'inside' : 'outside') : null;
};

const points = ({ z, r }: Line, side: 1 | -1 = 1) => Array.from(z, (at, i) => `${millimetres(at).toFixed(4)} ${(-side * millimetres(r[i]!)).toFixed(4)}`);

function extentOf(lines: readonly Line[], more: Partial<Extent> = {}): Extent {
  const zs = lines.flatMap(({ z }) => [millimetres(z[0]!), millimetres(z[z.length - 1]!)]);
  const up = Math.max(...lines.flatMap(({ r }) => Array.from(r, millimetres)));
  return { left: Math.min(...zs, more.left ?? Number.POSITIVE_INFINITY), right: Math.max(...zs, more.right ?? Number.NEGATIVE_INFINITY), up: Math.max(up, more.up ?? 0) };
}

/** Every surface of one part: a journal filled, a bush as a wall outside its bore; the one read stands out. */
function PartOf({ design, part, seat, wall }: { design: Design; part: Part; seat?: string; wall: number }) {
  return design.seats.map(({ name }) => {
    const line = lineIn(design, name, part)!;
    const d =
      part === 'journal'
        ? [`M${points(line).join('L')}L${points(line, -1).reverse().join('L')}Z`]
        : ([1, -1] as const).map((side) => `M${points(line, side).join('L')}L${end(line, 'nose')} ${-side * wall}L${end(line, 'rear')} ${-side * wall}Z`);
    return <path key={name} d={d.join('')} className={`part ${part} ${seat === undefined || seat === name ? '' : 'other'}`} />;
  });
}

const end = ({ z }: Line, which: 'rear' | 'nose') => millimetres(which === 'rear' ? z[0]! : z[z.length - 1]!);

const Axis = ({ left, right }: Extent) => <path d={`M${left} 0H${right}`} className="axis" />;

/** A size from one place to another, with its figure beside it. */
function Size({ from, to, text, size }: { from: readonly [number, number]; to: readonly [number, number]; text: string; size: number }) {
  const upright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]);
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return (
    <g className="size">
      <path d={`M${from.join(' ')}L${to.join(' ')}`} />
      {[from, to].map(([u, v]) => (
        <path key={`${u} ${v}`} d={upright ? `M${u - size * 0.4} ${v}H${u + size * 0.4}` : `M${u} ${v - size * 0.4}V${v + size * 0.4}`} />
      ))}
      <text x={upright ? x + size * 0.5 : x} y={upright ? y - size * 0.6 : y - size * 0.5} fontSize={size} textAnchor={upright ? 'start' : 'middle'}>
        {text}
      </text>
    </g>
  );
}

const textSize = ({ left, right, up }: Extent) => 0.07 * Math.max(right - left, 2 * up, 1);

function atStation(design: Design, reading: Extract<Reading, { kind: 'diameter' | 'straightness' }>, system: System): Drawing | null {
  const line = lineIn(design, reading.seat, reading.part);
  if (!line) return null;
  const lines = design.seats.map(({ name }) => lineIn(design, name, reading.part)!);
  const wall = 1.3 * extentOf(lines).up;
  const extent = extentOf(lines, reading.part === 'bush' ? { up: wall } : {});
  const at = Math.min(Math.max(metres(reading.station), line.z[0]!), line.z[line.z.length - 1]!);
  const radius = millimetres(radiusAt(line, at));
  const size = textSize(extent);
  const diameter = reading.kind === 'diameter';
  const body = (
    <>
      <PartOf design={design} part={reading.part} seat={reading.seat} wall={wall} />
      <Axis {...extent} />
      {diameter ? (
        <Size from={[reading.station, -radius]} to={[reading.station, radius]} text={lengthText(reading.value, system)} size={size} />
      ) : (
        <Pointer x={reading.station} y={-radius} size={size} text={fineText(reading.value, system)} inward={reading.part === 'journal'} />
      )}
    </>
  );
  return { extent, body, said: `${diameter ? 'A diameter' : 'An indicator'} at station ${lengthText(reading.station, system)} of the ${reading.seat} ${reading.part}` };
}

/** An indicator's point on a surface. */
function Pointer({ x, y, size, text, inward }: { x: number; y: number; size: number; text: string; inward: boolean }) {
  const away = inward ? -1 : 1;
  return (
    <g className="size">
      <path d={`M${x} ${y}v${away * size * 1.2}`} />
      <circle cx={x} cy={y + away * size * 2.2} r={size} className="dial" />
      <text x={x + size * 1.3} y={y + away * size * 2.2 + size * 0.35} fontSize={size}>
        {text}
      </text>
    </g>
  );
}

function overRolls(design: Design, reading: Extract<Reading, { kind: 'overRolls' }>, system: System): Drawing | null {
  const line = lineIn(design, reading.seat, 'journal');
  const touch = line && rollOn(line, metres(reading.roll) / 2, metres(reading.station));
  if (!touch) return null;
  const centre = millimetres(touch.centre);
  const outer = centre + reading.roll / 2;
  const lines = design.seats.map(({ name }) => lineIn(design, name, 'journal')!);
  const { left, right, up } = extentOf(lines);
  const noseDown = standsOnNose(lines, reading.station, centre - reading.roll / 2);
  const down = (station: number) => (noseDown ? station : -station) - (noseDown ? left + right : -(left + right)) / 2;
  const plate = (right - left) / 2;
  const at = down(reading.station);
  const under = at + reading.roll / 2;
  const half = Math.max(outer, up);
  const extent: Extent = { left: -half, right: half, up: Math.max(plate, Math.abs(at) + reading.roll / 2) };
  const body = (
    <>
      <path d={`M${-1.15 * half} ${plate}H${1.15 * half}`} className="datum" />
      <g transform={`rotate(${noseDown ? 90 : -90}) translate(${-(left + right) / 2} 0)`}>
        <PartOf design={design} part="journal" seat={reading.seat} wall={0} />
        <Axis left={left} right={right} up={up} />
      </g>
      {[1, -1].map((side) => (
        <g key={side}>
          {under < plate && <rect x={side * centre - reading.roll / 2} y={under} width={reading.roll} height={plate - under} className="part bush" />}
          <circle cx={side * centre} cy={at} r={reading.roll / 2} className="gauge" />
        </g>
      ))}
      <Size from={[-outer, at]} to={[outer, at]} text={lengthText(reading.value, system)} size={textSize(extent)} />
    </>
  );
  return { extent, body, said: `Two rolls of ${lengthText(reading.roll, system)} beside the ${reading.seat} journal standing on end, their centres at station ${lengthText(reading.station, system)}` };
}

/** The face it stands on (stations run down the page or up it): the one the stacks come down to clear of metal, the nose where both do. */
function standsOnNose(lines: readonly Line[], station: number, inner: number): boolean {
  const blocked = (noseward: boolean) => lines.some(({ z, r }) => r.some((radius, k) => millimetres(z[k]!) > station === noseward && millimetres(radius) > inner));
  return !blocked(true) || blocked(false);
}

function ballDepth(design: Design, reading: Extract<Reading, { kind: 'ballDepth' }>, system: System): Drawing | null {
  const line = lineIn(design, reading.seat, 'bush');
  if (!line) return null;
  const q = metres(reading.ball) / 2;
  const touch = ballIn(line, q, line.halfAngle >= 0 ? 'rearward' : 'noseward');
  const lines = design.seats.map(({ name }) => lineIn(design, name, 'bush')!);
  const wall = 1.3 * extentOf(lines).up;
  const centre = touch ? millimetres(touch.centre) : null;
  const extent = extentOf(lines, { up: Math.max(wall, reading.ball / 2), left: Math.min(reading.face, (centre ?? reading.face) - reading.ball / 2), right: Math.max(reading.face, (centre ?? reading.face) + reading.ball / 2) });
  const size = textSize(extent);
  const body = (
    <>
      <PartOf design={design} part="bush" seat={reading.seat} wall={wall} />
      <Axis {...extent} />
      {centre !== null && <circle cx={centre} cy={0} r={reading.ball / 2} className="gauge" />}
      <path d={`M${reading.face} ${-wall}V${wall}`} className="datum" />
      {centre !== null && <Size from={[centre + reading.ball / 2, 0]} to={[reading.face, 0]} text={lengthText(reading.value, system)} size={size} />}
    </>
  );
  return { extent, body, said: `A ball of ${lengthText(reading.ball, system)} in the ${reading.seat} bush, its depth taken from the face at station ${lengthText(reading.face, system)}` };
}

/** Level when the bar stands at the half angle: a journal with its large end low, its uppermost line read; a bush with its large end high, the lowermost line of its bore read. */
function sineRise(design: Design, reading: Extract<Reading, { kind: 'sineRise' }>, system: System): Drawing | null {
  const line = lineIn(design, reading.seat, reading.part);
  const sine = reading.stack / reading.bar;
  if (!line || Math.abs(sine) > 1) return null;
  const angle = Math.asin(sine);
  const roll = 0.07 * reading.bar;
  const thick = 0.1 * reading.bar;
  const [dx, dy] = [reading.bar * Math.cos(angle), reading.bar * sine];
  const journal = reading.part === 'journal';
  const lean = line.halfAngle >= 0 === journal ? -1 : 1;
  const middle = (end(line, 'rear') + end(line, 'nose')) / 2;
  const widest = Math.max(...Array.from(line.r, millimetres));
  const wall = 1.3 * widest;
  // In the frame of the bar: along it from the roll on the plate, and square to it.
  const axis = thick / 2 + (journal ? widest : wall);
  const at = (z: number, off: number) => `${(reading.bar / 2 + lean * (z - middle)).toFixed(3)} ${(-axis - off).toFixed(3)}`;
  const edge = (side: number) => Array.from(line.z, (z, k) => at(millimetres(z), side * millimetres(line.r[k]!)));
  const shape = journal ? [[...edge(1), ...edge(-1).reverse()]] : [1, -1].map((side) => [...edge(side), at(end(line, 'nose'), side * wall), at(end(line, 'rear'), side * wall)]);
  const touch = (journal ? 1 : -1) * millimetres(radiusAt(line, metres(middle)));
  const size = 0.06 * reading.bar;
  const up = Math.max(0, dy) + axis + (journal ? widest : wall) + 4 * size;
  const low = Math.max(0, -dy);
  const body = (
    <g transform={`translate(${-dx / 2} ${up / 2})`}>
      <path d={`M${-roll * 3} ${roll + low}H${dx + roll * 3}`} className="datum" />
      {dy > 0 && <rect x={dx - roll} y={roll - dy} width={2 * roll} height={dy} className="part bush" />}
      {dy < 0 && <rect x={-roll} y={roll} width={2 * roll} height={-dy} className="part bush" />}
      <circle cx={0} cy={0} r={roll} className="gauge" />
      <circle cx={dx} cy={-dy} r={roll} className="gauge" />
      <g transform={`rotate(${(-angle * 180) / Math.PI})`}>
        <rect x={-roll / 2} y={-thick / 2} width={reading.bar + roll} height={thick} className="gauge" />
        {shape.map((outline) => (
          <path key={outline[0]} d={`M${outline.join('L')}Z`} className={`part ${reading.part}`} />
        ))}
        <path d={`M${at(middle, touch)}v${-size}`} className="pointer" />
        <circle cx={reading.bar / 2} cy={-axis - touch - 1.8 * size} r={0.8 * size} className="dial" />
      </g>
      {dy !== 0 && <Size from={[(dy > 0 ? dx : 0) + roll * 1.6, roll + low]} to={[(dy > 0 ? dx : 0) + roll * 1.6, roll + low - Math.abs(dy)]} text={`stack ${lengthText(reading.stack, system)}`} size={size} />}
      <text x={dx * 0.3} y={roll + low + 1.4 * size} fontSize={size} textAnchor="middle">
        {`bar ${lengthText(reading.bar, system)}`}
      </text>
    </g>
  );
  return {
    extent: { left: -dx / 2 - roll * 4, right: dx / 2 + roll * 9, up: up / 2 + roll * 3 },
    body,
    said: `The ${reading.seat} ${reading.part} on a sine bar of ${lengthText(reading.bar, system)} over a stack of ${lengthText(reading.stack, system)}`,
  };
}

function onThePair(design: Design, reading: Extract<Reading, { kind: 'standOff' | 'shake' }>, system: System): Drawing {
  const lines = design.seats.flatMap(({ name }) => [lineIn(design, name, 'journal')!, lineIn(design, name, 'bush')!]);
  const wall = 1.3 * extentOf(lines).up;
  const at = reading.kind === 'shake' ? reading.indicator : extentOf(lines).right;
  const extent = extentOf(lines, { up: wall * 1.3, left: at, right: at + 0.25 * wall });
  const size = textSize(extent);
  const radius = extentOf(lines).up * 0.9;
  const nose = extentOf(lines).right;
  const body = (
    <>
      <PartOf design={design} part="bush" wall={wall} />
      <PartOf design={design} part="journal" wall={wall} />
      {at > nose && <path d={`M${nose} ${-radius}H${at + 0.25 * wall}V${radius}H${nose}Z`} className="part journal" />}
      <Axis {...extent} />
      {reading.kind === 'shake' ? (
        <Pointer x={at} y={-radius} size={size} text={fineText(reading.value, system)} inward />
      ) : (
        <Size from={[nose, 0]} to={[nose - 0.4 * wall, 0]} text={`position ${fineText(reading.value, system)}`} size={size} />
      )}
    </>
  );
  return { extent, body, said: reading.kind === 'shake' ? `An indicator at station ${lengthText(reading.indicator, system)}, the spindle pulled from side to side` : 'The journal pressed home and its position read' };
}
