import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wrapped } from '../../../src/app/takeAlong/framed.ts';

const measured = (text: string, size: number) => 0.55 * size * text.length;
const word = fc.stringMatching(/^[a-zµ×0-9]{1,12}$/);
test('a caption is broken between words, keeps them all, and no line begins with the dot between two parts', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(word, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 40, max: 400 }),
      (parts, room) => {
        const text = parts.map((words) => words.join(' ')).join(' · ');
        const lines = wrapped(text, 13, room, 400, measured);
        expect(lines.join(' ')).toBe(text);
        for (const line of lines) {
          expect(line.startsWith('·')).toBe(false);
          if (line.replace(/ ·$/, '').includes(' ')) expect(measured(line, 13)).toBeLessThanOrEqual(room);
        }
      },
    ),
    { numRuns: 300, seed: 8 },
  );
});
