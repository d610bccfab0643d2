/** Validation of design files: every error at once, each with its path, in words that say what to do. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDesign } from '../../src/design/parse.ts';
import { type Validation, validateDesign } from '../../src/design/validate.ts';

const cone = (halfAngle: number, diameter: number, from: number, to: number) => ({
  halfAngle,
  diameter,
  station: 0,
  from,
  to,
});

function good() {
  return {
    conepair: 1,
    title: 'A pair of cones',
    seats: [
      {
        name: 'shallow',
        journal: {
          ...cone(3, 22, -26, 0),
          profile: [[-26, 0.0004] as [number, number], [0, 0] as [number, number]],
          lobes: [{ count: 3, amplitude: 0.0003, phase: 90 }],
        },
        bush: cone(3, 22.006, -25, -0.5),
        film: { target: 0.0025, tolerance: 0.0005 },
      },
      { name: 'steep', journal: cone(45, 26, 0, 4), bush: cone(45, 26.01, 0.5, 3.5), film: { target: 0.0025 } },
    ],
    position: 0.02,
    adjuster: { pitch: 0.75 },
    play: { indicator: 30, free: ['x', 'y', 'tiltX', 'tiltY'] },
    print: { thickness: 0.002 },
    friction: 0.12,
    run: {
      speed: 1200,
      oil: { grade: 10, index: 95, density: 0.86 },
      load: { x: 0, y: -120, z: -40, station: 30 },
      supply: [{ seat: 'shallow', angle: 90, from: -22, to: -3, width: 2, pressure: 0 }],
      ambient: 20,
    },
    readings: [
      { kind: 'diameter', seat: 'shallow', part: 'journal', value: 22, sigma: 0.001, station: 0 },
      { kind: 'standOff', value: 0.01, sigma: 0.001 },
    ],
    cut: { allow: [{ seat: 'steep', part: 'journal', cleanup: 0.005, limit: 0.05 }] },
    odds: {
      draws: 20000,
      seed: 1,
      spread: [{ seat: 'shallow', part: 'bush', of: 'halfAngle', sigma: 0.001, shape: 'normal' }],
    },
  };
}

/** A good design with one place changed: `path` in the words of the error messages. */
function changed(path: string, value: unknown): unknown {
  const design: unknown = good();
  const keys = path.replaceAll(/\[(\d+)\]/g, '.$1').split('.');
  let at = design as Record<string, unknown>;
  for (const key of keys.slice(0, -1)) at = at[key] as Record<string, unknown>;
  const last = keys[keys.length - 1]!;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return design;
}

function errorsOf(result: Validation) {
  return result.ok ? [] : result.errors;
}

const errorsAt = (design: unknown, path: string) =>
  errorsOf(validateDesign(design)).filter((error) => error.path === path);

describe('a valid design', () => {
  it('is taken whole and unchanged', () => {
    const result = validateDesign(good());
    expect(errorsOf(result)).toEqual([]);
    if (result.ok) expect(result.design).toEqual(good());
  });

  it('is read from text, with or without a byte order mark', () => {
    expect(parseDesign(JSON.stringify(good())).ok).toBe(true);
    expect(parseDesign(`\uFEFF${JSON.stringify(good())}`).ok).toBe(true);
  });

  it('needs no more than its version and one seat', () => {
    const { name, journal, bush } = good().seats[1]!;
    expect(errorsOf(validateDesign({ conepair: 1, seats: [{ name, journal, bush }] }))).toEqual([]);
  });
});

describe('all errors at once', () => {
  it('reports five faults of five kinds in one look, each with its path', () => {
    const design = good() as unknown as Record<string, unknown> & ReturnType<typeof good>;
    (design.seats[0]!.journal as Record<string, unknown>).halfAngel = 3;
    (design.seats[0]!.bush as Record<string, unknown>).diameter = 'wide';
    design.seats[1]!.name = 'shallow';
    design.seats[1]!.journal.to = -1;
    design.adjuster.pitch = 0;
    (design as Record<string, unknown>).friction = 3;
    const paths = errorsOf(validateDesign(design)).map((error) => error.path);
    for (const path of [
      'seats[0].journal.halfAngel',
      'seats[0].bush.diameter',
      'seats[1].name',
      'seats[1].journal.to',
      'adjuster.pitch',
      'friction',
    ])
      expect(paths).toContain(path);
  });

  it('says the required fields that are missing', () => {
    const errors = errorsOf(validateDesign({}));
    expect(errors.map((e) => e.path).sort()).toEqual(['conepair', 'seats']);
    for (const { message } of errors) expect(message).toMatch(/^missing/);
  });

  it.each([null, undefined, 7, 'text', true, [], [[]]])('refuses %j as a whole', (raw) => {
    const result = validateDesign(raw);
    expect(result.ok).toBe(false);
    expect(errorsOf(result)[0]!.path).toBe('');
  });
});

