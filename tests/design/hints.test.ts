/**
 * What is said of every field of the design, from its definition, is in the units of the person; every default is data.
 */
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { schemaTexts } from '../../src/cli/schema.ts';
import { type Design, design, type Quantity, type QuantityMeta } from '../../src/design/definition.ts';
import { defaultAt, quantityAt } from '../../src/design/place.ts';
import { hintText, inSystem, quantityText, typedQuantity } from '../../src/design/quantity.ts';
import { validateDesign } from '../../src/design/validate.ts';

interface Node {
  def: {
    type: string;
    innerType?: Node;
    shape?: Record<string, Node>;
    element?: Node;
    items?: Node[];
    options?: Node[];
  };
}

interface Field {
  path: string;
  kind: string | undefined;
  node: Node;
}

/** Every leaf of the definition with a path that leads to it; of a choice between kinds every kind. */
function fieldsOf(node: Node, path = '', kind?: string): Field[] {
  const { type, innerType, shape, element, items, options } = node.def;
  if (type === 'optional') return fieldsOf(innerType!, path, kind);
  if (shape)
    return Object.entries(shape).flatMap(([key, inner]) => fieldsOf(inner, path === '' ? key : `${path}.${key}`, kind));
  if (element) return fieldsOf(element, `${path}[0]`, kind);
  if (items) return items.flatMap((inner, i) => fieldsOf(inner, `${path}[${i}]`, kind));
  if (options)
    return options.flatMap((option) =>
      fieldsOf(
        option,
        path,
        (option.def.shape?.kind as unknown as { def: { values: string[] } } | undefined)?.def.values[0],
      ),
    );
  return [{ path, kind, node }];
}

const metaOf = ({ node }: Field) => (z.globalRegistry.get(node as never) ?? {}) as Partial<QuantityMeta>;
const all = fieldsOf(design as unknown as Node);
const fields = all.filter((field) => metaOf(field).quantity !== undefined);
const holder = (kind: string | undefined) => ({ readings: [{ kind }] }) as unknown as Design;

/** A figure with a unit of the one shop or the other. Oil goes by the units of its data sheet in both. */
const METRIC = /\d ?(?:mm|µm|nm|N|MPa|°C|K|kg|W|J)(?![a-z])/;
const INCH = /\d ?(?:in|tenths|thou|lbf?|psi|°F|Btu|µin)(?![a-z])/;
const OIL: readonly Quantity[] = ['viscosity', 'kinematicViscosity', 'density'];
const PLAIN: readonly Quantity[] = ['ratio', 'count', 'speed', 'time', 'angle', 'phase'];

test('the walk sees the whole definition', () => {
  expect(fields.length).toBeGreaterThan(100);
  for (const { path } of [...fields.filter(({ path }) => !path.startsWith('readings'))])
    expect(() => quantityAt(path)).not.toThrow();
});

test.each(fields.map((field) => [`${field.path}${field.kind ? ` of ${field.kind}` : ''}`, field] as const))(
  '%s',
  (_, field) => {
    const at = quantityAt(field.path, holder(field.kind));
    const own = OIL.includes(at.quantity)
      ? (text: string) => text.replace(/[\d.]+ (?:mm²\/s|Pa·s|g\/cm³)/g, '')
      : (text: string) => text;
    expect(own(hintText(at, 'inch'))).not.toMatch(METRIC);
    expect(own(hintText(at, 'metric'))).not.toMatch(INCH);
    for (const system of ['metric', 'inch'] as const) {
      const hint = hintText(at, system);
      expect(hint).not.toMatch(/NaN|undefined|^;/);
      if (at.default !== undefined) {
        expect(hint).toMatch(/ when left out$/);
        // A figure that has a unit is never told without.
        if (!PLAIN.includes(at.quantity))
          expect(hint.slice(hint.lastIndexOf(';'))).toMatch(/[\d.]+(?:e-\d+)? ?[^\d\s,.]/);
      }
      // Bounds are told in the unit of the field.
      for (const { side, value } of at.bounds) {
        const beyond = side === 'least' ? value - Math.max(1, Math.abs(value)) : value + Math.max(1, Math.abs(value));
        const typed = typedQuantity(at, quantityText(at.quantity, beyond, system), system);
        expect(typed.ok).toBe(false);
        const said = own((typed as { message: string }).message);
        expect(said).not.toMatch(system === 'inch' ? METRIC : INCH);
      }
    }
  },
);

