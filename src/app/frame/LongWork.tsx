/** How far long work is, and the button that stops it or begins it again. */
import type { Begun, ByHand } from '../state/useLongWork.ts';
import { Fault } from './Fault.tsx';

interface Props {
  /** what it is, as a sentence begins */
  what: string;
  work: Begun & ByHand;
  /** what is done now, and what is said once it was stopped */
  text: string;
  stopped: string;
  /** how far; of nothing where that is not known */
  done: number;
  of: number;
}

export function LongWork({ what, work: { stage, fault, start, stop }, text, stopped, done, of }: Props) {
  if (fault !== null) return <Fault what={what} fault={fault} again={start} />;
  if (stage === 'done')
    return (
      <p className="progress" role="status">
        Worked out in full.
      </p>
    );
  const isStopped = stage === 'stopped';
  return (
    <div className="progress">
      <span role="status">{isStopped ? stopped : text}</span>
      {!isStopped && <progress aria-label="Progress" {...(of > 0 ? { value: done, max: of } : {})} />}
      <button type="button" onClick={isStopped ? start : stop}>
        {isStopped ? 'Work it out' : 'Stop'}
      </button>
    </div>
  );
}
