/** Places in the design: what stands there, what the definition says, the design with another value. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../src/design/parse.ts';
import { quantityAt, valueAt, without, withValue } from '../../src/design/place.ts';
import { quantityText, typedField, typedQuantity } from '../../src/design/quantity.ts';
import { withSeatsRenamed } from '../../src/design/seatNames.ts';
import { withoutSeat, withSeatCopied } from '../../src/design/seats.ts';
import { validateDesign } from '../../src/design/validate.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('the demo is not a valid design');
const demo = parsed.design;
/** With a reading, an allowance, a spread and a groove that name the seats. */
const named = validateDesign({
  ...demo,
  readings: [
    { kind: 'diameter', seat: 'steep', part: 'bush', value: 24, sigma: 0.001, station: 1.2 },
    { kind: 'standOff', value: 0, sigma: 0.001 },
  ],
  cut: { allow: [{ seat: 'steep', part: 'journal' }] },
  odds: { spread: [{ seat: 'shallow', part: 'bush', of: 'halfAngle', sigma: 0.001 }] },
  run: {
    speed: 1000,
    oil: { grade: 10 },
    supply: [{ seat: 'steep', angle: 90, from: 1, to: 4, width: 2, pressure: 0 }],
  },
});
if (!named.ok) throw new Error(JSON.stringify(named.errors));

test('a value is read and written by its path, and nothing else is touched', () => {
  expect(valueAt(demo, 'seats[1].journal.diameter')).toBe(24);
  expect(valueAt(demo, 'run.heat.duration')).toBeUndefined();
  const changed = withValue(demo, 'seats[1].journal.diameter', 23.5);
  expect(changed.seats[1]!.journal.diameter).toBe(23.5);
  expect(changed.seats[0]).toBe(demo.seats[0]);
  expect(demo.seats[1]!.journal.diameter).toBe(24);
  expect(withValue(without(demo, 'adjuster.pitch'), 'adjuster.pitch', 1).adjuster).toEqual({ pitch: 1 });
});

test('what is taken away takes with it the section that cannot do without it', () => {
  expect(without(demo, 'adjuster.pitch').adjuster).toBeUndefined();
  expect(without(demo, 'seats[0].film.target').seats[0]).not.toHaveProperty('film');
  expect(without(demo, 'seats[0].film.tolerance').seats[0]!.film).toEqual({ target: 0.0025 });
  expect(without(demo, 'position')).not.toHaveProperty('position');
  for (const path of ['adjuster.pitch', 'seats[0].film.target', 'play.indicator', 'friction'])
    expect(validateDesign(without(demo, path)).ok, path).toBe(true);
});

test('the definition names, explains and bounds every number a control can show', () => {
  expect(quantityAt('seats[0].journal.halfAngle')).toMatchObject({
    title: 'Half angle',
    quantity: 'angle',
    unit: 'deg',
    optional: false,
  });
  expect(quantityAt('seats[3].bush.halfAngle').bounds).toEqual([
    { side: 'least', value: -89, inclusive: false },
    { side: 'greatest', value: 89, inclusive: false },
  ]);
  expect(quantityAt('friction')).toMatchObject({ optional: true, quantity: 'ratio' });
  expect(() => quantityAt('seats[0].journal.colour')).toThrow(/colour/);
  expect(quantityAt('readings[0].station', named.design)).toMatchObject({
    quantity: 'length',
    description: 'Where it was read',
  });
  expect(quantityAt('readings[1].value', named.design)).toMatchObject({ title: 'Read', quantity: 'fine' });
  expect(() => quantityAt('readings[1].station', named.design)).toThrow(/station/);
});

test('numbers are typed in the units a person likes and refused in them', () => {
  const diameter = quantityAt('seats[0].journal.diameter');
  expect(typedQuantity(diameter, '1', 'inch')).toEqual({ ok: true, value: 25.4 });
  expect(typedQuantity(diameter, '22 mm', 'inch')).toEqual({ ok: true, value: 22 });
  expect(typedQuantity(diameter, '−3', 'inch')).toEqual({
    ok: false,
    message: 'found −3.0000 in; it must be more than 0.0000 in',
  });
  expect(typedQuantity(quantityAt('friction'), '0,15', 'metric')).toEqual({ ok: true, value: 0.15 });
  expect(typedQuantity(quantityAt('friction'), '5', 'metric')).toEqual({
    ok: false,
    message: 'found 5; it must be at most 2',
  });
  expect(typedQuantity(quantityAt('run.speed'), '1200 rpm', 'metric')).toEqual({ ok: true, value: 1200 });
  expect(typedQuantity(quantityAt('run.speed'), '20 Hz', 'metric')).toEqual({
    ok: false,
    message: 'unit "Hz" is not known here; use rev/min',
  });
  expect(typedQuantity(quantityAt('run.load.z'), 'much', 'metric').ok).toBe(false);
  expect(typedQuantity(quantityAt('position'), '1e999', 'metric').ok).toBe(false);
  expect(quantityText('force', -40, 'metric')).toBe('−40 N');
  // In inch the numbers of the run are too; either unit may be typed in either.
  expect(quantityText('temperature', 20, 'inch')).toBe('68 °F');
  expect(typedQuantity(quantityAt('run.ambient'), '68', 'inch')).toEqual({ ok: true, value: expect.closeTo(20, 12) });
  expect(typedQuantity(quantityAt('run.ambient'), '20 °C', 'inch')).toEqual({ ok: true, value: 20 });
  expect(typedQuantity(quantityAt('run.load.y'), '-10 lbf', 'metric')).toEqual({
    ok: true,
    value: expect.closeTo(-44.482216152605, 9),
  });
  expect(typedQuantity(quantityAt('run.pose.tiltX'), '2.5', 'metric')).toEqual({
    ok: true,
    value: expect.closeTo(2.5e-5, 15),
  });
  expect(typedQuantity(quantityAt('run.pose.tiltX'), '0.00002 rad', 'inch')).toEqual({ ok: true, value: 0.00002 });
  expect(typedQuantity(quantityAt('run.load.y'), '3 kp', 'inch')).toEqual({
    ok: false,
    message: 'unit "kp" is not known here; use N or lbf',
  });
});

