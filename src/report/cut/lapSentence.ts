/** Where to stop lapping, in words. */
import { fineText, type System } from '../../design/units.ts';
import type { CutReport } from './definition.ts';

/** Lapping is no step of the plan. */
const ANOTHER_WAY = 'That is another way than the steps, and by itself does not give the films wanted.';

export function lapSentence({ lap }: CutReport, system: System): string {
  if (lap === undefined) return '';
  if (lap === null) return 'Nothing stops this journal going rearward, so it cannot be lapped home.';
  const { at, why } = lap.stop;
  const state = lap.states[at]!;
  const advance = fineText(lap.states[0]!.position - state.position, system);
  const wrong =
    state.relationError === null
      ? ''
      : `; the cones then stand ${fineText(Math.abs(state.relationError), system)} wrong to each other`;
  switch (why) {
    case 'bearing':
      return `Lapped together, the seats all bear after ${advance} of travel: stop there${wrong}. ${ANOTHER_WAY}`;
    case 'relation':
      return `Lapped together, stop after ${advance} of travel: beyond it the cones no longer stand to each other as the films allow. ${ANOTHER_WAY}`;
    case 'limit':
      return `Lapped together, stop after ${advance} of travel: a surface has then lost all it may${wrong}. ${ANOTHER_WAY}`;
    case 'notYet':
      return `Lapped together for ${advance} of travel, not every seat bears yet${wrong}.`;
  }
}
