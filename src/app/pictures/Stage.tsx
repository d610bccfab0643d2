/**
 * Where solids are looked at: the canvas, the views, the keys that turn it, and what happens where it cannot be drawn.
 */
import { Canvas } from '@react-three/fiber';
import { type KeyboardEvent, type ReactNode, type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { askAgain, canDraw } from './canDraw.ts';
import { redraws } from './redraw.ts';
import { VIEWS, type View } from './solid/camera.ts';
import type { Tagged } from './solid/SceneTags.tsx';
import type { Plan } from './solid/tags.ts';
import type { Turned } from './solid/useCamera.ts';
import './threeConsole.ts';
import { pageColourText } from './solid/metals.ts';
import './solid/stage.css';
import { useLatest } from '../state/useLatest.ts';
import { useMedia } from './useMedia.ts';
import { useSize } from './useSize.ts';

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
  turned: RefObject<Turned | null>;
  onTurned(cut: boolean): void;
  /** less motion is wanted */
  still: boolean;
  plan: Plan;
  tagged: Tagged;
  inks: Inks;
}

export interface Inks {
  text: string;
  ground: string;
}

interface Props {
  /** What is seen, for who does not see it. */
  seen: string;
  /** Name of the views. */
  lookAt: string;
  dark: boolean;
  /** The machine cannot draw it, or no longer. */
  onLost(): void;
  /** Below the picture, beside the views. */
  legend?: ReactNode;
  /** what is cut as seen from the nose (solid/noseCut.ts) */
  cut?: string | null;
  /** what stands over the picture, in its lower right corner */
  over?: ReactNode;
  /** what a hand does here, said until one has */
  hand?: string;
  /** How the labels stand in a picture of this width. */
  planOf(across: number): Plan;
  children(stage: OnStage): ReactNode;
}

export function Stage({ seen, lookAt, dark, onLost, legend, cut, over, hand, planOf, children }: Props) {
  const [view, setView] = useState<{ name: View }>({ name: 'Three-quarter' });
  // Turned by hand it is no longer that view; from the nose it may still be the cut.
  const [left, setLeft] = useState<{ view: object; cut: boolean } | null>(null);
  const away = left?.view === view ? left : null;
  const [taken, setTaken] = useState(false);
  const [able] = useState(canDraw);
  const lost = useLatest(() => {
    askAgain();
    onLost();
  });
  useEffect(() => {
    if (!able) lost.current();
  }, [able]);
  const turned = useRef<Turned>(null);
  const box = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const told = useRef<HTMLParagraphElement>(null);
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const { width } = useSize(box, { width: 600, height: 400 });
  usePageScroll(box);
  const inks = useMemo<Inks>(
    () => ({ text: pageColourText('scene-text', dark), ground: pageColourText('scene-ground', dark) }),
    [dark],
  );
  if (!able) return null;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') (document.activeElement as HTMLElement | null)?.blur();
    const turn = KEYS[event.key];
    if (!turn && event.key !== '0') return;
    event.preventDefault();
    if (turn) turned.current?.turn(...turn);
    else setView({ name: view.name });
  };
  return (
    <div className={dark ? 'stage dark' : 'stage'} style={{ background: inks.ground, color: inks.text }}>
      <div ref={box} className="stage-picture" onPointerUp={() => setTaken(true)}>
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
          {children({
            view,
            lost,
            turned,
            onTurned: (cut) => setLeft({ view, cut }),
            still,
            plan: planOf(width),
            tagged: { svg, told },
            inks,
          })}
        </Canvas>
        <svg ref={svg} className="stage-tags" aria-hidden="true" />
        <p ref={told} className="unseen" aria-live="off" />
        {over}
        {hand && !taken && view.name !== 'From the nose' && (
          <p className="stage-cut of-hand" style={{ background: inks.ground }}>
            {hand}
          </p>
        )}
        {cut && view.name === 'From the nose' && (away === null || away.cut) && (
          <p className="stage-cut" style={{ background: inks.ground }}>
            Cut through {cut}
          </p>
        )}
      </div>
      <div className="stage-foot">
        {legend}
        <fieldset className="stage-views">
          <legend className="unseen">{lookAt}</legend>
          {VIEWS.map((name) => (
            <button
              key={name}
              type="button"
              aria-pressed={view.name === name && away === null}
              onClick={() => setView({ name })}
            >
              {name}
            </button>
          ))}
        </fieldset>
      </div>
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
