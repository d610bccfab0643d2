/** What is right is of the state that a question speaks of, and the picture of the reveal shows that state. */
import { describe, expect, test } from 'vitest';
import { ASKED_NAMES, asking } from '../../src/lessons/asked.ts';
import { type DealtQuestion, deal } from '../../src/lessons/deal.ts';
import type { Lesson, Question } from '../../src/lessons/definition.ts';
import { worked } from '../../src/lessons/formula.ts';
import { holesOf } from '../../src/lessons/template.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

/**
 * Questions whose reveal goes on from the state that was asked about, and the words, told as it moves, that say so. Of
 * all others, what is right is still so in the picture.
 */
const GOES_ON: Record<string, string> = {
  'real-pair 2': 'A part of it was cut, to be safe: {dial|share} of it was set',
  'real-pair 3': 'The rest was cut, and the spindle was set to run.',
  'wedge 2': 'The cone in the picture now leans a little more than that.',
};
/** A move from one state to the other, or metal between them: it is of both. */
const OF_BOTH = ['plan-a-cut 1', 'plan-a-cut 2', 'no-copy 2', 'one-cone 2'];

/** mm, as lessons write it. */
const TENTH = '0.00254';

const all = LESSON_FILES.flatMap((file) =>
  lessonOf(file).questions.map((question, i) => ({
    file,
    lesson: lessonOf(file),
    question,
    i,
    is: `${file} ${i + 1}`,
  })),
);
const dealtOf = (lesson: Lesson, i: number): DealtQuestion & { numbers: Record<string, number> } => {
  const found = deal(lesson, 3, exampleDesign);
  if (!found.ok) throw new Error(found.message);
  return { ...found.value.questions[i]!, numbers: found.value.numbers };
};

describe.each(all)('$is', ({ lesson, question, i, is }) => {
  test('nothing is let go, or set, by a figure that the question does not tell', () => {
    const told = [question.ask, question.saw.ask, ...(i === 0 ? lesson.story : [])].flatMap((text) =>
      holesOf(text).map(({ formula }) => formula),
    );
    for (const { is: formula } of [...(question.set ?? []), ...question.release])
      for (const [figure] of formula.replaceAll(/\[\d+\]/g, '').matchAll(/\d+\.\d+/g))
        expect(
          GOES_ON[is] !== undefined || told.includes(figure) || figure === TENTH,
          `${figure} of “${formula}” is nowhere told`,
        ).toBe(true);
  });

  test('the picture of the reveal shows the state that was asked about, or says that it goes on', () => {
    const goesOn = GOES_ON[is];
    if (goesOn) return expect(question.saw.ask).toContain(goesOn);
    if (OF_BOTH.includes(is) || question.answer.kind === 'choice') return;
    if (!readsBefore(question)) return;
    const { right, scope, to, numbers, within } = dealtOf(lesson, i);
    // Read once more, with what stands in the picture now in the place of what stood there.
    const now = asking()(
      to,
      ASKED_NAMES.filter((name) => new RegExp(`before\\.${name}\\b`).test(question.answer.right)),
    );
    const again = worked(question.answer.right, { ...scope, ...numbers, design: to, before: now });
    expect(again.ok && Math.abs(Number(again.value) - Number(right)) <= within / 20, `${JSON.stringify(again)}`).toBe(
      true,
    );
  });
});

/** By what stood before alone. */
const readsBefore = ({ answer }: Question) => /before\./.test(answer.right) && !/after\./.test(answer.right);

test('the other cone of “Which touches first?” stands off by the sine of the travel that is left to it', () => {
  const lesson = lessonOf('touches-first');
  for (const seed of [1, 2, 3, 40]) {
    const dealt = deal(lesson, seed, exampleDesign);
    if (!dealt.ok) throw new Error(dealt.message);
    const { shallow, steep, gapShallow, gapSteep } = dealt.value.numbers as Record<string, number>;
    const rad = (degrees: number) => (degrees * Math.PI) / 180;
    const [one, two] = [gapShallow! / 2 / Math.tan(rad(shallow!)), gapSteep! / 2 / Math.tan(rad(steep!))];
    const other = one < two ? steep! : shallow!;
    expect(Number(dealt.value.questions[1]!.right)).toBeCloseTo(Math.abs(one - two) * Math.sin(rad(other)), 6);
  }
});
