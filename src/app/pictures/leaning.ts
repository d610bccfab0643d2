/**
 * What changes from one half section to the next: lobes of both parts, and a journal that lies aside or tilted.
 * In the coordinates of a bush line the film at u and the angle φ is that of the lines on one axis less
 *
 *   bush(φ) + journal(u, φ)      journal = its lobes + how far it has come nearer (engine/spindle/height.ts)
 */
import type { Metres, Radians } from '../../design/dimension.ts';
import {
  AT_HOME,
  axisAt,
  nearing,
  type Pose,
  proudAt,
  roundOf,
  type SeatContact,
  type SeatInput,
} from '../../report/inFrame.ts';

export interface Leaning {
  /** whether the journal lies aside or tilted */
  pulled: boolean;
  /** what holds it there */
  contacts: readonly SeatContact[];
  /** m: how far the journal stands out at u (m, along the bush line of a seat) and an angle (rad), and the bush in */
  journal(seat: number, u: Metres, angle: Radians): number;
  bush(seat: number, angle: Radians): number;
  /** m: the journal's axis where it passes a station (m), toward an angle */
  aside(station: Metres, angle: Radians): number;
  /** m: how far a point of the journal at a radius (m) and an angle (rad) has gone noseward, by the tilt alone */
  endwise(radius: Metres, angle: Radians): number;
  /** m: no more than this of both together, at u */
  most(seat: number, u: Metres): number;
}

/** Null where both parts are round and the journal lies on the axis of the bush. */
export function leaningOf(
  seats: readonly SeatInput[],
  pose: Pose | null,
  contacts: readonly SeatContact[] = [],
): Leaning | null {
  const lobesOf = ({ journal, bush }: SeatInput) => [...(journal.lobes ?? []), ...(bush.lobes ?? [])];
  const lobed = seats.some((seat) => lobesOf(seat).length > 0);
  if (!lobed && pose === null) return null;
  const rounds = seats.map(({ journal, bush }) => ({
    journal: roundOf(journal.lobes),
    bush: roundOf(bush.lobes),
    cos: Math.cos(bush.halfAngle),
  }));
  const lies = pose ?? AT_HOME;
  const toward = ({ x, y }: { x: number; y: number }, angle: Radians) => x * Math.cos(angle) + y * Math.sin(angle);
  const nearer = (seat: number, u: Metres) => nearing(lies, rounds[seat]!.cos, u);
  const heights = seats.map((seat) => lobesOf(seat).reduce((sum, { amplitude }) => sum + amplitude, 0));
  return {
    pulled: pose !== null,
    contacts,
    journal: (seat, u, angle) => proudAt(rounds[seat]!.journal, angle) + toward(nearer(seat, u), angle),
    bush: (seat, angle) => proudAt(rounds[seat]!.bush, angle),
    aside: (station, angle) => toward(axisAt(lies, station), angle),
    endwise: (radius, angle) => radius * (lies.tiltX * Math.sin(angle) - lies.tiltY * Math.cos(angle)),
    most(seat, u) {
      const { x, y } = nearer(seat, u);
      return heights[seat]! + Math.hypot(x, y);
    },
  };
}
