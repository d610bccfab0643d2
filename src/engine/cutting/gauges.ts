/**
 * With what a surface is gauged while it is cut: the set-ups already read on it, or where there are none one that
 * suits it: two rolls across a cone, or a ball in a tapered bush, of those the shop has, their touch as near the middle
 * of its line as may be; a diameter in the middle of a straight surface and wherever rolls and balls do not reach. A
 * roll touches where its centre stands at the touch less (d/2)·sin a (gauging/choice.ts). Stock moves the touch of a
 * ball along the line, so its place is looked at before and after the cut.
 *
 * Edges are broken and lines fall away at their ends: a touch nearer to one than a tenth of the line, or 0.3 mm, is
 * told.
 * @source practice (that, stations of whole tenths, and a roll of about 6 mm)
 */
import type { SeatInput } from '../contact/fit.ts';
import { isSize, type Reading } from '../gauging/reading.ts';
import { predict, tellsOf } from '../gauging/readings/index.ts';
import { METRIC_TOOLS, type Tooling } from '../gauging/tooling.ts';
import type { Part } from '../parts/line.ts';

type OnSurface = Extract<Reading, { seat: number }>;

/** A roll this large (m) is held and seen easily; smaller where the line is short. */
const ROLL = 0.006;
/** Margin to either end: a share of the line, and m. */
const CLEAR = 0.1;
const CLEAR_LENGTH = 0.0003;
/** Stations are told to this (m). */
const PLACE = 1e-4;
const rounded = (z: number) => Math.round(z / PLACE) * PLACE;

/** Set-ups for one surface, each once; their values have no meaning here. `after`: the parts once it is cut. */
export function gaugesFor(
  seats: readonly SeatInput[],
  seat: number,
  part: Part,
  readings: readonly Reading[],
  { tools = METRIC_TOOLS, after = seats }: { tools?: Tooling; after?: readonly SeatInput[] } = {},
): OnSurface[] {
  const read = readings
    .filter(
      (r): r is OnSurface =>
        'seat' in r && isSize(tellsOf(r.kind)) && r.seat === seat && r.part === part && canBeRead(r, seats),
    )
    .map((r) => ({ ...r, value: 0, sigma: 1 }));
  const known = new Set<string>();
  const once = read.filter((r) => {
    const key = JSON.stringify(r);
    return known.has(key) ? false : known.add(key);
  });
  return once.length > 0 ? once : [suggested(seats, after, seat, part, tools)];
}

const canBeRead = (reading: Reading, seats: readonly SeatInput[]) => {
  const { value, fault } = predict(reading, seats);
  return value !== null && fault === null;
};

function suggested(
  seats: readonly SeatInput[],
  after: readonly SeatInput[],
  seat: number,
  part: Part,
  tools: Tooling,
): OnSurface {
  const { halfAngle, from, to } = seats[seat]![part];
  const middle = (from + to) / 2;
  const on = { seat, part, value: 0, sigma: 1 };
  const tries: OnSurface[] = [];
  if (halfAngle !== 0 && part === 'journal') {
    const rolls = [...tools.rolls].sort((a, b) => Math.abs(a - ROLL) - Math.abs(b - ROLL));
    for (const roll of rolls)
      tries.push({ ...on, kind: 'overRolls', roll, station: rounded(middle - (roll / 2) * Math.sin(halfAngle)) });
  } else if (halfAngle !== 0)
    for (const ball of tools.balls) tries.push({ ...on, kind: 'ballDepth', ball, face: halfAngle > 0 ? to : from });
  const clear = tries
    .filter((reading) => canBeRead(reading, seats))
    .map((reading) => ({ reading, clear: Math.min(marginOf(reading, seats).share, marginOf(reading, after).share) }))
    // A third of the line either way is as good as another for rolls, of which the handiest comes first.
    .map((tried) => ({ ...tried, clear: part === 'journal' ? Math.min(tried.clear, MIDDLE_THIRD) : tried.clear }));
  const best = clear.reduce<(typeof clear)[number] | null>((a, b) => (a === null || b.clear > a.clear ? b : a), null);
  return best?.reading ?? { ...on, kind: 'diameter', station: to - from > 2 * PLACE ? rounded(middle) : middle };
}

const MIDDLE_THIRD = 1 / 3;

/** How far the touch of a gauge keeps from the nearer end of the surface: m, and as a share of its length. */
function marginOf(gauge: OnSurface, seats: readonly SeatInput[]): { length: number; share: number } {
  const { from, to } = seats[gauge.seat]![gauge.part];
  const at = predict(gauge, seats).influences.find((influence) => influence.by === 'radius')?.station;
  if (at === undefined) return { length: 0, share: 0 };
  const length = Math.min(at - from, to - at);
  return { length, share: length / (to - from) };
}

/**
 * Margin (m, along the axis) of a roll or ball that touches too near an end of the surface in any of these states of
 * the parts; null where all keep clear.
 */
export function tooNearEnd(gauge: Reading, states: readonly (readonly SeatInput[])[]): number | null {
  if (gauge.kind !== 'overRolls' && gauge.kind !== 'ballDepth') return null;
  const margins = states.filter((seats) => canBeRead(gauge, seats)).map((seats) => marginOf(gauge, seats));
  const near = margins
    .filter(({ length, share }) => share < CLEAR || length < CLEAR_LENGTH)
    .map(({ length }) => length);
  return near.length === 0 ? null : Math.max(0, Math.min(...near));
}

/** Station (m) at which a gauge tells the surface's size. */
export const toldAt = (gauge: OnSurface, seats: readonly SeatInput[]): number => {
  const { halfAngle, from, to } = seats[gauge.seat]![gauge.part];
  const place = predict(gauge, seats).influences.find((influence) => influence.by === 'radius')?.station;
  return place ?? (halfAngle === 0 ? from : (from + to) / 2);
};
