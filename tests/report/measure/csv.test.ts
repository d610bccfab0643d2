/** Readings as a table: there and back, entries with their own units, and errors that name row and column. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { COLUMNS, readingsFromCsv, readingsToCsv } from '../../../src/report/measure/csv.ts';
import type { Reading } from '../../../src/report/measure/kinds.ts';
import { notebookDemo } from './notebooks.ts';

const design = notebookDemo();
const read = (text: string, bare: 'metric' | 'inch' = 'metric') => readingsFromCsv(text, design, bare);
const errorsOf = (text: string) => {
  const table = read(text);
  return table.ok ? [] : table.errors.map(({ row, column }) => `${row} ${column}`);
};

describe('there and back', () => {
  test('the notebook of the demo', () => {
    expect(read(readingsToCsv(design.readings!))).toEqual({ ok: true, readings: design.readings, ignored: [] });
  });

  test('any readings, to fifteen digits, in millimetres and in inches', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => (x === 0 ? 0 : x));
    const on = {
      seat: fc.constantFrom('shallow', 'steep'),
      part: fc.constantFrom('journal' as const, 'bush' as const),
      value: number(-100, 100),
      sigma: number(1e-6, 0.1),
    };
    const any: fc.Arbitrary<Reading> = fc.oneof(
      fc.record({ kind: fc.constant('diameter' as const), ...on, value: number(0.001, 100), station: number(-50, 50) }),
      fc.record({
        kind: fc.constant('overRolls' as const),
        ...on,
        value: number(0.001, 100),
        roll: number(1, 20),
        station: number(-50, 50),
      }),
      fc.record({ kind: fc.constant('ballDepth' as const), ...on, ball: number(1, 50), face: number(-50, 50) }),
      fc.record({
        kind: fc.constant('sineRise' as const),
        ...on,
        bar: number(50, 300),
        stack: number(-50, 50),
        travel: number(1, 20),
      }),
      fc.record({ kind: fc.constant('straightness' as const), ...on, station: number(-50, 50) }),
      fc.record({ kind: fc.constant('standOff' as const), value: number(-1, 1), sigma: number(1e-6, 0.1) }),
      fc.record({
        kind: fc.constant('shake' as const),
        value: number(0, 1),
        sigma: number(1e-6, 0.1),
        indicator: number(-50, 50),
        position: number(-1, 1),
        direction: number(-360, 360),
      }),
    );
    const words = (maxLength: number) =>
      fc
        .oneof(
          fc.constantFrom("'", '=1+1', "'=A1", '−3', '@x', 'a,b;c\t"d"', 'pressed', 'in two\nlines'),
          fc.string({ maxLength }),
        )
        .map((text) => text.trim().slice(0, maxLength).trim())
        .filter((text) => text !== '');
    const entered = fc.record(
      {
        date: fc.constantFrom('2026-03-31', '2026-03-31T14:30+01:00'),
        by: words(60),
        stage: words(40),
        note: words(200),
      },
      { requiredKeys: [] },
    );
    const anyEntered = fc.tuple(any, entered).map(([reading, more]) => ({ ...reading, ...more }));
    fc.assert(
      fc.property(fc.array(anyEntered, { maxLength: 12 }), (readings) => {
        for (const system of ['metric', 'inch'] as const) {
          const back = read(readingsToCsv(readings, system));
          if (!back.ok) throw new Error(JSON.stringify(back.errors));
          expect(back.readings).toHaveLength(readings.length);
          readings.forEach((reading, i) => {
            const found = back.readings[i] as unknown as Record<string, unknown>;
            expect(Object.keys(found).sort()).toEqual(Object.keys(reading).sort());
            for (const [key, value] of Object.entries(reading)) {
              if (typeof value === 'number')
                expect(Math.abs((found[key] as number) - value)).toBeLessThanOrEqual(6e-15 * Math.abs(value) + 1e-300);
              else expect(found[key]).toBe(value);
            }
          });
        }
      }),
      { seed: 41, numRuns: 200 },
    );
  });

  test('a table of before these columns, and days as spreadsheets write them', () => {
    const old = read('kind,seat,part,value,sigma,station\ndiameter,shallow,journal,21,0.001,-5');
    expect(old.ok && old.readings).toEqual([
      { kind: 'diameter', seat: 'shallow', part: 'journal', value: 21, sigma: 0.001, station: -5 },
    ]);
    const dated = (day: string) =>
      read(`kind,seat,part,value,sigma,station,date,by,note\ndiameter,shallow,journal,21,0.001,-5,${day},Ada,'=dry`);
    for (const day of ['2026-03-01', '2026/3/1', '1.3.2026']) {
      const table = dated(day);
      expect(table.ok && table.readings[0]).toMatchObject({ date: '2026-03-01', by: 'Ada', note: '=dry' });
    }
    for (const day of ['3/1/2026', '31.2.2026', 'Monday']) {
      const table = dated(day);
      expect(table.ok ? [] : table.errors.map(({ row, column }) => `${row} ${column}`)).toEqual(['2 date']);
    }
  });

  test('a table written here is the same notebook where the screen shows inches', () => {
    expect(read(readingsToCsv(design.readings!), 'inch')).toEqual({ ok: true, readings: design.readings, ignored: [] });
  });

  test('a name may say the unit of its column, whatever the screen shows', () => {
    for (const bare of ['metric', 'inch'] as const) {
      const table = read(
        'kind,seat,part,value (in),sigma [tenths],Station ( mm )\ndiameter,shallow,journal,0.7,1,-5',
        bare,
      );
      if (!table.ok) throw new Error(JSON.stringify(table.errors));
      const [found] = table.readings as unknown as { value: number; sigma: number; station: number }[];
      expect(found!.value).toBeCloseTo(17.78, 12);
      expect(found!.sigma).toBeCloseTo(0.00254, 12);
      expect(found!.station).toBe(-5);
    }
    expect(errorsOf('kind,seat,part,value (ells),sigma,station\ndiameter,shallow,journal,0.7,1,-5')).toEqual([
      '1 value',
    ]);
  });

  test('names of seats with commas, quotes and line breaks', () => {
    const odd = 'a, "b"\nc;\td';
    const renamed: Design = {
      ...design,
      seats: design.seats.map((seat, i) => (i === 0 ? { ...seat, name: odd } : seat)),
    };
    const readings = design.readings!.map((r) => ('seat' in r && r.seat === 'shallow' ? { ...r, seat: odd } : r));
    expect(readingsFromCsv(readingsToCsv(readings), renamed)).toEqual({ ok: true, readings, ignored: [] });
  });

  test('the columns stand in the order that is told', () => {
    expect(readingsToCsv([]).trim()).toBe(
      COLUMNS.map((name, i) =>
        i < 3 || ['after', 'date', 'stage', 'by', 'note'].includes(name)
          ? name
          : `${name} (${name === 'direction' ? 'deg' : 'mm'})`,
      ).join(','),
    );
  });
});

describe('what a spreadsheet or a hand writes', () => {
  test('numbers have no tails of binary fractions, and stand in the units of the person', () => {
    const reading: Reading = {
      kind: 'diameter',
      seat: 'shallow',
      part: 'journal',
      value: 0.7 * 25.4,
      sigma: 0.0001 * 25.4,
      station: -3.8099999999999996,
    };
    expect(readingsToCsv([reading]).split('\r\n')[1]).toBe(
      'diameter,shallow,journal,17.78,0.00254,-3.81,,,,,,,,,,,,,,',
    );
    expect(readingsToCsv([reading], 'inch').split('\r\n')).toEqual([
      expect.stringMatching(/^kind,seat,part,value \(in\),sigma \(in\),.*,direction \(deg\),after,date,stage,by,note$/),
      'diameter,shallow,journal,0.7,0.0001,-0.15,,,,,,,,,,,,,,',
    ]);
  });

  test('words in any capitals', () => {
    const table = read(
      'Kind,Seat,Part,Value,Sigma,Station\nDIAMETER,Shallow,Bush,17.5,0.001,-5\nOverRolls,shallow,journal,17.5,0.001,-5',
    );
    expect(table.ok ? [] : table.errors).toMatchObject([{ row: 3, column: 'roll' }]);
    const one = read('Kind,Seat,Part,Value,Sigma,Station\nDIAMETER,Shallow,Bush,17.5,0.001,-5');
    expect(one.ok && one.readings).toMatchObject([{ kind: 'diameter', seat: 'shallow', part: 'bush' }]);
  });

  test('columns of another name are left out and told once; where something is missing they are told with it', () => {
    const table = read(
      'kind,seat,part,value,sigma,station,remark,witness (whom)\ndiameter,shallow,bush,17.5,0.001,-5,warm,me\ndiameter,shallow,bush,17.4,0.001,-6,,me',
    );
    expect(table).toMatchObject({ ok: true, ignored: ['remark', 'witness'] });
    expect(table.ok && table.readings).toHaveLength(2);
    expect(errorsOf('kind,seat,part,value,sigma,place\ndiameter,shallow,bush,17.5,0.001,-5')).toEqual([
      '1 place',
      '2 station',
    ]);
  });

  const one = { kind: 'diameter', seat: 'shallow', part: 'journal', value: 17.5, sigma: 0.001, station: -5 };

  test.each([
    ['tabs and decimal commas', 'kind\tseat\tpart\tvalue\tsigma\tstation\ndiameter\tshallow\tjournal\t17,5\t0,001\t-5'],
    ['semicolons', 'kind;seat;part;value;sigma;station\ndiameter;shallow;journal;17,5;0,001;-5'],
    [
      'columns in another order, capitals, spaces',
      ' Station , KIND,part,seat,sigma, value\n-5,diameter,journal, shallow ,0.001,17.5',
    ],
    [
      'a mark of byte order, empty rows and columns',
      '\uFEFFkind,seat,part,value,sigma,station,\r\n\r\ndiameter,shallow,journal,17.5,0.001,-5,\r\n,,,,,,\r\n',
    ],
    ['units of their own', 'kind,seat,part,value,sigma,station\ndiameter,shallow,journal,1.75 cm,1 µm,−5 mm'],
  ])('%s', (_, text) => {
    const table = read(text);
    if (!table.ok) throw new Error(JSON.stringify(table.errors));
    const [found] = table.readings as unknown as Record<string, unknown>[];
    expect(table.readings).toHaveLength(1);
    for (const [key, value] of Object.entries(one)) {
      if (typeof value === 'number') expect(found![key]).toBeCloseTo(value, 12);
      else expect(found![key]).toBe(value);
    }
  });

  test('inches where numbers alone are in inches; degrees stay degrees', () => {
    const table = read('kind,value,sigma,indicator,position,direction\nshake,0.001,1 tenth,1,0.5 thou,90°', 'inch');
    if (!table.ok) throw new Error(JSON.stringify(table.errors));
    expect(table.readings[0]).toMatchObject({
      value: expect.closeTo(0.0254, 12),
      sigma: expect.closeTo(0.00254, 12),
      indicator: expect.closeTo(25.4, 10),
      position: expect.closeTo(0.0127, 12),
      direction: 90,
    });
  });
});

describe('errors name row and column as the spreadsheet counts', () => {
  const head = 'kind,seat,part,value,sigma,station,ball,face\n';

  test.each<[string, string, string[]]>([
    ['nothing at all', '', ['1 ']],
    ['no names', '\n1,2,3', ['1 ']],
    ['a column of another name', 'kind,seat,part,value,sigma,weight\n', ['1 weight']],
    ['a column twice', 'kind,value,sigma,value\n', ['1 value']],
    ['a column that must be there', 'kind,seat,part,value\n', ['1 sigma']],
    ['a word for a number', `${head}diameter,shallow,journal,much,0.001,-5,,`, ['2 value']],
    ['an unknown unit', `${head}diameter,shallow,journal,3 furlongs,0.001,-5,,`, ['2 value']],
    ['an unknown kind', `${head}weight,shallow,journal,3,0.001,-5,,`, ['2 kind']],
    ['an unknown seat, after an empty row', `${head},,,,,,,\ndiameter,nose,journal,3,0.001,-5,,`, ['3 seat']],
    ['a column the kind does not have', `${head}diameter,shallow,journal,3,0.001,-5,20,`, ['2 ball']],
    ['a column the kind needs', `${head}ballDepth,shallow,bush,3,0.001,,20,`, ['2 face']],
    ['no uncertainty', `${head}diameter,shallow,journal,3,,-5,,`, ['2 sigma']],
    ['an uncertainty of nothing', `${head}diameter,shallow,journal,3,0,-5,,`, ['2 sigma']],
    ['an entry beyond the names', `${head}diameter,shallow,journal,3,0.001,-5,,,9`, ['2 ']],
    [
      'a direction that is none',
      'kind,value,sigma,indicator,position,direction\nshake,0.01,0.001,3,0,north',
      ['2 direction'],
    ],
    [
      'several at once',
      `${head}diameter,nose,journal,3,0.001,-5,,\ndiameter,shallow,journal,x,y,-5,,`,
      ['2 seat', '3 value', '3 sigma'],
    ],
  ])('%s', (_, text, wanted) => {
    expect(errorsOf(text)).toEqual(wanted);
  });

  test('never throws, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc
            .array(fc.constantFrom('kind', 'value', 'sigma', ',', ';', '\t', '\n', '"', 'diameter', '1', '-'), {
              maxLength: 30,
            })
            .map((parts) => parts.join('')),
        ),
        (text) => {
          const table = read(text);
          if (!table.ok) expect(table.errors.length).toBeGreaterThan(0);
        },
      ),
      { seed: 42, numRuns: 400 },
    );
  });
});

describe('rows without a heading', () => {
  test('are told so once, with the heading they want', () => {
    for (const [sign, told] of [
      [';', ';'],
      ['\t', ' ⇥ '],
    ] as const) {
      const rows = Array.from({ length: 9 }, (_, k) =>
        ['diameter', 'shallow', 'bush', '17.99', '0.001', `${-k - 2}`].join(sign),
      ).join('\n');
      const found = readingsFromCsv(rows, notebookDemo());
      if (found.ok) throw new Error('taken without a heading');
      expect(found.errors).toHaveLength(1);
      expect(found.errors[0]).toMatchObject({ row: 1, column: '' });
      expect(found.errors[0]!.message).toContain(['kind', 'seat', 'part', 'value', 'sigma', 'station'].join(told));
      expect(found.heading).toBe(['kind', 'seat', 'part', 'value', 'sigma', 'station'].join(sign));
      // with it above them they are taken
      const headed = readingsFromCsv(`${found.heading}\n${rows}`, notebookDemo());
      expect(headed.ok && headed.readings).toHaveLength(9);
    }
  });

  test('of several kinds want the columns of all of those, and those that begin with no kind every column', () => {
    const mixed = readingsFromCsv('Diameter,shallow,bush,17.9,0.001,-2\nstandOff,,,0.01,0.001,', notebookDemo());
    expect(!mixed.ok && mixed.heading).toBe('kind,seat,part,value,sigma,station');
    const bare = readingsFromCsv('17.9,0.001,-2', notebookDemo());
    expect(!bare.ok && bare.heading).toBe(COLUMNS.join(','));
    const exported = readingsToCsv(notebookDemo().readings!).split(/\r?\n/).slice(1).join('\n');
    const whole = readingsFromCsv(exported, notebookDemo());
    expect(!whole.ok && whole.heading).toBe(COLUMNS.join(','));
  });

  test('a heading with a wrong name is still told as that', () => {
    const found = readingsFromCsv(
      'kind,seat,part,value,sigma,place\ndiameter,shallow,bush,17.9,0.001,-2',
      notebookDemo(),
    );
    expect(!found.ok && found.heading).toBeUndefined();
    expect(!found.ok && found.errors[0]).toMatchObject({ row: 1, column: 'place' });
  });
});
