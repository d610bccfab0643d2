/** How far the run is worked out. */
import { LongWork } from '../../frame/LongWork.tsx';
import type { ByHand } from '../../state/useLongWork.ts';
import type { RunWork } from './useRunWork.ts';

export function RunProgress({ work }: { work: RunWork & ByHand }) {
  const { stage } = work;
  return (
    <LongWork
      what="The run"
      work={work}
      text={stage === 'done' || stage === 'stopped' ? '' : TEXT[stage]}
      stopped="Stopped. What was worked out stays below, greyed where the design has changed since."
      {...counted(work)}
    />
  );
}

const TEXT = {
  film: 'The films, the warm-up and the whirl are being worked out.',
  clearances: 'Clearances are being tried.',
  films: 'Films to aim for are being tried.',
  speeds: 'Speeds are being tried.',
  settings: 'The position to set cold is being sought.',
} as const;

function counted({ stage, speeds, clearances, films, settings }: RunWork): { done: number; of: number } {
  // The search for the edges and for the cold position tells no points of its own.
  const of = speeds.of + clearances.of + films.of + 5;
  const done =
    clearances.points.length +
    films.points.length +
    speeds.points.length +
    settings.length +
    (stage === 'films' ? 1 : stage === 'speeds' ? 2 : stage === 'settings' ? 3 : 0);
  return { done, of: stage === 'film' ? 0 : of };
}
