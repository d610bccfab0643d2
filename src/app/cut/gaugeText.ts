/** The set-up of a gauge, and its reading, in a few words. */
import { fineText, lengthText, type System } from '../../design/units.ts';
import { KINDS, type Reading } from '../measure/kinds.ts';

/** A size that is set up or read: to a tenth of a micrometre (mm). */
export const readText = (mm: number, system: System) => lengthText(Number(mm.toFixed(4)), system);

/** How the size of a roll or ball is told, and a place on the work; paper has its own. */
export interface GaugeTexts {
  tool(mm: number, system: System): string;
  place(mm: number, system: System): string;
}

export function gaugeText(reading: Reading, system: System, { tool, place }: GaugeTexts = { tool: readText, place: readText }): string {
  const { name } = KINDS[reading.kind];
  switch (reading.kind) {
    case 'diameter':
    case 'straightness':
      return `${name} at station ${place(reading.station, system)}`;
    case 'overRolls':
      return `${name} of ${tool(reading.roll, system)}, centres at station ${place(reading.station, system)}`;
    case 'ballDepth':
      return `${name}, ball ${tool(reading.ball, system)}, from the face at ${place(reading.face, system)}`;
    case 'sineRise':
      return `${name}, stack ${tool(reading.stack, system)}`;
    case 'standOff':
      return name;
    case 'shake':
      return `${name} at position ${fineText(reading.position, system)}`;
  }
}
