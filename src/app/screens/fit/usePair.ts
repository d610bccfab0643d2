/** The pair as it is drawn now: its fit, its lines, and the drawing with the nose pulled aside where it is. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { seatLines } from '../../../engine/contact/fit.ts';
import { metres } from '../../../report/convert.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { toPlaySeats } from '../../../report/play/toPlay.ts';
import { drawnPair } from '../../pictures/drawn.ts';
import { leaningOf } from '../../pictures/leaning.ts';
import type { Work } from '../../state/store.ts';
import { usePull } from './usePull.ts';

export function usePair(work: Work) {
  const design = useStore(work.store, (state) => state.design);
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
  return { design, fit, seats, pulled, drawn };
}
