/**
 * The pair lapped together in small steps: how much of every seat bears, how the cones then stand to each other, when
 * to stop.
 */
import { useStore } from 'zustand';
import { fineText, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import type { Work } from '../../state/store.ts';
import { withLap, withoutLap } from './entries.ts';
import { type Lap, LapChart } from './LapChart.tsx';

const ROWS: Control[] = ['force', 'journal', 'bush', 'step', 'advance', 'bearing', 'limit'].map((key) => ({
  kind: 'quantity',
  path: `cut.lap.${key}`,
}));

export function LapPanel({ work, cut, system }: { work: Work; cut: CutReport; system: System }) {
  const wanted = useStore(work.store, (state) => state.design.cut?.lap !== undefined);
  return (
    <section aria-label="Lapping">
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

const WHY: Record<Lap['stop']['why'], string> = {
  bearing: 'All seats bear: stop there.',
  relation: 'Stop there: beyond it the cones no longer stand to each other as the films allow.',
  limit: 'Stop there: a surface has lost all it may.',
  notYet: 'Not every seat bears by then.',
};

function LapNumbers({ lap, system }: { lap: Lap; system: System }) {
  const state = lap.states[lap.stop.at]!;
  const worn = state.seats.map(
    ({ name, journal, bush }) => `${name} journal ${fineText(journal, system)}, bush ${fineText(bush, system)}`,
  );
  const films = (at: Lap['states'][number]) =>
    at.seats
      .map(({ name, film }) => `${name} ${film === null ? 'apart' : fineText(Math.max(0, film), system)}`)
      .join(', ');
  return (
    <p>
      {WHY[lap.stop.why]} Travel {fineText(lap.states[0]!.position - state.position, system)}, {state.turns.toFixed(0)}{' '}
      turns; worn at most: {worn.join('; ')}. Standing home the films go from {films(lap.states[0]!)} to {films(state)}.
      How fast compound cuts is known to an order of magnitude only: believe the travel and the blue, not the turns.
    </p>
  );
}
