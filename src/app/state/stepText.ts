/** What a step changed, as a person calls it: shallow journal diameter. */
import type { Design } from '../../design/definition.ts';
import { pathOf } from '../../design/place.ts';
import type { Patch } from '../../jobs/patch.ts';
import { placeName } from '../../report/placeName.ts';

/** More than these are not named. */
const NAMED = 2;

export function stepText(design: Design, patch: Patch): string {
  // That a number is assumed no longer goes with its being typed.
  const told = patch.filter(({ at }) => at[0] !== 'assumed');
  if (told.filter(({ at }) => at[0] === 'seats' && at[2] === 'name').length > 1) return 'names or order of the seats';
  const names = [...new Set((told.length > 0 ? told : patch).map(({ at }) => nameOf(design, pathOf(at))))];
  return names.length <= NAMED ? names.join(', ') : `${names[0]} and ${names.length - 1} more`;
}

const LISTS: Record<string, string> = {
  assumed: 'what is assumed',
  'cut.trials': 'trials',
  seats: 'seats',
  title: 'name of the job',
};

const nameOf = (design: Design, path: string): string => LISTS[path] ?? placeName(design, path);