test('no default is written into a description', () => {
  for (const field of all) expect(metaOf(field).description ?? '', field.path).not.toMatch(/\d[^;]* when left out/);
});

test('the default of every optional number is one that it may have, and stands in the JSON Schema', () => {
  const withDefault = fields.filter((field) => metaOf(field).default !== undefined);
  expect(withDefault.length).toBeGreaterThan(45);
  for (const field of withDefault) {
    const { bounds, default: value } = quantityAt(field.path, holder(field.kind));
    expect(
      bounds.every(
        (bound) =>
          (bound.side === 'least' ? value! > bound.value : value! < bound.value) ||
          (bound.inclusive && value === bound.value),
      ),
      field.path,
    ).toBe(true);
  }
  const schema = JSON.parse(schemaTexts()['design.schema.json']) as {
    properties: { cut: { properties: { machine: { properties: Record<string, { default?: number }> } } } };
  };
  expect(schema.properties.cut.properties.machine.properties.pass!.default).toBe(defaultAt('cut.machine.pass'));
});

test('what a machinist reads beside the depth of a pass', () => {
  const pass = quantityAt('cut.machine.pass');
  expect(hintText(pass, 'metric')).toBe('Cross feed of one pass, on the radius; 5 µm when left out');
  expect(hintText(pass, 'inch', 0.0002 * 25.4)).toBe('Cross feed of one pass, on the radius; 2 tenths when left out');
  expect(hintText(quantityAt('run.ambient'), 'inch')).toBe('Of the air round the spindle; 68 °F when left out');
  expect(hintText(quantityAt('run.roughness.bush'), 'metric')).toBe(
    'Root mean square Rq; 0.2 µm, a reamed and lapped bush, when left out',
  );
  expect(hintText(quantityAt('run.heat.journal.expansion'), 'inch')).toBe(
    'Thermal expansion of the journal; 6.28 µin/(in·°F), plain carbon steel, when left out',
  );
});

test('what a file is refused for has units, and is told in the person’s', () => {
  const result = validateDesign({
    conepair: 1,
    seats: [
      {
        name: 'a',
        journal: { halfAngle: 3, diameter: 60_000, station: 0, from: -20, to: 0 },
        bush: { halfAngle: 3, diameter: 20, station: 0, from: -20, to: 0 },
      },
    ],
    run: { speed: 1, oil: { grade: 10 }, load: { y: 2e6 } },
  });
  const messages = result.ok ? [] : result.errors.map(({ message }) => message);
  expect(messages).toEqual([
    'found 60000 mm; it must be at most 5000 mm',
    'found 2000000 N; it must be at most 1000000 N',
  ]);
  expect(messages.map((message) => inSystem(message, 'inch'))).toEqual([
    'found 2362.2047244 in; it must be at most 196.8503937 in',
    'found 449617.89 lbf; it must be at most 224808.94 lbf',
  ]);
  expect(messages.map((message) => inSystem(message, 'metric'))).toEqual(messages);
  // Nought is told in the unit of what stands beside it.
  expect(inSystem('found -5 mm; it must be above 0 mm', 'inch')).toBe(
    'found −0.1968504 in; it must be above 0.0000 in',
  );
  expect(inSystem('found -0.005 mm; it must be above 0 mm', 'inch')).toMatch(/tenths; it must be above 0\.00 tenths$/);
});

test('heat and wear in an inch shop: Btu and thou by their definitions, typed back to what they were', () => {
  const shown = (quantity: Quantity, value: number) => quantityText(quantity, value, 'inch');
  // 1 Btu/(lb·°F) is 4186.8 J/(kg·K) and 1 Btu/(h·ft²·°F) 5.678263 W/(m²·K). @source NIST-SP811 appendix B.8
  expect(shown('specificHeat', 4186.8)).toBe('1 Btu/(lb·°F)');
  expect(shown('cooling', 5.678263)).toMatch(/^(1|0\.9999999\d*|1\.0000000\d*) Btu/);
  expect(shown('wear', 0.001)).toBe('82.737088 thou³/(lbf·ft)');
  for (const [quantity, value] of [
    ['specificHeat', 486],
    ['cooling', 10],
    ['wear', 0.004],
  ] as const) {
    const at = { title: '', description: '', quantity, unit: '', bounds: [], optional: true };
    const back = typedQuantity(at, shown(quantity, value), 'inch');
    expect(back.ok && back.value / value).toBeCloseTo(1, 7);
  }
});
