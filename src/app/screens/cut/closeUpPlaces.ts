/** What a close-up of Cut shows of a seat, straightened on its bush as it is now: mm along it and outward from it. */
import type { Design } from '../../../design/definition.ts';
import { metres } from '../../../report/convert.ts';
import { lineOfPart } from '../../../report/inFrame.ts';
import { type Place, straightened } from '../../pictures/straightened.ts';

export interface CloseUpPlaces {
  bush: { now: Place[]; after: Place[] };
  /** `cut`: after the cut, but where the journal stands now */
  journal: { now: Place[]; cut: Place[]; after: Place[] };
}

export function closeUpPlaces(before: Design, after: Design, seat: number): CloseUpPlaces {
  const frame = lineOfPart(before.seats[seat]!.bush, 'bush');
  const bush = (design: Design) => straightened(frame, lineOfPart(design.seats[seat]!.bush, 'bush'), 0);
  const journal = (design: Design, { position = 0 }: Design) =>
    straightened(frame, lineOfPart(design.seats[seat]!.journal, 'journal'), metres(position));
  return {
    bush: { now: bush(before), after: bush(after) },
    journal: { now: journal(before, before), cut: journal(after, before), after: journal(after, after) },
  };
}

export const allPlaces = ({ bush, journal }: CloseUpPlaces): Place[] => [
  ...bush.now,
  ...bush.after,
  ...journal.now,
  ...journal.cut,
  ...journal.after,
];
