/**
 * Where the labels of the solid picture stand: seats in a row at the top with their films, each with a leader that
 * meets no other; the ends of the axis where they are. Nothing overlaps: what finds no room is left out, a seat never.
 */

import { shortNames } from '../shortNames.ts';
import { spread } from '../spread.ts';

export interface Spot {
  x: number;
  y: number;
}

export interface Box extends Spot {
  width: number;
  height: number;
}

export interface Placed extends Box {
  key: string;
  lines: string[];
  kind: 'seat' | 'number' | 'listed' | 'end';
  /** from the label to what it names */
  leader: Spot[];
  /** its end stands behind metal */
  behind?: boolean;
}

export interface SeatTag {
  key: string;
  name: string;
  film: string;
  at: Spot;
  /** nothing of what it names is seen from there: its leader is in dashes */
  hidden?: boolean;
}

export interface EndTag {
  key: string;
  text: string;
  /** the end, and which way is out there */
  at: Spot;
  out: Spot;
}

export type Widths = (text: string, size: number) => number;

export const TEXT = 13;
const LINE = 17;
const EDGE = 8;
const GAP = 12;
/** Between the labels and where leaders go straight down. */
const KNEE = 14;
const DISC = 20;

export interface Plan {
  mode: 'line' | 'two' | 'numbers';
  names: string[];
  /** px at the top */
  band: number;
  columns: number;
  /** leaders straight to what they name, which may stand above one another */
  straight?: boolean;
}

/** How labels of these names fit a width, whatever their films are; `widest` film text there may be. */
export function planned(names: readonly string[], widest: string, across: number, width: Widths): Plan {
  const of = (text: string) => width(text, TEXT);
  const film = of(widest);
  const room = across - 2 * EDGE;
  const all = (widths: number[]) => widths.reduce((sum, one) => sum + one, 0) + GAP * (names.length - 1);
  if (names.length === 0) return { mode: 'line', names: [], band: 0, columns: 1 };
  if (all(names.map((name) => of(`${name} `) + film)) <= room)
    return { mode: 'line', names: [...names], band: EDGE + LINE + KNEE, columns: 1 };
  const share = (room - GAP * (names.length - 1)) / names.length;
  if (film <= share) {
    const short = shortNames(names, share, of);
    if (all(short.map((name) => Math.max(of(name), film))) <= room && short.every((name) => !/^\d+$/.test(name)))
      return { mode: 'two', names: short, band: EDGE + 2 * LINE + KNEE, columns: 1 };
  }
  const column = Math.max(...names.map((name) => of(`8 ${name} `))) + film + GAP;
  const columns = Math.max(1, Math.floor((room + GAP) / column));
  const fit = shortNames(names, room / columns - of('8  ') - film - GAP, of);
  const rows = Math.ceil(names.length / columns);
  return { mode: 'numbers', names: fit, band: EDGE + rows * LINE + 6 + DISC + KNEE, columns };
}

/** `names` of the plan go with `seats` by their order; ends keep clear of what stands `over` the picture. */
export function placeTags(
  seats: readonly SeatTag[],
  ends: readonly EndTag[],
  plan: Plan,
  { width: across, height }: { width: number; height: number },
  width: Widths,
  over: readonly Box[] = [],
): Placed[] {
  const labels = seatLabels(seats, plan, across, width);
  const kept = over.map((box): Placed => ({ ...box, key: '', lines: [], kind: 'end', leader: [] }));
  const taken = [...labels];
  for (const end of ends) {
    const box = endLabel(end, [...taken, ...kept], plan.band, across, height, width);
    if (box) taken.push(box);
  }
  return taken;
}

