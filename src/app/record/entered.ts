/** When an entry was made, by whom, at what stage: what is offered for the next one, and changes of it. */
import type { Design } from '../../design/definition.ts';
import { lastBy, lastStage, type Particulars } from '../../report/record/story.ts';

/** The day of a clock, as the wall has it. */
export function dayText(now: Date): string {
  const two = (number: number) => `${number}`.padStart(2, '0');
  return `${`${now.getFullYear()}`.padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Only what is told. */
export function bare({ date, by, stage, note }: Particulars): Particulars {
  return {
    ...(date && { date }),
    ...(by && { by }),
    ...(stage && { stage }),
    ...(note && { note }),
  };
}

/** Offered for an entry that is made now: today, the last one's hand, and the stage that the work is at. */
export const offered = (design: Design, now = new Date()): Particulars =>
  bare({ date: dayText(now), by: lastBy(design), stage: lastStage(design) });

/** For an entry of the history of cuts, whose stage is that of the last cut. */
export const offeredForCut = (design: Design, now = new Date()): Particulars =>
  bare({ ...offered(design, now), stage: design.cut?.trials?.at(-1)?.stage });

/** Whatever else an entry holds, with this told of it. */
export function withTold<E extends Particulars>(entry: E, told: Particulars): E {
  const { date: _, by: __, stage: ___, note: ____, ...rest } = entry;
  return { ...rest, ...bare(told) } as E;
}
