/** The film that keeps the metals apart, and what is to be said of one that is thinner: the same words everywhere. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { FULL_FILM } from '../../engine/heat/guidance.ts';

export { SMALL_MOTOR } from '../../engine/heat/guidance.ts';

/** Rq in mm. */
export const ROUGHNESS = { journal: defaultAt('run.roughness.journal'), bush: defaultAt('run.roughness.bush') };
/** mm: the film that keeps the metals apart, three times the combined roughness. */
export function neededFilm(run: NonNullable<Design['run']>): number {
  return FULL_FILM * Math.hypot(run.roughness?.journal ?? ROUGHNESS.journal, run.roughness?.bush ?? ROUGHNESS.bush);
}

/** Film ratio below which the metals run on each other (engine/heat/guidance.ts). */
export const RUBBING = 1;
export const BARELY = 'barely parts the surfaces';
export const TOO_THIN = 'thinner than the surfaces are rough: metal runs on metal';
