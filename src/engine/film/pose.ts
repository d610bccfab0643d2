/** Where the journal stands in the bush: a small rigid motion of its datum. */
export interface Pose {
  /** m, off the bush axis, to the right and upward as seen from the nose */
  x: number;
  y: number;
  /** m, axial position, toward the nose */
  z: number;
  /** rad, small turns about x and y */
  tiltX: number;
  tiltY: number;
}

/** The five coordinates in the order of every vector and matrix of forces: x, y, z, tiltX, tiltY. */
export type Five = [number, number, number, number, number];

export const AT_HOME: Pose = { x: 0, y: 0, z: 0, tiltX: 0, tiltY: 0 };
export const asFive = ({ x, y, z, tiltX, tiltY }: Pose): Five => [x, y, z, tiltX, tiltY];
export const asPose = ([x, y, z, tiltX, tiltY]: Readonly<Five>): Pose => ({ x, y, z, tiltX, tiltY });

/** A force (N) at a station (m) on the axis. */
export const loadAt = (x: number, y: number, z: number, station: number): Five => [x, y, z, -station * y, station * x];
