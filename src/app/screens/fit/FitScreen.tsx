/**
 * Fit: which seat touches first, what that does, and how far to move. What is looked at stays in sight; what changes
 * it, the chart and the numbers stand beside it, or below.
 */
import './fit.css';
import { type CSSProperties, type ReactNode, useCallback, useState } from 'react';
import { useStore } from 'zustand';
import { ratioSentence } from '../../../report/fit/now.ts';
import { onDemand } from '../../frame/onDemand.tsx';
import type { DrawnSeat } from '../../pictures/drawn.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { WhileSeen } from '../../state/AsSeen.tsx';
import { useBelief } from '../../state/belief.ts';
import type { Work } from '../../state/store.ts';
import type { FitProps } from './FitBelieved.tsx';
import { FitParts } from './FitParts.tsx';
import { FitPictures } from './FitPictures.tsx';
import { FitVerdict } from './FitVerdict.tsx';
import { usePair } from './usePair.ts';

/** Loaded after the first picture, as is all that brings a library of its own. */
const FitSolid = onDemand(() => import('./FitSolid.tsx'), {
  what: 'The solid picture',
  loading: 'The solid picture is loading.',
});
const PositionTrack = onDemand(() => import('./PositionTrack.tsx'), { what: 'The track of the axis' });
const Lenses = onDemand(() => import('./Lenses.tsx'), { what: 'The lenses' });

const FitBelieved = onDemand(() => import('./FitBelieved.tsx'), { what: 'Fit', loading: '' });
const Believed = onDemand(() => import('../../frame/Believed.tsx'), { what: 'How sure that is' });

/** As wide as this there is room for two columns: what is looked at, and what it is changed by. */
const WIDE = '(min-width: 1100px)';

/** The lenses of as many seats have room beside a section that is no longer, to its height, than this. */
const BESIDE = 3;
const LONG = 1.7;

function isSquare(seats: readonly DrawnSeat[]): boolean {
  const bush = seats.flatMap((seat) => seat.bush);
  const [z, r] = [bush.map((point) => point[0]), bush.map((point) => point[1])];
  return seats.length <= BESIDE && Math.max(...z) - Math.min(...z) < LONG * 2 * Math.max(...r);
}

export function FitScreen({ work }: { work: Work }) {
  const { design, unfinished } = useStore(work.store);
  const belief = useBelief(design);
  // What is assumed comes and goes at a keystroke: it may not draw the screen anew.
  const Drawn = design.cut?.trials || unfinished.trial ? FitBelieved : Fit;
  return <Drawn work={work} own={work} belief={belief} draw={Fit} />;
}

function Fit({ work, own, belief, choice, since, retold, before }: FitProps) {
  const pair = usePair(work, work === own ? '' : ' believed');
  const { design, system, fit, seats, pulled, drawn, ghost } = pair;
  const from = own.store.getState().design;
  // What was worked out for other parts says nothing of these.
  const known = belief.of?.seats === from.seats && belief.of.cut === from.cut ? belief.value : null;
  const wide = useMedia(WIDE);
  const [lost, setLost] = useState(false);
  const onLost = useCallback(() => setLost(true), []);
  const solid = lost
    ? null
    : (which: ReactNode) => (
        <FitSolid work={work} fit={fit} drawn={drawn} before={pair.scale.before} onLost={onLost} which={which} />
      );
  return (
    <div className="fit-screen">
      <div
        className={`in-sight ${isSquare(drawn.seats) ? 'square' : ''} ${before ? 'of-before' : ''}`}
        style={{ '--seats': seats.length } as CSSProperties}
      >
        <FitVerdict
          work={work}
          design={design}
          fit={fit}
          system={system}
          holding={pulled && [...new Set(pulled.contacts.map(({ seat }) => seat))]}
          belief={known}
          retold={retold}
        />
        {lost && <p role="status">This device cannot draw the solid picture; the section shows the same pair.</p>}
        <FitPictures work={work} pair={pair} belief={known} choice={choice} solid={wide ? null : solid} />
        <WhileSeen work={work}>
          <PositionTrack work={work} design={design} fit={fit} system={system} />
        </WhileSeen>
        <WhileSeen work={work}>
          <Lenses drawn={drawn} ghost={ghost} fit={fit} system={system} />
        </WhileSeen>
      </div>
      <div className="beside">
        {wide && solid?.(null)}
        <Believed design={design} films system={system} solved={belief} />
        {since}
        <FitParts
          work={work}
          own={own}
          seats={seats}
          belief={known}
          drawnFactor={drawn.factor}
          ratio={ratioSentence(fit)}
          wide={wide}
        />
        {design.notes && <p className="notes">{design.notes}</p>}
      </div>
    </div>
  );
}
