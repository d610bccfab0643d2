/** What was told of the notebook before is shown beside the same entries only, wherever they stand now. */
import { expect, test } from 'vitest';
import { toldNow } from '../../../../src/app/screens/measure/toldNow.ts';
import type { Design } from '../../../../src/design/definition.ts';
import type { MeasureReport } from '../../../../src/report/measure/definition.ts';

const entry = (value: number) => ({ kind: 'standOff', value, sigma: 0.001 }) as const;
const notebook = (...values: number[]) => ({ readings: values.map(entry) }) as unknown as Design;
const told = (...indices: number[]) =>
  ({
    readings: indices.map((index) => ({ index })),
    disagreeing: indices.slice(-1).map((index) => ({ index })),
    impossible: [],
  }) as unknown as MeasureReport;
const indices = (report: MeasureReport) => report.readings.map(({ index }) => index);

test('an entry struck out moves those behind it, and its own figures go', () => {
  const now = toldNow(told(0, 1, 2), notebook(1, 2, 3), notebook(1, 3));
  expect(indices(now)).toEqual([0, 1]);
  expect(now.disagreeing).toEqual([{ index: 1 }]);
});

test('an entry that was changed, or is new, has no figures yet', () => {
  expect(indices(toldNow(told(0, 1), notebook(1, 2), notebook(1, 5, 7)))).toEqual([0]);
});

test('entries that read the same have one figure each', () => {
  expect(indices(toldNow(told(0, 1), notebook(4, 4), notebook(4, 4, 4)))).toEqual([0, 1]);
  expect(indices(toldNow(told(0), notebook(4), notebook(4, 4)))).toEqual([0]);
});
