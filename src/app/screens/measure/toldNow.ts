/** What the last answer tells of the notebook of now, which may have other entries meanwhile. */
import type { Design } from '../../../design/definition.ts';
import type { MeasureReport } from '../../../report/measure/definition.ts';

/**
 * The parts of the answer that tell of single entries, by the places of now; an entry that was changed or is new has
 * none.
 */
export function toldNow(measure: MeasureReport, of: Design, now: Design): MeasureReport {
  const [old, entries] = [of.readings ?? [], now.readings ?? []];
  if (old === entries) return measure;
  const texts = old.map((reading) => JSON.stringify(reading));
  const place = new Map<number, number>();
  entries.forEach((reading, i) => {
    const text = JSON.stringify(reading);
    const was = texts.findIndex((other, k) => other === text && !place.has(k));
    if (was >= 0) place.set(was, i);
  });
  const moved = <T extends { index: number }>(told: readonly T[]): T[] =>
    told.flatMap((one) => (place.has(one.index) ? [{ ...one, index: place.get(one.index)! }] : []));
  return {
    ...measure,
    readings: moved(measure.readings),
    impossible: moved(measure.impossible),
    disagreeing: moved(measure.disagreeing),
  };
}
