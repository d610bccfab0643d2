/**
 * What was learnt when, and what comes back: after a day, three days, a week. Kept as one text with its checksum; what
 * cannot be read is set aside whole, and said.
 *
 * Spaced questions hold better than a heap of them; whether the spaces grow or stay even makes no difference found.
 * @source LatimierSpacing
 */
import * as z from 'zod/mini';

/** Days from one visit to the next; after the last it is done. */
export const AFTER = [1, 3, 7] as const;

const count = z.int().check(z.gte(0), z.lte(100_000));
const kept = z.strictObject({
  version: z.literal(1),
  lessons: z.record(
    z.string().check(z.maxLength(120)),
    z.strictObject({
      /** visits that went well, of those that were due */
      stage: count,
      /** days since 1970 on which it was last done, and comes back; null: no more */
      last: count,
      due: z.nullable(count),
      /** of the last round of the last visit */
      right: count,
      of: count,
      visits: count,
    }),
  ),
});
export type Progress = z.infer<typeof kept>;
export type Learnt = Progress['lessons'][string];

export const NONE: Progress = { version: 1, lessons: {} };

/** Days since 1970 by the clock of the place: a day begins at its own midnight. */
export const dayOf = (now: Date): number => Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / 86_400_000);

/** A visit that is over. All right: the next space; else again tomorrow. Practised before it is due, nothing moves. */
export function visited(
  progress: Progress,
  id: string,
  { right, of }: { right: number; of: number },
  day: number,
): Progress {
  const before = progress.lessons[id];
  const early = before !== undefined && before.due !== null && day < before.due && right === of;
  const stage = early ? before.stage : right === of ? (before?.stage ?? 0) + 1 : 0;
  const due = early ? before.due : stage > AFTER.length ? null : day + AFTER[Math.max(0, stage - 1)]!;
  const learnt: Learnt = { stage, last: day, due, right, of, visits: (before?.visits ?? 0) + 1 };
  return { ...progress, lessons: { ...progress.lessons, [id]: learnt } };
}

/** `begun`: something of it was answered, and it was not gone through yet */
export type Standing = 'new' | 'begun' | 'due' | 'waits' | 'done';

export function standing(learnt: Learnt | undefined, day: number, begun = false): { is: Standing; days: number } {
  if (!learnt) return { is: begun ? 'begun' : 'new', days: 0 };
  if (learnt.due === null) return { is: 'done', days: 0 };
  return learnt.due <= day ? { is: 'due', days: 0 } : { is: 'waits', days: learnt.due - day };
}

export type Storing = Pick<Storage, 'getItem' | 'setItem'>;
const KEY = 'conepair.learnt';
export const ASIDE = 'conepair.learnt.aside';

export interface ProgressRead {
  progress: Progress;
  /** what was there could not be read, and lies aside */
  damaged: boolean;
}

/** `sum`: of a text, so that one altered by half is known (jobs/checksum.ts). */
export function readProgress(storage: Storing, sum: (text: string) => number): ProgressRead {
  const found = storage.getItem(KEY);
  if (found === null) return { progress: NONE, damaged: false };
  const cut = found.indexOf(' ');
  const text = found.slice(cut + 1);
  const read = Number(found.slice(0, cut)) === sum(text) ? kept.safeParse(parsed(text)) : null;
  if (read?.success) return { progress: read.data, damaged: false };
  storage.setItem(ASIDE, found);
  return { progress: NONE, damaged: true };
}

export function writeProgress(storage: Storing, progress: Progress, sum: (text: string) => number): void {
  const text = JSON.stringify(progress);
  storage.setItem(KEY, `${sum(text)} ${text}`);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Lessons that were begun and not gone through, a line each: beside the record, whose form stays as it is. */
const BEGUN = 'conepair.lessonsBegun';
const MOST_BEGUN = 200;
/** One that only a link carries is none of this device. */
const LESSON_ID = /^[a-z0-9-]{1,120}$/;
export const readBegun = (storage: Storing): string[] =>
  (storage.getItem(BEGUN) ?? '').split('\n').filter((id) => LESSON_ID.test(id));

export function writeBegun(storage: Storing, id: string, is: boolean): string[] {
  const others = readBegun(storage).filter((one) => one !== id);
  const all = is && LESSON_ID.test(id) ? [...others, id].slice(-MOST_BEGUN) : others;
  storage.setItem(BEGUN, all.join('\n'));
  return all;
}
