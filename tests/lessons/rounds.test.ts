/** From one round to the next another thing is right: of what is chosen, and of what was seen. */
import { describe, expect, test } from 'vitest';
import { type Right, rightsOf } from '../../src/lessons/apart.ts';
import { type Dealt, deal } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { seedOf } from '../../src/lessons/runner.ts';
import { said } from '../../src/lessons/sheets.ts';
import { LONG } from '../long.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

const SLOW = /(before|after)\.(cut|run|film|odds|play)\b/;
const speech = { system: 'metric', way: 'half' } as const;

/** The rounds of one time through, as the page deals them. */
function roundsOf(lesson: Lesson, seed: number, count: number): Dealt[] {
  const [gone, rounds]: [Right[], Dealt[]] = [[], []];
  for (let round = 0; round < count; round++) {
    const found = deal(lesson, seedOf(seed, round), exampleDesign, gone);
    if (!found.ok) throw new Error(found.message);
    gone.push(...rightsOf(lesson, found.value));
    rounds.push(found.value);
  }
  return rounds;
}

describe.each(LESSON_FILES)('%s', (file) => {
  const lesson = lessonOf(file);
  const kept = new Map<number, Dealt[]>();
  const twoOf = (seed: number) => {
    const two = kept.get(seed) ?? roundsOf(lesson, 37 * seed, 2);
    kept.set(seed, two);
    return two;
  };
  const seeds = LONG > 1 ? 100 : SLOW.test(JSON.stringify(lesson)) ? 2 : 30;
  // A sheet has two rounds, a first visit one more.
  test('in two rounds, and in three, no answer is right every time', { timeout: LONG * 240_000 }, () => {
    for (let seed = 1; seed <= seeds; seed++) {
      const two = twoOf(seed);
      for (const [i, { answer }] of lesson.questions.entries()) {
        const all = two.map(({ questions }) => questions[i]!);
        const seen = all.map((one) => said(one.look.options[one.saw]!, one, speech));
        const where = `seed ${37 * seed}, question ${i + 1}`;
        expect(new Set(seen).size, `${where}, seen: ${seen.join(' / ')}`).toBeGreaterThan(1);
        if (answer.kind === 'choice') expect(new Set(all.map(({ right }) => right)).size, where).toBeGreaterThan(1);
      }
    }
  });

  test('the place of what was seen changes too, and each is asked', () => {
    const rounds = Array.from({ length: Math.max(3, seeds / 10) }, (_, k) => twoOf(k + 1)).flat();
    for (const [i, { saw }] of lesson.questions.entries()) {
      const all = rounds.map(({ questions }) => questions[i]!);
      expect(new Set(all.map(({ saw: place }) => place)).size).toBeGreaterThan(1);
      expect(new Set(all.map(({ look }) => look.ask)).size).toBe(1 + (saw.other ?? []).length);
    }
  });
});
