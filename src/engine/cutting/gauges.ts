/**
 * With what a surface is gauged while it is cut: the set-ups already read on it, or where there are none one that
 * suits it: two rolls across a cone, their touch in the middle of its line; a ball in a tapered bush, likewise; a
 * diameter in the middle of a straight surface and wherever rolls and balls do not reach. Rolls and balls are of whole
 * and half millimetres, stations of whole tenths (common practice, no source).
 */
import type { SeatInput } from '../contact/fit.ts';
import type { Part, Reading } from '../gauging/reading.ts';
import { predict } from '../gauging/readings/index.ts';

type OnSurface = Extract<Reading, { seat: number }>;

/** A roll this large (m) is held and seen easily; smaller where the line is short. */
const ROLL = 0.006;
const HALF_MILLIMETRE = 0.0005;
const SIZES = 40;
/** Stations are told to this (m). */
const PLACE = 1e-4;
const rounded = (z: number) => Math.round(z / PLACE) * PLACE;

const SET_UPS: ReadonlySet<Reading['kind']> = new Set(['diameter', 'overRolls', 'ballDepth']);

/** Set-ups for one surface, each once; their values have no meaning here. */
export function gaugesFor(seats: readonly SeatInput[], seat: number, part: Part, readings: readonly Reading[]): OnSurface[] {
  const read = readings.filter((r): r is OnSurface => 'seat' in r && SET_UPS.has(r.kind) && r.seat === seat && r.part === part && canBeRead(r, seats)).map((r) => ({ ...r, value: 0, sigma: 1 }));
  const known = new Set<string>();
  const once = read.filter((r) => {
    const key = JSON.stringify(r);
    return known.has(key) ? false : known.add(key);
  });
  return once.length > 0 ? once : [suggested(seats, seat, part)];
}

const canBeRead = (reading: Reading, seats: readonly SeatInput[]) => {
  const { value, fault } = predict(reading, seats);
  return value !== null && fault === null;
};

function suggested(seats: readonly SeatInput[], seat: number, part: Part): OnSurface {
  const { halfAngle, radius, station, from, to } = seats[seat]![part];
  const middle = (from + to) / 2;
  const across = radius + (middle - station) * Math.tan(halfAngle);
  const on = { seat, part, value: 0, sigma: 1 };
  const tries: OnSurface[] = [];
  if (halfAngle !== 0 && part === 'journal') {
    const rolls = Array.from({ length: SIZES }, (_, k) => HALF_MILLIMETRE * (k + 2)).sort((a, b) => Math.abs(a - ROLL) - Math.abs(b - ROLL));
    for (const roll of rolls) tries.push({ ...on, kind: 'overRolls', roll, station: rounded(middle + (roll / 2) * Math.sin(halfAngle)) });
  } else if (halfAngle !== 0) {
    const touching = (2 * across) / Math.cos(halfAngle);
    const nearest = Math.round(touching / HALF_MILLIMETRE);
    const balls = Array.from({ length: SIZES }, (_, k) => HALF_MILLIMETRE * (nearest + (k % 2 === 0 ? k / 2 : -(k + 1) / 2)));
    for (const ball of balls) if (ball > 0) tries.push({ ...on, kind: 'ballDepth', ball, face: halfAngle > 0 ? to : from });
  }
  return tries.find((reading) => canBeRead(reading, seats)) ?? { ...on, kind: 'diameter', station: to - from > 2 * PLACE ? rounded(middle) : middle };
}

/** Station (m) at which a gauge tells the surface's size. */
export const toldAt = (gauge: OnSurface, seats: readonly SeatInput[]): number => {
  const { halfAngle, from, to } = seats[gauge.seat]![gauge.part];
  const place = predict(gauge, seats).influences.find((influence) => influence.by === 'radius')?.station;
  return place ?? (halfAngle === 0 ? from : (from + to) / 2);
};
