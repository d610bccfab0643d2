/**
 * A lesson in the making: whole in its shape, and maybe wrong in its texts and formulas. A new one begins as a
 * small lesson that goes, so that it is changed bit by bit and seen at every step.
 */
import type { Design } from '../design/definition.ts';
import { lesson as definition, type Lesson, type Question } from './definition.ts';

/** What is wrong with a shape, and not with what is filled in. */
const SHAPE = new Set(['invalid_type', 'invalid_union', 'unrecognized_keys', 'invalid_value']);

/** Whether the editor can show it: every part is there, whatever stands in it. */
export function draftOf(raw: unknown): Lesson | null {
  const read = definition.safeParse(raw);
  if (read.success) return read.data;
  return read.error.issues.some(({ code }) => SHAPE.has(code)) ? null : (raw as Lesson);
}

/** A new question: the spindle is backed off, and a film is asked for. */
export function newQuestion(seat: string): Question {
  const film = (side: 'before' | 'after') => `${side}.fit.seats.${seat}.leastFilm`;
  return {
    ask: `The spindle is backed off by {by|fine}. By how much does the ${seat} film grow?`,
    view: { section: true, lenses: true },
    answer: {
      kind: 'number',
      label: 'It grows by',
      as: 'fine',
      right: `${film('after')} - ${film('before')}`,
      within: '0.04 * abs(right)',
    },
    release: [{ path: 'position', is: 'design.position + by' }],
    saw: {
      ask: `What did the ${seat} film do?`,
      options: [
        { text: 'It opened.', is: `${film('after')} > ${film('before')}` },
        { text: 'It did not open.', is: `${film('after')} <= ${film('before')}` },
      ],
    },
    because: 'The film grows by {right|fine}: only the part of the move that is square to the side opens it.',
    mistakes: [
      {
        name: 'all of the travel',
        is: 'by',
        says: 'You took the travel for the film.',
        cost: 'You count on {by|fine}, and there is {right|fine}.',
      },
    ],
    help: ['The film is the travel times the sine of the half angle.'],
  };
}

/** A lesson over a design, from nothing. */
export function newLesson(design: Design): Lesson {
  return {
    lesson: 1,
    title: 'A lesson of my own',
    about: 'What is learnt, in one line',
    story: ['The spindle stands in its bush.'],
    // A place the formulas can name.
    design: { ...design, position: design.position ?? 0 },
    numbers: [{ name: 'by', from: 0.005, to: 0.02, step: 0.001, as: 'fine' }],
    where: [],
    keep: [],
    questions: [newQuestion(design.seats[0]!.name)],
    carry: 'What to carry away.',
  };
}
