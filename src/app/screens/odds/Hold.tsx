/** What to hold to for a wanted chance: the spreads that give it at least difficulty. */
import { useStore } from 'zustand';
import { defaultAt } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import type { OddsReport } from '../../../report/odds/definition.ts';
import { holdSentence, holdSizes } from '../../../report/odds/holdWords.ts';
import type { Work } from '../../state/store.ts';
import { NamedRows } from './NamedRows.tsx';
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
      {hold && (
        <NamedRows
          name="hold"
          head={['Hold', 'to', 'now']}
          rows={hold.inputs.map((input) => {
            const { name, to, now } = holdSizes(input, system);
            return [name, to, now];
          })}
        />
      )}
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
