/** The print itself, place by place, for the pictures: what the section of the report tells in figures. */

import type { Design } from '../../design/definition.ts';
import type { Metres } from '../../design/dimension.ts';
import { type PrintMap, printOf } from '../../engine/play/print.ts';
import { metres, toSeats } from '../convert.ts';
import { freeOf } from '../play/toPlay.ts';
import { TURNS } from './section.ts';

export type { PrintMap };

interface PrintMaps {
  /** m */
  thickness: Metres;
  press: PrintMap[];
  turned: PrintMap[];
}

/** Null where nothing prints, because the journal cannot be pressed home. SI units. */
export function printMaps(design: Design): PrintMaps | null {
  if (!design.print) return null;
  const thickness = metres(design.print.thickness);
  const maps = (turns: number) => {
    const print = printOf(toSeats(design), freeOf(design), { thickness, turns });
    return print.status === 'solved' ? print.maps : null;
  };
  const [press, turned] = [maps(1), maps(TURNS)];
  return press && turned ? { thickness, press, turned } : null;
}
