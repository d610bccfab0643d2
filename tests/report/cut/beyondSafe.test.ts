/** Metal beyond what was told to be safe is remarked on, by what was told before it came off. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { numbersUnder, withAssumed } from '../../../src/design/assumed.ts';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { beyondSafeText, withToldSafe } from '../../../src/report/cut/beyondSafe.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { cutSection } from '../../../src/report/cut/section.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('demo');
// Known well enough for a part of the plan to be safe.
const design = { ...read.design, cut: { ...read.design.cut!, doubt: 0.002 } };
const cut = cutSection(design)!;
const [step] = cut.steps as [CutReport['steps'][number]];
const off = (normal: number) => ({ taken: [{ seat: step.seat, part: step.part, normal }] });
const said = (normal: number, told: CutReport = cut, of: Design = design) =>
  beyondSafeText(withToldSafe(of, told, off(normal)), 'metric');

test('what was told stands with the entry, and no more than that is no word', () => {
  expect(step.safe!).toBeGreaterThan(0.01);
  expect(step.safe!).toBeLessThan(step.normal);
  const written = withToldSafe(design, cut, off(0.005));
  expect(written.taken![0]!.safe).toBeCloseTo(step.safe!, 7);
  expect(validateDesign({ ...design, cut: { ...design.cut, trials: [written] } }).ok).toBe(true);
  expect(said(step.safe!)).toBeNull();
  expect(said(step.safe! + 0.001)).toBe(
    `Beyond what was told to be safe: ${(1000 * (step.safe! + 0.001)).toFixed(2)} µm off the ${step.seat} ${step.part}, where ${(1000 * step.safe!).toFixed(2)} µm was safe.`,
  );
});

test('nothing is safe of what no plan cuts, of parts nobody measured, and while readings tell otherwise', () => {
  const where = /5\.00 µm off the .*, where nothing was safe\.$/;
  const shallow = { taken: [{ seat: 'shallow', part: 'journal' as const, normal: 0.005 }] };
  expect(beyondSafeText(withToldSafe(design, cut, shallow), 'metric')).toMatch(where);
  const guessed = withAssumed(design, numbersUnder(design, 'seats[0].bush'));
  expect(said(0.005, cut, guessed)).toMatch(where);
  expect(said(0.005, { ...cut, notAsRead: 'contradict' })).toMatch(where);
});

test('after a trial it is what that left; an entry of which nothing was told says nothing', () => {
  const remaining = {
    ...cutSection({ ...design, cut: { ...design.cut, trials: [{ standOff: { value: 0.05, sigma: 0.001 } }] } })!
      .remaining!,
    steps: [],
    faces: [{ name: 'the shoulder', off: 0.01, sigma: 0.001, safe: 0.004, doubted: 'steep' }],
  };
  const told = { ...cut, remaining };
  expect(said(0.001, told)).toMatch(/nothing was safe/);
  const face = (metal: number) =>
    beyondSafeText(withToldSafe(design, told, { faces: [{ name: 'the shoulder', off: metal }] }), 'metric');
  expect(face(0.004)).toBeNull();
  expect(face(0.006)).toBe('Beyond what was told to be safe: 6.00 µm off the shoulder, where 4.00 µm was safe.');
  expect(face(-0.006)).toMatch(/nothing was safe/);
  expect(beyondSafeText(off(0.5), 'metric')).toBeNull();
  expect(
    beyondSafeText(
      withToldSafe(design, { ...cut, remaining: undefined }, { faces: [{ name: 'x', off: 1 }] }),
      'metric',
    ),
  ).toBeNull();
});
