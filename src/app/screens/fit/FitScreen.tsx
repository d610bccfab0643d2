/** Fit: which seat touches first, what that does, and how far to move. The verdict, the picture, the numbers. */
import { memo, useMemo } from 'react';
import { useStore } from 'zustand';
import { seatLines } from '../../../engine/contact/fit.ts';
import { asAssumed } from '../../../report/assumed.ts';
import { metres } from '../../../report/convert.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { fitVerdict } from '../../../report/fit/verdict.ts';
import { toPlaySeats } from '../../../report/play/toPlay.ts';
import { CutsSince } from '../../frame/CutsSince.tsx';
import { onDemand } from '../../frame/onDemand.tsx';
import { drawnPair } from '../../pictures/drawn.ts';
import { leaningOf } from '../../pictures/leaning.ts';
import type { Work } from '../../state/store.ts';
import { FitNumbers } from './FitNumbers.tsx';
import { FitPictures } from './FitPictures.tsx';
import { usePull } from './usePull.ts';

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
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const factor = useStore(work.store, (state) => state.factor);
  const fit = useMemo(() => fitSection(design), [design]);
  const parts = useMemo(() => toPlaySeats({ conepair: 1, seats: design.seats }), [design.seats]);
  const seats = useMemo(() => parts.map(seatLines), [parts]);
  const pulled = usePull(work);
  const leaning = useMemo(() => leaningOf(parts, pulled?.pose ?? null, pulled?.contacts), [parts, pulled]);
  const drawn = useMemo(
    () => drawnPair(seats, metres(fit.position), factor, leaning),
    [seats, fit.position, factor, leaning],
  );
  const verdict = asAssumed(fitVerdict(design, fit, system), design, ['seats']);
  return (
    <>
      <section className={`verdict ${verdict.tone}`} aria-live="polite">
        <h2>{verdict.headline}</h2>
        <p>{verdict.sentences.join(' ')}</p>
      </section>
      <CutsSince design={design} />
      <FitPictures work={work} fit={fit} drawn={drawn} />
      <Controls work={work} fit={fit} drawnFactor={drawn.factor} />
      <Chart design={design} seats={seats} fit={fit} system={system} work={work} />
      <Numbers fit={fit} design={design} system={system} />
      <PlayPanel work={work} pulled={pulled} />
      {design.notes && <p className="notes">{design.notes}</p>}
    </>
  );
}
