/** The pair as it is drawn now: its fit, its lines, and the drawing with the nose pulled aside where it is. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { metres, toSeats } from '../../../report/convert.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import { type SeatLines, seatLines } from '../../../report/inFrame.ts';
import { type Drawn, drawnAt } from '../../pictures/drawn.ts';
import { type Ground, groundOf } from '../../pictures/drawnMap.ts';
import { factorFor, sunkFactor } from '../../pictures/factor.ts';
import { landmarks, reachOf } from '../../pictures/journalMove.ts';
import { leaningOf } from '../../pictures/leaning.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { useScale } from '../../pictures/useScale.ts';
import type { Work } from '../../state/store.ts';
import { usePull } from './usePull.ts';

/** @param which parts these are, where there are others: with those all is drawn anew */
export function usePair(work: Work, which = '') {
  // All of it in one: every selector written here would be told anew at every move.
  const { design, system, factor: asked, piece, scaleLocked: locked } = useStore(work.store);
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const fit = fitOf(design);
  const parts = useMemo(() => toSeats({ conepair: 1, seats: design.seats }), [design.seats]);
  const seats = useMemo(() => parts.map(seatLines), [parts]);
  // What hangs on the seats alone is not worked out anew as the journal moves.
  const ground = useMemo(() => groundOf(seats), [seats]);
  const pulled = usePull(work);
  const leaning = useMemo(() => leaningOf(parts, pulled?.pose ?? null, pulled?.contacts), [parts, pulled]);
  const position = metres(fit.position);
  const suits = useMemo(() => {
    const reach = reachOf(fit.position, landmarks(fit)).map(metres);
    return factorFor(seats, position, asked, leaning, reach, ground);
  }, [seats, fit, position, asked, leaning, ground]);
  // A nose that is pulled aside stays so until it is let go.
  const held = () => work.dragging() || work.store.getState().pull !== null;
  const scale = useScale({ suits, standing: fit, of: `${piece} ${asked}${which}`, locked, still, held });
  const drawn = useMemo(
    () => drawnAt(seats, position, sunkFactor(seats, position, scale.factor, ground), leaning, ground),
    [seats, position, scale.factor, leaning, ground],
  );
  const ghost = useGhost(work, design, seats, ground, scale.factor);
  return { design, system, fit, seats, pulled, drawn, ghost, scale };
}

/** Where the journal stood when it was taken hold of, while it is. */
function useGhost(
  work: Work,
  design: Design,
  seats: readonly SeatLines[],
  ground: Ground,
  factor: number,
): Drawn | null {
  // That it was let go is told by the steps, which usePair follows.
  const from = work.takenHold();
  const position = from && from.seats === design.seats && from !== design ? (from.position ?? 0) : null;
  return useMemo(() => {
    if (position === null) return null;
    const at = metres(position);
    return drawnAt(seats, at, sunkFactor(seats, at, factor, ground), null, ground);
  }, [seats, position, factor, ground]);
}
