/**
 * Setting the half angle a of a surface, each way with what an error of its reading does to the angle:
 *
 *   sine bar       H = L·sin a       stack under a bar of length L, the part on it and its line levelled by the
 *                                    indicator over the travel on it              da = dH/(L·cos a), de/T
 *   along the bar  H = L·sin a       the slide set over runs along the bar on its stack until the indicator stays at
 *                                    nought over the travel T ≤ L                  da = dH/(L·cos a), de/T
 *   along a slide  e = T·sin a       indicator square to a parallel test bar, read while the slide set over
 *                                    travels T                                     da = de/(T·cos a)
 *   along the axis e = T·tan a       the same over an axial travel T, on the cone  da = de·cos²a/T
 *   table          e = R·tan a       an indicator square to the table, R from its pivot  da = de·cos²a/R
 *   scale          e = R·a           an engraved arc of radius R                   da = de/R
 *   tailstock      S = L·sin a       centres a length L of work apart              da = dS/(L·cos a)
 *   dresser        a                 of a wheel whose axis lies along the work's
 *
 * An indicator that leans by t tells sin a·cos t along a slide or at the tailstock, tan a·cos t along the axis or at
 * the table; levelled on a sine bar or kept at nought along one it reads nothing, and errs by nothing.
 *
 * A way whose indicator would have to read further than any does is left out.
 *
 * Handbooks give the tailstock S = L·t/2 with t = 2·tan a the taper on diameter: 1 in 10 000 too much at 0.8°, 1 in
 * 700 at 3°. e, H, S, T, R, L (m), a (rad).
 * @source derived (sine and tangent of the angle); MachinerysHandbook Taper turning (tailstock)
 */
import { type Metres, type Radians, radians } from '../../design/dimension.ts';
import type { SeatInput } from '../contact/fit.ts';
import { BLOCK_SETS, type BlockSet, metresOf } from '../gauging/blockSets.ts';
import { MOST_BLOCKS, type Stack, stackFor } from '../gauging/blockStack.ts';
import { trueTravel } from '../gauging/cosineError.ts';
import { stackOfAngle } from '../gauging/sineBar.ts';
import type { Part } from '../parts/line.ts';
import { tilted, worstFilms } from './angleError.ts';

export interface AngleTools {
  /** sine bar, between its rolls (m) */
  bar: number;
  blocks: BlockSet;
  /** travel of the indicator (m), as far as the line it follows reaches, and its least reading (m) */
  travel: number;
  indicator: Metres;
  /** radius (m) of the table's scale, and distance of an indicator from the pivot */
  scaleRadius: number;
  /** what can be told on that scale (m) */
  scaleReading: number;
  /** length of the work between centres (m) */
  centres: number;
  /** lean of the indicator (rad); upright when left out */
  lean?: Radians;
}

export const DEFAULT_BLOCKS: BlockSet = BLOCK_SETS[0]!;

export type Way = 'sineBar' | 'alongBar' | 'alongSlide' | 'alongAxis' | 'table' | 'scale' | 'tailstock';

export interface WayToSet {
  way: Way;
  /** what is set or read (m) */
  reading: number;
  /** error of the angle (rad) by the least that can be read, along a sine bar also by the blocks' miss */
  error: number;
  /** error of the angle (rad) by the lean of the indicator */
  lean: Radians;
  /** what both do to the film of the seat (m), being independent */
  film: Metres;
}

export interface AngleSetting {
  seat: number;
  part: Part;
  halfAngle: Radians;
  /** height (m) under the sine bar, and its blocks; a straight surface needs none */
  stack: number;
  blocks: Stack;
  /** dresser, from the wheel's axis lying along the work's (rad) */
  dresser: number;
  /**
   * greatest error of the half angle (rad) with which the film stays within its tolerance; null without one, and where
   * it is not within it anyway
   */
  stands: number | null;
  /** film lost or gained at its worst place per error of the half angle (m/rad) */
  perAngle: number;
  ways: WayToSet[];
}

/** Half angle (rad) beyond which nobody sets a tailstock over: 10°. @source practice */
const STEEPEST_SET_OVER = radians(10);

/** Further (m) no dial indicator reads. @source practice */
const FARTHEST_READ = 0.03;
const READ: ReadonlySet<Way> = new Set<Way>(['alongSlide', 'alongAxis', 'table', 'tailstock']);

export const alongSlide = (halfAngle: Radians, travel: number): number => travel * Math.sin(halfAngle);
export const alongAxis = (halfAngle: Radians, travel: number): number => travel * Math.tan(halfAngle);
/** Set-over of the tailstock (m) for work of a length (m) between centres. */
export const tailstockSetOver = (halfAngle: Radians, length: number): number => length * Math.sin(halfAngle);
/** Movement (m) of the table's edge at a radius from its pivot, read square to where it stood. */
export const tableMove = (halfAngle: Radians, radius: Metres): number => radius * Math.tan(halfAngle);
/** Length (m) along an engraved arc. */
export const scaleArc = (halfAngle: Radians, radius: Metres): number => radius * halfAngle;

