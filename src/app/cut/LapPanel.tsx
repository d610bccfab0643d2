/** The pair lapped together in small steps: how much of every seat bears, how the cones then stand to each other, when to stop. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { useStore } from 'zustand';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import ControlGroup from '../controls/ControlGroup.tsx';
import type { Control } from '../controls/controls.tsx';
import type { Work } from '../store.ts';
import { useSize } from '../useSize.ts';
import { withLap, withoutLap } from './entries.ts';

const ROWS: Control[] = ['force', 'step', 'advance', 'bearing', 'limit'].map((key) => ({ kind: 'quantity', path: `cut.lap.${key}` }));

type Lap = NonNullable<NonNullable<CutReport['lap']>>;

export function LapPanel({ work, cut, system }: { work: Work; cut: CutReport; system: System }) {
  const wanted = useStore(work.store, (state) => state.design.cut?.lap !== undefined);
  return (
    <section aria-label="Lapping">
      <h2>Lapping the pair together</h2>
      {!wanted && (
        <p className="buttons">
          <button type="button" onClick={() => work.change(withLap)}>
            Simulate lapping, as the parts are now
          </button>
        </p>
      )}
      {wanted && (
        <>
          {cut.lap === null && <p>Nothing stops this journal going rearward, so nothing is lapped.</p>}
          {cut.lap && <LapChart lap={cut.lap} system={system} />}
          {cut.lap && <LapNumbers lap={cut.lap} system={system} />}
          <details>
            <summary>Push, steps and when to stop</summary>
            <ControlGroup title="lapping" rows={ROWS} />
            <p className="buttons">
              <button type="button" onClick={() => work.change(withoutLap)}>
                No lapping
              </button>
            </p>
          </details>
        </>
      )}
    </section>
  );
}

const MARGIN = { left: 46, right: 14 };
const UPPER = { top: 24, bottom: 130 };
const LOWER = { top: 162, bottom: 246 };
const HEIGHT = 286;

function LapChart({ lap, system }: { lap: Lap; system: System }) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const unit = fineUnit(system);
  const start = lap.states[0]!.position;
  const advance = lap.states.map(({ position }) => start - position);
  const x = scaleLinear([0, advance[advance.length - 1]!], [MARGIN.left, width - MARGIN.right]);
  const share = scaleLinear([0, 1], [UPPER.bottom, UPPER.top]);
  const errors = lap.states.map(({ relationError }) => relationError);
  const told = errors.every((error) => error !== null);
  const most = Math.max(unit.size, lap.allowance ?? 0, ...errors.map((error) => Math.abs(error ?? 0))) * 1.08;
  const wrong = scaleLinear([-most, most], [LOWER.bottom, LOWER.top]);
  const stop = x(advance[lap.stop.at]!);
  const line = (values: readonly number[], y: (value: number) => number) => `M${values.map((value, i) => `${x(advance[i]!).toFixed(2)} ${y(value).toFixed(2)}`).join('L')}`;
  return (
    <figure className="chart lap" ref={box}>
      <svg width={width} height={told ? HEIGHT : UPPER.bottom + 40} role="img" aria-label="Lapping: share of each seat that bears, and how far the cones stand wrong to each other, against the travel">
        <text x={6} y={14}>
          share that bears
        </text>
        {[0, 0.5, 1].map((t) => (
          <g key={t} className="grid">
            <path d={`M${MARGIN.left} ${share(t)}H${width - MARGIN.right}`} className={t === 0 ? 'zero' : ''} />
            <text x={MARGIN.left - 6} y={share(t) + 4} textAnchor="end">
              {t}
            </text>
          </g>
        ))}
        {lap.states[0]!.seats.map(({ name }, i) => (
          <g key={name} className={`seat seat-${i % 4}`}>
            <path
              d={line(
                lap.states.map((state) => state.seats[i]!.bearing),
                share,
              )}
              className="curve"
            />
          </g>
        ))}
        {told && (
          <>
            <text x={6} y={LOWER.top - 10}>
              cones wrong to each other, {unit.name}; shaded: what the films allow
            </text>
            {lap.allowance !== null && <rect x={MARGIN.left} width={width - MARGIN.left - MARGIN.right} y={wrong(lap.allowance)} height={wrong(-lap.allowance) - wrong(lap.allowance)} className="allowed" />}
            {ticks(-most / unit.size, most / unit.size, 4).map((t) => (
              <g key={t} className="grid">
                <path d={`M${MARGIN.left} ${wrong(t * unit.size)}H${width - MARGIN.right}`} className={t === 0 ? 'zero' : ''} />
                <text x={MARGIN.left - 6} y={wrong(t * unit.size) + 4} textAnchor="end">
                  {`${t}`.replace('-', '−')}
                </text>
              </g>
            ))}
            <path d={line(errors as number[], wrong)} className="lap-wrong" />
          </>
        )}
        {ticks(0, advance[advance.length - 1]! / unit.size, width < 500 ? 4 : 8).map((t) => (
          <text key={t} x={x(t * unit.size)} y={(told ? LOWER : UPPER).bottom + 16} textAnchor="middle">
            {t}
          </text>
        ))}
        <text x={width - MARGIN.right} y={(told ? LOWER : UPPER).bottom + 34} textAnchor="end">
          travel rearward, {unit.name}
        </text>
        <path d={`M${stop} ${UPPER.top}V${(told ? LOWER : UPPER).bottom}`} className="lap-stop" />
        <text x={stop + (stop > width / 2 ? -6 : 6)} y={UPPER.top + 14} textAnchor={stop > width / 2 ? 'end' : 'start'} className="lap-stop-name">
          {lap.stop.why === 'notYet' ? 'end of the travel' : 'stop here'}
        </text>
      </svg>
      <figcaption className="legend">
        {lap.states[0]!.seats.map(({ name }, i) => (
          <span key={name} className={`seat seat-${i % 4}`}>
            <svg width="34" height="10" aria-hidden="true">
              <path d="M1 5H33" className="curve" />
            </svg>
            {name}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}

const WHY: Record<Lap['stop']['why'], string> = {
  bearing: 'All seats bear: stop there.',
  relation: 'Stop there: beyond it the cones no longer stand to each other as the films allow.',
  limit: 'Stop there: a surface has lost all it may.',
  notYet: 'Not every seat bears by then.',
};

function LapNumbers({ lap, system }: { lap: Lap; system: System }) {
  const state = lap.states[lap.stop.at]!;
  const worn = state.seats.map(({ name, journal, bush }) => `${name} journal ${fineText(journal, system)}, bush ${fineText(bush, system)}`);
  return (
    <p>
      {WHY[lap.stop.why]} Travel {fineText(lap.states[0]!.position - state.position, system)}, {state.turns.toFixed(0)} turns; worn at most: {worn.join('; ')}. How fast compound cuts is known to an order of magnitude only: believe the
      travel and the blue, not the turns.
    </p>
  );
}
