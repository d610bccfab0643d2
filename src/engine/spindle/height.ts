/**
 * The film of a seat with the journal at any pose: the one formula of play, which sees it where metal may touch, and of
 * the oil.
 *
 *   h(u, φ) = g(u; z) + growth - d(φ) - X·cos φ - Y·sin φ        X = x·cos a + tiltY·u        Y = y·cos a - tiltX·u
 *
 * g (m) film of the lines on one axis with the journal at position z (contact/film.ts), exact in z, profiles included ·
 * a half angle of the bush (rad) · x, y (m), tiltX, tiltY (rad) · u = z·cos a + r·sin a (m) is both the place along the
 * slant and cos a times the station at which the normal meets the axis, so tilt is right for any half angle, 0 and
 * 90° included · d (m) what the lobes stand proud of their parts, so they take film away (lobes.ts) · growth (m) even
 * along the seat.
 * First order in x, y and tilt: holds for films far smaller than the radius.
 *
 * Change of film with the pose: ∂h/∂(x, y, tiltX, tiltY) from the above; ∂h/∂z = sin a + cos a·(slope of the journal
 * against the bush line), which is sin a where their half angles agree.
 * @source derived (first-order rigid motion)
 */
import type { Metres, Radians } from '../../design/dimension.ts';
import { filmAlong } from '../contact/film.ts';
import { proudAt, type Worst, worstAngle } from './lobes.ts';
import type { Five, Pose } from './pose.ts';
import { type RigidSeat, turnedRound } from './rigid.ts';

/**
 * X and Y (m): how far the journal has come nearer to the bush toward x and y, square to the bush line, at the place u
 * (m) along it.
 */
export const nearing = ({ x, y, tiltX, tiltY }: Pose, cosA: number, u: number) => ({
  x: cosA * x + tiltY * u,
  y: cosA * y - tiltX * u,
});

/** h (m) at an angle (rad), given what it is on one axis there, lobes and growth counted. */
const filmThere = (centred: number, { x, y }: { x: number; y: number }, angle: Radians): number =>
  centred - x * Math.cos(angle) - y * Math.sin(angle);

/**
 * Film (m) of one seat at the place u (m) along its bush line, whose centred film at the pose's position is `centred`
 * (m), at the angle φ (rad).
 */
export const filmAt = (seat: RigidSeat, centred: number, u: number, angle: Radians, pose: Pose): number =>
  filmThere(centred - proudAt(seat.round, angle), nearing(pose, seat.cos, u), angle);

/** ∂h/∂q at one place, into `out`: x, y, z, tiltX, tiltY. */
export function filmPerPose(out: Five, cosA: number, u: number, zRate: number, cos: number, sin: number): void {
  out[0] = -cosA * cos;
  out[1] = -cosA * sin;
  out[2] = zRate;
  out[3] = u * sin;
  out[4] = -u * cos;
}

export interface LeastFilm {
  /** m */
  film: Metres;
  /** m along the bush line, and rad in [0, 2π) */
  u: number;
  angle: Radians;
}

/** m: what growth adds to the film of parts as cold as they were measured. */
export const UNGROWN = 0;

/**
 * The least film, anywhere: along the slant it is at a breakpoint, around it certain (worstAngle). `turned` (rad) is
 * how far the journal's lobes have turned. Null: no overlap.
 */
export function leastFilmOf(seat: RigidSeat, pose: Pose, growth: number, turned = 0): LeastFilm | null {
  const chain = filmAlong(seat.gap, pose.z);
  const round = turnedRound(seat, turned);
  const worst: Worst = { value: 0, angle: 0 };
  let least: LeastFilm | null = null;
  for (let i = 0; i < chain.count; i++) {
    const u = chain.u[i]!;
    const { x, y } = nearing(pose, seat.cos, u);
    worstAngle(round, x, y, true, worst);
    const film = chain.film[i]! + growth - worst.value;
    // As near everywhere: told at 0.
    const angle = worst.value === 0 ? 0 : (worst.angle + 2 * Math.PI) % (2 * Math.PI);
    if (least === null || film < least.film) least = { film, u, angle };
  }
  return least;
}
