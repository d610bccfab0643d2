/** The scale of a lesson's chart: it tells nothing before, and shows the mistake after. */
import { expect, test } from 'vitest';
import { askingEnds, openEnds } from '../../src/app/screens/learn/markScale.ts';
import { deal } from '../../src/lessons/deal.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

const curves = LESSON_FILES.flatMap((file) => {
  const lesson = lessonOf(file);
  if (/\.(cut|run|odds|film)\b/.test(JSON.stringify(lesson))) return [];
  return Array.from({ length: 20 }, (_, i) => {
    const dealt = deal(lesson, 1 + 31 * i, exampleDesign);
    return dealt.ok ? dealt.value.questions.filter(({ curve }) => curve) : [];
  }).flat();
});

test('before: the line and every slip that can be drawn have room; no film below nothing for a rounding', () => {
  expect(curves.length).toBeGreaterThan(30);
  for (const question of curves) {
    const { points } = question.curve!;
    const { low, high } = askingEnds(question.curve!, question);
    const line = Math.max(...points.map(([, up]) => up));
    expect(low).toBe(0);
    expect(high).toBeGreaterThanOrEqual(1.6 * line * (1 - 1e-9));
    for (const { value } of question.slips)
      if (Number(value) <= 20 * line && Math.abs(Number(value) / Number(question.right) - 10) > 0.01)
        expect(high).toBeGreaterThanOrEqual(Number(value) * (1 - 1e-9));
  }
});

test('after: what was answered and what is right take at least half of the height between them', () => {
  for (const question of curves)
    for (const mark of [Number(question.right), ...question.slips.map(({ value }) => Number(value))]) {
      const { low, high } = openEnds(question.curve!, mark);
      const top = Math.max(Math.abs(mark), ...question.curve!.points.map(([, up]) => up));
      expect(high).toBeGreaterThan(top);
      expect(high).toBeLessThan(2 * top);
      expect(low).toBe(mark < 0 ? -high : 0);
    }
});
