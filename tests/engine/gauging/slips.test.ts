/** Slips made on purpose are named, each by its own kind; honest readings that lie far off are given no name. */
import { describe, expect, it } from 'vitest';
import type { CutBetween } from '../../../src/engine/gauging/cutsBetween.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { type SlipKind, slipsOf } from '../../../src/engine/gauging/slips.ts';
import { INCH_TOOLS, METRIC_TOOLS } from '../../../src/engine/gauging/tooling.ts';
import { withMetalOff } from '../../../src/engine/parts/asTheyStand.ts';
import { disturbed, doubleCone, estimated, MM, noisy, normals, notebook, readFrom, UM } from './pairs.ts';

const nominal = doubleCone();
const truth = disturbed(nominal, [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
const honest = noisy(notebook(nominal, truth), normals(5));

/** A notebook in which one reading was written down otherwise than it was taken. */
const slipped = (index: number, by: (reading: Reading) => Reading): Reading[] =>
  honest.map((reading, i) => (i === index ? by(reading) : reading));
const place = (is: (reading: Reading) => boolean) => honest.findIndex(is);

const rolls = place(({ kind }) => kind === 'overRolls');
const ball = place((r) => r.kind === 'ballDepth' && r.seat === 1);
const diameter = place(({ kind }) => kind === 'diameter');
const rise = place(({ kind }) => kind === 'sineRise');
const standOff = place(({ kind }) => kind === 'standOff');

const slipsIn = (readings: readonly Reading[], index: number, tools = METRIC_TOOLS) =>
  slipsOf(estimated(nominal, readings), readings, index, tools);
const named = (index: number, by: (reading: Reading) => Reading, tools = METRIC_TOOLS) =>
  slipsIn(slipped(index, by), index, tools);

const as = <K extends Reading['kind']>(kind: K, by: (reading: Extract<Reading, { kind: K }>) => Reading) => {
  return (reading: Reading): Reading =>
    reading.kind === kind ? by(reading as Extract<Reading, { kind: K }>) : reading;
};

describe('a slip is named by its kind, with what it should have been', () => {
  const SLIPS: [SlipKind, number, (reading: Reading) => Reading][] = [
    ['roll', rolls, as('overRolls', (r) => ({ ...r, roll: 4 * MM }))],
    ['tenfold', rise, (r) => ({ ...r, value: 10 * r.value })],
    ['thou', diameter, (r) => ({ ...r, value: r.value + 25.4 * UM })],
    ['turn', diameter, (r) => ({ ...r, value: r.value - 0.5 * MM })],
    ['halved', diameter, (r) => ({ ...r, value: r.value / 2 })],
    ['sign', standOff, (r) => ({ ...r, value: -r.value })],
    [
      'ball',
      ball,
      as('ballDepth', (r) => {
        // taken with a ball of the shop, written down as the next
        const used = { ...r, ball: 36 * MM };
        return { ...used, value: predict(used, truth).value!, ball: 36.5 * MM };
      }),
    ],
  ];

  it.each(SLIPS)('%s', (kind, index, by) => {
    const [likely, ...rest] = named(index, by);
    expect(likely?.kind).toBe(kind);
    expect(likely!.chance).toBeGreaterThan(0.5);
    expect(rest.every(({ chance }) => chance <= likely!.chance)).toBe(true);
    if (kind !== 'ball') {
      const { value } = likely!.instead;
      expect(Math.abs(value - honest[index]!.value)).toBeLessThan(1e-12);
      if (kind === 'roll') expect((likely!.instead as Reading & { kind: 'overRolls' }).roll).toBeCloseTo(3 * MM, 12);
    } else expect((likely!.instead as Reading & { kind: 'ballDepth' }).ball).toBeCloseTo(36 * MM, 12);
  });

  it('another face of the same part, where balls were read from one', () => {
    const other = place((r) => r.kind === 'ballDepth' && r.seat === 0);
    const readings = slipped(
      ball,
      as('ballDepth', (r) => ({ ...r, face: 6 * MM })),
    );
    // the depth was taken from the face at 5 mm, as all others
    expect(readings[other]).toMatchObject({ face: 5 * MM });
    expect(slipsIn(readings, ball)[0]).toMatchObject({
      kind: 'face',
      instead: { face: 5 * MM },
    });
  });

  it('a roll that only another reading speaks of, in no drawer of the shop', () => {
    const by = as('overRolls', (r) => ({ ...r, roll: (25.4 / 8) * MM }));
    expect(named(rolls, by, { ...METRIC_TOOLS, rolls: [] })[0]).toMatchObject({
      kind: 'roll',
      instead: { roll: 3 * MM },
    });
  });

  it('a turn of an inch thimble is 25 thou', () => {
    const by = (r: Reading) => ({ ...r, value: r.value + 0.635 * MM });
    expect(named(diameter, by, INCH_TOOLS)[0]?.kind).toBe('turn');
    expect(named(diameter, by, METRIC_TOOLS)).toEqual([]);
  });
});

describe('metal between readings that was written down otherwise than it came off', () => {
  const off = 52 * UM;
  const on = { seat: 0, part: 'journal' } as const;
  const across = 2 / Math.cos(nominal[0]!.journal.halfAngle);
  const after = withMetalOff(truth, [{ of: 'surface', ...on, normal: off }]);
  const again = readFrom(after, honest[rolls]!)[0]!;
  /** All from before the cut, and one after it; the parts sought are those of now, or of before the cut. */
  const told = (normal: number, sought: 'now' | 'then'): Reading[] => {
    const cut: CutBetween = { of: 'surface', ...on, normal, sigma: 0.5 * UM };
    return sought === 'now'
      ? [...honest.map((reading): Reading => ({ ...reading, since: [{ cut, sign: -1 }] })), again]
      : [...honest, { ...again, since: [{ cut, sign: 1 }] }];
  };

  it.each([
    ['the diameter for what came off square', across],
    ['what came off square for the diameter', 1 / across],
    ['ten times as much', 10],
    ['a tenth', 0.1],
  ])('%s', (_, times) => {
    for (const sought of ['now', 'then'] as const) {
      const readings = told(times * off, sought);
      const [likely] = slipsIn(readings, readings.length - 1);
      expect(likely?.kind).toBe('metal');
      expect(likely!.chance).toBeGreaterThan(0.5);
      expect(likely!.metal!.cut).toMatchObject(on);
      // by the half angle as it was read
      expect(likely!.metal!.meant / off).toBeCloseTo(1, 3);
    }
  });

  it('is not named where it came off as told', () => {
    for (const sought of ['now', 'then'] as const) {
      const readings = told(off, sought);
      for (const index of readings.keys()) expect(slipsIn(readings, index)).toEqual([]);
    }
  });
});

describe('nothing is named', () => {
  it('of honest readings', () => {
    for (const index of honest.keys()) expect(slipsIn(honest, index)).toEqual([]);
  });

  it('where the reading is off by what no slip explains', () => {
    expect(named(diameter, (r) => ({ ...r, value: r.value + 61 * UM }))).toEqual([]);
  });

  it('where nothing else tells what it should read', () => {
    const alone = [{ ...honest[diameter]!, value: 1.03 * honest[diameter]!.value }];
    expect(slipsIn(alone, 0)).toEqual([]);
  });

  it('the chances of all that is named are together no more than one', () => {
    const slips = named(diameter, (r) => ({ ...r, value: r.value + 25.4 * UM }));
    expect(slips.reduce((sum, { chance }) => sum + chance, 0)).toBeLessThanOrEqual(1);
  });
});
