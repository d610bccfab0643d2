/** Lapping the pair together, as the report tells it. */
import type { Design } from '../../design/definition.ts';
import { type LapState, lapped } from '../../engine/cutting/lapping.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';
import { type Cut, orNull, toLap } from './toCut.ts';

/** mm³ in a cubic metre */
const CUBIC_MILLIMETRES = 1e9;

export function lapSection(design: Design, lap: NonNullable<Cut['lap']>, { seats }: PlanInput): CutReport['lap'] {
  const result = lapped(seats, toLap(lap));
  if (result.status === 'nothingTouches') return null;
  const relation = result.states[0]!.fit.relation;
  return {
    states: result.states.map((state) => stateSection(design, state)),
    stop: result.stop,
    allowance: relation && millimetres(relation.allowance),
  };
}

function stateSection(
  design: Design,
  { position, angle, work, volume, seats, fit }: LapState,
): NonNullable<CutReport['lap']>['states'][number] {
  return {
    position: millimetres(position),
    turns: angle / (2 * Math.PI),
    work,
    volume: { journal: volume.journal * CUBIC_MILLIMETRES, bush: volume.bush * CUBIC_MILLIMETRES },
    seats: seats.map(({ bearing, depth }, i) => {
      const { seatPosition, leastFilm } = fit.seats[i]!;
      return {
        name: design.seats[i]!.name,
        bearing,
        journal: millimetres(depth.journal),
        bush: millimetres(depth.bush),
        seatPosition: orNull(seatPosition),
        film: orNull(leastFilm),
      };
    }),
    relationError: fit.relation && millimetres(fit.relation.error),
  };
}
