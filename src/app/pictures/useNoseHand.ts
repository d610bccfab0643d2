/**
 * The ring at the nose: up and down it pulls the nose aside, along the axis it moves the journal. The way a drag sets
 * out decides which, until it ends.
 */
import { type KeyboardEvent, useRef } from 'react';
import type { Millimetres } from '../../design/dimension.ts';
import type { Work } from '../state/store.ts';
import { type DragCalls, useDrag } from './useDrag.ts';
import { BY_KEY } from './useMove.ts';

interface Hand {
  work: Work;
  /** mm: the station it pulls at, and how far up the axis of the journal stands there */
  station: Millimetres;
  up: Millimetres;
  perPixel(): number;
  along: { calls: DragCalls; onKeyDown(event: KeyboardEvent): void };
}

/** px after which a drag has set out. */
const SET_OUT = 4;
/** One press of a key, mm; Shift makes ten of it. */
const STEP = 0.001;

export const letGo = (work: Work) => work.store.setState({ pull: null });

export function useNoseHand({ work, station, up, perPixel, along }: Hand) {
  const way = useRef<'along' | 'aside' | null>(null);
  const from = useRef({ station, up, perPixel: 1 });
  const pullTo = (to: number, at: number = station) => work.store.setState({ pull: { station: at, x: 0, y: to } });
  const { handlers } = useDrag({
    start: () => {
      way.current = null;
      from.current = { station, up, perPixel: perPixel() };
    },
    move: (dx, dy) => {
      if (way.current === null) {
        if (Math.hypot(dx, dy) < SET_OUT) return;
        way.current = Math.abs(dx) > Math.abs(dy) ? 'along' : 'aside';
        if (way.current === 'along') along.calls.start();
      }
      if (way.current === 'along') along.calls.move(dx, dy);
      else pullTo(from.current.up - dy * from.current.perPixel, from.current.station);
    },
    end: () => {
      if (way.current === 'along') along.calls.end();
    },
    cancel: () => {
      if (way.current === 'along') along.calls.cancel?.();
    },
  });
  const onKeyDown = (event: KeyboardEvent) => {
    const by = BY_KEY[event.key];
    if (event.key === 'Escape' && work.store.getState().pull !== null) letGo(work);
    else if (by && by[0] === 0) pullTo(up + by[1] * STEP * (event.shiftKey ? 10 : 1));
    else return along.onKeyDown(event);
    event.preventDefault();
    event.stopPropagation();
  };
  return { handlers, onKeyDown };
}
