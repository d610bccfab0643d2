/** The forces of the seats that hold a nose pulled aside, and the journal's lines as far as they act. */

import { unitOf } from '../../design/measures.ts';
import type { System } from '../../design/units.ts';
import type { Drawn, DrawnForce } from './drawn.ts';
import { pastDrawn } from './pastDrawn.ts';
import { FIGURE, onScreen, type Placing } from './sectionLayout.ts';

interface Props {
  drawn: Drawn;
  at: Placing;
  system: System;
}

/** Length of an arrow for a share of 1 and for none, px. */
const LONG = 34;
const SHORT = 14;

export default function PullForces({ drawn, at, system }: Props) {
  return drawn.forces.map((force) => (
    <g key={`${force.seat} ${force.at[0]} ${force.angle}`}>
      <PastDrawn drawn={drawn} at={at} force={force} />
      <Force at={at} force={force} system={system} />
    </g>
  ));
}

/** The journal drawn ends before it: its line goes on in dashes. */
function PastDrawn({ drawn, at, force }: Omit<Props, 'system'> & { force: DrawnForce }) {
  const sine = Math.sin(force.angle);
  const points = pastDrawn(drawn, force).map(([z, r]) => {
    const { x, y } = onScreen(at, [z, r * sine], 1);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  });
  return points.length > 1 && <polyline className="past-drawn" points={points.join(' ')} />;
}

/** An arrow on the journal, as seen from the side: the way the seat presses it, longer the harder it does. */
function Force({ at, force, system }: { at: Placing; force: DrawnForce; system: System }) {
  const sine = Math.sin(force.angle);
  const [z, r] = force.at;
  const foot = onScreen(at, [z, r * sine], 1);
  // On the screen y goes down.
  const seen = Math.hypot(force.way[0], force.way[1] * sine) || 1;
  const [across, down] = [force.way[0] / seen, (-force.way[1] * sine) / seen];
  const long = SHORT + ((LONG - SHORT) * force.share) / (1 + force.share);
  return (
    <g className="force-arrow">
      <path
        d={`M${-long} 0H0m-8 -5l8 5l-8 5`}
        transform={`matrix(${across} ${down} ${-down} ${across} ${foot.x} ${foot.y})`}
      />
      <text
        x={foot.x - across * long - 8}
        y={foot.y - Math.sign(down) * (long + 2) + (down < 0 ? 8 : 0)}
        textAnchor="end"
        fontSize={FIGURE}
      >
        {`${force.share.toFixed(2)} ${unitOf('force', system).name}`}
      </text>
    </g>
  );
}
