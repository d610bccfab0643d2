/** A number for every seat that stays its own wherever it goes in the list and whatever it is called. */
import { useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { pathAfter } from '../../../design/follow.ts';

interface Known {
  seats: Design['seats'];
  ids: readonly number[];
  next: number;
}

/** @returns the numbers from 0; one that comes later has a greater one than all before it */
export function useSeatIds(seats: Design['seats']): readonly number[] {
  const known = useRef<Known>({ seats, ids: seats.map((_, i) => i), next: seats.length });
  if (known.current.seats !== seats) known.current = following(known.current, seats);
  return known.current.ids;
}

export function following({ seats: was, ids: old, next: from }: Known, seats: Design['seats']): Known {
  const [before, after]: Design[] = [
    { conepair: 1, seats: was },
    { conepair: 1, seats },
  ];
  const gone = new Map(old.map((id, i) => [pathAfter(`seats[${i}]`, before!, after!), id]));
  let next = from;
  const ids = seats.map((_, i) => gone.get(`seats[${i}]`) ?? next++);
  return { seats, ids, next };
}
