/**
 * npm run -s schema
 *
 * Writes the JSON Schema of the design file, of a lesson and of the report, from the definitions that validate them.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as z from 'zod/mini';
import { design } from '../design/definition.ts';
import { lesson } from '../lessons/definition.ts';
import { report } from '../report/definition.ts';

/** The text of each schema by its file name under assets. */
export function schemaTexts(): Record<'design.schema.json' | 'report.schema.json' | 'lesson.schema.json', string> {
  return {
    // what a person writes, and what the program answers
    'design.schema.json': textOf(z.toJSONSchema(design, { io: 'input' }), 'Conepair design'),
    'lesson.schema.json': textOf(z.toJSONSchema(lesson, { io: 'input' }), 'Conepair lesson'),
    'report.schema.json': textOf(z.toJSONSchema(report, { io: 'output' }), 'Conepair report'),
  };
}

function textOf({ $schema, ...rest }: z.core.JSONSchema.BaseSchema, title: string): string {
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, text] of Object.entries(schemaTexts()))
    writeFileSync(new URL(`../../assets/${name}`, import.meta.url), text);
}
