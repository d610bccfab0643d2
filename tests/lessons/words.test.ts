/** The words of the lessons: easy to read, by a published formula, and every trade word explained. */
import readability from 'text-readability';
import { describe, expect, test } from 'vitest';
import { entryOf } from '../../src/app/glossary/find.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { LESSON_FILES, lessonOf } from './lessons.ts';

/** All that a lesson tells, a figure for every hole in it. */
function textsOf(lesson: Lesson): string[] {
  const all = [
    ...lesson.story,
    lesson.carry,
    lesson.caution ?? '',
    ...lesson.questions.flatMap(({ ask, because, cost = '', view, saw, help, mistakes, answer }) => [
      ask,
      because,
      cost,
      ...(view.notes ?? []).flatMap(({ text, after = '' }) => [text, after]),
      saw.ask,
      ...saw.options.map(({ text }) => text),
      ...help,
      ...mistakes.flatMap(({ says, cost }) => [says, cost]),
      ...(answer.kind === 'choice' ? answer.options.map(({ text }) => text) : []),
    ]),
  ];
  return all.filter((text) => text !== '').map((text) => text.replaceAll(/\{[^{}]*\}/g, '5'));
}

/**
 * Years of school that a text asks for: 0.39·words/sentences + 11.8·syllables/words − 15.59.
 * @source KincaidFishburne
 */
const gradeOf = (texts: readonly string[]) => readability.fleschKincaidGrade(texts.join(' '));

/** A first-year apprentice has nine or ten behind him; for many the language is not their own. */
const MOST_YEARS = 6;

test('the formula tells an easy text from a hard one', () => {
  expect(gradeOf(['The cat sat on the mat. It was warm. It slept.'])).toBeLessThan(2);
  expect(
    gradeOf([
      'The simultaneous determination of interdependent geometrical parameters necessitates statistical consideration.',
    ]),
  ).toBeGreaterThan(15);
});

describe.each(LESSON_FILES)('%s', (file) => {
  const texts = textsOf(lessonOf(file));

  test(`asks for no more than ${MOST_YEARS} years of school`, () => {
    expect(gradeOf(texts)).toBeLessThanOrEqual(MOST_YEARS);
  });

  test('has no sentence of more than 30 words', () => {
    const long = texts.flatMap((text) =>
      text.split(/(?<=[.?!:])\s+/).filter((sentence) => sentence.split(/\s+/).length > 30),
    );
    expect(long).toEqual([]);
  });

  test('every trade word in it is in the glossary', () => {
    const said = texts.join(' ').toLowerCase();
    const found = TRADE.filter((word) => new RegExp(`(?<![\\p{L}-])${word}(?![\\p{L}-])`, 'u').test(said));
    expect(found.length).toBeGreaterThan(2);
    expect(found.filter((word) => !entryOf(word))).toEqual([]);
  });
});

const TRADE = [
  ...['spindle', 'bush', 'journal', 'cone', 'nose', 'bore', 'film', 'half angle', 'adjuster', 'steep', 'shallow'],
  ...[
    'station',
    'marking blue',
    'blue',
    'friction',
    'cross slide',
    'cross feed',
    'dial',
    'micrometer',
    'rolls',
    'load',
    'end play',
  ],
  ...['tolerance', 'seizes', 'gauge', 'trial', 'stock', 'taper', 'micrometre', 'position', 'sine bar'],
];
