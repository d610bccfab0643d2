/** The tools of a metric and an inch shop where the design names none. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { quantityAt } from '../../../src/design/place.ts';
import { hintText } from '../../../src/design/quantity.ts';
import { USUAL_LIMIT, USUAL_MACHINE } from '../../../src/design/usualMachine.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { toAngleTools, toMachine } from '../../../src/report/cut/toCut.ts';
import { withShopTools } from '../../../src/report/cut/usualMachine.ts';
import { solve } from '../../../src/report/report.ts';
import { notebookDemo } from '../measure/notebooks.ts';

const design: Design = notebookDemo((d) => ({
  ...d,
  // off its angle by enough to be worth a cut
  seats: d.seats.map((seat) =>
    seat.name === 'steep' ? { ...seat, journal: { ...seat.journal, diameter: seat.journal.diameter + 0.02 } } : seat,
  ),
  cut: {
    allow: [
      { seat: 'shallow', part: 'journal' },
      { seat: 'steep', part: 'journal' },
    ],
  },
}));

test('what the file leaves out is metric', () => {
  const tools = toAngleTools(design.cut!);
  expect(tools).toMatchObject({ bar: 0.1, blocks: { name: 'M112' }, travel: 0.025 });
  expect(withShopTools(design, 'metric')).toBe(design);
  const { cut: _, ...without } = design;
  expect(withShopTools(without, 'inch')).toBe(without);
});

describe('an inch shop', () => {
  const inch = withShopTools(design, 'inch');

  test('sets angles with a 5 in bar on the 81 blocks, by dials of inches', () => {
    expect(validateDesign(inch).ok).toBe(true);
    const tools = toAngleTools(inch.cut!);
    expect(tools.bar).toBeCloseTo(5 * 0.0254, 12);
    expect(tools.blocks).toMatchObject({ name: '81', system: 'inch' });
    expect(tools.indicator).toBeCloseTo(0.0001 * 0.0254, 12);
    const { division, axialDivision } = toMachine(inch.cut!);
    for (const size of [division, axialDivision])
      expect([0.001, 0.0005, 0.0001].some((of) => Math.abs(size / 0.0254 - of) < 1e-9)).toBe(true);
  });

  test('the plan is made of inch blocks', () => {
    const stacks = cutSection(inch)!.settings.flatMap(({ blocks }) => (blocks ? [blocks] : []));
    expect(stacks.length).toBeGreaterThan(0);
    for (const block of stacks.flat())
      expect(Math.abs((block / 25.4) * 1e4 - Math.round((block / 25.4) * 1e4))).toBeLessThan(1e-6);
  });

  test('a limit left out is four thou, and no less than the cleanup; one that is named stays', () => {
    const allow = [
      { seat: 'shallow', part: 'journal' as const },
      { seat: 'steep', part: 'journal' as const, cleanup: 0.3 },
      { seat: 'steep', part: 'bush' as const, limit: 0.05 },
    ];
    const face = { name: 'spacer', part: 'bush' as const, seats: ['steep'], moves: 'noseward' as const };
    const { cut } = withShopTools({ ...design, cut: { allow, faces: [face] } }, 'inch');
    expect(cut!.allow.map(({ limit }) => Number(limit!.toFixed(9)))).toEqual([0.1016, 0.3, 0.05]);
    expect(cut!.faces![0]!.limit).toBeCloseTo(0.1016, 9);
    // As the field says it.
    expect(hintText(quantityAt('cut.allow[0].limit'), 'inch', USUAL_LIMIT.inch)).toMatch(/; 40 tenths, or the cleanup/);
    expect(hintText(quantityAt('cut.allow[0].limit'), 'metric', USUAL_LIMIT.metric)).toMatch(/; 100 µm, or the/);
    expect(quantityAt('cut.allow[0].limit').default).toBe(USUAL_LIMIT.metric);
  });

  test('what the design names stays, and so does the file', () => {
    const own = { ...design, cut: { ...design.cut!, machine: { bar: 200, blocks: 'M87' } } };
    expect(withShopTools(own, 'inch').cut!.machine).toMatchObject({ bar: 200, blocks: 'M87', travel: 25.4 });
    expect(own.cut.machine).toEqual({ bar: 200, blocks: 'M87' });
    expect(USUAL_MACHINE.metric.blocks).toBe('M112');
    expect(solve(own, 'x', ['cut']).cut!.settings[0]!.bar).toBe(200);
  });
});
