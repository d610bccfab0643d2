/**
 * How sure one is of the films before any trial: what the readings say; where they do not, what the person states, or
 * the default.
 */
import type { Design } from '../../design/definition.ts';
import type { FilmsBefore } from '../../engine/belief/accounts.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { believedOf, likelyNow, pairsAfter } from '../belief/believed.ts';
import { filmSpread } from '../belief/spread.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';

interface FilmDoubt {
  before: FilmsBefore;
  from: CutReport['doubt'][string]['from'][];
}

export function doubtOf(design: Design): FilmDoubt {
  const { belief, films } = believedOf(design);
  const read = (design.readings?.length ?? 0) > 0;
  return {
    before: films,
    from: design.seats.map((_, i) =>
      belief.unread.some(({ seat }) => seat === i)
        ? design.cut?.doubt === undefined
          ? 'default'
          : 'stated'
        : read
          ? 'readings'
          : 'stated',
    ),
  };
}

export function doubtSection(design: Design, input: PlanInput, { before, from }: FilmDoubt): CutReport['doubt'] {
  // Where it is not known at which end a film is least it is no normal number: then as the pairs drawn have it.
  const known = likelyNow(design, input, []);
  const drawn = known && filmSpread(known.parts, known.films, pairsAfter(design, input, []), input.position);
  return Object.fromEntries(
    design.seats.map(({ name }, i) => [
      name,
      {
        sigma: millimetres(drawn?.[i] ?? Math.sqrt(before.covariance[i]![i]!)),
        from: from[i]!,
        ...(before.mean[i] !== 0 && { more: millimetres(before.mean[i]!) }),
      },
    ]),
  );
}
