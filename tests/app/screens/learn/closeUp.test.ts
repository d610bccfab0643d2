/** The section of every lesson, on a phone, a tablet and a desk: its seats are seen whole, and large. */
import { describe, expect, test } from 'vitest';
import { drawnAt } from '../../../../src/app/pictures/drawn.ts';
import { sectionFrame } from '../../../../src/app/pictures/sectionFrame.ts';
import { onScreen } from '../../../../src/app/pictures/sectionLayout.ts';
import { boxOf, closeUp, HIGHEST, heightFor, LOWEST } from '../../../../src/app/screens/learn/closeUp.ts';
import { deal } from '../../../../src/lessons/deal.ts';
import { metres } from '../../../../src/report/convert.ts';
import { linesOf } from '../../../../src/report/inFrame.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from '../../../lessons/lessons.ts';

/** Those that plan a cut take a second for a seed. */
const seedsOf = (file: string) => (file === 'plan-a-cut' ? [1] : [1, 14, 27, 40]);
const FACTOR = 100;
/** px: the names above */
const NAMES = 26;

const drawn = LESSON_FILES.filter((file) => lessonOf(file).questions.some(({ view }) => view.section)).flatMap((file) =>
  seedsOf(file).flatMap((seed) => {
    const dealt = deal(lessonOf(file), seed, exampleDesign);
    if (!dealt.ok) throw new Error(dealt.message);
    return dealt.value.questions
      .filter((_, i) => lessonOf(file).questions[i]!.view.section)
      .map(({ from, to }, i) => ({
        is: `${file}, seed ${seed}, ${i + 1}`,
        both: [from, to].map((design) => drawnAt(linesOf(design), metres(design.position ?? 0), FACTOR)),
      }));
  }),
);

describe.each([356, 770, 690])('%i px wide', (width) => {
  test.each(drawn)('$is', ({ both }) => {
    const box = boxOf(both);
    const size = { width, height: heightFor(box, width) };
    expect(size.height).toBeGreaterThanOrEqual(LOWEST);
    expect(size.height).toBeLessThanOrEqual(HIGHEST);
    const places = both.flatMap((one) => {
      const at = closeUp(box, sectionFrame(one), size);
      expect(at.notesEnd).toBeLessThan(size.height / 4);
      return one.seats.flatMap(({ bush, film }) =>
        [...bush, ...film.flatMap((place) => [place.bush, place.journal])].map((point) => onScreen(at, point, 1)),
      );
    });
    const [x, y] = [places.map((place) => place.x), places.map((place) => place.y)];
    // Below the names, above the foot, and nothing of a face beside the picture.
    expect(Math.min(...x)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...x)).toBeLessThanOrEqual(width);
    expect(Math.min(...y)).toBeGreaterThanOrEqual(NAMES);
    expect(Math.max(...y)).toBeLessThanOrEqual(size.height);
    // The faces take most of the width, or all of the height there is.
    const [wide, high] = [Math.max(...x) - Math.min(...x), Math.max(...y) - Math.min(...y)];
    expect(wide).toBeGreaterThan(180);
    expect(wide > 0.6 * width || high > 0.4 * size.height, `${wide} × ${high} of ${width} × ${size.height}`).toBe(true);
  });
});
