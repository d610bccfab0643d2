/** Units of a table's columns in their headings, the cells numbers; whatever is no such column stays as it is. */
import { expect, test } from 'vitest';
import { csvOf } from '../../../src/app/takeAlong/onScreen.ts';
import { withUnits } from '../../../src/app/takeAlong/withUnits.ts';

test('one unit goes to the heading; signs, noughts and what is open stay', () => {
  expect(
    withUnits([
      ['Seat', 'Film', 'Angle', 'Force', 'Share'],
      ['shallow', '2.50 µm', '3.0°', '-12 N', '0.5'],
      ['steep', '-0.07 µm', '45.0°', '—', '0.5'],
      ['rear', 'open', '', '5\u00a0N', '0'],
    ]),
  ).toEqual([
    ['Seat', 'Film, µm', 'Angle, °', 'Force, N', 'Share'],
    ['shallow', '2.50', '3.0', '-12', '0.5'],
    ['steep', '-0.07', '45.0', '—', '0.5'],
    ['rear', 'open', '', '5', '0'],
  ]);
});

test('several units, or a figure with more to it, are left as they are', () => {
  const rows = [
    ['A', 'B', 'C', 'D'],
    ['1.20 mm', '2.5 µm', '3 µm ± 1 µm', 'at 4 N'],
    ['3.40 µm', '1 tenth', '4 µm ± 1 µm', 'at 5 N'],
  ];
  expect(withUnits(rows)).toEqual(rows);
  expect(withUnits([['2 mm', '3 mm']])).toEqual([['2 mm', '3 mm']]);
  expect(withUnits([])).toEqual([]);
});

test('words among figures, as where a seat touches all round, stay words under the unit', () => {
  expect(
    withUnits([
      ['Seat', 'Angle'],
      ['shallow', 'all round'],
      ['steep', '30°'],
    ]),
  ).toEqual([
    ['Seat', 'Angle, °'],
    ['shallow', 'all round'],
    ['steep', '30'],
  ]);
});

test('where every row has a unit of its own it stands with the name of the row, for all columns alike', () => {
  expect(
    withUnits([
      ['Seat', 'rear', 'shallow', 'steep'],
      ['Least film', 'touches', '1.00 tenths', '0.99 tenths'],
      ['Touches at position', '—', '−19.08 tenths', '−1.41 tenths'],
      ['Touches at diameter', '—', '0.2598 in', '0.5 in'],
    ]),
  ).toEqual([
    ['Seat', 'rear', 'shallow', 'steep'],
    ['Least film, tenths', 'touches', '1.00', '0.99'],
    ['Touches at position, tenths', '—', '-19.08', '-1.41'],
    ['Touches at diameter, in', '—', '0.2598', '0.5'],
  ]);
  expect(
    withUnits([
      ['Seat', 'rear', 'shallow', 'steep'],
      ['Least film', 'apart', '1.00 tenths', '0.99 tenths'],
      ['Touches at position', '—', '−19.08 tenths', '−1.41 tenths'],
      ['Touches at diameter', '—', '0.2598 in', '0.5 in'],
    ]),
  ).toEqual([
    ['Seat', 'rear', 'shallow', 'steep'],
    ['Least film, tenths', 'apart', '1.00', '0.99'],
    ['Touches at position, tenths', '—', '-19.08', '-1.41'],
    ['Touches at diameter, in', '—', '0.2598', '0.5'],
  ]);
});

test('a negative figure is a number, a word that begins like a formula is none', () => {
  expect(csvOf([['a', '-1.965', '+3', '-1+2', '=1', '−19.08 tenths', 0.1 + 0.2]])).toBe(
    `\uFEFFa,-1.965,3,"'-1+2","'=1",−19.08 tenths,0.3`,
  );
});
