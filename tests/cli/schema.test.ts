import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { schemaTexts } from '../../src/cli/schema.ts';

describe('the published schemas', () => {
  test.each(Object.entries(schemaTexts()))(
    'assets/%s is what the definitions say (npm run schema writes it)',
    (name, text) => {
      expect(readFileSync(new URL(`../../assets/${name}`, import.meta.url), 'utf8')).toBe(text);
    },
  );

  test('carry a title and end in a newline', () => {
    for (const text of Object.values(schemaTexts())) {
      expect(JSON.parse(text).title).toMatch(/^Conepair /);
      expect(text.endsWith('}\n')).toBe(true);
    }
  });

  test('require of a design its version and its seats', () => {
    expect(JSON.parse(schemaTexts()['design.schema.json']).required).toEqual(['conepair', 'seats']);
  });
});
