/** Doubts beside what is believed, as a list; about what is drawn, how often, and from which seed. */

import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { isOfParts } from '../../../design/oddsDefinition.ts';
import { defaultAt, without, withValue } from '../../../design/place.ts';
import { reachableText } from '../../../report/odds/drawCount.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import type { Work } from '../../state/store.ts';
import { SpreadList } from './SpreadList.tsx';
import { wantedChoices, withWanted } from './wanted.ts';

const DRAWS: readonly Control[] = [
  { kind: 'quantity', path: 'odds.draws' },
  { kind: 'quantity', path: 'odds.accuracy' },
  { kind: 'quantity', path: 'odds.seed' },
];

/** `weighed`: the pairs are those that go with the trials, the same on all screens whatever seed is asked. */
const drawsRows = (wanted: number, weighed: boolean): Control[] => [
  {
    kind: 'choice',
    path: 'odds.from',
    title: 'Drawn about',
    about: 'All that was read and tried, or the parts as drawn',
    options: [
      { value: '', text: 'what was read, else the drawing' },
      { value: 'belief', text: 'what was read and tried' },
      { value: 'drawing', text: 'the drawing alone' },
    ],
    change: (design, value) => (value === '' ? without(design, 'odds.from') : withValue(design, 'odds.from', value)),
  },
  ...(weighed ? [] : DRAWS),
  {
    kind: 'choice',
    path: 'odds.wanted',
    title: 'It is to work',
    about: 'How often the pair is to work: what to hold to follows from it',
    options: wantedChoices(wanted),
    read: (design) => `${design.odds?.wanted ?? defaultAt('odds.wanted')}`,
    change: (design, value) => withWanted(design, Number(value)),
  },
];

/** `effective`: as much as so many pairs do those tell that go with the trials. */
export function Spreads({ work, effective }: { work: Work; effective?: number | undefined }) {
  const wanted = useStore(work.store, (state) => state.design.odds?.wanted) ?? defaultAt('odds.wanted');
  const own = useStore(work.store, (state) => state.design.odds?.spread?.some(isOfParts)) ?? false;
  const weighed = effective !== undefined && !own;
  return (
    <section className="controls" aria-label="Spreads">
      <p className="fine">
        How far a size may be off besides what readings tell: what a process holds, a fit, a setting. One standard
        deviation. Lobes, the room, speed and where the journal is set count only in how it runs.
      </p>
      <SpreadList work={work} path="odds.spread" of="" emptied={withoutList} />
      <details>
        <summary>Draws and seed</summary>
        <ControlGroup title="draws" rows={drawsRows(wanted, weighed)} />
        {weighed && (
          <p className="fine">
            The pairs are those that go with the trials, the same on every screen: another number or seed would change
            nothing.
          </p>
        )}
        {effective !== undefined && <p className="fine">{reachableText(effective)}</p>}
      </details>
    </section>
  );
}

/** The last one taken away leaves nothing behind. */
function withoutList(design: Design): Design {
  const emptied = without(design, 'odds.spread');
  return Object.keys(emptied.odds ?? {}).length === 0 ? without(emptied, 'odds') : emptied;
}
