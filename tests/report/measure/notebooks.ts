/** The demo with a notebook, and designs made from it. */
import { readFileSync } from 'node:fs';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import type { Reading } from '../../../src/report/measure/kinds.ts';
import { predictedReading } from '../../../src/report/measure/predictedReading.ts';

export function notebookDemo(change: (design: Design) => Design = (d) => d): Design {
  const result = parseDesign(
    readFileSync(new URL('../../../assets/designs/notebook.conepair.json', import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error(result.errors[0]!.message);
  return change(result.design);
}

/** The same set-ups, read without error from the parts as drawn. */
export function exactly(design: Design): Design {
  return {
    ...design,
    readings: design.readings!.map(
      (reading): Reading => ({ ...reading, value: predictedReading(design, reading).value! }),
    ),
  };
}

export const keeping = (design: Design, keep: (reading: Reading, index: number) => boolean): Design => ({
  ...design,
  readings: design.readings!.filter(keep),
});
