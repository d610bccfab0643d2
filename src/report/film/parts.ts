/** Parts that the report of a run carried and of one that fails share, in the units of the report. */

import type { Sought } from '../../engine/run/backOff.ts';
import type { Running } from '../../engine/run/running.ts';
import type { LeastFilm } from '../../engine/spindle/height.ts';
import type { Five, Pose } from '../../engine/spindle/pose.ts';
import { degrees, millimetres as mm } from '../convert.ts';
import type { FilmReport } from './definition.ts';

export const poseReport = ({ x, y, z, tiltX, tiltY }: Pose): FilmReport['pose'] => ({
  x: mm(x),
  y: mm(y),
  z: mm(z),
  tiltX,
  tiltY,
});
export const forceReport = ([x, y, z, aboutX, aboutY]: Readonly<Five>) => ({
  force: { x, y, z },
  moment: { x: mm(aboutX), y: mm(aboutY) },
});
export const loadReport = ({ load }: Running): FilmReport['load'] => load && forceReport(load);

/** Where else the adjuster could stand. */
export const backOffReport = (sought: Sought | null): FilmReport['backOff'] =>
  sought?.backOff ? { position: mm(sought.backOff.position), leastFilm: mm(sought.backOff.leastFilm) } : null;

export const leastReport = (running: Running, i: number, least: LeastFilm | null) => ({
  leastFilm: least && mm(least.film),
  leastFilmAt: least && placeReport(running, i, least.u, least.angle),
});

/** u = z·cos a + r·sin a and v = r·cos a - z·sin a of the bush line give back z = u·cos a - v·sin a. */
export function placeReport({ seats }: Running, i: number, u: number, angle: number) {
  const { bush, halfAngle } = seats[i]!.gap;
  const last = bush.u.length - 1;
  const v = bush.v[0]! + ((bush.v[last]! - bush.v[0]!) * (u - bush.u[0]!)) / (bush.u[last]! - bush.u[0]!);
  return { station: mm(u * Math.cos(halfAngle) - v * Math.sin(halfAngle)), angle: degrees(angle) };
}
