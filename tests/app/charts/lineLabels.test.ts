/** Names on a line chart: whatever is drawn, they stand on the plot, clear of each other and of each other's lines. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { namesOn } from '../../../src/app/charts/lineLabels.ts';

const plot = { left: 52, right: 404, top: 26, bottom: 186 };
const width = (text: string) => 7 * text.length;
const named = (text: string) => fc.double({ min: plot.left, max: plot.right, noNaN: true }).map((at) => ({ at, text }));
const curve = fc
  .array(fc.double({ min: plot.top, max: plot.bottom, noNaN: true }), { minLength: 2, maxLength: 12 })
  .map((ys) => ys.map((y, i) => [plot.left + (i * (plot.right - plot.left)) / (ys.length - 1), y] as const));

const boxOf = ({ text, x, y, anchor }: { text: string; x: number; y: number; anchor: 'start' | 'end' }) => ({
  left: anchor === 'start' ? x : x - width(text),
  right: anchor === 'start' ? x + width(text) : x,
  top: y - 13,
  bottom: y,
});

test('two upright lines, a level and curves', () => {
  fc.assert(
    fc.property(
      named('aim: 1.84 tenths'),
      named('now'),
      fc.double({ min: 60, max: 150, noNaN: true }),
      fc.array(curve, { maxLength: 3 }),
      (mark, now, at, curves) => {
        const level = { at, text: 'parts the surfaces' };
        const names = namesOn({ plot, curves, level, upright: [mark, now], width });
        const [a, b] = names.upright.map(boxOf) as [ReturnType<typeof boxOf>, ReturnType<typeof boxOf>];
        for (const box of [a, b, boxOf(names.level!)]) {
          expect(box.left).toBeGreaterThanOrEqual(plot.left);
          expect(box.right).toBeLessThanOrEqual(plot.right);
        }
        expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
        // Only between two lines that leave no room on either side does a name lie over the other's line.
        const free = (own: number, other: number, text: string) =>
          [own + 5, own - 5 - width(text)].some(
            (left) =>
              left >= plot.left &&
              left + width(text) <= plot.right &&
              !(other > left - 2 && other < left + width(text) + 2),
          );
        if (free(mark.at, now.at, mark.text)) expect(now.at > a.left && now.at < a.right).toBe(false);
      },
    ),
  );
});

test('a level’s name leaves the place where a curve crosses it', () => {
  const rising = [
    [plot.left, 180],
    [250, 120],
    [300, 100],
    [plot.right, 30],
  ] as const;
  const { level } = namesOn({ plot, curves: [rising], level: { at: 70, text: 'parts' }, upright: [], width });
  expect(level!.anchor).toBe('start');
  const flat = namesOn({ plot, curves: [], level: { at: 70, text: 'parts' }, upright: [], width });
  expect(flat.level).toMatchObject({ anchor: 'end', y: 65 });
});
