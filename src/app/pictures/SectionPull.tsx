/** In the section: the grip by which the nose is pulled up and down, and the forces of the seats that hold it. */

import { unitOf } from '../../design/measures.ts';
import { fineText, type System } from '../../design/units.ts';
import { metres, micrometres, millimetres } from '../../report/convert.ts';
import type { Work } from '../state/store.ts';
import type { Drawn, DrawnForce } from './drawn.ts';
import type { SectionFrame } from './sectionFrame.ts';
import { FIGURE, onScreen, type Placing } from './sectionLayout.ts';
import { useHandle } from './useMove.ts';

interface Props {
  work: Work;
  drawn: Drawn;
  frame: SectionFrame;
  at: Placing;
  system: System;
}

/** One press of a key, mm. */
const STEP = 0.001;
/** Length of an arrow for a share of 1 and for none, px. */
const LONG = 34;
const SHORT = 14;

export function SectionPull({ work, drawn, frame, at, system }: Props) {
  const station = frame.journalRight;
  // The displacement the pose has there, mm true.
  const up = millimetres(drawn.aside(metres(station), Math.PI / 2)) / drawn.factor;
  const { handlers, onKeyDown } = useHandle({
    at: { x: 0, y: up },
    to: (x, y) => work.store.setState({ pull: { station, x, y } }),
    perPixel: () => 1 / (at.scale * drawn.factor),
    step: STEP,
    times: 10,
    upright: true,
    start: () => work.store.setState({ pull: { station, x: 0, y: up } }),
    letGo: () => work.store.setState({ pull: null }),
  });
  const grip = onScreen(at, [metres(station), 0], 1);
  const y = grip.y - up * drawn.factor * at.scale;
  return (
    <g className="pull">
      {drawn.forces.map((force) => (
        <Force key={`${force.seat} ${force.at[0]} ${force.angle}`} at={at} force={force} system={system} />
      ))}
      <g
        {...handlers}
        role="slider"
        tabIndex={0}
        aria-orientation="vertical"
        aria-label="Pull the nose up or down; Escape lets go"
        aria-valuenow={micrometres(up)}
        aria-valuetext={`${fineText(up, system)} up`}
        onKeyDown={onKeyDown}
        className="pull-grip"
      >
        <circle cx={grip.x} cy={y} r={22} className="grip" />
        <circle cx={grip.x} cy={y} r={9} className="handle" />
        <path d={`M${grip.x} ${y - 22}l-5 8h10zM${grip.x} ${y + 22}l-5 -8h10z`} />
      </g>
    </g>
  );
}

/** An arrow on the journal, as seen from the side, with its share of the pull. */
function Force({ at, force, system }: { at: Placing; force: DrawnForce; system: System }) {
  const sine = Math.sin(force.angle);
  const [z, r] = force.at;
  const foot = onScreen(at, [z, r * sine], 1);
  const long = (SHORT + (LONG - SHORT) * Math.min(1, force.share)) * Math.max(0.35, Math.abs(sine));
  const away = sine >= 0 ? -1 : 1;
  return (
    <g className="force-arrow">
      <path d={`M${foot.x} ${foot.y + away * long}V${foot.y}m-5 ${away * 8}l5 ${-away * 8}l5 ${away * 8}`} />
      <text x={foot.x + 8} y={foot.y + away * (long + 2) + (away > 0 ? 8 : 0)} fontSize={FIGURE}>
        {`${force.share.toFixed(2)} ${unitOf('force', system).name}`}
      </text>
    </g>
  );
}
