/**
 * The marking-blue print on the parts in the round: the surface of each seat, blue where it printed and bare metal
 * elsewhere.
 */
import type { Metres } from '../../design/dimension.ts';
import type { PrintMap } from '../../report/print/maps.ts';
import { blueStrength } from './blue.ts';
import type { Drawn, DrawnSeat, Point } from './drawn.ts';
import { linear, type Rgb } from './filmColour.ts';
import { type Frame, type Mesh, revolved, wallAngles } from './revolve.ts';

/** Stops of the mesh along a line; the print is no finer. */
const ROWS = 24;

/** `metal` and `blue` as sRGB. The bush is open by `sector` degrees. */
export function printMesh(
  drawn: Drawn,
  map: PrintMap,
  thickness: Metres,
  frame: Frame,
  sector: number,
  metal: Rgb,
  blue: Rgb,
): Mesh {
  const index = drawn.seats.findIndex(({ name }) => name === map.seat);
  if (index < 0)
    return {
      positions: new Float32Array(),
      normals: new Float32Array(),
      indices: new Uint32Array(),
      colours: new Float32Array(),
    };
  const [bare, marked] = [linear(metal), linear(blue)];
  const shares = Array.from({ length: ROWS }, (_, i) => i / (ROWS - 1));
  const rows = map.stations.length;
  const profileAt = (theta: number) => {
    // Angles of the design run from x, to the right seen from in front, toward y: sceneGeometry.ts.
    const angle = Math.PI - theta;
    const seat = (drawn.at ? drawn.at(angle) : drawn.seats)[index]!;
    const column = ((Math.round((angle / (2 * Math.PI)) * map.columns) % map.columns) + map.columns) % map.columns;
    const strengths = shares.map((share) =>
      blueStrength(map.film[Math.round(share * (rows - 1)) * map.columns + column]!, thickness),
    );
    const points = shares.map((share) => pointAlong(seat, map.part, share));
    const colours = strengths.map(
      (strength) => bare.map((part, k) => part + (marked[k]! - part) * strength) as unknown as Rgb,
    );
    // A bore is seen from within: its profile runs the other way, so that its normal points to the axis.
    return map.part === 'bush' ? { points: points.toReversed(), colours: colours.toReversed() } : { points, colours };
  };
  const [from, to] = map.part === 'bush' ? wallAngles(sector) : [0, 2 * Math.PI];
  return revolved(profileAt, frame, from, to);
}

/** The drawn place at a share of the way along a line, from its rear end to its nose end. */
function pointAlong(seat: DrawnSeat, part: PrintMap['part'], share: number): Point {
  const [us, points] = [seat.along[part], seat[part]];
  const last = points.length - 1;
  const u = us[0]! + share * (us[last]! - us[0]!);
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (us[middle]! <= u) low = middle;
    else high = middle;
  }
  const t = (u - us[low]!) / (us[high]! - us[low]!);
  const [[z0, r0], [z1, r1]] = [points[low]!, points[high]!];
  return [z0 + t * (z1 - z0), r0 + t * (r1 - r0)];
}
