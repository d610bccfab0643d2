/**
 * The record of a job as a story: readings, cuts and trials, notes and photographs in the order in which they happened.
 *
 * The cuts are the backbone, in their own order: whatever was made after so many of them stands there, whenever it is
 * dated. Between two cuts it goes by day, then by stage, then by its place in the notebook; what has no day stays by
 * those written down beside it.
 */
import type { Design } from '../../design/definition.ts';
import { STAGES } from '../../design/recordDefinition.ts';

export interface Particulars {
  date?: string | undefined;
  by?: string | undefined;
  stage?: string | undefined;
  note?: string | undefined;
}

export type Entry = Particulars & {
  /** `trial`: an entry of the history of cuts */
  of: 'reading' | 'trial' | 'record';
  /** its place in its own list */
  index: number;
  /** how many entries of the history were done before it */
  after: number;
  /** dated on a day that its place among the cuts denies: the number of the trial it is at odds with */
  atOddsWith?: number;
};

/** Stages in their order; words of one's own come between what has a name and what has none. */
const rankOf = (stage: string | undefined): number => {
  if (stage === undefined) return -1;
  const known = (STAGES as readonly string[]).indexOf(stage);
  return known < 0 ? STAGES.length : known;
};

/** The day of a date, by which alone entries are put in order where one has no time of day. */
const dayOf = (date: string) => date.slice(0, 10);

/** Below 0 where the first is earlier; 0 where that cannot be told. */
export function byDate(a: string | undefined, b: string | undefined): number {
  if (a === undefined || b === undefined) return 0;
  const [first, second] = [timeOf(a), timeOf(b)];
  if (first !== null && second !== null) return Math.sign(first - second);
  return dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : 0;
}

/** Milliseconds; of a time without a zone as the clock on the wall has it, all of one shop. Null for a day alone. */
function timeOf(date: string): number | null {
  if (!date.includes('T')) return null;
  return Date.parse(/(Z|[+-]\d\d:\d\d)$/.test(date) ? date : `${date}Z`);
}

export function storyOf(design: Design): Entry[] {
  const trials = design.cut?.trials ?? [];
  const told = ({ date, by, stage, note }: Particulars): Particulars => ({ date, by, stage, note });
  const readings = (design.readings ?? []).map(
    (reading, index): Entry => ({ of: 'reading', index, after: reading.after ?? 0, ...told(reading) }),
  );
  const record = (design.record ?? []).map(
    (entry, index): Entry => ({ of: 'record', index, after: entry.after ?? 0, ...told(entry) }),
  );
  const story: Entry[] = [];
  for (let done = 0; done <= trials.length; done++) {
    for (const entry of inOrder([...readings, ...record].filter(({ after }) => after === done)))
      story.push(withOdds(entry, trials));
    if (done < trials.length) story.push({ of: 'trial', index: done, after: done, ...told(trials[done]!) });
  }
  return story;
}

/** Entries between two cuts; those without a day keep their places, as those that are equal do. */
function inOrder(entries: readonly Entry[]): Entry[] {
  const dated = entries
    .filter(({ date }) => date !== undefined)
    .sort((a, b) => byDate(a.date, b.date) || rankOf(a.stage) - rankOf(b.stage));
  let next = 0;
  const placed = entries.map((entry) => (entry.date === undefined ? entry : dated[next++]!));
  // Where no day is told at all the stage says which was first.
  return dated.length === 0 ? placed.sort((a, b) => rankOf(a.stage) - rankOf(b.stage)) : placed;
}

/** Whether its day goes with the cuts it is said to be before and after. */
function withOdds(entry: Entry, trials: readonly Particulars[]): Entry {
  const wrong = trials.findIndex((trial, k) => {
    const order = byDate(entry.date, trial.date);
    return k < entry.after ? order < 0 : order > 0;
  });
  return wrong < 0 ? entry : { ...entry, atOddsWith: wrong + 1 };
}

/** Who wrote the last entry that says so: offered for the next one. */
export const lastBy = (design: Design): string | undefined =>
  storyOf(design).findLast(({ by }) => by !== undefined)?.by;

/** The stage of the last entry made since the last cut: the next one is most likely of the same. */
export function lastStage(design: Design): string | undefined {
  const done = design.cut?.trials?.length ?? 0;
  return storyOf(design).findLast(({ of, after, stage }) => of !== 'trial' && after === done && stage !== undefined)
    ?.stage;
}