/**
 * How one surface of the planned parts is set, and how well it must be.
 * @param gauged station (m) at which the surface is brought to size, about which an error turns it
 */
export function angleSetting(
  seats: readonly SeatInput[],
  position: Metres,
  seat: number,
  part: Part,
  gauged: number,
  tools: AngleTools,
): AngleSetting {
  const pair = seats[seat]!;
  const { halfAngle: a } = pair[part];
  const cos = Math.cos(a);
  const stack = stackOfAngle(Math.abs(a), tools.bar);
  const blocks = stackWithin(tools.blocks, stack);
  // An indicator on the cone itself has no more travel than the cone.
  const { from, to } = pair[part];
  const onAxis = Math.min(tools.travel, to - from);
  const onLine = Math.min(tools.travel, (to - from) / cos);
  const stands = standsOf(pair, position, part, gauged);
  const perAngle = lossPerAngle(pair, position, part, gauged);
  const way = (name: Way, reading: number, error: number): WayToSet => {
    const lean = leaningError(a, name, tools.lean ?? 0);
    return { way: name, reading: Math.abs(reading), error, lean, film: perAngle * Math.hypot(error, lean) };
  };
  const stacked = (travel: number) =>
    blocks.kind === 'stack' ? Math.hypot(blocks.error / (tools.bar * cos), tools.indicator / travel) : 0;
  const all = [
    ...(blocks.kind === 'stack'
      ? [way('alongBar', stack, stacked(Math.min(tools.travel, tools.bar))), way('sineBar', stack, stacked(onLine))]
      : []),
    way('alongSlide', alongSlide(a, tools.travel), tools.indicator / (tools.travel * cos)),
    way('alongAxis', alongAxis(a, onAxis), (tools.indicator * cos * cos) / onAxis),
    way('table', tableMove(a, tools.scaleRadius), (tools.indicator * cos * cos) / tools.scaleRadius),
    way('scale', scaleArc(a, tools.scaleRadius), tools.scaleReading / tools.scaleRadius),
    ...(Math.abs(a) <= STEEPEST_SET_OVER
      ? [way('tailstock', tailstockSetOver(a, tools.centres), tools.indicator / (tools.centres * cos))]
      : []),
  ];
  return {
    seat,
    part,
    halfAngle: a,
    stack,
    blocks,
    dresser: Math.abs(a),
    stands,
    perAngle,
    ways: all.filter(({ way: name, reading }) => !READ.has(name) || reading <= FARTHEST_READ),
  };
}

/** Error of the half angle (rad, its size) that is told by an indicator leaning by an angle (rad). */
export function leaningError(halfAngle: Radians, way: Way, lean: Radians): number {
  if (way === 'sineBar' || way === 'alongBar' || way === 'scale') return 0;
  const told =
    way === 'alongSlide' || way === 'tailstock'
      ? Math.asin(trueTravel(Math.sin(halfAngle), lean))
      : Math.atan(trueTravel(Math.tan(halfAngle), lean));
  return Math.abs(told - halfAngle);
}

/** The stack, looked for only where the set can reach. */
function stackWithin(set: BlockSet, height: number): Stack {
  const [least, greatest] = [
    metresOf(set, set.blocks[0]!),
    metresOf(
      set,
      set.blocks.slice(-MOST_BLOCKS).reduce((a, b) => a + b),
    ),
  ];
  return height < least || height > greatest ? { kind: 'outOfReach', least, greatest } : stackFor(set, height);
}

/** So small an error (rad) that films follow it in proportion. */
const SMALL = 1e-6;

/** Film lost or gained at its worst place per error of the half angle (m/rad). */
function lossPerAngle(pair: SeatInput, position: Metres, part: Part, gauged: number): number {
  const now = worstFilms(pair, position);
  if (!now) return 0;
  let most = 0;
  for (const error of [SMALL, -SMALL]) {
    const then = worstFilms(tilted(pair, part, gauged, error), position);
    if (then) most = Math.max(most, Math.abs(then.least - now.least), Math.abs(then.greatest - now.greatest));
  }
  return most / SMALL;
}

/**
 * The error (rad), to either side, at which the film first leaves its tolerance; null without target and tolerance, and
 * where it is out of it already. Of a film that is uneven anyway, its greatest out of tolerance, the least counts
 * alone.
 */
function standsOf(pair: SeatInput, position: Metres, part: Part, gauged: number): number | null {
  const { target, tolerance } = pair;
  if (target === undefined || !tolerance) return null;
  const now = worstFilms(pair, position);
  const most = now && now.greatest > target + tolerance ? Number.POSITIVE_INFINITY : target + tolerance;
  const within = (error: number) =>
    [error, -error].every((e) => {
      const films = worstFilms(tilted(pair, part, gauged, e), position);
      return (
        films !== null &&
        films.least >= target - tolerance &&
        films.least <= target + tolerance &&
        films.greatest <= most
      );
    });
  if (!within(0)) return null;
  let [good, bad] = [0, 0.1];
  while (bad - good > 1e-12) {
    const middle = (good + bad) / 2;
    if (within(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
