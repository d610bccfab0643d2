/** What is wrong with the lesson in the making: at once its texts and formulas, and beside the screen its numbers. */
import { useEffect, useMemo, useState } from 'react';
import { drawnNumbers } from '../../../../lessons/deal.ts';
import type { Lesson } from '../../../../lessons/definition.ts';
import type { TriedSeed, Tries } from '../../../../lessons/tries.ts';
import { type LessonError, validateLesson } from '../../../../lessons/validate.ts';
import { exampleOf } from '../builtIn.ts';

/** Seeds that are tried; those of a lesson that plans or runs take seconds each. */
const TRIED = 12;
const FEW = 2;
const SLOW = /(before|after)\.(cut|run|film|odds)\b/;
const REST = 500;
const NONE: LessonError[] = [];

export interface LessonFaults {
  errors: LessonError[];
  /** null: not tried yet */
  tried: TriedSeed[] | null;
  /** it goes, and yet something in it says the opposite of something else */
  doubts: LessonError[];
}

export function useFaults(lesson: Lesson): LessonFaults {
  const errors = useMemo(() => {
    const read = validateLesson(lesson, exampleOf, false);
    return read.ok ? [] : read.errors;
  }, [lesson]);
  const [found, setFound] = useState<({ of: Lesson } & Tries) | null>(null);
  useEffect(() => {
    if (errors.length > 0) return;
    const control = new AbortController();
    const ask = async () => {
      const { job } = await import('../../../../worker/pool.ts');
      const count = SLOW.test(JSON.stringify(lesson.questions)) ? FEW : TRIED;
      const tried = await job('lessonTried', { lesson, count }, { signal: control.signal });
      if (!control.signal.aborted) setFound({ of: lesson, ...tried });
    };
    const timer = setTimeout(
      () =>
        void ask().catch((error: unknown) => {
          const fault = { message: String((error as Error).message ?? error), at: 'questions' };
          if (!control.signal.aborted) setFound({ of: lesson, seeds: [{ seed: 1, fault }], doubts: [] });
        }),
      REST,
    );
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [lesson, errors]);
  const tried = found?.of === lesson ? found.seeds : null;
  // Where no seed is given it is a fault; where some are, it is told.
  const none = tried?.every(({ fault }) => fault !== null) ? tried : null;
  const all = useMemo(() => (none ? [...errors, ...oncePerPlace(lesson, none)] : errors), [lesson, none, errors]);
  const doubts = useMemo(
    () =>
      found?.of === lesson
        ? found.doubts.map(({ path, message, seed }) => ({
            path,
            message: `${message} (${numbersSaid(lesson, seed)})`,
          }))
        : NONE,
    [found, lesson],
  );
  return { errors: all, tried, doubts };
}

/** Its question is told by its place. */
export const faultSaid = (message: string) => message.replace(/^question \d+: /, '');

/** “half = 3.5, push = 120”: what was drawn for those who get these, by the names and in the units of the fields. */
export const numbersSaid = (lesson: Lesson, seed: number): string =>
  Object.entries(drawnNumbers(lesson, seed))
    .map(([name, value]) => `${name} = ${value}`)
    .join(', ');

const oncePerPlace = (lesson: Lesson, tried: readonly TriedSeed[]): LessonError[] => {
  const places = new Map<string, string>();
  for (const { seed, fault } of tried)
    if (fault && !places.has(fault.at))
      places.set(fault.at, `${faultSaid(fault.message)} (for example with ${numbersSaid(lesson, seed)})`);
  return [...places].map(([path, message]) => ({ path, message }));
};
