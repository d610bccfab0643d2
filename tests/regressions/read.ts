import { readFileSync } from 'node:fs';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';

/** A design that once went wrong, by the name of its file here. */
export function regression(name: string): Design {
  const result = parseDesign(readFileSync(new URL(`${name}.conepair.json`, import.meta.url), 'utf8'));
  if (!result.ok) throw new Error(`${result.errors[0]!.path} ${result.errors[0]!.message}`);
  return result.design;
}
