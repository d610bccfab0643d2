/**
 * Any notebook whatever, sensible or not: never a throw, never a number that is none, always as the definition says.
 *
 * @module-tag long
 */

import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { measureReport } from '../../../src/report/measure/definition.ts';
import type { Reading } from '../../../src/report/measure/kinds.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { measureVerdict } from '../../../src/report/measure/verdict.ts';
import { designWithMeasured, fitMeasured } from '../../../src/report/measure/withMeasured.ts';
import { LONG } from '../../long.ts';

const RUNS = 60 * LONG;
const folder = new URL('../../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).flatMap((file) => {
  const result = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
  return result.ok ? [result.design] : [];
});

const between = (min: number, max: number) =>
  fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max, Math.max(0, min)));
const sigma = fc.constantFrom(1e-6, 0.0005, 0.001, 0.01, 5);

const readingOf = ({ seats }: Design): fc.Arbitrary<Reading> => {
  const on = {
    seat: fc.constantFrom(...seats.map((s) => s.name)),
    part: fc.constantFrom('journal' as const, 'bush' as const),
    sigma,
  };
  const station = between(-30, 6);
  return fc.oneof(
    fc.record({ kind: fc.constant('diameter' as const), ...on, value: between(15, 30), station }),
    fc.record({
      kind: fc.constant('overRolls' as const),
      ...on,
      value: between(20, 40),
      roll: between(0.5, 20),
      station,
    }),
    fc.record({
      kind: fc.constant('ballDepth' as const),
      ...on,
      value: between(-40, 40),
      ball: between(5, 40),
      face: between(-5, 5),
    }),
    fc.record({
      kind: fc.constant('sineRise' as const),
      ...on,
      value: between(-1, 1),
      bar: between(50, 130),
      stack: between(-130, 130),
      travel: between(0.1, 30),
    }),
    fc.record({ kind: fc.constant('straightness' as const), ...on, value: between(-0.01, 0.01), station }),
    fc.record({ kind: fc.constant('standOff' as const), sigma, value: between(-0.3, 0.3) }),
    fc.record({
      kind: fc.constant('shake' as const),
      sigma,
      value: between(0, 0.1),
      indicator: between(-50, 50),
      position: between(-0.05, 1),
      direction: between(-360, 360),
    }),
  );
};

test('any readings of any demo', () => {
  let told = 0;
  fc.assert(
    fc.property(
      fc
        .constantFrom(...demos)
        .chain((design) =>
          fc
            .array(readingOf(design), { minLength: 1, maxLength: 9 })
            .map((readings): Design => ({ ...design, readings })),
        ),
      (design) => {
        expect(validateDesign(design).ok).toBe(true);
        const measure = measureSection(design)!;
        const issues = measureReport.safeParse(measure).error?.issues ?? [];
        expect(issues).toEqual([]);
        expect(measure.readings.length + measure.impossible.length + measure.aside.length).toBe(
          design.readings!.length,
        );
        if (measure.surfaces.some((s) => s.sigma.halfAngle !== null)) told++;
        for (const system of ['metric', 'inch'] as const) {
          const { headline, sentences } = measureVerdict(design, measure, fitMeasured(design, measure), system);
          expect([headline, ...sentences].join(' ')).not.toMatch(/NaN|undefined|null|Infinity|object/);
        }
        designWithMeasured(design, measure);
      },
    ),
    { seed: 52, numRuns: RUNS, endOnFailure: true },
  );
  expect(told).toBeGreaterThan(RUNS / 10);
}, 120_000);