function seatLabels(seats: readonly SeatTag[], plan: Plan, across: number, width: Widths): Placed[] {
  if (seats.length === 0) return [];
  const told = seats.map((seat, i) => ({ ...seat, name: plan.names[i] ?? seat.name, number: i + 1 }));
  const listed = plan.mode === 'numbers' ? listOf(told, plan, across) : [];
  const top = plan.mode === 'numbers' ? plan.band - KNEE - DISC : EDGE;
  const linesOf = (seat: (typeof told)[number]) =>
    plan.mode === 'line'
      ? [`${seat.name} ${seat.film}`]
      : plan.mode === 'two'
        ? [seat.name, seat.film]
        : [`${seat.number}`];
  const tall = plan.mode === 'two' ? 2 * LINE : plan.mode === 'line' ? LINE : DISC;
  const sizeOf = (seat: (typeof told)[number]) =>
    plan.mode === 'numbers' ? DISC : Math.max(...linesOf(seat).map((line) => width(line, TEXT)));
  const inOrder = told.toSorted((a, b) => a.at.x - b.at.x || a.number - b.number);
  const labels = (order: typeof told): Placed[] => {
    // In another order than they stand, each has the place of who stands there.
    const wanted = order.map((seat, i) => ({
      at: Math.min(across, Math.max(0, inOrder[i]!.at.x)),
      size: sizeOf(seat),
    }));
    const middles =
      spread(wanted, EDGE, across - EDGE, plan.mode === 'numbers' ? 4 : GAP * 0.99) ??
      order.map((_, i) => ((i + 0.5) * across) / order.length);
    return order.map((seat, i): Placed => {
      const x = middles[i]!;
      const foot = top + tall;
      const knee = { x: seat.at.x, y: foot + KNEE };
      const size = wanted[i]!.size;
      return {
        key: seat.key,
        kind: plan.mode === 'numbers' ? 'number' : 'seat',
        lines: linesOf(seat),
        x: x - size / 2,
        y: top,
        width: size,
        height: tall,
        leader: [{ x, y: foot + 1 }, ...(seat.at.y > knee.y && !plan.straight ? [knee] : []), seat.at],
        ...(seat.hidden && { behind: true }),
      };
    });
  };
  const first = labels(inOrder);
  if (!plan.straight || !anyCross(first)) return [...listed, ...first];
  return [
    ...listed,
    ...(ordersOf(inOrder)
      .map(labels)
      .find((one) => !anyCross(one)) ?? first),
  ];
}

/** Of a few things, every order. */
const ordersOf = <T>(things: readonly T[]): T[][] =>
  things.length === 0
    ? [[]]
    : things.flatMap((one) => ordersOf(things.filter((other) => other !== one)).map((rest) => [one, ...rest]));

/** Whether two straight leaders meet. */
const anyCross = (labels: readonly Placed[]): boolean =>
  labels.some((a, i) => labels.slice(i + 1).some((b) => parted(a.leader, b.leader) && parted(b.leader, a.leader)));

/** Whether the ends of one stand on either side of the other. */
function parted([from, to]: readonly Spot[], other: readonly Spot[]): boolean {
  if (!from || !to) return false;
  const side = ({ x, y }: Spot) => (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
  const [a, b] = other.map(side);
  return a !== undefined && b !== undefined && a * b < 0;
}

/** The seats by number, in columns. */
function listOf(seats: readonly (SeatTag & { number: number })[], { columns }: Plan, across: number): Placed[] {
  const wide = (across - 2 * EDGE) / columns;
  return seats.map(({ key, name, film, number }, i) => ({
    key: `${key} listed`,
    kind: 'listed',
    lines: [`${number} ${name} ${film}`],
    x: EDGE + (i % columns) * wide,
    y: EDGE + Math.floor(i / columns) * LINE,
    width: wide - GAP / 2,
    height: LINE,
    leader: [],
  }));
}

/** Beside the end of the axis: outward, or above or below that. */
function endLabel(
  { key, text, at, out }: EndTag,
  taken: readonly Placed[],
  band: number,
  across: number,
  height: number,
  width: Widths,
): Placed | null {
  const size = { width: width(text, TEXT), height: LINE };
  const way = Math.hypot(out.x, out.y) || 1;
  const [ox, oy] = [out.x / way, out.y / way];
  const off = Math.abs(ox) * (size.width / 2) + Math.abs(oy) * (size.height / 2) + 6;
  for (const [dx, dy] of [
    [ox * off, oy * off],
    [ox * off, oy * off + LINE],
    [ox * off, oy * off - LINE],
    [0, 1.2 * LINE],
    [0, -1.2 * LINE],
  ] as const) {
    const x = Math.min(across - EDGE - size.width, Math.max(EDGE, at.x + dx - size.width / 2));
    const y = Math.min(height - 2 - size.height, Math.max(band + 2, at.y + dy - size.height / 2));
    const box = { x, y, ...size };
    const free = taken.every((other) => !overlap(box, other) && !met(box, other.leader));
    if (free) return { key, kind: 'end', lines: [text], ...box, leader: [] };
  }
  return null;
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Whether a leader runs through a label. */
export function met(box: Box, leader: readonly Spot[]): boolean {
  return leader.slice(1).some((to, i) => crosses(box, leader[i]!, to));
}

/** Clipped to each of the four sides in turn, something of the stretch is left. */
function crosses(box: Box, a: Spot, b: Spot): boolean {
  let [low, high] = [0, 1];
  for (const [from, way, least, most] of [
    [a.x, b.x - a.x, box.x, box.x + box.width],
    [a.y, b.y - a.y, box.y, box.y + box.height],
  ] as const) {
    if (way === 0) {
      if (from <= least || from >= most) return false;
      continue;
    }
    const [t0, t1] = [(least - from) / way, (most - from) / way];
    low = Math.max(low, Math.min(t0, t1));
    high = Math.min(high, Math.max(t0, t1));
  }
  return low < high;
}
