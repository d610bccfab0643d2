/**
 * Zoom and pan of a drawing: wheel, two fingers, + − 0, drag. The wheel zooms with Ctrl (as a touch pad's pinch
 * sends it), or while the drawing has the focus; otherwise, and at the ends of the zoom, it scrolls the page.
 */
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { useLatest } from '../state/useLatest.ts';
import { useDrag } from './useDrag.ts';
import type { Size } from './useSize.ts';

export interface View {
  zoom: number;
  /** px by which the whole is moved, after the zoom about the middle */
  x: number;
  y: number;
}

export interface Place {
  x: number;
  y: number;
}

const WHOLE: View = { zoom: 1, x: 0, y: 0 };
const LEAST = 1;
const MOST = 60;
const KEY_STEP = 1.4;
const WHEEL_STEP = 1.15;
const PAN_STEP = 40;

/**
 * The view with its zoom multiplied; the place of the screen given, from the middle of the drawing, stays where it is.
 */
export function zoomed(view: View, by: number, about: Place): View {
  const zoom = Math.min(MOST, Math.max(LEAST, view.zoom * by));
  const ratio = zoom / view.zoom;
  return { zoom, x: about.x - (about.x - view.x) * ratio, y: about.y - (about.y - view.y) * ratio };
}

/** At least half the drawing stays in sight. */
export function bounded(view: View, { width, height }: Size): View {
  const within = (value: number, most: number) => Math.min(most, Math.max(-most, value));
  return { zoom: view.zoom, x: within(view.x, (width * view.zoom) / 2), y: within(view.y, (height * view.zoom) / 2) };
}

export function useView(svg: RefObject<SVGSVGElement | null>, size: Size, onSecondFinger: () => void) {
  const [view, setView] = useState<View>(WHOLE);
  const latest = useLatest({ view, size });
  const change = (edit: (view: View) => View) => setView((v) => bounded(edit(v), latest.current.size));
  const fromMiddle = (event: { clientX: number; clientY: number }): Place => {
    const box = svg.current!.getBoundingClientRect();
    // From the middle as it is drawn, which is in whole pixels.
    const { width, height } = latest.current.size;
    return { x: event.clientX - box.left - width / 2, y: event.clientY - box.top - height / 2 };
  };

  const panFrom = useRef(view);
  const pan = useDrag({
    start: () => {
      panFrom.current = view;
    },
    move: (dx, dy) => change(() => ({ ...panFrom.current, x: panFrom.current.x + dx, y: panFrom.current.y + dy })),
    end: () => {},
  });
  const pinch = usePinch(
    fromMiddle,
    () => latest.current.view,
    change,
    () => {
      pan.cancel();
      onSecondFinger();
    },
  );
  useTouchAndWheel(svg, (event) => {
    const by = event.deltaY < 0 ? WHEEL_STEP : 1 / WHEEL_STEP;
    const after = zoomed(latest.current.view, by, fromMiddle(event));
    if (after.zoom === latest.current.view.zoom) return false;
    change((v) => zoomed(v, by, fromMiddle(event)));
    return true;
  });

  const zoomBy = (by: number) => change((v) => zoomed(v, by, { x: 0, y: 0 }));
  // The same for as long as the drawing stands, so that its buttons need not be drawn anew with it.
  const [zoom] = useState(() => ({
    zoomIn: () => zoomBy(KEY_STEP),
    zoomOut: () => zoomBy(1 / KEY_STEP),
    whole: () => setView(WHOLE),
  }));
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const letGo = () => (document.activeElement as SVGElement | null)?.blur();
    const panBy = (x: number, y: number) => () => change((v) => ({ ...v, x: v.x + x, y: v.y + y }));
    // The arrows move the journal while it has the focus; the drawing itself they pan.
    const arrows: Record<string, () => void> =
      event.target === svg.current
        ? {
            ArrowLeft: panBy(PAN_STEP, 0),
            ArrowRight: panBy(-PAN_STEP, 0),
            ArrowUp: panBy(0, PAN_STEP),
            ArrowDown: panBy(0, -PAN_STEP),
          }
        : {};
    const keys: Record<string, () => void> = {
      '+': () => zoomBy(KEY_STEP),
      '=': () => zoomBy(KEY_STEP),
      '-': () => zoomBy(1 / KEY_STEP),
      '0': () => setView(WHOLE),
      Escape: letGo,
      ...(view.zoom > 1 ? arrows : {}),
    };
    const act = keys[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  };
  return {
    view,
    zoom,
    handlers: { ...pan.handlers, ...pinch, onKeyDown },
  };
}

/** Two fingers: what lies under each stays under it. Caught before any drag sees them. */
function usePinch(
  fromMiddle: (event: PointerEvent) => Place,
  viewNow: () => View,
  change: (edit: (view: View) => View) => void,
  onStart: () => void,
) {
  const fingers = useRef(new Map<number, Place>());
  const from = useRef<{ view: View; middle: Place; apart: number } | null>(null);
  const measured = () => {
    const [a, b] = [...fingers.current.values()] as [Place, Place];
    return { middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, apart: Math.max(1, Math.hypot(a.x - b.x, a.y - b.y)) };
  };
  const lift = (event: PointerEvent) => {
    fingers.current.delete(event.pointerId);
    from.current = null;
  };
  return {
    onPointerDownCapture(event: PointerEvent) {
      if (event.pointerType !== 'touch') return;
      fingers.current.set(event.pointerId, fromMiddle(event));
      if (fingers.current.size < 2) return;
      event.stopPropagation();
      if (fingers.current.size > 2) return;
      onStart();
      from.current = { view: viewNow(), ...measured() };
    },
    onPointerMoveCapture(event: PointerEvent) {
      if (!fingers.current.has(event.pointerId)) return;
      fingers.current.set(event.pointerId, fromMiddle(event));
      const start = from.current;
      if (!start || fingers.current.size !== 2) return;
      event.stopPropagation();
      const { middle, apart } = measured();
      const moved = zoomed(start.view, apart / start.apart, start.middle);
      change(() => ({
        zoom: moved.zoom,
        x: moved.x + middle.x - start.middle.x,
        y: moved.y + middle.y - start.middle.y,
      }));
    },
    onPointerUpCapture: lift,
    onPointerCancelCapture: lift,
  };
}

/** React listens passively to wheel and touch; these two must be able to say that the page shall not take them. */
function useTouchAndWheel(svg: RefObject<SVGSVGElement | null>, onZoom: (event: WheelEvent) => boolean) {
  const zoom = useLatest(onZoom);
  useEffect(() => {
    const node = svg.current;
    if (!node) return;
    const onWheel = (event: WheelEvent) => {
      if (event.deltaY === 0 || !(event.ctrlKey || node.contains(document.activeElement))) return;
      // With Ctrl the browser would zoom the page.
      if (zoom.current(event) || event.ctrlKey) event.preventDefault();
    };
    const onTouch = (event: TouchEvent) => {
      if (event.touches.length > 1) event.preventDefault();
    };
    node.addEventListener('wheel', onWheel, { passive: false });
    node.addEventListener('touchstart', onTouch, { passive: false });
    node.addEventListener('touchmove', onTouch, { passive: false });
    return () => {
      node.removeEventListener('wheel', onWheel);
      node.removeEventListener('touchstart', onTouch);
      node.removeEventListener('touchmove', onTouch);
    };
  }, [svg]);
}
