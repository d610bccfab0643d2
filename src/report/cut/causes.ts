/** What may be behind trials that do not go together, each with its odds, in the names and units of the report. */
import type { Design } from '../../design/definition.ts';
import { causesOf, type TrialCause } from '../../engine/cutting/causes.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';
import { doubtOf } from './doubt.ts';
import { closedCount } from './openTrials.ts';
import { type Cut, orNull, toPlanInput, toTrials } from './toCut.ts';

export type CauseReport = NonNullable<CutReport['causes']>[number];

/** The most likely first; none where all goes together, and where nothing told would explain it. */
export function causesSection(design: Design, cut: Cut): CauseReport[] {
  const trials = toTrials(design, cut);
  const causes = causesOf({ input: toPlanInput(design, cut), trials, before: doubtOf(design).before });
  const number = (trial: number) => closedCount(cut) + trial + 1;
  return causes.map(({ doubted, chance, likely, enough }: TrialCause): CauseReport => {
    const told = { chance, likely: orNull(likely), enough: orNull(enough) };
    const slip = slipOf(design, doubted);
    if ('what' in doubted) return { what: doubted.what, trial: number(doubted.trial), ...slip, ...told };
    if (doubted.of === 'parts') return { what: 'parts', ...told };
    const { taken, faces = [] } = trials[doubted.trial]!;
    if (doubted.of === 'taken') {
      const { seat, part, normal } = taken[doubted.place]!;
      return {
        what: 'taken',
        trial: number(doubted.trial),
        seat: design.seats[seat]!.name,
        part,
        told: millimetres(normal),
        ...slip,
        ...told,
      };
    }
    const { face, off } = faces[doubted.place]!;
    return {
      what: 'faces',
      trial: number(doubted.trial),
      face: cut.faces![face]!.name,
      told: millimetres(off),
      ...slip,
      ...told,
    };
  });
}

/** Which slip of the hand it is; nothing where it is none of those. */
function slipOf({ seats }: Design, doubted: TrialCause['doubted']): Pick<CauseReport, 'slip' | 'times' | 'seat'> {
  if (!('kind' in doubted)) return {};
  return doubted.kind === 'seat'
    ? { slip: 'seat', seat: seats[doubted.seat]!.name }
    : { slip: doubted.kind, times: doubted.times };
}
