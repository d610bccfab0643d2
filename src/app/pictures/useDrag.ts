/** Pointer drags on one element: the pointer is captured, and the total travel in pixels is reported. */
import { type PointerEvent, useRef } from 'react';

export interface DragCalls {
  start(): void;
  move(dx: number, dy: number): void;
  end(): void;
  /** A second finger came: what was dragged goes back. Without it the drag just ends. */
  cancel?(): void;
}

export interface Drag {
  handlers: {
    onPointerDown(event: PointerEvent): void;
    onPointerMove(event: PointerEvent): void;
    onPointerUp(event: PointerEvent): void;
    onPointerCancel(event: PointerEvent): void;
  };
  /** Takes a drag that goes on out of the hand. */
  cancel(): void;
}

/**
 * Ref of what a finger drags: no browser scrolls by a touch on it. On a piece of an SVG `touch-action` is not heeded,
 * only that of the whole drawing; and React listens passively.
 */
export function keepsTouch(node: Element | null) {
  if (!node) return;
  const keep = (event: Event) => event.preventDefault();
  const of = ['touchstart', 'touchmove'];
  for (const name of of) node.addEventListener(name, keep, { passive: false });
  return () => {
    for (const name of of) node.removeEventListener(name, keep);
  };
}

export function useDrag({ start, move, end, cancel }: DragCalls): Drag {
  const from = useRef<{ x: number; y: number; id: number } | null>(null);
  const stop = (event: PointerEvent) => {
    if (from.current?.id !== event.pointerId) return;
    from.current = null;
    end();
  };
  return {
    handlers: {
      onPointerDown(event) {
        if (event.button !== 0 || from.current) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        event.stopPropagation();
        from.current = { x: event.clientX, y: event.clientY, id: event.pointerId };
        start();
      },
      onPointerMove(event) {
        if (from.current?.id === event.pointerId) move(event.clientX - from.current.x, event.clientY - from.current.y);
      },
      onPointerUp: stop,
      onPointerCancel: stop,
    },
    cancel() {
      if (!from.current) return;
      from.current = null;
      (cancel ?? end)();
    },
  };
}
