/** The built-in lessons and the examples they may stand on, as files. */
import { existsSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { parseLesson } from '../../src/lessons/validate.ts';

const at = (name: string) => new URL(`../../assets/${name}`, import.meta.url);
const read = (name: string) => readFileSync(at(name), 'utf8');

export function exampleDesign(file: string): Design | undefined {
  if (!/^[a-z-]+\.conepair\.json$/.test(file) || !existsSync(at(`designs/${file}`))) return undefined;
  const found = parseDesign(read(`designs/${file}`));
  return found.ok ? found.design : undefined;
}

export const LESSON_FILES = (JSON.parse(read('lessons.json')) as { file: string }[]).map(({ file }) => file);

export function lessonOf(file: string): Lesson {
  // Whether its numbers go together is tried where it is dealt.
  const found = parseLesson(read(`lessons/${file}.lesson.json`), exampleDesign, false);
  if (!found.ok)
    throw new Error(`${file}: ${found.errors.map(({ path, message }) => `${path}: ${message}`).join('; ')}`);
  return found.lesson;
}
