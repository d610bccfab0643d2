/** Whatever of a design names a seat, found in the definition itself, so that no new field is forgotten. */
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { type Design, design } from '../../src/design/definition.ts';
import { references } from '../../src/design/seatNames.ts';

type Schema = z.core.JSONSchema.BaseSchema;

const OLD = 'the old name';

/** A value with everything in it that a schema allows, lists with one entry of every kind; every seat named is OLD. */
function filled(schema: Schema, key = ''): unknown {
  const options = (schema.anyOf as Schema[] | undefined) ?? (schema.oneOf as Schema[] | undefined);
  if (options) return filled(options[0]!, key);
  if (schema.type === 'object')
    return Object.fromEntries(
      Object.entries(schema.properties ?? {}).map(([name, of]) => [name, filled(of as Schema, name)]),
    );
  if (schema.type !== 'array') return /^seats?$/.test(key) ? OLD : (schema.const ?? `some ${key}`);
  const items = (schema.prefixItems as Schema[] | undefined) ?? [schema.items as Schema];
  return items
    .flatMap((item) => ((item.anyOf ?? item.oneOf) as Schema[] | undefined) ?? [item])
    .map((item) => filled(item, key));
}

const { seats: _, ...whole } = filled(z.toJSONSchema(design, { io: 'input' })) as Design;
const times = (value: unknown) => JSON.stringify(value).split(`"${OLD}"`).length - 1;

test('a seat renamed is renamed wherever the definition lets one be named', () => {
  expect(times(whole)).toBeGreaterThan(12);
  const after = references(whole as Design, () => 'new');
  expect(JSON.stringify(after).replaceAll('"new"', `"${OLD}"`)).toBe(JSON.stringify(whole));
  expect(times(after)).toBe(0);
});

test('a seat removed is named nowhere any more', () => {
  expect(times(references(whole as Design, () => null))).toBe(0);
});
