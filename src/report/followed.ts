/** What is assumed and moves with a change, said beside it: nobody is to find a bore changed that was not touched. */
import { assumedAfter } from '../design/assumed.ts';
import type { Design, Part } from '../design/definition.ts';
import { withFollowing } from '../design/following.ts';
import { fineText, type System } from '../design/units.ts';
import { listed } from './listed.ts';

/** mm: rounding of the numbers. */
const NOTHING = 1e-7;
const CALLED: Record<Part, string> = { journal: 'journal', bush: 'bore' };

/** Null where no diameter moves with it. `change`: the design after it, before what is assumed has followed. */
export function followedSentence(before: Design, change: Design, system: System): string | null {
  const after = withFollowing(before, assumedAfter(before, change), system);
  const moved = before.seats.flatMap(({ name }, i) =>
    (['bush', 'journal'] as const).flatMap((part) => {
      const [was, is] = [before.seats[i]![part].diameter, after.seats[i]?.[part].diameter ?? Number.NaN];
      const by = is - was;
      return Math.abs(by) > NOTHING
        ? [`the ${name} ${CALLED[part]} is ${fineText(Math.abs(by), system)} ${by > 0 ? 'larger' : 'smaller'}`]
        : [];
    }),
  );
  return moved.length === 0
    ? null
    : `Assumed sizes follow the film: ${listed(moved)} in diameter with it. Undo takes it all back.`;
}
