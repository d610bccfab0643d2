/** What stands beside the pictures of Fit, or below them: all that opens. It is not drawn anew as the journal moves. */
import { memo } from 'react';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import type { SeatLines } from '../../../report/inFrame.ts';
import { onDemand } from '../../frame/onDemand.tsx';
import { Parts } from '../../frame/Parts.tsx';
import { AsSeen } from '../../state/AsSeen.tsx';
import type { Work } from '../../state/store.ts';

/** Loaded after the first picture, as is all that brings a library of its own. */
const ClosingChart = onDemand(() => import('../../charts/ClosingChart.tsx'), {
  what: 'The closing chart',
  loading: 'The closing chart is loading.',
});
const FitControls = onDemand(() => import('./FitControls.tsx'), {
  what: 'The controls',
  loading: 'The controls are loading.',
});
const FitNumbers = onDemand(() => import('./FitNumbers.tsx'), {
  what: 'The figures',
  loading: 'The figures are loading.',
});
const PlayPanel = onDemand(() => import('./PlayPanel.tsx'), {
  what: 'Seat and play',
  loading: 'Seat and play are loading.',
});

interface Props {
  work: Work;
  /** of the design itself, which is typed */
  own: Work;
  seats: readonly SeatLines[];
  belief: BeliefReport | null;
  drawnFactor: number;
  /** how differently the films open, in a sentence */
  ratio: string;
  wide: boolean;
}

export const FitParts = memo(function FitParts({ work, own, seats, belief, drawnFactor, ratio, wide }: Props) {
  return (
    <Parts
      screen="fit"
      also={
        <a href="#show" title="Large, for a projector, with one control">
          Show large
        </a>
      }
      parts={[
        {
          id: 'sizes',
          title: 'Sizes and settings',
          short: 'Sizes',
          told: 'position, adjuster, pictures, and every seat with its film',
          open: wide,
          children: (
            <AsSeen work={own}>{(following) => <FitControls work={following} drawnFactor={drawnFactor} />}</AsSeen>
          ),
        },
        {
          id: 'closing',
          title: 'Closing chart',
          told: ratio,
          open: wide,
          children: (
            <AsSeen work={work}>
              {(following) => <ClosingChart seats={seats} work={following} belief={belief} />}
            </AsSeen>
          ),
        },
        {
          id: 'figures',
          title: 'In figures',
          told: 'every film, where each seat touches, how far to move',
          children: <AsSeen work={work}>{(following) => <FitNumbers work={following} />}</AsSeen>,
        },
        {
          id: 'play',
          title: 'Seating, shake, blue',
          told: 'how the rigid spindle sits and shakes, and the print it leaves',
          children: <AsSeen work={work}>{(following) => <PlayPanel work={following} />}</AsSeen>,
        },
      ]}
    />
  );
});
