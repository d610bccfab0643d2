/**
 * Where solids are looked at: the canvas, the views, the keys that turn it, and what happens where it cannot be drawn.
 */
import { Canvas } from '@react-three/fiber';
import { type KeyboardEvent, type ReactNode, type RefObject, useEffect, useRef, useState } from 'react';
import { askAgain, canDraw } from './canDraw.ts';
import { redraws } from './redraw.ts';
import { type Look, VIEWS, type View } from './ScenePair.tsx';
import './threeConsole.ts';
import { panel } from './sceneLegend.tsx';

/** One press of an arrow key, rad; of + or −, a factor. */
const TURN = Math.PI / 24;
const CLOSER = 1.15;

const KEYS: Record<string, [across: number, up: number, closer: number]> = {
  ArrowLeft: [-TURN, 0, 1],
  ArrowRight: [TURN, 0, 1],
  ArrowUp: [0, TURN, 1],
  ArrowDown: [0, -TURN, 1],
  '+': [0, 0, CLOSER],
  '=': [0, 0, CLOSER],
  '-': [0, 0, 1 / CLOSER],
};

/** What the solids inside are handed. */
export interface OnStage {
  view: { name: View };
  lost: RefObject<() => void>;
  look: RefObject<Look | null>;
}

interface Props {
  /** What is seen, for who does not see it. */
  seen: string;
  /** Name of the views. */
  lookAt: string;
  dark: boolean;
  /** The machine cannot draw it, or no longer. */
  onLost(): void;
  /** Over the picture. */
  legend?: ReactNode;
  children(stage: OnStage): ReactNode;
}

export function Stage({ seen, lookAt, dark, onLost, legend, children }: Props) {
  const [view, setView] = useState<{ name: View }>({ name: 'Three-quarter' });
  const [able] = useState(canDraw);
  const lost = useRef(onLost);
  lost.current = () => {
    askAgain();
    onLost();
  };
  useEffect(() => {
    if (!able) lost.current();
  }, [able]);
  const look = useRef<Look>(null);
  const box = useRef<HTMLDivElement>(null);
  usePageScroll(box);
  if (!able) return null;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') (document.activeElement as HTMLElement | null)?.blur();
    const turn = KEYS[event.key];
    if (!turn && event.key !== '0') return;
    event.preventDefault();
    if (turn) look.current?.turn(...turn);
    else setView({ name: view.name });
  };
  return (
    <div
      ref={box}
      style={{
        position: 'relative',
        width: '100%',
        height: '100%',
        minHeight: 240,
        background: dark ? '#1d232a' : '#f5f0e6',
      }}
    >
      <Canvas
        frameloop="demand"
        flat
        dpr={[1, 2]}
        camera={{ fov: 28, near: 0.1, far: 60 }}
        onCreated={({ gl, scene, camera }) => redraws(gl.domElement, () => gl.render(scene, camera))}
        role="application"
        tabIndex={0}
        onKeyDown={onKeyDown}
        aria-label={`${seen}. Arrow keys turn the view, plus and minus zoom, 0 shows the whole`}
      >
        {children({ view, lost, look })}
      </Canvas>
      <fieldset
        style={{
          position: 'absolute',
          top: 8,
          left: 8,
          display: 'flex',
          flexWrap: 'wrap',
          gap: 6,
          margin: 0,
          padding: 0,
          border: 0,
        }}
      >
        <legend style={{ position: 'absolute', width: 1, height: 1, overflow: 'hidden', clipPath: 'inset(50%)' }}>
          {lookAt}
        </legend>
        {(Object.keys(VIEWS) as View[]).map((name) => (
          <button
            key={name}
            type="button"
            onClick={() => setView({ name })}
            style={{ ...panel(dark), minHeight: 40, cursor: 'pointer' }}
          >
            {name}
          </button>
        ))}
      </fieldset>
      {legend}
    </div>
  );
}

/**
 * The wheel turns into zoom only with Ctrl or while the picture has the focus, and two fingers are the picture's, not
 * the page's.
 */
function usePageScroll(box: RefObject<HTMLDivElement | null>) {
  useEffect(() => {
    const node = box.current;
    if (!node) return;
    const onWheel = (event: WheelEvent) => {
      // Without its leave the camera's controls never see the wheel, and the page scrolls.
      if (!(event.ctrlKey || node.contains(document.activeElement))) event.stopPropagation();
    };
    const onTouch = (event: TouchEvent) => {
      if (event.touches.length > 1) event.preventDefault();
    };
    node.addEventListener('wheel', onWheel, { capture: true, passive: true });
    node.addEventListener('touchstart', onTouch, { passive: false });
    node.addEventListener('touchmove', onTouch, { passive: false });
    return () => {
      node.removeEventListener('wheel', onWheel, { capture: true });
      node.removeEventListener('touchstart', onTouch);
      node.removeEventListener('touchmove', onTouch);
    };
  }, [box]);
}
