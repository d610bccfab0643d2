/** A lesson file that is not whole: every error with its place, and nothing half taken. */
import { expect, test } from 'vitest';
import { parseLesson, validateLesson } from '../../src/lessons/validate.ts';
import { exampleDesign, lessonOf } from './lessons.ts';

// biome-ignore lint/suspicious/noExplicitAny: damaged on purpose
type Any = Record<string, any>;
const errorsOf = (edit: (lesson: Any) => void) => {
  const lesson = structuredClone(lessonOf('tenth')) as Any;
  edit(lesson);
  const found = validateLesson(lesson, exampleDesign);
  return found.ok ? [] : found.errors;
};

test.each<[string, (lesson: Any) => void, string, RegExp]>([
  ['a formula that is none', (l) => (l.questions[0].answer.right = '1 +'), 'questions[0].answer.right', /no formula/],
  ['a hole that is none', (l) => (l.questions[1].ask = 'How {much'), 'questions[1].ask', /without the other/],
  ['a figure told as nothing known', (l) => (l.carry = '{more|miles}'), 'carry', /is told as/],
  ['a place that no design has', (l) => (l.where[0].path = 'seats[0].bush.width'), 'where[0].path', /no number/],
  [
    'a place let go that no design has',
    (l) => (l.questions[0].release[0].path = 'x'),
    'questions[0].release[0].path',
    /no number/,
  ],
  ['an example that is none', (l) => (l.design = 'nowhere.conepair.json'), 'design', /no example/],
  ['a design that is not whole', (l) => (l.design = { conepair: 1 }), 'design', /not whole/],
  ['a name with a meaning', (l) => (l.numbers[0].name = 'after'), 'numbers[0].name', /meaning of its own/],
  ['a name twice', (l) => (l.numbers[1].name = 'clear'), 'numbers', /stands twice/],
  ['bounds the wrong way', (l) => (l.numbers[0].to = 0), 'numbers[0].to', /at least/],
  ['a step of nothing', (l) => (l.numbers[0].step = 0), 'numbers[0].step', /more than 0/],
  [
    'a mistake twice',
    (l) => (l.questions[0].mistakes[1].name = l.questions[0].mistakes[0].name),
    'questions[0].mistakes',
    /stands twice/,
  ],
  ['a mistake that is right', (l) => (l.questions[0].mistakes[0].is = 'right'), 'questions', /cannot be told apart/],
  ['two things seen at once', (l) => (l.questions[0].saw.options[2].is = 'true'), 'questions', /2 are so/],
  ['numbers that are never given', (l) => l.keep.push('1 > 2'), 'questions', /is not so/],
  ['no question', (l) => (l.questions = []), 'questions', /./],
  ['something unknown', (l) => (l.colour = 'red'), '', /colour|nrecognized/],
])('%s', (_, edit, path, message) => {
  const errors = errorsOf(edit);
  expect(errors.find((error) => error.path === path)?.message ?? JSON.stringify(errors)).toMatch(message);
});

test('what is no JSON, or too long, is refused', () => {
  for (const text of ['', '{', 'x'.repeat(500_000)]) expect(parseLesson(text, exampleDesign).ok).toBe(false);
});
