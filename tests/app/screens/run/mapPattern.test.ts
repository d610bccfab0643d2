import { expect, test } from 'vitest';
import { linedCells, patternFilm } from '../../../../src/app/screens/run/mapPattern.ts';

const cells = { rows: 2, columns: 3, film: new Float32Array([0.004, -0.001, 0.0005, 0.003, 0, 0.002]) };

test('films thinner than parts the surfaces are lined, those pressed in crossed, the rest left', () => {
  expect(linedCells(cells, 0.002)).toEqual({ thin: [2, 4], pressed: [1] });
  expect(linedCells(cells, 0)).toEqual({ thin: [], pressed: [1] });
});

test('a cell lies where its colour does: columns from 0° on, rows from the rear up, the first column at both ends', () => {
  const rects: number[][] = [];
  const context = new Proxy(
    { canvas: { width: 300, height: 100 }, rect: (...at: number[]) => rects.push(at) },
    { get: (own, name) => (name in own ? own[name as 'rect'] : () => {}), set: () => true },
  ) as unknown as CanvasRenderingContext2D;
  patternFilm(context, { ...cells, film: new Float32Array([1, -1, 1, 1, 1, 1]) }, 0, 1);
  // Row 1 of column 0: the upper half, half before 0° and half before 360°.
  expect(rects).toEqual([
    [-50, 0, 100, 50],
    [250, 0, 100, 50],
  ]);
});
