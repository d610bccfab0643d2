/** Films that are not even along their seat after the cut, though their least is right, and what would even them. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { fitSection } from '../fit/section.ts';
import { unevenSentences } from '../fit/verdict.ts';
import type { CutReport } from './definition.ts';
import { listed } from './listed.ts';
import { designWithCut } from './withCut.ts';

/** One sentence a film, then one that tells the way out; none where every film is even within its tolerance. */
export function unevenAfter(design: Design, cut: CutReport, system: System): string[] {
  const after = designWithCut(design, cut);
  const fit = fitSection(after);
  const told = unevenSentences(after, fit, system);
  if (told.length === 0) return [];
  const seats = after.seats.filter(
    (_, i) =>
      unevenSentences({ ...after, seats: [after.seats[i]!] }, { ...fit, seats: [fit.seats[i]!] }, system).length > 0,
  );
  const isSet = (seat: string) =>
    design.cut?.allow.some((entry) => entry.seat === seat && entry.renew && entry.halfAngle === undefined);
  const unset = seats.filter(({ name }) => isSet(name)).map(({ name }) => name);
  const hint =
    unset.length === 0
      ? ''
      : ` The new half angle of the ${listed(unset)} is still empty, so the old one is kept: type it under What may be cut.`;
  return [
    ...told,
    `To even ${seats.length > 1 ? 'them' : 'it'}, cut ${listed(seats.map(partOf))} “to a straight new line”, at the half angle of what it runs against: stock taken along the old line keeps its shape.${hint}`,
  ];
}

/** The surface that is not straight; where both are, the journal, which is the easier to cut. */
function partOf({ name, journal, bush }: Design['seats'][number]): string {
  const bent = (['journal', 'bush'] as const).filter(
    (part) => ((part === 'journal' ? journal : bush).profile ?? []).length > 0,
  );
  return bent.length === 2 ? `both surfaces of the ${name} seat` : `the ${name} ${bent[0] ?? 'journal'}`;
}
