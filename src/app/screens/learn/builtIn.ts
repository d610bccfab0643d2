/** The lessons that come with the program, and their order: files, as an instructor's own are. */
import order from '../../../../assets/lessons.json';
import type { Lesson } from '../../../lessons/definition.ts';
import { parseLesson } from '../../../lessons/validate.ts';
import { DEMOS } from '../../state/demos.ts';

const files = import.meta.glob<string>('../../../../assets/lessons/*.lesson.json', {
  query: '?raw',
  import: 'default',
});

export interface Entry {
  id: string;
  title: string;
  about: string;
}

export const ENTRIES: readonly Entry[] = order.map(({ file, title, about }) => ({ id: file, title, about }));

export const exampleOf = (file: string) => DEMOS.find((demo) => demo.file === file)?.design;

/** A lesson, its design in it, so that it stands alone. Throws where it cannot be loaded. */
export async function loadLesson(id: string): Promise<Lesson> {
  const load = files[`../../../../assets/lessons/${id}.lesson.json`];
  if (!load) throw new Error(`there is no lesson ${id}`);
  const read = parseLesson(await load(), exampleOf, false);
  if (!read.ok) throw new Error(read.errors.map(({ path, message }) => `${path}: ${message}`).join('; '));
  return withItsDesign(read.lesson);
}

export const withItsDesign = (lesson: Lesson): Lesson =>
  typeof lesson.design === 'string' ? { ...lesson, design: exampleOf(lesson.design) } : lesson;
