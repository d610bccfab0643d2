/** In the section: the grip by which the nose is pulled up and down, and the forces of the seats that hold it. */

import { lazy, Suspense } from 'react';
import { unitOf } from '../../design/measures.ts';
import type { System } from '../../design/units.ts';
import { metres, micrometres, millimetres } from '../../report/convert.ts';
import type { Work } from '../state/store.ts';
import { upText } from './asideText.ts';
import type { Drawn } from './drawn.ts';
import type { SectionFrame } from './sectionFrame.ts';
import { NOTE, onScreen, type Placing } from './sectionLayout.ts';
import { keepsTouch } from './useDrag.ts';
import type { useAxialMove } from './useMove.ts';
import { useNoseHand } from './useNoseHand.ts';
import type { Size } from './useSize.ts';

interface Props {
  work: Work;
  drawn: Drawn;
  frame: SectionFrame;
  at: Placing;
  size: Size;
  system: System;
  /** whether what the ring does is said before anyone takes hold of it */
  said: boolean;
  /** whether the whole is in view: the ring then is too, wherever the journal goes */
  whole: boolean;
  /** the journal along its axis */
  along: ReturnType<typeof useAxialMove>;
}

/** Nothing holds the nose before it is pulled. */
const PullForces = lazy(() => import('./PullForces.tsx'));

/** px: what the ring does, at its corner of the drawing */
const LINE = 17;
const EDGE = 8;
/** px from its middle to the tips of its arrows */
const RING = 24;

const RING_DRAWN = (
  <>
    <circle r={22} className="grip" />
    <circle r={9} className="handle" />
    <path d="M0 -22l-5 8h10zM0 22l-5 -8h10zM-22 0l8 -5v10zM22 0l-8 -5v10z" />
  </>
);

export function SectionPull({ work, drawn, frame, at, size, system, said, whole, along }: Props) {
  const station = frame.journalRight;
  // The displacement the pose has there, mm true.
  const up = millimetres(drawn.aside(metres(station), Math.PI / 2)) / drawn.factor;
  const perPixel = () => 1 / (at.scale * drawn.factor);
  const { handlers, onKeyDown } = useNoseHand({ work, station, up, perPixel, along });
  const nose = onScreen(at, [metres(station), 0], 1);
  const grip = { ...nose, x: whole ? Math.min(size.width - RING, Math.max(RING, nose.x)) : nose.x };
  const y = grip.y - up * drawn.factor * at.scale;
  return (
    <g className="pull">
      {drawn.forces.length > 0 && (
        <Suspense fallback={null}>
          <PullForces drawn={drawn} at={at} system={system} />
        </Suspense>
      )}
      <g
        {...handlers}
        ref={keepsTouch}
        role="slider"
        tabIndex={0}
        aria-orientation="vertical"
        aria-label="Pull the nose up or down; left and right move the journal; Escape lets go"
        aria-valuenow={micrometres(up)}
        aria-valuetext={upText(up, system)}
        onKeyDown={onKeyDown}
        className="pull-grip"
      >
        <g transform={`translate(${grip.x} ${y})`}>{RING_DRAWN}</g>
      </g>
      {(drawn.forces.length > 0 ? [] : ['Ring ↕ pulls the nose aside', '↔ moves the journal']).map((does, i) => (
        <text
          key={does}
          className={said ? 'hint what-ring-does said' : 'hint what-ring-does'}
          x={size.width - EDGE}
          y={size.height - EDGE - (1 - i) * LINE}
          textAnchor="end"
          fontSize={NOTE}
        >
          {does}
        </text>
      ))}
    </g>
  );
}

/** What the picture shows while the nose is pulled. */
export const pullText = (system: System) =>
  `Arrows: what each seat presses with per ${unitOf('force', system).name} pulled. Films: the least all round.`;
