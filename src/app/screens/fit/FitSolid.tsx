/** The solid picture of Fit, and what a hand does in it. */
import { type ReactNode, useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { millimetres } from '../../../report/convert.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { Fault } from '../../frame/Fault.tsx';
import { onDemand } from '../../frame/onDemand.tsx';
import { createDrawing } from '../../pictures/drawing.ts';
import type { Drawn } from '../../pictures/drawn.ts';
import { Hand, Tools } from '../../pictures/Hand.tsx';
import { axialDrag } from '../../pictures/journalMove.ts';
import { LetGo } from '../../pictures/LetGo.tsx';
import type { Prints } from '../../pictures/sceneProps.ts';
import { timesText } from '../../pictures/timesText.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import type { Work } from '../../state/store.ts';
import { useLatest } from '../../state/useLatest.ts';
import { useSolved } from '../../state/useSolved.ts';
import { useBlued } from './useBlued.ts';

const Scene = onDemand(() => import('../../pictures/Scene.tsx'), {
  what: 'The solid picture',
  loading: 'The solid picture is loading.',
});

/** A drag in the scene stops this near (µm drawn true) to a touch or a film, as a share of what is drawn. */
const SNAP_DRAWN = 0.4e-3;

interface Props {
  work: Work;
  fit: FitReport;
  drawn: Drawn;
  /** what its factor was before it changed by itself, while that is said */
  before: number | null;
  onLost(): void;
  /** which picture is shown, where it takes turns with the section */
  which: ReactNode;
}

export default function FitSolid({ work, fit, drawn, before, onLost, which }: Props) {
  const system = useStore(work.store, (state) => state.system);
  const sector = useStore(work.store, (state) => state.sector);
  const skin = useStore(work.store, (state) => state.skin);
  const dark = useMedia('(prefers-color-scheme: dark)');
  const [drawing] = useState(() => createDrawing(drawn));
  useLayoutEffect(() => drawing.set(drawn), [drawing, drawn]);
  const { prints, fault, again } = usePrints(work);
  const alone = Boolean(which);
  // Beside the section it stands there.
  const over = useMemo(() => alone && <LetGo work={work} />, [alone, work]);
  const solid = { drawing, system, sector, dark, prints, ...useSceneCalls(work, fit, drawn), onLost, over };
  return (
    <figure className="picture solid">
      <div className="scene">
        <Scene {...solid} />
      </div>
      <figcaption>
        {which}
        <span className="gaps">Gaps drawn {timesText(drawn.factor, before)}</span>
        <Tools>
          <Fault what="The print" fault={fault} again={again} />
          <fieldset className="buttons">
            <legend className="visually-hidden">Between them</legend>
            {(['film', 'blue'] as const).map((name) => (
              <button
                key={name}
                type="button"
                aria-pressed={skin === name}
                onClick={() => work.store.setState({ skin: name })}
              >
                {name === 'film' ? 'Film' : 'Marking blue'}
              </button>
            ))}
          </fieldset>
          <Hand>
            Drag the journal along its axis, its nose to feel the stops, the ground to look round; with the focus on it
            the arrow keys turn it, + − zoom, 0 shows the whole.
          </Hand>
        </Tools>
      </figcaption>
    </figure>
  );
}

/** The prints of the last pressing, while they are shown. */
function usePrints(work: Work): { prints: Prints | null; fault: string | null; again(): void } {
  const design = useStore(work.store, (state) => state.design);
  const skin = useStore(work.store, (state) => state.skin);
  const turned = useStore(work.store, (state) => state.turned);
  const blued = useBlued(design);
  const { value, fault, again } = useSolved('printMaps', skin === 'blue' ? blued : null);
  const prints = useMemo(
    () =>
      skin === 'film'
        ? null
        : { maps: value ? (turned ? value.turned : value.press) : [], thickness: value?.thickness ?? 0 },
    [skin, value, turned],
  );
  return { prints, fault: skin === 'blue' ? fault : null, again };
}

/**
 * What a drag in the scene does; the same functions for as long as the screen stands, so that the scene need not
 * render.
 */
function useSceneCalls(work: Work, fit: FitReport, drawn: Drawn) {
  const latest = useLatest({ fit, drawn });
  const start = useRef({ to: axialDrag(0), factor: 1 });
  const hold = useRef({ station: 0, x: 0, y: 0 });
  const onDragStart = useCallback(() => {
    start.current = { to: axialDrag(latest.current.fit.position), factor: latest.current.drawn.factor };
    work.dragStart();
  }, [work]);
  const onDrag = useCallback(
    (moved: number) => {
      const { to, factor } = start.current;
      work.moveTo(to(latest.current.fit, millimetres(moved), millimetres(SNAP_DRAWN) / factor));
    },
    [work],
  );
  const onPullStart = useCallback((station: number) => {
    const { aside, factor } = latest.current.drawn;
    hold.current = {
      station: millimetres(station),
      x: millimetres(aside(station, 0)) / factor,
      y: millimetres(aside(station, Math.PI / 2)) / factor,
    };
  }, []);
  const onPull = useCallback(
    (x: number, y: number) => {
      const from = hold.current;
      work.store.setState({ pull: { station: from.station, x: from.x + millimetres(x), y: from.y + millimetres(y) } });
    },
    [work],
  );
  return { onDragStart, onDrag, onDragEnd: work.dragEnd, onPullStart, onPull };
}
