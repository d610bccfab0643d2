/** Moving the journal along its axis by hand: what a drag, a key and a snap do, the same in every picture. */

import type { KeyboardEvent } from 'react';
import type { Millimetres } from '../../design/dimension.ts';
import { type System, TENTH } from '../../design/units.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import type { Work } from '../state/store.ts';

/** One press of an arrow key, mm: 1 µm, or a quarter of a tenth; ten times that with Shift. */
const STEP: Record<System, number> = { metric: 0.001, inch: TENTH / 4 };

/** Asked for by the section, the track and the keys within one move; gone with the fit. */
const known = new WeakMap<FitReport, readonly number[]>();

/** Positions worth stopping at: every touch, and every position for a film. */
export function landmarks(fit: FitReport): readonly number[] {
  const before = known.get(fit);
  if (before) return before;
  const found = fit.seats.flatMap((seat) => [seat.seatPosition, seat.positionForTarget]).filter((p) => p !== null);
  known.set(fit, found);
  return found;
}

export function snapped(position: Millimetres, marks: readonly number[], reach: number): number {
  const nearest = marks.reduce<number | null>(
    (best, mark) => (best === null || Math.abs(mark - position) < Math.abs(best - position) ? mark : best),
    null,
  );
  return nearest !== null && Math.abs(nearest - position) <= reach ? nearest : position;
}

/** mm: what rounding makes of a position. */
const NEAR = 1e-9;

/** The first touch that a place lies beyond, so that something is pressed in there; null where nothing is. */
function touchBehind({ seats }: FitReport, place: Millimetres): number | null {
  const of = (way: 'rearward' | 'noseward') =>
    seats.flatMap(({ closes, seatPosition }) => (closes === way ? (seatPosition ?? []) : []));
  const [low, high] = [Math.max(...of('rearward')), Math.min(...of('noseward'))];
  return place < low - NEAR ? low : place > high + NEAR ? high : null;
}

/** Where a step stops that would pass the first touch unsaid; one that begins there, or pressed in, goes on. */
export function stopped(fit: FitReport, from: Millimetres, to: Millimetres): number {
  const touch = touchBehind(fit, to);
  return touch === null || touchBehind(fit, from) !== null || Math.abs(from - touch) <= NEAR ? to : touch;
}

/**
 * A drag from a place (mm): where it comes to, so far on (mm) from there. It snaps to what is nearer than `reach`.
 * However fast it is it stops at the first touch; a push as long as `reach` beyond that goes on into the metal, with
 * no leap.
 */
export function axialDrag(from: Millimetres) {
  // The push beyond a touch counts from where the hand was when it stopped there.
  let [at, base, open, pressed] = [from, 0, false, null as boolean | null];
  return (fit: FitReport, by: Millimetres, reach: Millimetres): number => {
    const marks = landmarks(fit);
    pressed ??= touchBehind(fit, from) !== null;
    const to = at + by - base;
    const touch = touchBehind(fit, to);
    pressed &&= touch !== null;
    const meets = touch !== null && (open || Math.abs(at - touch) > NEAR);
    open = touch === null;
    if (touch === null || pressed) return snapped(bounded(to, from, marks), marks, reach);
    if (meets) {
      [at, base] = [touch, by];
      return touch;
    }
    return bounded(touch + Math.sign(to - touch) * Math.max(0, Math.abs(to - touch) - reach), from, marks);
  };
}

/** How far a hand may take the journal beyond all landmarks: as far as they lie apart, and this far (mm) at least. */
const BEYOND = 0.05;

/** A position a drag may come to; beyond it a position is typed. A drag that begins further off may stay there. */
export function bounded(position: Millimetres, from: number, marks: readonly number[]): number {
  const [low, high] = reachOf(from, marks);
  return Math.min(Math.max(position, low), high);
}

/** From where to where a drag that begins there may go. */
export function reachOf(from: number, marks: readonly number[]): [low: number, high: number] {
  const all = marks.length > 0 ? marks : [from];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const reach = Math.max(BEYOND, high - low);
  return [Math.min(from, low - reach), Math.max(from, high + reach)];
}

/** Arrow keys move, Home and End go as far as a hand may, Page keys to the next landmark; without any, arrows alone. */
export function moveByKey(event: KeyboardEvent, work: Work, fit: FitReport): void {
  const { design, system } = work.store.getState();
  const position = design.position ?? 0;
  const step = STEP[system] * (event.shiftKey ? 10 : 1);
  const marks = landmarks(fit).toSorted((a, b) => a - b);
  const [low, high] = marks.length > 0 ? reachOf(position, marks) : [];
  const goal: Record<string, number | undefined> = {
    ArrowLeft: position - step,
    ArrowDown: position - step,
    ArrowRight: position + step,
    ArrowUp: position + step,
    Home: low,
    End: high,
    PageDown: marks.findLast((mark) => mark < position - 1e-9),
    PageUp: marks.find((mark) => mark > position + 1e-9),
  };
  if (!(event.key in goal)) return;
  event.preventDefault();
  const next = goal[event.key];
  // The next press goes on from the touch.
  if (next !== undefined)
    work.moveTo(stopped(fit, position, Math.abs(next) < 1e-12 ? 0 : Number(next.toPrecision(12))));
}