test('every number can be shown and typed back without loss', () => {
  const places = {
    length: 'seats[0].journal.station',
    fine: 'position',
    angle: 'seats[0].bush.halfAngle',
    phase: 'run.supply[0].angle',
    ratio: 'friction',
    force: 'run.load.x',
    temperature: 'run.ambient',
    tilt: 'run.pose.tiltX',
  } as const;
  for (const [quantity, path] of Object.entries(places)) {
    for (const value of quantity === 'ratio' || quantity === 'tilt' ? [0.012, 0.1 / 3] : [-22.0164, 1 / 3, 0]) {
      for (const system of ['metric', 'inch'] as const) {
        const typed = typedQuantity(
          quantityAt(path),
          quantityText(quantity as keyof typeof places, value, system),
          system,
        );
        if (!typed.ok) expect.fail(typed.message);
        expect(typed.value, `${quantity} ${system}`).toBeCloseTo(value, 5);
      }
    }
  }
});

test('renaming, copying and removing a seat carries along whatever names it', () => {
  const renamed = withSeatsRenamed(named.design, new Map([[1, 'thrust']]));
  expect(renamed.readings![0]).toMatchObject({ seat: 'thrust' });
  expect(renamed.cut!.allow[0]!.seat).toBe('thrust');
  expect(renamed.run!.supply![0]!.seat).toBe('thrust');
  expect(renamed.odds!.spread![0]).toMatchObject({ seat: 'shallow' });
  expect(validateDesign(renamed).ok).toBe(true);
  const clash = validateDesign(withSeatsRenamed(named.design, new Map([[1, 'shallow']])));
  expect(clash.ok).toBe(false);

  const copied = withSeatCopied(withSeatCopied(named.design, 0, 'metric'), 0, 'metric');
  expect(copied.seats.map((seat) => seat.name)).toEqual(['shallow', 'steep', 'shallow 2', 'shallow 3']);
  expect(validateDesign(copied).ok).toBe(true);
  // Behind all others, none on top of another.
  for (const part of ['journal', 'bush'] as const)
    for (const seat of copied.seats.slice(2))
      expect(seat[part].to).toBeLessThan(Math.min(...copied.seats.slice(0, 2).map((other) => other[part].from)));

  const fewer = withoutSeat(named.design, 1);
  expect(fewer.readings).toEqual([{ kind: 'standOff', value: 0, sigma: 0.001 }]);
  expect(fewer.cut!.allow).toEqual([]);
  expect(validateDesign(fewer).ok).toBe(true);
});

test('a film typed in the unit of the sizes beside it is asked again: a number alone is tenths, or micrometres', () => {
  const film = quantityAt('seats[0].film.target', demo);
  expect(typedField(film, '.0001', 'inch')).toEqual({
    ok: false,
    message: 'found .0001, and a number alone is tenths here: write .0001 in, or .0001 tenths',
  });
  expect(typedField(film, '0,0025', 'metric')).toEqual({
    ok: false,
    message: 'found 0,0025, and a number alone is µm here: write 0,0025 mm, or 0,0025 µm',
  });
  const value = (text: string, system: 'metric' | 'inch') => {
    const typed = typedField(film, text, system);
    return typed.ok ? typed.value : typed.message;
  };
  expect(value('.0001 in', 'inch')).toBeCloseTo(0.00254, 12);
  expect(value('.0001 tenths', 'inch')).toBeCloseTo(2.54e-7, 16);
  expect(value('0,0025 mm', 'metric')).toBe(0.0025);
  expect(value('0.01', 'metric')).toBeCloseTo(1e-5, 15);
  const position = quantityAt('position', demo);
  expect(typedField(position, '0', 'inch')).toEqual({ ok: true, value: 0 });
  expect(typedField(position, '-.0005', 'inch').ok).toBe(false);
  // Of a table the columns tell, and small values are its own.
  expect(typedQuantity(film, '0.004', 'metric')).toEqual({ ok: true, value: 0.004 * 0.001 });
});
