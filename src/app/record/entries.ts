/** Changes of the record: another entry, one less. */
import type { Design } from '../../design/definition.ts';
import { doneSoFar } from '../../report/measure/metalBetween.ts';

export type Recorded = NonNullable<Design['record']>[number];

/** One entry more, made after all the trials so far. */
export function withRecorded(design: Design, entry: Recorded): Design {
  const after = doneSoFar(design);
  return { ...design, record: [...(design.record ?? []), { ...entry, ...(after > 0 && { after }) }] };
}

export function withoutRecorded(design: Design, index: number): Design {
  const { record = [], ...rest } = design;
  const kept = record.filter((_, i) => i !== index);
  return kept.length > 0 ? { ...rest, record: kept } : rest;
}
