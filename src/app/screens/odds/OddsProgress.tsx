/** How far the draws are. */
import { LongWork } from '../../frame/LongWork.tsx';
import type { ByHand } from '../../state/useLongWork.ts';
import type { Odds } from './useOdds.ts';

const TEXT = {
  now: 'Pairs are being drawn as the parts are now.',
  planned: 'Pairs are being drawn as planned.',
  matters: 'What matters is being worked out.',
  processes: 'Ways to make the parts are being set side by side.',
  hold: 'What to hold to is being sought.',
  trial: 'Trial assemblies are being simulated.',
} as const;

export function OddsProgress({ odds }: { odds: Odds & ByHand }) {
  const { stage, done, count } = odds;
  return (
    <LongWork
      what="The odds"
      work={odds}
      text={stage === 'done' || stage === 'stopped' ? '' : TEXT[stage]}
      stopped="Stopped. What was worked out stays."
      done={done}
      of={count}
    />
  );
}
