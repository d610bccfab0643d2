/** Texts and values that once took the program's time, or its life. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodedText } from '../../src/design/decodedText.ts';
import { typedExpansion } from '../../src/design/expansion.ts';
import { jsonFault } from '../../src/design/jsonFault.ts';
import { parseDesign } from '../../src/design/parse.ts';
import { quantityAt } from '../../src/design/place.ts';
import { typedQuantity } from '../../src/design/quantity.ts';
import { typedHalfAngle, typedLength } from '../../src/design/units.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { readingsFromCsv, readingsToCsv } from '../../src/report/measure/csv.ts';
import { measureReport } from '../../src/report/measure/definition.ts';
import { measureSection } from '../../src/report/measure/section.ts';
import { regression } from './read.ts';

const cone = { halfAngle: 3, diameter: 22, station: 0, from: -26, to: 0 };
const bare = { conepair: 1, seats: [{ name: 'a', journal: cone, bush: cone }] };
const errorsOf = (raw: unknown) => {
  const result = validateDesign(raw);
  return result.ok ? [] : result.errors;
};

describe('time linear in the text', () => {
  // Each took seconds to minutes at a hundredth of this length. No clock: a pattern that tries every way to part them
  // would never end.
  const long = 400_000;
  test.each([
    ['spaces', ' '.repeat(long)],
    ['spaces and a letter', `a${' '.repeat(long)}b`],
    ['brackets', '('.repeat(long)],
    ['closed brackets', `${'('.repeat(long)})`],
    ['quotes', '"'.repeat(long)],
    ['digits', `${'1'.repeat(long)}x`],
    ['commas', ','.repeat(long)],
    ['lines', '\n'.repeat(long)],
    ['kinds', 'kind,value,sigma\n'.repeat(long / 10)],
  ])('a table of readings of %s is refused', (_, text) => {
    const table = readingsFromCsv(text, bare as never);
    expect(table.ok).toBe(false);
    if (table.ok) return;
    for (const { message } of table.errors.slice(0, 50)) expect(message.length).toBeLessThan(400);
  });

  test.each([
    ['digits', `${'1'.repeat(long)}x`],
    ['spaces', `1${' '.repeat(long)}x`],
    ['lines', `1${'\n'.repeat(long)}x`],
    ['dots', '1.'.repeat(long)],
  ])('a number typed as %s is refused in few words', (_, text) => {
    const at = quantityAt('seats[0].bush.diameter');
    for (const typed of [
      typedLength(text, 1),
      typedHalfAngle(text),
      typedExpansion(text, 'metric'),
      typedQuantity(at, text, 'metric'),
      typedQuantity(quantityAt('run.speed'), text, 'inch'),
    ]) {
      expect(typed.ok).toBe(false);
      if (!typed.ok) expect(typed.message.length).toBeLessThan(200);
    }
  });

  test('seventy digits run together are one number, and parted only where a person parts them', () => {
    expect(typedHalfAngle(`${'1'.repeat(70)}x`).ok).toBe(false);
    expect(typedHalfAngle("312'")).toMatchObject({ ok: false });
    expect(typedHalfAngle("3° 12'")).toEqual({ ok: true, value: 3.2 });
    expect(typedHalfAngle('3 12 36')).toEqual({ ok: true, value: 3.21 });
  });

  test('a profile of a million points is refused without being followed point by point by each of its points', () => {
    const profile = Array.from({ length: 1_000_000 }, (_, i) => [i, 0]);
    expect(errorsOf({ ...bare, seats: [{ name: 'a', journal: { ...cone, profile }, bush: cone }] })).toContainEqual({
      path: 'seats[0].journal.profile',
      message: 'found 1000000 entries; it must be at most 20000 entries',
    });
  });

  test('a text beyond any design is not looked into', () => {
    const result = parseDesign(' '.repeat(32_000_001));
    expect(result).toEqual({
      ok: false,
      errors: [{ path: '', message: 'the file has 32000001 characters; a design has 32000000 at most' }],
    });
  });
});

describe('values that are no numbers, names or lists', () => {
  test.each([[{ toString: 1 }], [{ toString: null, valueOf: null }], [[[]]], [{ toJSON: 1 }], [Object.create(null)]])(
    'in place of a name: %j',
    (odd) => {
      for (const cut of [
        { allow: [{ seat: odd, part: 'bush' }] },
        { allow: [{ seat: 'a', part: odd }] },
        {
          allow: [],
          faces: [{ name: odd, part: 'bush', seats: [odd], moves: 'rearward' }],
          trials: [{ faces: [{ name: odd, off: 0 }] }],
        },
      ]) {
        expect(errorsOf({ ...bare, cut }).length).toBeGreaterThan(0);
      }
      expect(errorsOf({ ...bare, readings: [odd], seats: [odd] }).length).toBeGreaterThan(0);
    },
  );

  test.each(['a surface of no length', 'a profile of points at one place'])('%s is refused', (what) => {
    const journal = what.startsWith('a surface') ? { ...cone, from: 0, to: 5e-324 } : { ...cone, profile: [[0, 0], [5e-324, 0]] }; // biome-ignore format: a pair a point
    expect(errorsOf({ ...bare, seats: [{ name: 'a', journal, bush: cone }] })).toHaveLength(1);
  });

  test('nested a hundred thousand deep', () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    for (const text of [
      deep,
      `{"conepair":1,"seats":${deep}}`,
      `{"conepair":1,"seats":[{"name":${deep}}]}`,
      '['.repeat(100_000),
    ]) {
      const result = parseDesign(text);
      expect(result.ok).toBe(false);
      if (!result.ok) for (const { message } of result.errors) expect(message.length).toBeLessThanOrEqual(300);
    }
  });

  test.each([
    ['a name', { ...bare, seats: [{ ...bare.seats[0], name: 'n'.repeat(100_000) }] }],
    ['a key', { ...bare, ['k'.repeat(100_000)]: 1 }],
    ['keys by the thousand', { ...bare, ...Object.fromEntries(Array.from({ length: 5_000 }, (_, i) => [`k${i}`, i])) }],
    [
      'a seat that is not there',
      {
        ...bare,
        readings: [{ kind: 'diameter', seat: 's'.repeat(100_000), part: 'bush', sigma: 1, value: 1, station: 0 }],
      },
    ],
    ['a kind', { ...bare, readings: [{ kind: 'x'.repeat(100_000) }] }],
    ['a long list in place of a name', { ...bare, seats: [{ ...bare.seats[0], name: Array(100_000).fill('name') }] }],
    [
      'eight long names',
      {
        ...bare,
        seats: Array.from({ length: 8 }, (_, i) => ({ ...bare.seats[0], name: `${i}${'n'.repeat(39)}` })),
        priors: [{ seat: 'x', part: 'bush', of: 'diameter', sigma: 1 }],
      },
    ],
  ])('however long %s is, no message is over 300 characters, and no list over 501', (_, raw) => {
    const errors = errorsOf(raw);
    expect(errors.length).toBeGreaterThan(0);
    expect(errors.length).toBeLessThanOrEqual(501);
    for (const { path, message } of errors) expect(Math.max(path.length, message.length)).toBeLessThanOrEqual(300);
  });
});

describe('what kind of file it is', () => {
  test('a file of a later format: a newer program made it, and nothing else is said', () => {
    expect(errorsOf({ conepair: 2, seats: 'other' })).toEqual([
      { path: 'conepair', message: 'found 2: a newer program made this file; this one reads version 1' },
    ]);
    expect(errorsOf({ ...bare, conepair: 0 })).toEqual([{ path: 'conepair', message: 'found 0; it must be 1' }]);
  });

  test('a file cut short says where it ends', () => {
    const text = JSON.stringify(bare, null, 1);
    const result = parseDesign(text.slice(0, text.indexOf('"station"')));
    expect(result).toEqual({
      ok: false,
      errors: [
        {
          path: '',
          message:
            'not JSON: the file ends at line 9, column 5, before the design does (4 brackets are open); what follows is missing',
        },
      ],
    });
  });

  test('UTF-8 and UTF-16 with a byte-order mark read alike', () => {
    const text = '{"conepair": 1, "title": "Spindel für Öl 🚲"}';
    const wide = (little: boolean) => {
      const bytes = new DataView(new ArrayBuffer(2 + 2 * text.length));
      bytes.setUint16(0, 0xfeff, little);
      for (let i = 0; i < text.length; i++) bytes.setUint16(2 + 2 * i, text.charCodeAt(i), little);
      return new Uint8Array(bytes.buffer);
    };
    for (const bytes of [
      new TextEncoder().encode(text),
      new TextEncoder().encode(`\uFEFF${text}`),
      wide(true),
      wide(false),
    ])
      expect(decodedText(bytes)).toBe(text);
  });

  test('where a text stops being JSON: nowhere, if and only if the engine reads it; else no further than where it can still go on', () => {
    const reads = (text: string) => {
      try {
        JSON.parse(text);
        return true;
      } catch {
        return false;
      }
    };
    const spoilt = fc
      .tuple(
        fc.json(),
        fc.nat(),
        fc.constantFrom('', ',', '"', '{', ']', '}', '\\', 'e', '-', '.', '0', 't', '\n', '\u0001', ' '),
      )
      .map(([text, at, sign]) => {
        const place = at % (text.length + 1);
        return text.slice(0, place) + sign + text.slice(place + (at % 2));
      });
    fc.assert(
      fc.property(fc.oneof(fc.json(), spoilt), (text) => {
        const fault = jsonFault(text);
        expect(fault === null).toBe(reads(text));
        if (fault === null) return;
        // All up to there may yet become JSON; with the character there it cannot.
        expect(jsonFault(text.slice(0, fault.at))?.at ?? fault.at).toBe(fault.at);
        if (fault.at < text.length) expect(jsonFault(`${text.slice(0, fault.at + 1)}`)!.at).toBe(fault.at);
      }),
      { seed: 13, numRuns: 3_000 },
    );
  });
});

describe('readings', () => {
  test('uncertainties of a picometre: answered, as the definition says', () => {
    const measure = measureSection(regression('uncertainty-of-a-picometre'))!;
    expect(measureReport.safeParse(measure).error?.issues ?? []).toEqual([]);
    expect(measure.undetermined.flatMap(({ next }) => next?.reading.sigma ?? [])).toContain(1e-12);
  });

  test.each([5e-324, 1e-300])('an uncertainty of %d: finite figures', (sigma) => {
    const reading = { kind: 'diameter' as const, seat: 'a', part: 'bush' as const, station: -13, value: 20.6, sigma };
    const measure = measureSection({
      conepair: 1,
      seats: [{ name: 'a', journal: { ...cone, diameter: 21.99 }, bush: cone }],
      readings: [reading, { ...reading, station: -2 }, { ...reading, station: -20 }],
      priors: [{ seat: 'a', part: 'bush', of: 'halfAngle', sigma }],
    })!;
    expect(measureReport.safeParse(JSON.parse(JSON.stringify(measure))).error?.issues ?? []).toEqual([]);
  });

  test('a reading whose arm on the angle is nothing but rounding does not tell the angle', () => {
    const cone = { halfAngle: 3, diameter: 45, station: 8.967e-321, from: 0, to: 300 };
    const read = {
      kind: 'diameter' as const,
      seat: 'a',
      part: 'bush' as const,
      station: 1.3414e-320,
      value: 45,
      sigma: 1e-9,
    };
    const measure = measureSection({
      conepair: 1,
      seats: [{ name: 'a', journal: { ...cone, diameter: 44.9 }, bush: cone }],
      readings: [read],
    })!;
    expect(measure.surfaces[0]!.sigma.halfAngle).toBeNull();
  });

  test('straightness read twice at one place, or all but at the end: one point of the profile', () => {
    const read = (station: number) => ({
      kind: 'straightness' as const,
      seat: 'a',
      part: 'bush' as const,
      station,
      value: 0.0001,
      sigma: 0.001,
    });
    const size = {
      kind: 'diameter' as const,
      seat: 'a',
      part: 'bush' as const,
      station: -20,
      value: 20.5,
      sigma: 0.001,
    };
    const measure = measureSection({
      conepair: 1,
      seats: [{ name: 'a', journal: { ...cone, diameter: 21.99 }, bush: cone }],
      readings: [
        read(-13),
        read(-13 + 1e-9),
        read(-1e-100),
        read(-26 + 1e-12),
        size,
        { ...size, station: -1, value: 21.9 },
      ],
    })!;
    expect(measureReport.safeParse(JSON.parse(JSON.stringify(measure))).error?.issues ?? []).toEqual([]);
    expect(measure.surfaces[0]!.profile).toHaveLength(1);
    expect(measure.surfaces[0]!.profile![0]!.deviation).toBeCloseTo(0.0001, 9);
  });

  test('a ball in a bore that is straight to within rounding is told to say nothing', () => {
    const bore = { halfAngle: 5e-7, diameter: 11.650333354136666, station: 0, from: 0, to: 38 };
    const ball = {
      kind: 'ballDepth' as const,
      seat: 'a',
      part: 'bush' as const,
      ball: 11.650333354136666,
      face: 38,
      value: 37,
      sigma: 0.001,
    };
    const size = {
      kind: 'diameter' as const,
      seat: 'a',
      part: 'bush' as const,
      station: 19,
      value: 11.65,
      sigma: 0.001,
    };
    const measure = measureSection({
      conepair: 1,
      seats: [{ name: 'a', journal: { ...bore, diameter: 11.6 }, bush: bore }],
      readings: [ball, size],
    })!;
    expect(measure.impossible).toMatchObject([{ index: 0, what: 'straight' }]);
    expect(measureReport.safeParse(JSON.parse(JSON.stringify(measure))).error?.issues ?? []).toEqual([]);
  });

  test('a seat named like a formula: defused in the table, and read back as it is', () => {
    const seats = ['=1+1', '+a', '-b', '@c'].map((name) => ({
      name,
      journal: { ...cone, diameter: 21.99 },
      bush: cone,
    }));
    const readings = seats.map(({ name }) => ({
      kind: 'diameter' as const,
      seat: name,
      part: 'bush' as const,
      station: -2,
      value: 21.79,
      sigma: 0.001,
    }));
    const csv = readingsToCsv([...readings, { kind: 'standOff', sigma: 0.001, value: -0.01 }]);
    for (const cell of csv.split(/[\r\n]+/).flatMap((line) => line.split(',')))
      expect(cell).toMatch(/^(?![=+@])(?!-\D)/);
    expect(csv).toContain(',-0.01,');
    expect(readingsFromCsv(csv, { conepair: 1, seats })).toMatchObject({
      ok: true,
      readings: [...readings, { value: -0.01 }],
    });
  });
});
