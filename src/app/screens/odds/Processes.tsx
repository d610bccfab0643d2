/** Ways to make the parts, side by side: how often the pair works by each, and what each makes of the films. */
import { useId } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { without } from '../../../design/place.ts';
import { fineText, type System, sidedText } from '../../../design/units.ts';
import type { OddsReport } from '../../../report/odds/definition.ts';
import { timesText } from '../../../report/odds/times.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { typeAt, useHeldText } from '../../state/draft.ts';
import type { Work } from '../../state/store.ts';
import { SpreadList } from './SpreadList.tsx';

const MOST = 8;

/** The answer: a row a way. */
export function ProcessTable({ report, design, system }: { report: OddsReport; design: Design; system: System }) {
  const { processes, planned } = report;
  const held = sidedText((planned ?? report).position, system);
  if (!processes || processes.length === 0) return null;
  const best = Math.max(...processes.map(({ share }) => share));
  return (
    <section aria-label="Ways to make the parts">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
      <div className="table" tabIndex={0}>
        <table className="processes">
          <thead>
            <tr>
              <th scope="col">Made</th>
              <th scope="col">It works</th>
              {design.seats.map(({ name }) => (
                <th key={name} scope="col">
                  {name} film
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {processes.map(({ name, share, low, high, films, setFilms }) => (
              <tr key={name} className={share === best ? 'best' : ''}>
                <th scope="row">
                  {name}
                  {alikeText(design, name) !== '' && <small> {alikeText(design, name)}</small>}
                </th>
                <td>
                  <b>{timesText(share)}</b>{' '}
                  <small>
                    {percent(low)} to {percent(high)} %
                  </small>
                </td>
                {design.seats.map(({ name: seat }) => (
                  <td key={seat}>
                    {between(films[seat], system)}
                    {setFilms[seat] && (
                      <>
                        {' '}
                        <small>
                          journal {planned ? 'set' : 'left'} {held}: {between(setFilms[seat], system)}
                        </small>
                      </>
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="fine">
        {planned ? 'Cut as planned. ' : 'Uncut. '}Films 9 times in 10, each pair with its journal where its films suit
        it best; beneath, with the journal of every pair {planned ? 'where the plan sets it' : 'where it stands on Fit'}
        , as it is where nobody sets the adjuster to each.
      </p>
    </section>
  );
}

/** Why a row says the same as another. */
function alikeText({ odds }: Design, name: string): string {
  const ways = odds?.processes ?? [];
  const at = ways.findIndex((way) => way.name === name);
  const spread = ways[at]?.spread ?? [];
  if (spread.length === 0) return 'no spread: what is known of the parts, and no more';
  const same = ways.slice(0, at).find((way) => JSON.stringify(way.spread) === JSON.stringify(spread));
  return same ? `the same spreads as ${same.name}` : '';
}

const percent = (share: number) => (100 * share).toFixed(1);
const between = (film: OddsReport['films'][string] | undefined, system: System) =>
  film ? `${fineText(film.p05, system)} to ${fineText(film.p95, system)}` : '—';

export function Processes({ work }: { work: Work }) {
  const processes = useStore(work.store, (state) => state.design.odds?.processes) ?? [];
  return (
    <section className="controls" aria-label="Processes">
      <p className="fine">
        Each with the spreads it holds, in place of those above: ground here, lapped by another shop. What each makes of
        the pair is told side by side.
      </p>
      {processes.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a way is told apart by its place, its name being typed
        <ProcessEntry key={i} work={work} index={i} />
      ))}
      <p className="buttons">
        <button type="button" disabled={processes.length >= MOST} onClick={() => work.change(withOneMore)}>
          + Way to make them
        </button>
      </p>
    </section>
  );
}

function ProcessEntry({ work, index }: { work: Work; index: number }) {
  const id = useId();
  const path = `odds.processes[${index}]`;
  const name = useStore(work.store, (state) => state.design.odds?.processes?.[index]?.name) ?? '';
  const held = useHeldText(work, `${path}.name`);
  return (
    <fieldset className="process">
      <legend>{name}</legend>
      <div className="process-name">
        <label htmlFor={id}>Called</label>
        <div data-path={`${path}.name`}>
          <TypedField
            id={id}
            shown={name}
            about="What this way of making the parts is called"
            keys="words"
            take={(text) => {
              typeAt(work, `${path}.name`, { text, put: { value: text } });
              return null;
            }}
            held={held}
          />
        </div>
        <button
          type="button"
          aria-label={`Remove ${name}`}
          onClick={() => work.change((design) => withoutOne(design, index))}
        >
          Remove
        </button>
      </div>
      <SpreadList work={work} path={`${path}.spread`} of={` of ${name}`} />
    </fieldset>
  );
}

type Process = NonNullable<NonNullable<Design['odds']>['processes']>[number];

const withProcesses = (design: Design, processes: Process[]): Design => ({
  ...design,
  odds: { ...design.odds, processes },
});

/** One more: what the list above holds, to begin with. */
function withOneMore(design: Design): Design {
  const { processes = [], spread = [] } = design.odds ?? {};
  const names = new Set(processes.map(({ name }) => name));
  let number = processes.length + 1;
  while (names.has(`way ${number}`)) number++;
  return withProcesses(design, [...processes, { name: `way ${number}`, spread }]);
}

function withoutOne(design: Design, index: number): Design {
  const left = (design.odds?.processes ?? []).filter((_, i) => i !== index);
  if (left.length > 0) return withProcesses(design, left);
  const emptied = without(design, 'odds.processes');
  return Object.keys(emptied.odds ?? {}).length === 0 ? without(emptied, 'odds') : emptied;
}
