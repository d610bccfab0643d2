/** Lines of the parts, and where rolls and balls rest on them, in mm: what the drawings of set-ups stand on. */

import type { Design, Part } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { radiusAt } from '../../engine/contact/fit.ts';
import { ballIn, rollOn } from '../../engine/gauging/touching.ts';
import { metres, millimetres } from '../convert.ts';
import { type Line, lineOfPart } from '../inFrame.ts';

/** The line of a surface: station and radius of its points, rear to nose, and the line as the engine has it. */
export interface PartLine {
  z: readonly Millimetres[];
  r: readonly Millimetres[];
  line: Line;
}

/** Null where the design has no such seat. */
export function partLine(design: Design, seat: string, part: Part): PartLine | null {
  const found = design.seats.find(({ name }) => name === seat);
  if (!found) return null;
  const line = lineOfPart(found[part], part);
  return { z: Array.from(line.z, millimetres), r: Array.from(line.r, millimetres), line };
}

/** Radius of a line at a station. */
export const radiusOf = ({ line }: PartLine, station: Millimetres): Millimetres =>
  millimetres(radiusAt(line, metres(station)));

/** How far from the axis a roll's centre stands beside a line; null where it misses it. */
export function rollCentre({ line }: PartLine, roll: Millimetres, station: Millimetres): Millimetres | null {
  const touch = rollOn(line, metres(roll) / 2, metres(station));
  return touch && millimetres(touch.centre);
}

/** Station of the centre of a ball let into a bore from its wide end; null where it falls through. */
export function ballCentre({ line }: PartLine, ball: Millimetres): Millimetres | null {
  const touch = ballIn(line, metres(ball) / 2, line.halfAngle >= 0 ? 'rearward' : 'noseward');
  return touch && millimetres(touch.centre);
}
