/** Pointer drags on one element: the pointer is captured, and the total travel in pixels is reported. */
import { type PointerEvent, useRef } from 'react';

export interface DragHandlers {
  start(): void;
  move(dx: number, dy: number): void;
  end(): void;
}

export function useDrag({ start, move, end }: DragHandlers) {
  const from = useRef<{ x: number; y: number; id: number } | null>(null);
  const stop = (event: PointerEvent) => {
    if (from.current?.id !== event.pointerId) return;
    from.current = null;
    end();
  };
  return {
    onPointerDown(event: PointerEvent) {
      if (event.button !== 0 || from.current) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      event.stopPropagation();
      from.current = { x: event.clientX, y: event.clientY, id: event.pointerId };
      start();
    },
    onPointerMove(event: PointerEvent) {
      if (from.current?.id === event.pointerId) move(event.clientX - from.current.x, event.clientY - from.current.y);
    },
    onPointerUp: stop,
    onPointerCancel: stop,
  };
}
