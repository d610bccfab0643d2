/** A lesson in the making, tried with its first numbers: which are given, and what contradicts itself. */
import { type Dealt, dealOnce, designOf } from './deal.ts';
import type { Lesson } from './definition.ts';
import { type Doubt, doubtsOf } from './doubts.ts';

export interface TriedSeed {
  seed: number;
  /** null: its numbers are given; else why they are not, and where that stands in the lesson */
  fault: { message: string; at: string } | null;
}
export interface Tries {
  seeds: TriedSeed[];
  /** with the first numbers that show it */
  doubts: (Doubt & { seed: number })[];
}

/** Of the first seeds. */
export function triedLesson(lesson: Lesson, count: number): Tries {
  const design = designOf(lesson, () => undefined);
  if (!design.ok) return { seeds: [{ seed: 1, fault: { message: design.message, at: 'design' } }], doubts: [] };
  const given: Dealt[] = [];
  const seeds = Array.from({ length: count }, (_, i) => {
    const found = dealOnce(lesson, design.value, i + 1);
    if (found.ok) given.push(found.value);
    return { seed: i + 1, fault: found.ok ? null : { message: found.message, at: found.at ?? 'questions' } };
  });
  return { seeds, doubts: doubtsOf(lesson, given) };
}
