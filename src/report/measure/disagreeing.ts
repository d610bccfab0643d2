/** Readings that do not go with the others, each with the slips that may be behind it. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { CutBetween } from '../../engine/gauging/cutsBetween.ts';
import type { Estimate } from '../../engine/gauging/estimate.ts';
import type { Reading } from '../../engine/gauging/reading.ts';
import { slipsOf } from '../../engine/gauging/slips.ts';
import { millimetres } from '../convert.ts';
import { shopTools } from '../shopTools.ts';
import type { MeasureReport } from './definition.ts';
import { fromReading } from './toReading.ts';

/** @param places of the readings in the notebook */
export function disagreeingSection(
  design: Design,
  found: Estimate,
  readings: readonly Reading[],
  places: readonly number[],
  tools: System,
): MeasureReport['disagreeing'] {
  return found.disagreeing.map((one) => {
    const slips = slipsOf(found, readings, one.index, shopTools(design, tools)).map(
      ({ kind, instead, metal, chance }) => ({
        kind,
        instead: fromReading(design, instead),
        ...(metal && { metal: metalReport(design, metal) }),
        chance,
      }),
    );
    return { ...one, index: places[one.index]!, ...(slips.length > 0 && { slips }) };
  });
}

function metalReport(design: Design, { cut, meant }: { cut: CutBetween; meant: number }) {
  const seat = cut.of === 'surface' ? { seat: design.seats[cut.seat]!.name } : {};
  return { ...seat, part: cut.part, told: millimetres(cut.normal), meant: millimetres(meant) };
}