describe('unknown keys', () => {
  it.each([
    ['seats[0].journal.halfAngel', 'halfAngle'],
    ['seats[0].bush.Diameter', 'diameter'],
    ['seats[1].jornal', 'journal'],
    ['seats[0].film.taget', 'target'],
    ['seats[0].journal.lobes[0].amplitud', 'amplitude'],
    ['positon', 'position'],
    ['run.oil.viscocity', 'viscosity'],
    ['run.load.statoin', 'station'],
    ['run.supply[0].presure', 'pressure'],
    ['readings[0].sation', 'station'],
    ['cut.allow[0].cleanupp', 'cleanup'],
    ['odds.spread[0].sigmaa', 'sigma'],
  ])('%s: did you mean "%s"?', (path, nearest) => {
    const [error, ...more] = errorsAt(changed(path, 1), path);
    expect(more).toEqual([]);
    expect(error?.message).toContain(`did you mean "${nearest}"?`);
  });

  const demos = new URL('../../assets/designs/', import.meta.url);
  it.each(readdirSync(demos))('one key of %s with a letter too many is one error, at that key', (file) => {
    const text = readFileSync(new URL(file, demos), 'utf8');
    let tried = 0;
    const slipIn = (group: unknown, path: (string | number)[]): void => {
      if (typeof group !== 'object' || group === null) return;
      for (const [key, value] of Object.entries(group)) {
        slipIn(value, [...path, Array.isArray(group) ? Number(key) : key]);
        if (Array.isArray(group) || key === 'conepair') continue;
        const raw: unknown = JSON.parse(text);
        const at = path.reduce((node, step) => (node as never)[step], raw) as unknown as Record<string, unknown>;
        at[`${key}x`] = at[key];
        delete at[key];
        tried++;
        const errors = errorsOf(validateDesign(raw)).map((error) => error.path);
        // Where the key that tells kinds apart is wrong, nothing else of the group can be judged.
        if (key === 'kind') expect(errors.length).toBeGreaterThan(0);
        else expect(errors).toEqual([expect.toSatisfy((told: string) => told.endsWith(`${key}x`))]);
      }
    };
    slipIn(JSON.parse(text), []);
    expect(tried).toBeGreaterThan(20);
  });

  it.each(['seatz', 'notess', 'x'])(
    '%s with something nested however deep in it is told, and no more looked into',
    (key) => {
      const deep = `{"conepair":1,"${key}":${'['.repeat(100_000)}${']'.repeat(100_000)}}`;
      expect(errorsOf(parseDesign(deep)).some(({ message }) => message.startsWith(`unknown key "${key}"`))).toBe(true);
    },
  );

  it('lists the keys allowed where none is near', () => {
    const message = errorsAt(changed('adjuster.colour', 'red'), 'adjuster.colour')[0]?.message;
    expect(message).toContain('pitch');
    expect(message).not.toContain('did you mean');
  });
});

