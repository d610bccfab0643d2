/**
 * The report, defined once: types, the published JSON Schema (assets/report.schema.json), and what the tests
 * hold every report against. Units are those of the files: mm, degrees.
 */
import * as z from 'zod/mini';
import { beliefReport } from './belief/definition.ts';
import { cutReport } from './cut/definition.ts';
import { filmReport } from './film/definition.ts';
import { fitReport } from './fit/definition.ts';
import { measureReport } from './measure/definition.ts';
import { oddsReport } from './odds/definition.ts';
import { playReport } from './play/definition.ts';
import { printReport } from './print/definition.ts';

const designError = z.strictObject({ path: z.string(), message: z.string() });

export const report = z.strictObject({
  conepair: z.literal(1),
  file: z.string(),
  title: z.optional(z.string()),
  errors: z.optional(z.array(designError)),
  fit: z.optional(fitReport),
  play: z.optional(playReport),
  print: z.optional(printReport),
  film: z.optional(filmReport),
  measure: z.optional(measureReport),
  belief: z.optional(beliefReport),
  cut: z.optional(cutReport),
  odds: z.optional(oddsReport),
});

export type Report = z.infer<typeof report>;
