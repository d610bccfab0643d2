/**
 * What changes from one half section to the next: lobes of both parts, and a journal that lies aside or tilted.
 * In the coordinates of a bush line (engine/play/rigid.ts) the film at u and the angle φ is that of the lines on
 * one axis less
 *
 *   bush(φ) + journal(u, φ),   journal = lobes(φ) + cos a·[ (x + tiltY·Zn)·cos φ + (y - tiltX·Zn)·sin φ ],  Zn = u/cos
 *   a
 */
import type { SeatContact } from '../../engine/play/contacts.ts';
import { proudAt, roundOf } from '../../engine/spindle/lobes.ts';
import { axisAt, type Pose } from '../../engine/spindle/pose.ts';
import type { PlaySeat } from '../../engine/spindle/rigid.ts';

export interface Leaning {
  /** whether the journal lies aside or tilted */
  pulled: boolean;
  /** what holds it there */
  contacts: readonly SeatContact[];
  /** m: how far the journal stands out at u (m, along the bush line of a seat) and an angle (rad), and the bush in */
  journal(seat: number, u: number, angle: number): number;
  bush(seat: number, angle: number): number;
  /** m: the journal's axis where it passes a station (m), toward an angle */
  aside(station: number, angle: number): number;
  /** m: no more than this of both together, at u */
  most(seat: number, u: number): number;
}

const CENTRED: Pose = { x: 0, y: 0, z: 0, tiltX: 0, tiltY: 0 };

/** Null where both parts are round and the journal lies on the axis of the bush. */
export function leaningOf(
  seats: readonly PlaySeat[],
  pose: Pose | null,
  contacts: readonly SeatContact[] = [],
): Leaning | null {
  const lobed = seats.some(({ journalLobes, bushLobes }) => journalLobes.length + bushLobes.length > 0);
  if (!lobed && pose === null) return null;
  const rounds = seats.map(({ journalLobes, bushLobes, bush }) => ({
    journal: roundOf(journalLobes, []),
    bush: roundOf([], bushLobes),
    cos: Math.cos(bush.halfAngle),
  }));
  const lies = pose ?? CENTRED;
  const aside = (station: number, angle: number) => {
    const { x, y } = axisAt(lies, station);
    return x * Math.cos(angle) + y * Math.sin(angle);
  };
  const heights = seats.map(({ journalLobes, bushLobes }) =>
    [...journalLobes, ...bushLobes].reduce((sum, { amplitude }) => sum + amplitude, 0),
  );
  return {
    pulled: pose !== null,
    contacts,
    journal: (seat, u, angle) =>
      proudAt(rounds[seat]!.journal, angle) + rounds[seat]!.cos * aside(u / rounds[seat]!.cos, angle),
    bush: (seat, angle) => proudAt(rounds[seat]!.bush, angle),
    aside,
    most(seat, u) {
      const { x, y } = axisAt(lies, u / rounds[seat]!.cos);
      return heights[seat]! + rounds[seat]!.cos * Math.hypot(x, y);
    },
  };
}