describe('text that is not JSON', () => {
  it.each([
    ['{"conepair": 1,\n  "seats": [}\n', 2, 13],
    ['{"conepair": 1\n  "seats": []}', 2, 3],
    ['{\n\n  conepair: 1}', 3, 3],
  ])('%j: line %i, column %i', (text, line, column) => {
    const [error, ...more] = errorsOf(parseDesign(text));
    expect(more).toEqual([]);
    expect(error?.path).toBe('');
    expect(error?.message).toContain(`line ${line}, column ${column}`);
  });

  it('another kind of file is told as that, and no comma looked for', () => {
    for (const [text, begins] of [
      ['Dear customer, our price list', '"Dear customer, o"'],
      ['\n\n  %PDF-1.7\u0000\u0007…', '"%PDF-1.7··…"'],
      ['<html>', '"<html>"'],
    ] as const) {
      const { message } = errorsOf(parseDesign(text))[0]!;
      expect(message).toContain(begins);
      expect(message).toMatch(/a design begins with \{.*\.conepair\.json$/);
      expect(message).not.toMatch(/comma/);
    }
    const after = errorsOf(parseDesign('{"conepair": 1}\nmore'))[0]!.message;
    expect(after).toMatch(/line 2, column 1: something follows after the end/);
  });

  it('an empty file, or one of blanks, says so', () => {
    for (const text of ['', ' \n\t', '\uFEFF']) expect(errorsOf(parseDesign(text))[0]?.message).toContain('empty');
  });

  it('a file cut short at any place is refused and never throws', () => {
    const text = JSON.stringify(good());
    for (let n = 0; n < text.length; n += 7) {
      const errors = errorsOf(parseDesign(text.slice(0, n)));
      expect(errors).toHaveLength(1);
      expect(errors[0]!.path).toBe('');
    }
  });
});

describe('bounds', () => {
  // Path, the last value allowed, the first refused.
  it.each([
    ['seats[0].journal.halfAngle', null, 89],
    ['seats[0].journal.halfAngle', null, -89],
    ['seats[0].bush.diameter', null, 0],
    ['seats[0].bush.diameter', 5000, 5000.001],
    ['seats[0].film.target', 0, -1e-9],
    ['seats[0].film.tolerance', 10, 10.001],
    ['position', 1000, 1000.5],
    ['adjuster.pitch', 100, 101],
    ['adjuster.pitch', 1e-6, 0],
    ['friction', 0, -0.01],
    ['friction', 2, 2.01],
    ['print.thickness', 1, 1.01],
    ['run.speed', 200000, 200001],
    ['run.ambient', -50, -51],
    ['seats[0].journal.lobes[0].count', 1, 0],
    ['seats[0].journal.lobes[0].count', 200, 2.5],
    ['odds.draws', 100, 99],
    ['odds.seed', 4294967295, 4294967296],
    ['readings[0].sigma', 100, 0],
    ['conepair', 1, 2],
  ])('%s: %j is allowed, %j is not', (path, allowed, refused) => {
    if (allowed !== null) expect(errorsAt(changed(path, allowed), path)).toEqual([]);
    // the rule on half angles that differ may speak of the same field
    const errors = errorsAt(changed(path, refused), path).filter(({ message }) => !message.includes('may differ'));
    expect(errors).toHaveLength(1);
    expect(errors[0]!.message).toContain(`found ${refused}`);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, '22', null, [22], {}])('a diameter of %j is refused', (value) => {
    expect(errorsAt(changed('seats[0].bush.diameter', value), 'seats[0].bush.diameter').length).toBeGreaterThan(0);
  });

  it('1 to 8 seats', () => {
    const seats = (n: number) => ({
      conepair: 1,
      seats: Array.from({ length: n }, (_, i) => ({
        name: `s${i}`,
        journal: cone(3, 22, -5, 0),
        bush: cone(3, 22.01, -5, 0),
      })),
    });
    expect(validateDesign(seats(0)).ok).toBe(false);
    for (let n = 1; n <= 8; n++) expect(errorsOf(validateDesign(seats(n)))).toEqual([]);
    expect(errorsAt(seats(9), 'seats')).toHaveLength(1);
  });

  it.each(['', '   ', 'x'.repeat(41)])('the name %j is refused', (name) => {
    expect(validateDesign({ conepair: 1, seats: [{ ...good().seats[1], name }] }).ok).toBe(false);
  });
});

describe('rules that span fields', () => {
  it('names of seats are unique', () => {
    const design = good();
    design.seats.push({ ...design.seats[0]!, name: 'third' }, { ...design.seats[0]!, name: 'steep' });
    expect(errorsAt(design, 'seats[3].name')).toHaveLength(1);
    expect(errorsAt(design, 'seats[2].name')).toEqual([]);
  });

  it('a surface reaches noseward', () => {
    expect(errorsAt(changed('seats[0].bush.to', -25), 'seats[0].bush.to')).toHaveLength(1);
    expect(errorsAt(changed('seats[0].bush.to', -24.999), 'seats[0].bush.to')).toEqual([]);
  });

  it('the radius is above 0 along the whole surface', () => {
    // 45°, diameter 26 at 0: the apex stands at station -13.
    expect(errorsAt(changed('seats[1].journal.from', -13.001), 'seats[1].journal')).toHaveLength(1);
    expect(errorsAt(changed('seats[1].journal.from', -12.999), 'seats[1].journal')).toEqual([]);
    // noseward: the apex in front
    const noseward = {
      conepair: 1,
      seats: [{ name: 'n', journal: cone(-45, 26, 0, 13.001), bush: cone(-45, 26, 0, 12.9) }],
    };
    expect(errorsAt(noseward, 'seats[0].journal')).toHaveLength(1);
    expect(errorsAt(noseward, 'seats[0].bush')).toEqual([]);
  });

  it('a profile may not cut through the axis in the middle', () => {
    const journal = {
      ...cone(0, 1, -10, 10),
      profile: [
        [-3, 0],
        [0, -0.6],
        [3, 0],
      ],
    };
    expect(
      errorsAt({ conepair: 1, seats: [{ name: 'a', journal, bush: cone(0, 2, -10, 10) }] }, 'seats[0].journal'),
    ).toHaveLength(1);
  });

  it('a bush is smaller where its metal stands proud: the radius there stays above 0', () => {
    const bush = {
      ...cone(0, 1, -10, 10),
      profile: [
        [-3, 0],
        [0, 0.6],
        [3, 0],
      ],
    };
    expect(
      errorsAt({ conepair: 1, seats: [{ name: 'a', journal: cone(0, 0.5, -10, 10), bush }] }, 'seats[0].bush'),
    ).toHaveLength(1);
  });

  it('stations of a profile rise, and no steeper than 1 in 2', () => {
    const profile = (points: number[][]) => changed('seats[0].bush.profile', points);
    const at = 'seats[0].bush.profile[1]';
    expect(
      errorsAt(
        profile([
          [-20, 0],
          [-20, 0.001],
        ]),
        at,
      ),
    ).toHaveLength(1);
    expect(
      errorsAt(
        profile([
          [-20, 0],
          [-21, 0],
        ]),
        at,
      ),
    ).toHaveLength(1);
    expect(
      errorsAt(
        profile([
          [-20, 0],
          [-19, 0.6],
        ]),
        at,
      ),
    ).toHaveLength(1);
    expect(
      errorsAt(
        profile([
          [-20, 0],
          [-19, 0.4],
        ]),
        at,
      ),
    ).toEqual([]);
  });

  it('half angles of one seat differ by 30° at most', () => {
    expect(errorsAt(changed('seats[1].journal.halfAngle', 14.9), 'seats[1].journal.halfAngle')).toHaveLength(1);
    expect(errorsAt(changed('seats[1].journal.halfAngle', 15.1), 'seats[1].journal.halfAngle')).toEqual([]);
  });

  it.each(['readings[0].seat', 'cut.allow[0].seat', 'odds.spread[0].seat', 'run.supply[0].seat'])(
    '%s names a seat that exists',
    (path) => {
      const [error] = errorsAt(changed(path, 'nowhere'), path);
      expect(error?.message).toContain('nowhere');
      expect(error?.message).toContain('"shallow", "steep"');
    },
  );

  it('one of a viscosity or a grade; not both a pose and a load', () => {
    expect(errorsAt(changed('run.oil', {}), 'run.oil')).toHaveLength(1);
    expect(errorsAt(changed('run.oil', { viscosity: 0.01, grade: 10 }), 'run.oil')).toHaveLength(1);
    expect(errorsAt(changed('run.pose', { x: 0 }), 'run')).toHaveLength(1);
  });

  it('a cleanup is no more than its limit', () => {
    expect(errorsAt(changed('cut.allow[0].cleanup', 0.06), 'cut.allow[0].cleanup')).toHaveLength(1);
  });
});

describe('random corruption', () => {
  const junk = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom(undefined, null, Number.NaN, Number.POSITIVE_INFINITY, -0, 1e308, -1e308, '', '__proto__'),
  );

  /** Every place of a value, as lists of keys. */
  function places(value: unknown, at: string[] = []): string[][] {
    const below =
      typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, v]) => places(v, [...at, key]))
        : [];
    return at.length > 0 ? [at, ...below] : below;
  }
  const all = places(good());

  function corrupted(edits: readonly (readonly [string[], unknown])[]): unknown {
    const design: unknown = good();
    for (const [keys, value] of edits) {
      let at: unknown = design;
      for (const key of keys.slice(0, -1))
        at = typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined;
      if (typeof at === 'object' && at !== null && !Object.isFrozen(at))
        (at as Record<string, unknown>)[keys[keys.length - 1]!] = value;
    }
    return design;
  }

  const answers = (result: Validation) => {
    if (result.ok) return;
    expect(result.errors.length).toBeGreaterThan(0);
    for (const { path, message } of result.errors) {
      expect(typeof path).toBe('string');
      expect(message.length).toBeGreaterThan(0);
    }
  };

  it('of values never throws, and a refusal always says why', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom(...all), junk), { minLength: 1, maxLength: 6 }), (edits) =>
        answers(validateDesign(corrupted(edits))),
      ),
      { seed: 101, numRuns: 1500 },
    );
  });

  it('of whole values never throws', () => {
    fc.assert(
      fc.property(junk, (raw) => answers(validateDesign(raw))),
      { seed: 102, numRuns: 500 },
    );
  });

  it('of text never throws', () => {
    const text = JSON.stringify(good(), null, 1);
    const edit = fc.tuple(
      fc.nat(text.length),
      fc.nat(6),
      fc.oneof(fc.string({ maxLength: 4 }), fc.constantFrom('{', '}', '[', ']', '"', ',', ':', '\\u', '1e999', '-')),
    );
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) =>
        answers(parseDesign(edits.reduce((t, [at, cut, put]) => t.slice(0, at) + put + t.slice(at + cut), text))),
      ),
      { seed: 103, numRuns: 1000 },
    );
  });
});
