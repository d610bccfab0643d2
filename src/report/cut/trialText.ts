/** A trial of the history in one line. */
import { fineText, type System } from '../../design/units.ts';
import type { Cut } from './toCut.ts';

type Trial = NonNullable<Cut['trials']>[number];

/** Metal off a face, or a spacer made thicker. */
export const offFaceText = ({ name, off }: { name: string; off: number }, system: System) =>
  off > 0 ? `${fineText(off, system)} off ${name}` : `${name} ${fineText(-off, system)} thicker`;

export function trialText({ note, taken = [], faces = [], standOff, shake, blue = [] }: Trial, system: System): string {
  const surfaces = taken
    .filter(({ normal }) => normal !== 0)
    .map(({ seat, part, normal }) => `${fineText(normal, system)} off the ${seat} ${part}`);
  const off = [...surfaces, ...faces.filter((face) => face.off !== 0).map((face) => offFaceText(face, system))];
  const prints = (wanted: boolean) => blue.filter((seen) => seen.prints === wanted).map(({ seat }) => seat);
  const told = [
    note ?? '',
    off.join(', '),
    standOff ? `first touch at ${fineText(standOff.value, system)}` : '',
    shake ? `shake ${fineText(shake.value, system)} at position ${fineText(shake.position, system)}` : '',
    prints(true).length > 0 ? `blue prints on ${prints(true).join(', ')}` : '',
    prints(false).length > 0 ? `clean on ${prints(false).join(', ')}` : '',
  ].filter((part) => part !== '');
  // A note of the design file holds 2,000 characters.
  return told.length === 0 ? 'Nothing was written down.' : told.join('; ').slice(0, 2_000);
}
