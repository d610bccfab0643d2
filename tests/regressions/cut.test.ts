import { expect, test } from 'vitest';
import { cutReport } from '../../src/report/cut/definition.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { regression } from './read.ts';

test('a gauge that cannot read the surface once it is cut: no reading at which to stop, and a set-up as the definition has it', () => {
  const cut = cutSection(regression('gauge-that-cannot-read-the-end'))!;
  expect(cutReport.safeParse(cut).error?.issues ?? []).toEqual([]);
  const gauge = cut.steps.flatMap(({ gauges }) => gauges).find(({ stop }) => stop === null)!;
  expect(gauge.reading).toMatchObject({ kind: 'overRolls' });
  expect((gauge.reading as { value: number }).value).toBeGreaterThan(90);
});
