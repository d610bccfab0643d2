/** A slip that gives any number of a range: known all along it, and told apart from all that lies outside. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DealtQuestion } from '../../src/lessons/deal.ts';
import type { Mistake, Question } from '../../src/lessons/definition.ts';
import { recognised } from '../../src/lessons/recognise.ts';
import { confused, endsOf, slipsOf } from '../../src/lessons/slips.ts';

const mistake = (name: string, is: string, to?: string): Mistake => ({
  name,
  is,
  ...(to === undefined ? {} : { to }),
  says: 'So.',
  cost: 'So.',
});
const made = (mistakes: Mistake[], right: number, within: number) => {
  const slips = slipsOf(mistakes, { right }, right, within);
  if (!slips.ok) throw new Error(slips.message);
  return { right, within, slips: slips.value } as DealtQuestion;
};
const number = fc.double({ min: -1, max: 1, noNaN: true });

test('every number between its ends is it, either way about, and none beyond them', () => {
  fc.assert(
    fc.property(number, number, number, (a, b, answer) => {
      const question = made([mistake('pressed in', `${a.toFixed(6)}`, `${b.toFixed(6)}`)], 5, 0.1);
      const [low, high] = [a.toFixed(6), b.toFixed(6)].map((text) => Number(text) + 0).sort((x, y) => x - y) as [
        number,
        number,
      ];
      expect(endsOf(question.slips[0]!).map((end) => end + 0)).toEqual([low, high]);
      const inside = low <= answer && answer <= high;
      expect(recognised(answer, question)).toEqual(inside ? { kind: 'mistake', index: 0 } : { kind: 'other' });
    }),
    { numRuns: 300, seed: 5 },
  );
});

test('numbers by which it reaches into what is right, or into another slip, are not given', () => {
  const alike = (mistakes: Mistake[], right: number, within: number) => {
    const { slips } = made(mistakes, right, within);
    return confused([{ index: -1, value: right, within }, ...slips], { mistakes } as Question);
  };
  expect(alike([mistake('pressed in', 'right - 0.003', 'right - 2')], 0.1, 0.002)).toBeNull();
  expect(alike([mistake('pressed in', 'right - 0.001', 'right - 2')], 0.1, 0.002)).not.toBeNull();
  expect(alike([mistake('pressed in', '-0.003', '-2'), mistake('the wrong way', '-right')], 1, 0.01)).not.toBeNull();
  expect(alike([mistake('pressed in', '-0.003', '-2'), mistake('ten times', '10 * right')], 1, 0.01)).toBeNull();
});

test('of a choice there is nothing between', () => {
  expect(slipsOf([mistake('both', "'both'", '3')], {}, 'one', 0)).toMatchObject({ ok: false, at: 'mistakes[0].to' });
});
