/** Doubts beside what is believed, as a list; about what is drawn, how often, and from which seed. */
import type { Design } from '../../../design/definition.ts';
import { without, withValue } from '../../../design/place.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import type { Work } from '../../state/store.ts';
import { SpreadList } from './SpreadList.tsx';

const DRAWS: Control[] = [
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
  { kind: 'quantity', path: 'odds.draws' },
  { kind: 'quantity', path: 'odds.seed' },
];

export function Spreads({ work }: { work: Work }) {
  return (
    <section className="controls" aria-label="Spreads">
      <h2>Spreads of your own</h2>
      <p className="fine">
        How far a size may be off besides what readings tell: what a process holds, a fit, a setting. One standard
        deviation. Lobes, the room, speed and where the journal is set count only in how it runs.
      </p>
      <SpreadList work={work} path="odds.spread" of="" emptied={withoutList} />
      <details>
        <summary>Draws and seed</summary>
        <ControlGroup title="draws" rows={DRAWS} />
      </details>
    </section>
  );
}

/** The last one taken away leaves nothing behind. */
function withoutList(design: Design): Design {
  const emptied = without(design, 'odds.spread');
  return Object.keys(emptied.odds ?? {}).length === 0 ? without(emptied, 'odds') : emptied;
}
