/** The demo designs as they are drawn, for the tests of the solid picture. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Drawn, drawnPair } from '../../../../src/app/pictures/drawn.ts';
import { leaningOf } from '../../../../src/app/pictures/leaning.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { parseDesign } from '../../../../src/design/parse.ts';
import { fit as fitOf, seatLines } from '../../../../src/engine/contact/fit.ts';
import { reachToward } from '../../../../src/engine/play/reach.ts';
import { heldAt } from '../../../../src/engine/play/shake.ts';
import { spindleOf } from '../../../../src/engine/spindle/rigid.ts';
import { metres, toSeats } from '../../../../src/report/convert.ts';

const folder = new URL('../../../../assets/designs/', import.meta.url);

export const DESIGNS = readdirSync(folder)
  .filter((name) => name.endsWith('.conepair.json'))
  .map((name): [string, Design] => {
    const result = parseDesign(readFileSync(new URL(name, folder), 'utf8'));
    if (!result.ok) throw new Error(name);
    return [name.split('.')[0]!, result.design];
  });

export const drawnAt = (design: Design, position: number, factor = 400): Drawn =>
  drawnPair(toSeats(design).map(seatLines), position, factor);

export const positionOf = (design: Design) => metres(design.position ?? 0);
export const touchOf = (design: Design) => fitOf(toSeats(design), 0).firstPosition ?? 0;

/** Its nose pulled aside until something holds it. */
export function pulled(design: Design, angle: number, factor = 400): Drawn {
  const seats = toSeats(design);
  const held = heldAt(spindleOf(seats, ['x', 'y', 'tiltX', 'tiltY']), positionOf(design));
  const reach = reachToward(held, 0.03, Math.cos(angle), Math.sin(angle));
  if (reach.status !== 'solved') throw new Error(reach.status);
  return drawnPair(seats.map(seatLines), positionOf(design), factor, leaningOf(seats, reach.pose, reach.contacts));
}
