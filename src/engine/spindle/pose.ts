import type { Metres, Radians } from '../../design/dimension.ts';

/** Where the journal stands in the bush: a small rigid motion of its datum. */
export interface Pose {
  /** off the bush axis, to the right and upward as seen from the nose */
  x: Metres;
  y: Metres;
  /** axial position, toward the nose */
  z: Metres;
  /** small turns about x and y */
  tiltX: Radians;
  tiltY: Radians;
}

export type Motion = keyof Pose;
export const MOTIONS: readonly Motion[] = ['x', 'y', 'z', 'tiltX', 'tiltY'];

/** Force (N) and moment (N·m) on the journal about the datum of the bush; each does work on the motion of its name. */
export type Push = Record<Motion, number>;

/** The five coordinates in the order of every vector and matrix of forces: x, y, z, tiltX, tiltY. */
export type Five = [number, number, number, number, number];

export const AT_HOME: Pose = { x: 0, y: 0, z: 0, tiltX: 0, tiltY: 0 };
export const asFive = ({ x, y, z, tiltX, tiltY }: Pose): Five => [x, y, z, tiltX, tiltY];
export const asPose = ([x, y, z, tiltX, tiltY]: Readonly<Five>): Pose => ({ x, y, z, tiltX, tiltY });

/** A force (N) at a station S (m) on the axis, about the datum: its moment about y is S·Fx, about x -S·Fy. */
export const loadAt = (x: number, y: number, z: number, station: Metres): Five => [x, y, z, -station * y, station * x];
export const pushAt = (station: Metres, { x = 0, y = 0, z = 0 }: { x?: number; y?: number; z?: number }): Push =>
  asPose(loadAt(x, y, z, station));

/** Where the axis of a journal stands (m) as it passes a station (m). */
export const axisAt = (pose: Pose, station: Metres) => ({
  x: pose.x + pose.tiltY * station,
  y: pose.y - pose.tiltX * station,
});
