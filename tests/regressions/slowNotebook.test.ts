/**
 * Twelve readings, two of them shakes of a journal with six lobes, took seconds: what is open at one minimum is told at
 * the other, and the fit went back and forth between the two, each time from the beginning.
 *
 * @module-tag long
 */
import { expect, test, vi } from 'vitest';
import { validateDesign } from '../../src/design/validate.ts';
import type { minimise } from '../../src/engine/gauging/gaussNewton.ts';
import { measureSection } from '../../src/report/measure/section.ts';
import notebook from './slow-notebook.conepair.json';

const asked = vi.hoisted((): string[] => []);

vi.mock('../../src/engine/gauging/gaussNewton.ts', async (original) => {
  const real = await original<{ minimise: typeof minimise }>();
  return {
    ...real,
    minimise: (...question: Parameters<typeof minimise>) => {
      const [{ readings }, from, held] = question;
      // Those of the parts alone take no time, and are asked again for every reading that is left out in turn.
      if (readings.some(({ kind }) => kind === 'shake')) asked.push(JSON.stringify([readings, [...from], held]));
      return real.minimise(...question);
    },
  };
});

test('no minimum is sought twice, and the lowest that was found is told', () => {
  const read = validateDesign(notebook);
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const measure = measureSection(read.design)!;
  expect(asked.length).toBeGreaterThan(1);
  expect(new Set(asked).size).toBe(asked.length);
  expect(measure.chiSquare).toBeLessThan(600_000);
  expect(measure.settled).toBe(true);
  expect(measure.disagreeing.map(({ index }) => index)).toEqual([1]);
});
