/** Whether every film wanted is within its tolerance, the journal within its reach. */
import type { Plan } from '../../engine/cutting/plan.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { journalMove } from '../../engine/cutting/steps.ts';

/** A film (m) this near to the end of its tolerance is within it. */
const ROUNDING = 4e-13;

export const inTolerance = (input: PlanInput, { films, position }: Plan): boolean =>
  journalMove(input, position).within &&
  input.seats.every(({ target, tolerance = 0 }, i) =>
    target === undefined
      ? (films[i] ?? 0) >= -ROUNDING
      : films[i] != null && Math.abs(films[i] - target) <= tolerance + ROUNDING,
  );
