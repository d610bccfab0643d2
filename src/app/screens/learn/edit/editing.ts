/** What every field of the editor is handed: the lesson in the making, how it is changed, and what is wrong with it. */
import { createContext, useContext } from 'react';
import type { Design } from '../../../../design/definition.ts';
import { valueAt, withValue } from '../../../../design/place.ts';
import type { Lesson } from '../../../../lessons/definition.ts';
import type { Speech } from '../../../../lessons/template.ts';

export interface Editing {
  lesson: Lesson;
  set(path: string, value: unknown): void;
  /** what is wrong at a place, and within it where it has no field of its own */
  faults(path: string): string[];
  /** what goes, and says the opposite of something else, at a place */
  doubts(path: string): string[];
  /** which of the first sets of numbers are not given for what stands at a place */
  notGiven(path: string): string[];
  speech: Speech;
  /** places of the design at which a number stands, and their words */
  places: [path: string, words: string][];
}

const Context = createContext<Editing | null>(null);
export const EditingProvider = Context.Provider;
export function useEditing(): Editing {
  const found = useContext(Context);
  if (!found) throw new Error('a field of the editor stands outside it');
  return found;
}

// Paths of a lesson are those of a design: keys and places in lists.
export const at = (lesson: Lesson, path: string): unknown => valueAt(lesson as unknown as Design, path);
export const changed = (lesson: Lesson, path: string, value: unknown): Lesson =>
  withValue(lesson as unknown as Design, path, value) as unknown as Lesson;
