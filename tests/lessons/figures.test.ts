/** A figure has one rounding: wherever a round tells it, on the screen, on paper and among the answers. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deal } from '../../src/lessons/deal.ts';
import type { ToldAs } from '../../src/lessons/definition.ts';
import { worked } from '../../src/lessons/formula.ts';
import { answerSaid, speechIn } from '../../src/lessons/sheets.ts';
import { holesOf, spoken, told } from '../../src/lessons/template.ts';
import { fitOf } from '../../src/report/fit/fitOf.ts';
import { LONG } from '../long.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

interface Figure {
  value: number;
  text: string;
  where: string;
}
const unitOf = ({ text }: Figure) => text.replaceAll(/[\d.]/g, '');
const plain = (text: string) => text.replace('−', '').replace(/ toward the .*/, '');

describe.each(LESSON_FILES)('%s', (file) => {
  const lesson = lessonOf(file);
  const slow = /(before|after)\.(cut|run|film|odds|play)\b/.test(JSON.stringify(lesson));
  const seeds = LONG > 1 ? 100 : slow ? 3 : 30;
  const dealt = new Map<number, ReturnType<typeof deal>>();

  function figuresOf(seed: number, system: 'metric' | 'inch'): Figure[] {
    // The same round in both units.
    const found = dealt.get(seed) ?? deal(lesson, seed, exampleDesign);
    dealt.set(seed, found);
    if (!found.ok) throw new Error(found.message);
    return lesson.questions.flatMap(({ ask, onPaper = '', because, help, mistakes, view, answer }, i) => {
      const dealt = found.value.questions[i]!;
      const speech = speechIn(dealt, { system, way: 'half' });
      const notes = (view.notes ?? []).flatMap(({ text, after = '' }) => [text, after]);
      const texts = [ask, onPaper, because, dealt.look.ask, ...help, ...notes].concat(
        i === 0 ? lesson.story : [],
        mistakes.flatMap(({ says, cost }) => [says, cost]),
      );
      const figure = (value: number, text: string, where: string): Figure => ({
        value: Math.abs(value),
        text: plain(text),
        where: `${where} of question ${i + 1}`,
      });
      const holes = texts.flatMap((text) =>
        holesOf(text).flatMap(({ formula, as = 'number' }) => {
          const one = worked(formula, dealt.scope);
          if (!one.ok || typeof one.value !== 'number') return [];
          return [figure(one.value, told(one.value, as as ToldAs, speech), `{${formula}|${as}}`)];
        }),
      );
      const answers = [{ name: 'right', value: dealt.right }, ...dealt.slips].flatMap(({ value }) =>
        typeof value === 'number' && answer.kind !== 'choice'
          ? [figure(value, answerSaid(answer, value, dealt, speech), 'an answer')]
          : [],
      );
      const drawn = [dealt.from, dealt.to].flatMap((design) =>
        view.section || view.lenses
          ? fitOf(design).seats.flatMap(({ leastFilm: film }) =>
              film === null ? [] : [figure(film, told(film, 'fine', speech), 'a film drawn')],
            )
          : [],
      );
      return [...holes, ...answers, ...drawn];
    });
  }

  test.each(['metric', 'inch'] as const)('in %s units', (system) => {
    for (let seed = 1; seed <= seeds; seed++) {
      const all = figuresOf(7 * seed, system).toSorted((a, b) => a.value - b.value);
      for (const [i, one] of all.entries())
        for (let k = i + 1; k < all.length && all[k]!.value - one.value <= 1e-6 * one.value; k++)
          if (unitOf(all[k]!) === unitOf(one))
            expect(all[k]!.text, `seed ${7 * seed}: ${one.where} and ${all[k]!.where}`).toBe(one.text);
      // Of like length: a film has two decimals, what is reckoned on with one or two more; in tenths no round number.
      for (const { value, text, where } of all) {
        const decimals = /^\d+\.(\d+) (?:µm|tenths)$/.exec(text)?.[1]?.length;
        if (decimals === undefined) continue;
        const small = value < (system === 'metric' ? 0.001 : 0.00254);
        expect(decimals, `${text}, ${where}`).toBeGreaterThanOrEqual(2);
        expect(decimals, `${text}, ${where}`).toBeLessThanOrEqual(small ? 6 : system === 'metric' ? 3 : 4);
      }
    }
  });

  test('a half angle asked for or told is told to a hundredth of a degree', () => {
    const found = deal(lesson, 3, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    for (const [i, { answer }] of lesson.questions.entries())
      if (answer.kind === 'number' && answer.as === 'angle')
        for (const { value } of [{ value: found.value.questions[i]!.right }, ...found.value.questions[i]!.slips])
          expect(answerSaid(answer, value, found.value.questions[i]!, { system: 'metric', way: 'half' })).toMatch(
            /^−?\d+\.\d{1,2}°$/,
          );
  });
});

test.each(['metric', 'inch'] as const)('figures told lead to what is told of them, in %s units', (system) => {
  const text =
    '{answer|fine} {right|fine} {after.fit.leastFilm|fine} {abs(answer - right)|fine} {2 * answer|fine} {after.fit.leastFilm - right|fine}';
  const length = fc.integer({ min: 2_000, max: 400_000 }).map((one) => one / 1e7);
  fc.assert(
    fc.property(length, length, length, (answer, right, leastFilm) => {
      const found = spoken(text, { answer, right, after: { fit: { leastFilm } } }, { system, way: 'half' });
      if (!found.ok) throw new Error(found.message);
      const [a, b, film, apart, twice, left] = found.value
        .replaceAll('−', '-')
        .match(/-?[\d.]+(?= (?:µm|tenths))/g)!
        .map((figure) => Math.round(Number(figure) * 100));
      expect([apart, twice, left]).toEqual([Math.abs(a! - b!), 2 * a!, film! - b!]);
    }),
    { numRuns: 300, seed: 17 },
  );
});

test('who reckons on with more figures keeps them: one length has one rounding', () => {
  const speech = { system: 'metric', way: 'half', reckoned: [0.0032641] } as const;
  const found = spoken('{right - answer|fine}', { right: 0.0052641, answer: 0.002 }, speech);
  expect(found).toEqual({ ok: true, value: '3.264 µm' });
});
