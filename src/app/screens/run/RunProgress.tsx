/** How far the long work is, and the button that stops it. */
import { Fault } from '../../frame/Fault.tsx';
import type { RunWork } from './useRunWork.ts';

interface Props {
  work: RunWork & { stop(): void; start(): void };
}

export function RunProgress({ work }: Props) {
  const { stage, fault } = work;
  if (fault !== null) return <Fault what="The run" fault={fault} again={work.start} />;
  const stopped = stage === 'stopped';
  if (stage === 'done')
    return (
      <p className="progress" role="status">
        Worked out in full.
      </p>
    );
  const { done, of } = counted(work);
  return (
    <div className="progress">
      <span role="status">
        {stopped ? 'Stopped. What was worked out stays below, greyed where the design has changed since.' : TEXT[stage]}
      </span>
      {!stopped && <progress aria-label="Progress" {...(of > 0 ? { value: done, max: of } : {})} />}
      <button type="button" onClick={stopped ? work.start : work.stop}>
        {stopped ? 'Work it out' : 'Stop'}
      </button>
    </div>
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
