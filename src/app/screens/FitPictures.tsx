/** Section and scene: side by side where there is room, one at a time where there is not. */
import { lazy, Suspense, useCallback, useLayoutEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { FitReport } from '../../report/fit/definition.ts';
import { metres, millimetres } from '../../report/toEngine.ts';
import { landmarks, snapped } from '../journalMove.ts';
import { createDrawing } from '../picture/drawing.ts';
import type { Drawn } from '../picture/drawn.ts';
import { Section } from '../picture/Section.tsx';
import type { Work } from '../store.ts';
import { useClosing } from '../useClosing.ts';
import { useMedia } from '../useMedia.ts';

const Scene = lazy(() => import('../picture/Scene.tsx'));

/** A drag in the scene stops this near (µm drawn true) to a touch or a film, as a share of what is drawn. */
const SNAP_DRAWN = 0.4e-3;

export function FitPictures({ work, fit, drawn }: { work: Work; fit: FitReport; drawn: Drawn }) {
  const { design, system, sector } = useStore(work.store);
  const dark = useMedia('(prefers-color-scheme: dark)');
  const wide = useMedia('(min-width: 1000px)');
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const [shown, setShown] = useState<'section' | 'scene'>('section');
  const [lost, setLost] = useState(false);
  const onLost = useCallback(() => setLost(true), []);
  const closing = useClosing(work, fit.firstPosition, still);
  const [drawing] = useState(() => createDrawing(drawn));
  useLayoutEffect(() => drawing.set(drawn), [drawing, drawn]);
  const drag = useSceneCalls(work, fit, drawn.factor);
  return (
    <>
      {!wide && !lost && (
        <fieldset className="buttons">
          <legend>Picture</legend>
          {(['section', 'scene'] as const).map((name) => (
            <button key={name} type="button" aria-pressed={shown === name} onClick={() => setShown(name)}>
              {name === 'section' ? 'Section' : 'Solid'}
            </button>
          ))}
        </fieldset>
      )}
      {lost && <p role="status">This device cannot draw the solid picture; the section shows the same pair.</p>}
      <div className="pictures">
        {(wide || lost || shown === 'section') && <Section design={design} drawn={drawn} fit={fit} system={system} work={work} />}
        {!lost && (wide || shown === 'scene') && (
          <figure className="picture">
            <div className="scene">
              <Suspense fallback={<p className="loading">The solid picture is loading.</p>}>
                <Scene drawing={drawing} system={system} sector={sector} dark={dark} {...drag} onLost={onLost} />
              </Suspense>
            </div>
            <figcaption>
              <label className="wide">
                <span>Bush cut open {Math.round(sector)}°</span>
                <input type="range" min={0} max={350} value={sector} onChange={(event) => work.store.setState({ sector: Number(event.target.value) })} />
              </label>
            </figcaption>
          </figure>
        )}
      </div>
      {fit.firstPosition !== null && Math.abs(metres(fit.firstPosition - fit.position)) > 1e-12 && (
        <p className="buttons">
          <button type="button" onClick={closing.toggle}>
            {closing.running ? 'Pause' : 'Close until it touches'}
          </button>
        </p>
      )}
    </>
  );
}

/** What a drag in the scene does; the same functions for as long as the screen stands, so that the scene need not render. */
function useSceneCalls(work: Work, fit: FitReport, factor: number) {
  const latest = useRef({ fit, factor });
  latest.current = { fit, factor };
  const start = useRef(0);
  const onDragStart = useCallback(() => {
    start.current = latest.current.fit.position;
    work.dragStart();
  }, [work]);
  const onDrag = useCallback((moved: number) => work.moveTo(snapped(start.current + millimetres(moved), landmarks(latest.current.fit), millimetres(SNAP_DRAWN) / latest.current.factor)), [work]);
  return { onDragStart, onDrag, onDragEnd: work.dragEnd };
}
