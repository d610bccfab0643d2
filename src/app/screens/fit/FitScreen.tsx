/** Fit: which seat touches first, what that does, and how far to move. The verdict, the picture, the numbers. */
import { memo } from 'react';
import { useStore } from 'zustand';
import { asAssumed, measuredFirst } from '../../../report/assumed.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import { fitVerdict } from '../../../report/fit/verdict.ts';
import { Believed, useBelief } from '../../frame/Believed.tsx';
import { CutsSince } from '../../frame/CutsSince.tsx';
import { onDemand } from '../../frame/onDemand.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { FitNumbers } from './FitNumbers.tsx';
import { FitPictures } from './FitPictures.tsx';
import { usePair } from './usePair.ts';

/** Loaded after the first picture, as is all that brings a library of its own. */
const ClosingChart = onDemand(() => import('../../charts/ClosingChart.tsx'), {
  what: 'The closing chart',
  loading: 'The closing chart is loading.',
});
const FitControls = onDemand(() => import('./FitControls.tsx'), {
  what: 'The controls',
  loading: 'The controls are loading.',
});
const PlayPanel = onDemand(() => import('./PlayPanel.tsx'), {
  what: 'Seat and play',
  loading: 'Seat and play are loading.',
});

/** What follows the position alone is not drawn anew while the nose is pulled. */
const Chart = memo(ClosingChart);
const Numbers = memo(FitNumbers);
const Controls = memo(FitControls);

export function FitScreen({ work }: { work: Work }) {
  const { design, fit, seats, pulled, drawn } = usePair(work);
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const belief = useBelief(design);
  const measured = measuredFirst(asAssumed(fitVerdict(design, fit, system, way), design, ['seats']), design, 'mend');
  const verdict = behindReadings(measured, belief.value?.notAsRead);
  return (
    <>
      <section className={`verdict ${verdict.tone}`} aria-live="polite">
        <h2>{verdict.headline}</h2>
        <p>{verdict.sentences.join(' ')}</p>
      </section>
      <Believed design={design} fit={fit} system={system} solved={belief} />
      <CutsSince design={design} />
      <FitPictures work={work} fit={fit} drawn={drawn} belief={belief.value} />
      <Controls work={work} fit={fit} drawnFactor={drawn.factor} />
      <Chart design={design} seats={seats} fit={fit} system={system} work={work} belief={belief.value} />
      <Numbers fit={fit} design={design} system={system} />
      <PlayPanel work={work} pulled={pulled} />
      {design.notes && <p className="notes">{design.notes}</p>}
    </>
  );
}
