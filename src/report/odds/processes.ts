/** Ways to make the parts side by side: how often the pair works by each, and what that does to the films. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { blocksOf, oddsRun } from '../../engine/odds/odds.ts';
import { together } from '../../engine/odds/tally.ts';
import type { ProcessReport } from './definition.ts';
import { drawCount } from './drawCount.ts';
import { startOf } from './drawn.ts';
import { plannedState, planningOf } from './planned.ts';
import { stateSection } from './stateSection.ts';

type Process = NonNullable<NonNullable<Design['odds']>['processes']>[number];

/** By its spreads in place of the design's own; as planned where there is a plan. Null where it gives no pair. */
export function processReport(design: Design, { name, spread }: Process): ProcessReport | null {
  const start = startOf(design, spread);
  if (!start) return null;
  const planning = planningOf(start);
  const state = (planning && plannedState(start, planning)) ?? start.now;
  const run = oddsRun(state.sampler, state.middle, state.question, design.odds?.seed ?? defaultAt('odds.seed'));
  let tally = run.empty();
  for (const [from, count] of blocksOf(drawCount(design))) tally = together(tally, run.block(from, count));
  const told = stateSection(design, state.question, run.answer(tally));
  if (!told) return null;
  const { best, inBand, films, limits } = told;
  return {
    name,
    share: best.inBand.all!,
    ...limits.best.all!,
    set: { share: inBand.all!, ...limits.inBand.all! },
    films: best.films,
    setFilms: films,
  };
}
