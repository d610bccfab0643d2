/** What is told of setting an angle, on the screen and on paper. */
import { fineText, lengthText, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';

type Setting = CutReport['settings'][number];

/** Blocks of a stack, and by how much it misses. */
export function blocksText({ blocks, blocksError }: Setting, system: System): string {
  if (blocks === null) return 'no stack of this set comes near';
  const sum = blocks.map((block) => lengthText(Number(block.toFixed(7)), system).replace(/ .*$/, '')).join(' + ');
  const misses = blocksError === null || Math.abs(blocksError) < 1e-9 ? '' : `, which misses by ${fineText(blocksError, system)}`;
  return `${sum}${misses}`;
}

export { angleErrorText as errorText } from '../../design/units.ts';
