/**
 * What is moved by hand, in every picture the same: a drag from where it stood when it was taken hold of, arrow keys in
 * steps, Escape or a second finger to let go; along the axis with bounds and landmarks that it snaps to.
 */

import { type KeyboardEvent, useRef } from 'react';
import type { FitReport } from '../../report/fit/definition.ts';
import type { Work } from '../state/store.ts';
import { axialDrag, moveByKey } from './journalMove.ts';
import { type DragCalls, useDrag } from './useDrag.ts';

const SNAP_PIXELS = 5;
/** mm: in a small picture a few pixels are far, and what lies between must be had too. */
const SNAP_MOST = 0.01;

/**
 * The journal along its axis, by a drag across the page and by keys. `perPixel`: mm, as it is drawn when it is taken
 * hold of.
 */
export function useAxialMove(work: Work, fit: FitReport, perPixel: () => number) {
  const from = useRef({ design: work.store.getState().design, perPixel: 1, to: axialDrag(0) });
  const calls: DragCalls = {
    start: () => {
      // The way back is as long as the way there.
      const { design } = work.store.getState();
      from.current = { design, perPixel: perPixel(), to: axialDrag(design.position ?? 0) };
      work.dragStart();
    },
    move: (dx) => {
      const { to, perPixel } = from.current;
      work.moveTo(to(fit, dx * perPixel, Math.min(SNAP_MOST, SNAP_PIXELS * perPixel)));
    },
    end: work.dragEnd,
    cancel: () => {
      work.store.setState({ design: from.current.design });
      work.dragEnd();
    },
  };
  return { ...useDrag(calls), calls, onKeyDown: (event: KeyboardEvent) => moveByKey(event, work, fit) };
}

interface Handle {
  /** where it stands, in its own measure; x to the right, y upward */
  at: { x: number; y: number };
  to(x: number, y: number): void;
  /** its own measure for a pixel, and for one press of an arrow key */
  perPixel(): number;
  step: number;
  /** how many presses Shift makes of one */
  times?: number;
  /** moves up and down alone */
  upright?: boolean;
  start?(): void;
  end?(): void;
  letGo?(): void;
}

/** A handle in the plane. */
export function useHandle({
  at,
  to,
  perPixel,
  step,
  times = 5,
  upright = false,
  start = () => {},
  end = () => {},
  letGo,
}: Handle) {
  const from = useRef({ ...at, perPixel: 1 });
  const { handlers } = useDrag({
    start: () => {
      from.current = { ...at, perPixel: perPixel() };
      start();
    },
    move: (dx, dy) =>
      to(upright ? at.x : from.current.x + dx * from.current.perPixel, from.current.y - dy * from.current.perPixel),
    end,
  });
  const onKeyDown = (event: KeyboardEvent) => {
    if (letGo && event.key === 'Escape') letGo();
    const by = BY_KEY[event.key];
    if (!by || (upright && by[0] !== 0)) return;
    event.preventDefault();
    event.stopPropagation();
    const size = step * (event.shiftKey ? times : 1);
    to(at.x + by[0] * size, at.y + by[1] * size);
  };
  return { handlers, onKeyDown };
}

export const BY_KEY: Record<string, readonly [number, number] | undefined> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
