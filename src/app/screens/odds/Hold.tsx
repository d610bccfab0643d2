/** What to hold to for a wanted chance: the spreads that give it at least difficulty. */
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { defaultAt, without, withValue } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import type { HoldReport, OddsReport } from '../../../report/odds/definition.ts';
import { holdSentence, holdSizes } from '../../../report/odds/holdWords.ts';
import type { Work } from '../../state/store.ts';
import { Choice } from './SpreadList.tsx';

/** Of so many times: what one asks for. */
const CHANCES = [
  { of: 0.9, text: '9 times in 10' },
  { of: 0.95, text: '19 times in 20' },
  { of: 0.975, text: '39 times in 40' },
  { of: 0.99, text: '99 times in 100' },
];

export function Hold({ work, report, system }: { work: Work; report: OddsReport; system: System }) {
  const { hold, from } = report;
  const wanted = useStore(work.store, (state) => state.design.odds?.wanted) ?? defaultAt('odds.wanted');
  const options = CHANCES.some(({ of }) => of === wanted)
    ? CHANCES
    : [...CHANCES, { of: wanted, text: `${Number((100 * wanted).toPrecision(3))} times in 100` }];
  if (hold === undefined) return null;
  return (
    <section aria-label="What to hold to">
      <h2>What to hold to</h2>
      <Choice
        title="So that it works"
        path="odds.wanted"
        value={`${wanted}`}
        options={options.map(({ of, text }) => ({ value: `${of}`, text }))}
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

/** What is meant where nothing is said is not written down. */
function withWanted(design: Design, wanted: number): Design {
  if (wanted !== defaultAt('odds.wanted')) return withValue(design, 'odds.wanted', wanted);
  const emptied = without(design, 'odds.wanted');
  return Object.keys(emptied.odds ?? {}).length === 0 ? without(emptied, 'odds') : emptied;
}
