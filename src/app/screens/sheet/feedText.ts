/** A feed on paper, as the person's own dials count it. */

import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { divisionText } from '../../../design/tools.ts';
import { fineText, type System } from '../../../design/units.ts';
import { millimetres } from '../../../report/convert.ts';
import type { CutStepReport } from '../../../report/cut/definition.ts';
import { toMachine } from '../../../report/cut/toCut.ts';
import { divisionsText, leastSet, passesText } from '../cut/Steps.tsx';

export type Feeds = Pick<
  CutStepReport,
  'crossFeed' | 'crossDivisions' | 'axialFeed' | 'axialDivisions' | 'tableFeed' | 'slideFeed' | 'passes'
>;

/** The cross feed, with its passes. */
export function crossText({ crossFeed, crossDivisions, passes }: Feeds, design: Design, system: System): string {
  const { diameterDial, division } = toMachine(design.cut ?? { allow: [] });
  const onDial = (radius: number) => fineText(diameterDial ? 2 * radius : radius, system);
  const inPasses =
    passes.count === 1 ? 'in one pass' : `in ${passesText(passes, onDial, leastSet(design.cut?.machine ?? {}))}`;
  return `Cross feed ${onDial(crossFeed)} on the ${diameterDial ? 'diameter' : 'radius'} dial, ${divisionsText(crossDivisions)} of ${divisionText(millimetres(division), system)}, ${inPasses}`;
}

/** The other ways to take the same. */
export function otherTexts(
  { axialFeed, axialDivisions, tableFeed, slideFeed }: Feeds,
  design: Design,
  system: System,
): string[] {
  const { axialDivision, diameterDial } = toMachine(design.cut ?? { allow: [] });
  const fine = (mm: Millimetres) => fineText(mm, system);
  return [
    ...(axialFeed === null || axialDivisions === null
      ? []
      : [
          `axial ${fine(axialFeed)}, ${divisionsText(axialDivisions)} of ${divisionText(millimetres(axialDivision), system)}`,
        ]),
    `${fine(diameterDial ? 2 * tableFeed : tableFeed)} on the ${diameterDial ? 'diameter' : 'radius'} dial with the table set over`,
    ...(slideFeed === null ? [] : [`${fine(slideFeed)} along the slide`]),
  ];
}
