/** Whatever the editor offers to put into a field has a value there. */
import { expect, test } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { withValue } from '../../src/design/place.ts';
import { dealOnce } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { newLesson } from '../../src/lessons/draft.ts';
import { offeredAt } from '../../src/lessons/offered.ts';
import { spoken } from '../../src/lessons/template.ts';
import { triedBy } from '../../src/lessons/tried.ts';
import { exampleDesign } from './lessons.ts';

const design = exampleDesign('correct.conepair.json')!;
const made = (): Lesson => ({
  ...newLesson(design),
  where: [{ path: 'position', is: 'design.position' }],
  keep: ['by > 0'],
});
const FORMULAS = [
  'where[0].is',
  'keep[0]',
  'questions[0].release[0].is',
  'questions[0].answer.right',
  'questions[0].answer.within',
  'questions[0].saw.options[0].is',
  'questions[0].mistakes[0].is',
];
const TEXTS = [
  'story[0]',
  'carry',
  'questions[0].ask',
  'questions[0].because',
  'questions[0].saw.ask',
  'questions[0].saw.options[1].text',
  'questions[0].mistakes[0].says',
  'questions[0].mistakes[0].cost',
  'questions[0].help[0]',
  'questions[0].cost',
];
const UNKNOWN = /there is no|is a group|no formula/;
const put = (path: string, text: string) => withValue(made() as unknown as Design, path, text) as unknown as Lesson;
const offered = (path: string) => offeredAt(made(), path).flatMap(({ values }) => values);

test.each(FORMULAS)('every value offered in %s is known there', (path) => {
  const all = offered(path);
  expect(all.length).toBeGreaterThan(20);
  for (const { name } of all) {
    const found = dealOnce(put(path, name), made().design as Design, 1);
    // Elsewhere a value may make a pair that has no film: of that the other fields say so.
    expect(found.ok || found.at !== path ? '' : found.message, name).not.toMatch(UNKNOWN);
  }
});

test.each(TEXTS)('every value offered in the text %s is known there, and told as what it is', (path) => {
  const all = offered(path);
  expect(all.map(({ name }) => name)).toContain('right');
  for (const { name } of all) {
    if (/^answer$|^tried\./.test(name)) {
      // Known once an answer is given, whatever it is.
      expect(told(path, name), `${path}: ${name}`).toMatch(/^You: \S/);
      continue;
    }
    // A text is worked out where a formula of the same question is.
    const found = dealOnce(put('questions[0].mistakes[0].is', name), made().design as Design, 1);
    expect(found.ok ? '' : found.message, `${path}: ${name}`).not.toMatch(UNKNOWN);
  }
});

/** A cost with one value in it, as it is told of an answer. */
function told(path: string, name: string): string {
  const lesson = put(path, `You: {${name}|number}`);
  const found = dealOnce(lesson, lesson.design as Design, 1);
  if (!found.ok) throw new Error(found.message);
  const [question, mine] = [lesson.questions[0]!, found.value.questions[0]!];
  const tried = triedBy(question, mine, 0.004)!;
  const text = path.endsWith('says')
    ? question.mistakes[0]!.says
    : path.includes('mistakes')
      ? question.mistakes[0]!.cost
      : question.cost!;
  const words = spoken(text, { ...mine.scope, answer: 0.004, tried: tried.report }, { system: 'metric', way: 'half' });
  return words.ok ? words.value : words.message;
}

test('what the answer makes is offered to its cost, and to nothing that stands before it', () => {
  const names = (path: string) => offered(path).map(({ name }) => name);
  for (const path of ['questions[0].cost', 'questions[0].mistakes[0].cost']) {
    expect(names(path)).toContain('answer');
    expect(names(path)).toContain('tried.fit.seats.shallow.leastFilm');
  }
  expect(names('questions[0].try[0].is')).toContain('answer');
  for (const path of ['questions[0].ask', 'questions[0].answer.right', 'questions[0].release[0].is'])
    expect(names(path).filter((name) => /^answer$|^tried/.test(name))).toEqual([]);
});

test('the tangent of the half angle can be chosen, and what is not known at a place is not offered', () => {
  const names = (path: string) => offered(path).map(({ name }) => name);
  for (const path of FORMULAS) expect(names(path)).toContain('tan(design.seats.shallow.journal.halfAngle)');
  expect(names('where[0].is').filter((name) => /before|after|^right$/.test(name))).toEqual([]);
  expect(names('questions[0].release[0].is').filter((name) => /^after|^right$/.test(name))).toEqual([]);
  expect(names('questions[0].answer.right')).not.toContain('right');
  expect(
    offered('questions[0].mistakes[0].is').find(({ name }) => name.startsWith('after.fit.seats.steep'))!.value,
  ).toBeGreaterThan(0);
});
