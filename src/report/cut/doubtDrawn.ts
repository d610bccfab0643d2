/** The doubt of the films after some trials, of the pairs that these leave. */
import type { Design } from '../../design/definition.ts';
import { filmsMore } from '../../engine/cutting/leftToCut.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import type { Trial, TrialResult } from '../../engine/cutting/trial.ts';
import { pairsAfter } from '../belief/believed.ts';
import { filmSpread, limitsOf } from '../belief/spread.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';

type TrialReport = NonNullable<CutReport['trials']>[number];

/** The doubt of the films after some trials, of the pairs that they leave; nothing where hardly one goes with them. */
export function doubtDrawn(
  design: Design,
  input: PlanInput,
  trials: readonly Trial[],
  result: TrialResult,
): Partial<Pick<TrialReport, 'films' | 'drawn'>> {
  if (result.status !== 'updated') return {};
  const drawn = pairsAfter(design, input, trials);
  const sigmas = filmSpread(result.parts, result.films, drawn, input.position);
  if (!sigmas) return {};
  const each = filmsMore(result.parts, drawn, input.position);
  const limits = result.films.map((_, i) =>
    limitsOf(
      each.map(({ e }) => e[i]!),
      drawn.weights,
    ),
  );
  return { films: filmsOf(design, result.films, sigmas, limits), drawn: true };
}

export function filmsOf(
  { seats }: Design,
  films: readonly number[],
  sigmas: readonly number[],
  limits: readonly ([number, number] | null)[] = [],
): TrialReport['films'] {
  const told = seats.map(({ name }, i) => {
    const [low, high] = limits[i] ?? [];
    return [
      name,
      {
        more: millimetres(films[i]!),
        sigma: millimetres(sigmas[i]!),
        ...(low !== undefined && { limits: [millimetres(low), millimetres(high!)] }),
      },
    ];
  });
  return Object.fromEntries(told);
}
