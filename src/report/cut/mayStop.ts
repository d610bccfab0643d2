/** A pair that would do as it is once it was tried: that is told before anything that may still come off. */
import type { Design } from '../../design/definition.ts';
import { COVER, doubtedText, fineText, type System } from '../../design/units.ts';
import type { CutReport } from './definition.ts';
import { worksText } from './leave.ts';
import type { Remaining } from './left.ts';
import { listed } from './listed.ts';

/** Where the pair would do as it is, that comes before anything that may still come off; with how well it is known. */
export function mayStop(design: Design, cut: CutReport, remaining: Remaining, system: System): string[] {
  const { asTheyAre, steps, faces } = remaining;
  if (!asTheyAre || steps.length + faces.length === 0) return [];
  const works = worksText(cut);
  return [
    `You may stop here: most likely every film is within its tolerance already, the journal at ${fineText(asTheyAre.position, system)}.`,
    ...asItStands(design, remaining, system),
    `What follows only brings them nearer to what is wanted${works === '' ? '' : `: ${works}`}.`,
  ];
}

/** The films of a pair that would do as it is, and how well they are known; nothing of another. */
export function asItStands({ seats }: Design, { asTheyAre, steps, faces }: Remaining, system: System): string[] {
  if (!asTheyAre || steps.length + faces.length === 0) return [];
  const { films, sigmas } = asTheyAre;
  const told = Object.entries(films).map(([name, film]) => `${name} ${filmText(film, sigmas?.[name], system)}`);
  const unsure = seats.some(({ name, film }) => film?.tolerance && COVER * (sigmas?.[name] ?? 0) > film.tolerance);
  return [
    `There they are ${listed(told)}${unsure ? '; that is known less well than the tolerances, and no further cut makes it surer' : ''}.`,
  ];
}

/** A film with its doubt; without it where none is told. */
export const filmText = (
  film: number | null | undefined,
  sigma: number | null | undefined,
  system: System,
  limits?: readonly number[] | null,
) =>
  film == null
    ? 'apart'
    : sigma == null
      ? fineText(film, system)
      : doubtedText(film, sigma, system, limits ?? undefined);
