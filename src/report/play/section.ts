/**
 * The `play` section of the report: present where the design says where the indicator stands or what is free (`play`).
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import type { SeatContact } from '../../engine/play/contacts.ts';
import { playMap } from '../../engine/play/reach.ts';
import type { Seating } from '../../engine/play/seating.ts';
import { forceToFree, isSelfHolding } from '../../engine/play/selfHolding.ts';
import { endPlay, heldAt, type Indicator, type Shake, shakeCurve, shakeOf } from '../../engine/play/shake.ts';
import type { Pose } from '../../engine/spindle/pose.ts';
import type { Spindle } from '../../engine/spindle/rigid.ts';
import { degrees, metres, millimetres, radians } from '../convert.ts';
import type { ContactReport, PlayReport, PoseReport, SeatedReport, ShakeReport } from './definition.ts';
import { freeOf, indicatorOf, toSpindle } from './toPlay.ts';

/** Directions of the map, positions of the curve. */
const DIRECTIONS = 48;
const POSITIONS = 33;
/** The curve reaches this far (mm) from the stop when there is no other, or twice as far as the position now. */
const REACH = 0.05;

export function playSection(design: Design): PlayReport | undefined {
  if (!design.play) return undefined;
  const spindle = toSpindle(design);
  const position = metres(design.position ?? 0);
  const indicator: Indicator = { station: metres(indicatorOf(design)), direction: 0 };
  const held = heldAt(spindle, position);
  const ends = endPlay(spindle, position);
  const map = playMap(held, indicator.station, DIRECTIONS);
  const friction = design.friction ?? defaultAt('friction');
  // A straight bush is wedged by the cone of its journal, if there is one.
  const cones = design.seats.map(({ name, bush, journal }) => ({
    name,
    halfAngle: radians(bush.halfAngle || journal.halfAngle),
  }));
  const holding = cones.filter(({ halfAngle }) => isSelfHolding(halfAngle, friction));
  return {
    indicator: indicatorOf(design),
    free: [...freeOf(design)],
    seated: seatedReport(ends.rear),
    shake: shakeReport(shakeOf(held, indicator)),
    shakeAgainst:
      ends.rear.status === 'solved' ? shakeReport(shakeOf(heldAt(spindle, ends.rear.pose.z), indicator)) : null,
    endPlay: ends.total === null ? null : mm(ends.total),
    noseStop: ends.nose.status === 'solved' ? mm(ends.nose.pose.z) : null,
    map: map.status === 'solved' ? map.polygon.map(({ x, y }): [number, number] => [mm(x), mm(y)]) : null,
    curve: curveOf(spindle, indicator, position, ends.rear, ends.nose),
    selfHolding: holding.map(({ name }) => name),
    friction,
    freeing: Object.fromEntries(holding.map(({ name, halfAngle }) => [name, forceToFree(halfAngle, friction, 1)])),
  };
}

/**
 * Shake from stop to stop; from the one stop as far as matters where there is only one; about the position where there
 * is none.
 */
function curveOf(
  spindle: Spindle,
  indicator: Indicator,
  position: number,
  rear: Seating,
  nose: Seating,
): PlayReport['curve'] {
  const back = rear.status === 'solved' ? rear.pose.z : null;
  const front = nose.status === 'solved' ? nose.pose.z : null;
  const reach = Math.max(metres(REACH), 2 * Math.abs(position - (back ?? front ?? position)));
  const from = back ?? (front ?? position) - reach;
  const to = front ?? (back ?? position) + reach;
  return shakeCurve(spindle, indicator, from, to, POSITIONS).map((point) => ({
    position: mm(point.position),
    total: point.total === null ? null : mm(point.total),
  }));
}

type Rest = Exclude<Seating | Shake, { status: 'solved' }>;

/** What is said of a question that has no answer. */
function unsolved(verdict: Rest): SeatedReport {
  const none = { pose: null, contacts: [], shared: false };
  if (verdict.status === 'unbounded') return { status: verdict.status, ...none, motion: bare(verdict.motion) };
  if (verdict.status === 'infeasible')
    return { status: verdict.status, ...none, pose: poseReport(verdict.pose), interference: mm(verdict.interference) };
  return { status: verdict.status, ...none, pose: poseReport(verdict.pose) };
}

function seatedReport(seating: Seating): SeatedReport {
  if (seating.status !== 'solved') return unsolved(seating);
  return {
    status: 'solved',
    pose: poseReport(seating.pose),
    contacts: seating.contacts.map(contactReport),
    shared: seating.shared,
  };
}

function shakeReport(shake: Shake): ShakeReport {
  if (shake.status !== 'solved') return { ...unsolved(shake), total: null, back: null };
  const { along, back, total } = shake;
  return {
    status: 'solved',
    total: mm(total),
    pose: poseReport(along.pose),
    contacts: along.contacts.map(contactReport),
    shared: along.shared,
    back: { pose: poseReport(back.pose), contacts: back.contacts.map(contactReport) },
  };
}

/** mm, and never a minus before nothing. */
const mm = (m: number) => millimetres(m) + 0;

const poseReport = ({ x, y, z, tiltX, tiltY }: Pose): PoseReport => ({
  x: mm(x),
  y: mm(y),
  z: mm(z),
  tiltX: tiltX + 0,
  tiltY: tiltY + 0,
});
const bare = ({ x, y, z, tiltX, tiltY }: Pose): PoseReport => ({
  x: x + 0,
  y: y + 0,
  z: z + 0,
  tiltX: tiltX + 0,
  tiltY: tiltY + 0,
});

const contactReport = (contact: SeatContact): ContactReport => ({
  seat: contact.seat,
  station: mm(contact.station),
  journalStation: mm(contact.journalStation),
  angle: degrees(contact.angle),
  share: contact.share,
  ring: contact.ring,
});
