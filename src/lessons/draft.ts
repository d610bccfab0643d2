/**
 * A lesson in the making: whole in its shape, and maybe wrong in its texts and formulas. A new one begins as a
 * small lesson that goes, so that it is changed bit by bit and seen at every step.
 */
import type { Design } from '../design/definition.ts';
import { fitOf } from '../report/fit/fitOf.ts';
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
    try: [{ path: 'position', is: `design.position + answer / before.fit.seats.${seat}.sensitivity` }],
    cost: 'You count on {answer|fine}, and it grows by {right|fine}. For yours the spindle has to go {tried.fit.position - before.fit.position|fine}, not {by|fine}.',
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
        cost: 'The film is thinner than you count on, and it may run dry.',
      },
    ],
    help: ['The film is the travel times the sine of the half angle.'],
  };
}

/** Whether metal stands in metal, as a job may be left while it is looked into. */
export const pressedIn = (design: Design): boolean =>
  fitOf(design).seats.some(({ leastFilm }) => leastFilm !== null && leastFilm < -1e-9);

/** With a place that formulas can name; a spindle that was left pressed in stands where it first touches. */
export function standingFree(design: Design): Design {
  const { firstPosition } = fitOf(design);
  return { ...design, position: pressedIn(design) ? (firstPosition ?? 0) : (design.position ?? 0) };
}

/** A lesson over a design, from nothing. */
export function newLesson(design: Design): Lesson {
  return {
    lesson: 1,
    title: 'A lesson of my own',
    about: 'What is learnt, in one line',
    story: ['The spindle stands in its bush.'],
    design: standingFree(design),
    numbers: [{ name: 'by', from: 0.005, to: 0.02, step: 0.001, as: 'fine' }],
    where: [],
    keep: [],
    questions: [newQuestion(design.seats[0]!.name)],
    carry: 'What to carry away.',
  };
}

/** A formula, or a text, that would do at a place: shown where what stands there is none. */
export function exampleAt(lesson: Lesson, path: string): string {
  const seat = (lesson.design as Partial<Design>).seats?.[0]?.name ?? 'shallow';
  const film = (side: string) => `${side}.fit.seats${/^[A-Za-z_]\w*$/.test(seat) ? `.${seat}` : '[0]'}.leastFilm`;
  const by = lesson.numbers[0]?.name ?? 'by';
  const question = lesson.questions[Number(/^questions\[(\d+)\]/.exec(path)?.[1] ?? 0)];
  const formulas: readonly (readonly [RegExp, string])[] = [
    [/mistakes\[\d+\]\.(is|to)$/, '2 * right'],
    [/mistakes\[\d+\]\.when$/, `${by} > 0.005`],
    [/saw\.options\[\d+\]\.is$/, `${film('after')} > ${film('before')}`],
    [/try\[\d+\]\.is$/, 'design.position + answer'],
    [/(release|set|where)\[\d+\]\.is$/, `design.position + ${by}`],
    [/answer\.right$/, question?.answer.kind === 'choice' ? "'more'" : `${film('after')} - ${film('before')}`],
    [/answer\.within$/, '0.04 * abs(right)'],
    [/^keep\[/, `${by} > 0.005`],
    [/chart\.up$/, film('now')],
    [/chart\.(from|to|at)$/, '0'],
    [/chart\.times$/, '1'],
    [/\.angle$/, `design.seats[0].journal.halfAngle`],
    [/\.travel$/, by],
    [/layer\.(from|to)$/, film(path.endsWith('from') ? 'before' : 'after')],
    [/\.sd$/, '0.001'],
  ];
  if (/questions\[\d+\]\.cost$/.test(path)) return 'You count on {answer|fine}, and there is {right|fine}.';
  return formulas.find(([ends]) => ends.test(path))?.[1] ?? `The film grows by {${film('after')}|fine}.`;
}
