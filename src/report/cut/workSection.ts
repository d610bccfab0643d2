/** The order of work as the report tells it: words, cautions, what is ticked. */
import type { Design, Part } from '../../design/definition.ts';
import { isMadeStraight } from '../../engine/cutting/feeds.ts';
import { orderOfWork, reordered } from '../../engine/cutting/orderOfWork.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import type { CutStep } from '../../engine/cutting/steps.ts';
import { type BeforeTrial, beforeTrial, surfaceBeforeTrial } from './beforeTrial.ts';
import type { CutReport } from './definition.ts';
import type { Cut } from './toCut.ts';
import { cautionText, workText } from './words.ts';

/** @param known what of the steps is safe before the next trial */
export function workSection(
  design: Design,
  cut: Cut,
  input: PlanInput,
  steps: readonly CutStep[],
  known: Pick<CutReport, 'steps' | 'remaining'>,
): CutReport['work'] {
  const names = {
    surface: (i: number) => {
      const step = steps[i]!;
      return step.kind === 'surface' ? `${design.seats[step.seat]!.name} ${step.part}` : '';
    },
    safe: (i: number): BeforeTrial => {
      const step = steps[i]!;
      return step.kind === 'surface' ? surfaceBeforeTrial(known, design.seats[step.seat]!.name, step.part) : 'all';
    },
    face: (i: number) => {
      const step = steps[i]!;
      return step.kind === 'face' ? input.faces![step.face]!.name : '';
    },
    on: (seat: number) => design.seats[seat]!.name,
    isStraight: (seat: number, part: Part) =>
      steps.some(
        (step) =>
          step.kind === 'surface' &&
          step.seat === seat &&
          step.part === part &&
          isMadeStraight(step.after[seat]![part]),
      ),
  };
  const done = new Set(cut.work?.done ?? []);
  // Faces come after all surfaces, so a cut's place among the steps is its place in `steps` of the report.
  return reordered(orderOfWork(steps, beforeTrial(known) === 'nothing'), cut.work?.order ?? []).map((item) => ({
    id: item.id,
    text: workText(item, names),
    basis: 'common practice' as const,
    cautions: item.cautions.map(cautionText),
    ...('step' in item && item.what !== 'face' && { step: item.step }),
    done: done.has(item.id),
  }));
}
