/** How far the draws are, and the button that stops them. */
import { Fault } from '../../frame/Fault.tsx';
import type { Odds } from './useOdds.ts';

const TEXT = {
  now: 'Pairs are being drawn as the parts are now.',
  planned: 'Pairs are being drawn as planned.',
  matters: 'What matters is being worked out.',
  trial: 'Trial assemblies are being simulated.',
} as const;

export function OddsProgress({ odds }: { odds: Odds & { stop(): void; start(): void } }) {
  const { stage, done, count, fault, start, stop } = odds;
  if (fault !== null) return <Fault what="The odds" fault={fault} again={start} />;
  if (stage === 'done')
    return (
      <p className="progress" role="status">
        Worked out in full.
      </p>
    );
  const stopped = stage === 'stopped';
  return (
    <div className="progress">
      <span role="status">{stopped ? 'Stopped. What was worked out stays.' : TEXT[stage]}</span>
      {!stopped && <progress aria-label="Progress" {...(count > 0 ? { value: done, max: count } : {})} />}
      <button type="button" onClick={stopped ? start : stop}>
        {stopped ? 'Work it out' : 'Stop'}
      </button>
    </div>
  );
}
