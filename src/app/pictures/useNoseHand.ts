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

/** px after which a drag has set out, where its way is plain; and after which it has in any case. */
const SET_OUT = 6;
const SURELY = 16;
/** Times as far along as aside, or the other way, that makes a way plain. */
const PLAIN = 2;
/** One press of a key, mm; Shift makes ten of it. */
const STEP = 0.001;

export const letGo = (work: Work) => work.store.setState({ pull: null });

export type Way = 'along' | 'aside';

/** Which way a drag sets out, by how far (px) it has come along the axis and aside; null while that is not plain. */
export function wayOf(along: number, aside: number): Way | null {
  const [far, off] = [Math.abs(along), Math.abs(aside)];
  const gone = Math.hypot(far, off);
  if (gone < SET_OUT) return null;
  if (far > PLAIN * off) return 'along';
  if (off > PLAIN * far) return 'aside';
  // A hand that pushes in seldom keeps level: what goes both ways is meant along.
  return gone < SURELY ? null : off > 1.5 * far ? 'aside' : 'along';
}

export function useNoseHand({ work, station, up, perPixel, along }: Hand) {
  const way = useRef<Way | null>(null);
  const from = useRef({ station, up, perPixel: 1 });
  const pullTo = (to: number, at: number = station) => work.store.setState({ pull: { station: at, x: 0, y: to } });
  const { handlers } = useDrag({
    start: () => {
      way.current = null;
      from.current = { station, up, perPixel: perPixel() };
    },
    move: (dx, dy) => {
      if (way.current === null) {
        way.current = wayOf(dx, dy);
        if (way.current === null) return;
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
