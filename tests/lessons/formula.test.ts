/** The language of formulas: what it works out, and all that it does not reach. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formulaOf, LONGEST_FORMULA, worked, workedNumber } from '../../src/lessons/formula.ts';

const SCOPE = {
  half: 30,
  right: 2,
  name: 'steep',
  after: {
    fit: {
      first: 'steep',
      seats: [
        { name: 'shallow', film: 1 },
        { name: 'steep', film: 7, none: null },
      ],
    },
  },
};

test.each([
  ['1 + 2 * 3', 7],
  ['(1 + 2) * 3', 9],
  ['-right', -2],
  ['2 - -right', 4],
  ['7 / right - 1', 2.5],
  ['sin(half)', 0.5],
  ['cos(60)', 0.5],
  ['tan(45)', 1],
  ['asin(0.5)', 30],
  ['acos(0.5)', 60],
  ['atan(1)', 45],
  ['max(1, half, 3)', 30],
  ['min(1, half) + abs(-2) + sqrt(9) + round(2.4)', 8],
  ['after.fit.seats[1].film', 7],
  ['after.fit.seats.steep.film', 7],
  ["after['fit'].seats.shallow.film", 1],
  ['after.fit.seats.length', 2],
  ["after.fit.first == 'steep' ? 1 : 2", 1],
  ["after.fit.first != 'steep' ? 1 : 2", 2],
])('%s is %d', (text, value) => {
  const found = worked(text, SCOPE);
  expect(found.ok && Number(found.value)).toBeCloseTo(value, 12);
});

test.each([
  ['1 < 2 && !(2 <= 1)', true],
  ['1 > 2 || 2 >= 3', false],
  ['1 > 2 || 2 >= 2', true],
  // The second is not looked at where the first decides.
  ['1 > 2 && 1 / 0 > 1', false],
  ['1 < 2 || 1 / 0 > 1', true],
])('%s is %s', (text, value) => expect(worked(text, SCOPE)).toEqual({ ok: true, value }));

describe('what is refused', () => {
  test.each([
    ['constructor', 'there is no'],
    ['after.constructor', 'there is no'],
    ['after.__proto__.x', 'there is no'],
    ['after.fit.seats.map', 'there is no'],
    ['name.length', 'there is no'],
    ['after.fit.seats.steep.none', 'there is no'],
    ['after.fit', 'is a group'],
    ['this', 'no single formula'],
    ['[1, 2]', 'no single formula'],
    ['1; 2', 'no single formula'],
    ['', 'no single formula'],
    ['alert(1)', 'is no function'],
    ['after.fit.seats.map(1)', 'is no function'],
    ['sin.constructor(1)', 'is no function'],
    ['after[name]', 'a key in [ ]'],
    ['(1 + 2).x', 'a key follows'],
    ['1 | 2', 'is not known here'],
    ['2 ** 3', 'is not known here'],
    ['null', 'is not known here'],
    ['+right', 'is not known here'],
    ['1 +', 'is no formula'],
    ['1 / 0', 'no finite value'],
    ['sqrt(-1)', 'no finite value'],
    ["name + 'x'", 'where a number must'],
    ['half ? 1 : 2', 'where a condition must'],
    ['x'.repeat(LONGEST_FORMULA + 1), 'characters'],
    [`1${'+1'.repeat(150)}`, 'parts'],
  ])('%s', (text, why) => {
    const found = worked(text, SCOPE);
    expect(found.ok ? 'worked' : found.message).toContain(why);
  });

  test('a word where a number is asked for', () => {
    const found = workedNumber('name', SCOPE);
    expect(found.ok ? '' : found.message).toContain('it must be a number');
  });
});

test('a formula names where it begins, so that only what it asks for is solved', () => {
  const found = formulaOf('after.fit.seats[0].film + sin(half) * before.cut.total');
  expect(found.ok && [...found.value.names].sort()).toEqual(['after.fit.seats.0.film', 'before.cut.total', 'half']);
});

test('no text makes it throw, nor reach what was not handed to it', () => {
  const bit = fc.constantFrom(
    'a',
    '1',
    '+',
    '-',
    '(',
    ')',
    '.',
    '[',
    ']',
    "'",
    'sin',
    '?',
    ':',
    '__proto__',
    '!',
    ' ',
    '&&',
  );
  fc.assert(
    fc.property(fc.array(bit, { maxLength: 40 }), (bits) => {
      const found = worked(bits.join(''), { a: 1 });
      if (found.ok) expect(['number', 'string', 'boolean']).toContain(typeof found.value);
    }),
    { numRuns: 2000, seed: 17 },
  );
});
