/** A likely slip in a machinist's words: what was typed, what it may have been, and how likely. */

import type { Design } from '../../design/definition.ts';
import { toolText } from '../../design/tools.ts';
import { fineText, lengthText, placeText, type System } from '../../design/units.ts';
import { chanceText } from '../belief/words.ts';
import type { MeasureReport } from './definition.ts';
import type { Reading } from './kinds.ts';
import { valueText } from './readingText.ts';

type SlipReport = NonNullable<MeasureReport['disagreeing'][number]['slips']>[number];

export function slipText(design: Design, index: number, slip: SlipReport, system: System): string {
  const { kind, instead, metal, chance } = slip;
  if (metal) {
    const off = `off ${metal.seat === undefined ? `a face of the ${metal.part}` : `the ${metal.seat} ${metal.part}`}`;
    return `${fineText(metal.told, system)} ${off} is written down on Cut between this reading and others: was it ${fineText(metal.meant, system)}? Then all would agree (${chanceText(chance)}).`;
  }
  const typed = design.readings![index]!;
  return `${questionOf(typed, kind, instead, system)} Then all would agree (${chanceText(chance)}).`;
}

function questionOf(typed: Reading, kind: SlipReport['kind'], instead: Reading, system: System): string {
  const value = valueText(instead, system);
  if (kind === 'roll' && typed.kind === 'overRolls' && instead.kind === 'overRolls')
    return `A roll of ${toolText(typed.roll, system)} is typed: was it one of ${toolText(instead.roll, system)}?`;
  if (kind === 'ball' && typed.kind === 'ballDepth' && instead.kind === 'ballDepth')
    return `A ball of ${toolText(typed.ball, system)} is typed: was it one of ${toolText(instead.ball, system)}?`;
  if (kind === 'face' && typed.kind === 'ballDepth' && instead.kind === 'ballDepth')
    return `Was it read from the face at ${placeText(instead.face, system)}, not at ${placeText(typed.face, system)}?`;
  const off = Math.abs(instead.value - typed.value);
  const slip: Partial<Record<SlipReport['kind'], string>> = {
    tenfold: 'is a point in the wrong place',
    thou: `is it ${fineText(off, system)} out`,
    turn: `is it a turn of the thimble (${lengthText(off, system)}) out`,
    sign: 'is it on the other side',
    halved: 'is it a radius',
  };
  return `${capital(slip[kind] ?? 'is it misread')}: was it ${value}?`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
