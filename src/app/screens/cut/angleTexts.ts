/** What is told of setting an angle, on the screen and on paper. */
import { blocksText as engraved } from '../../../design/tools.ts';
import { fineText, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';

type Setting = CutReport['settings'][number];

/** Blocks of a stack as they are engraved, `set` the system of their set, and by how much it misses. */
export function blocksText({ blocks, blocksError }: Setting, set: System, system: System): string {
  if (blocks === null) return 'no stack of this set comes near';
  const misses =
    blocksError === null || Math.abs(blocksError) < 1e-9 ? '' : `, which misses by ${fineText(blocksError, system)}`;
  return `${engraved(blocks, set)}${misses}`;
}

export { angleErrorText as errorText } from '../../../design/units.ts';
