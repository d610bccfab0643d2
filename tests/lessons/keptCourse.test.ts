/** A lesson left half way: what is kept of it comes back whole, and of anything else nothing. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checksum } from '../../src/jobs/checksum.ts';
import { rightsOf } from '../../src/lessons/apart.ts';
import { deal } from '../../src/lessons/deal.ts';
import { courseOf, courseText, type Left } from '../../src/lessons/keptCourse.ts';
import { begun, SURE, stepped } from '../../src/lessons/runner.ts';
import { exampleDesign, lessonOf } from './lessons.ts';

const lesson = lessonOf('touches-first');
const found = deal(lesson, 7, exampleDesign);
if (!found.ok) throw new Error(found.message);
const dealt = found.value;

/** Any course that is not over: so many steps from its beginning, with right answers and wrong ones. */
const lefts = fc
  .record({
    visit: fc.constantFrom('first' as const, 'again' as const),
    steps: fc.array(fc.record({ sure: fc.constantFrom(...SURE), right: fc.boolean(), option: fc.nat(2) }), {
      maxLength: 18,
    }),
    seed: fc.integer({ min: 1, max: 2_000_000 }),
  })
  .map(({ visit, steps, seed }): Left => {
    let course = begun(lesson, visit);
    for (const { sure, right, option } of steps) {
      const mine = dealt.questions[course.question]!;
      const answer = right ? mine.right : (mine.slips[0]?.value ?? 12.5);
      const after =
        course.stage === 'ask'
          ? stepped(course, { do: 'commit', answer, sure }, dealt)
          : stepped(course, course.stage === 'released' ? { do: 'saw', option } : { do: 'on' }, dealt);
      if (after.done) break;
      course = after;
    }
    return { seed, course, gone: course.round > 0 ? rightsOf(lesson, dealt) : [] };
  });

test('left at any step it comes back as it was', () => {
  fc.assert(
    fc.property(lefts, (left) => {
      expect(courseOf(lesson, courseText(lesson, left, checksum), checksum)).toEqual(left);
    }),
  );
});

test('altered by a letter, cut short, or of another form of the lesson there is none', () => {
  fc.assert(
    fc.property(lefts, fc.nat(), (left, at) => {
      const text = courseText(lesson, left, checksum);
      const i = at % text.length;
      expect(courseOf(lesson, `${text.slice(0, i)}~${text.slice(i + 1)}`, checksum)).toBeNull();
      expect(courseOf(lesson, text.slice(0, i), checksum)).toBeNull();
      expect(courseOf({ ...lesson, about: 'Another.' }, text, checksum)).toBeNull();
    }),
  );
  expect(courseOf(lesson, null, checksum)).toBeNull();
});

test('a place that the lesson has not, or an answer without its stage, is not gone on with', () => {
  const course = begun(lesson, 'first');
  const read = (other: object) =>
    courseOf(lesson, courseText(lesson, { seed: 1, gone: [], course: { ...course, ...other } }, checksum), checksum);
  expect(read({})).not.toBeNull();
  for (const other of [
    { question: lesson.questions.length },
    { round: course.help.length },
    { stage: 'told' },
    { stage: 'ask', given: { answer: 1, sure: 'sure', found: { kind: 'right' }, seen: null } },
    { stage: 'told', given: { answer: 1, sure: 'sure', found: { kind: 'right' }, seen: null } },
    { done: true },
  ])
    expect(read(other), JSON.stringify(other)).toBeNull();
});
