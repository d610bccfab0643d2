/** Where one cone stops the spindle, the other is seen to stand open still, whatever the numbers: on a phone too. */
import { describe, expect, test } from 'vitest';
import { deepFor, seatsOf, timesCloser } from '../../../../src/app/screens/learn/closer.ts';
import { deal } from '../../../../src/lessons/deal.ts';
import { exampleDesign, lessonOf } from '../../../lessons/lessons.ts';

/** px: of the depth of a lens on a phone, and the least that is seen as oil between two lines of two */
const [DEEP, SEEN] = [90, 10];
const SEEDS = 100;

describe('which touches first', () => {
  const lesson = lessonOf('touches-first');
  const dealt = Array.from({ length: SEEDS }, (_, seed) => {
    const found = deal(lesson, seed + 1, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    return found.value;
  });

  test('every gap that is left is drawn as one, and none is drawn as wider than its lens', () => {
    for (const { questions } of dealt)
      for (const { from, to } of questions) {
        const deep = deepFor(from, to);
        const least = seatsOf(to).map(({ film }) => Math.min(...film.map((place) => place.film)));
        const share = Math.max(...least) / (deep / (timesCloser(seatsOf(to), deep) ?? 1));
        expect(DEEP * share).toBeGreaterThan(SEEN);
        expect(share).toBeLessThan(1);
      }
  });

  test('its numbers are not narrowed to a handful: of a hundred, more than thirty are others', () => {
    expect(new Set(dealt.map(({ numbers }) => JSON.stringify(numbers))).size).toBeGreaterThan(30);
  });
});

test('where all seats are open one scale shows them', () => {
  const found = deal(lessonOf('two-cones'), 1, exampleDesign);
  if (!found.ok) throw new Error(found.message);
  const { from, to } = found.value.questions[0]!;
  expect(timesCloser(seatsOf(to), deepFor(from, to))).toBeNull();
});
