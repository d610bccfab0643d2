/** What to hold to for a wanted chance: the spreads that give it at least difficulty. */
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import { defaultAt } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import type { HoldReport, OddsReport } from '../../../report/odds/definition.ts';
import { holdSentence, holdSizes } from '../../../report/odds/holdWords.ts';
import type { Work } from '../../state/store.ts';
import { Choice } from './SpreadList.tsx';
import { wantedChoices, withWanted } from './wanted.ts';

export function Hold({ work, report, system }: { work: Work; report: OddsReport; system: System }) {
  const { hold, from } = report;
  const wanted = useStore(work.store, (state) => state.design.odds?.wanted) ?? defaultAt('odds.wanted');
  if (hold === undefined) return null;
  return (
    <section aria-label="What to hold to">
      <Choice
        title="So that it works"
        path="odds.wanted"
        value={`${wanted}`}
        options={wantedChoices(wanted)}
        set={(value) => work.change((design) => withWanted(design, Number(value)))}
      />
      <p>{holdSentence(hold, wanted)}</p>
      {hold && <HoldTable hold={hold} system={system} />}
      {hold && (
        <p className="fine">
          Each size within ± so much, 19 times in 20{from === 'belief' ? ', known or made' : ''}; loosened where it
          hardly matters, tightened where it does, all being as hard to halve. By other draws this works{' '}
          {(100 * hold.low).toFixed(0)} to {(100 * hold.high).toFixed(0)} times in 100.
        </p>
      )}
    </section>
  );
}

function HoldTable({ hold, system }: { hold: HoldReport; system: System }): ReactNode {
  return (
    <div className="table">
      <table className="hold">
        <thead>
          <tr>
            <th scope="col">Hold</th>
            <th scope="col">to</th>
            <th scope="col">now</th>
          </tr>
        </thead>
        <tbody>
          {hold.inputs.map((input) => {
            const { name, to, now } = holdSizes(input, system);
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{to}</td>
                <td>{now}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
