/** Doubts beside what is believed, as a list; about what is drawn, how often, and from which seed. */
import { useId } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { without, withValue } from '../../../design/place.ts';
import { type System, TENTH } from '../../../design/units.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import { atLeast, atMost, LocalField } from '../../controls/LocalField.tsx';
import type { Work } from '../../state/store.ts';

type Spread = NonNullable<NonNullable<Design['odds']>['spread']>[number];

const MOST = 160;
const NUMBERS: readonly { value: Spread['of']; text: string }[] = [
  { value: 'halfAngle', text: 'half angle' },
  { value: 'diameter', text: 'diameter' },
  { value: 'station', text: 'station' },
  { value: 'from', text: 'rear end' },
  { value: 'to', text: 'nose end' },
];

/** What stands in a new entry (degrees, mm). Common practice, no source. */
const usual = (of: Spread['of'], system: System): number =>
  of === 'halfAngle' ? 0.001 : (of === 'diameter' ? 1 : 50) * (system === 'inch' ? TENTH / 2 : 0.001);

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
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const spread = design.odds?.spread ?? [];
  return (
    <section className="controls" aria-label="Spreads">
      <h2>Spreads of your own</h2>
      <p className="fine">
        How far a size may be off besides what readings tell: what a process holds, a fit, a setting. One standard
        deviation.
      </p>
      <ol className="spreads">
        {spread.map((entry, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: entries are told apart by their place alone
          <SpreadRow key={i} work={work} entry={entry} index={i} system={system} />
        ))}
      </ol>
      <p className="buttons">
        <button
          type="button"
          disabled={spread.length >= MOST}
          onClick={() => work.change((d) => withOneMore(d, system))}
        >
          + Spread
        </button>
      </p>
      <details>
        <summary>Draws and seed</summary>
        <ControlGroup title="draws" rows={DRAWS} />
      </details>
    </section>
  );
}

interface RowProps {
  work: Work;
  entry: Spread;
  index: number;
  system: System;
}

function SpreadRow({ work, entry, index, system }: RowProps) {
  const path = `odds.spread[${index}]`;
  const set = (key: keyof Spread, value: string | number) =>
    work.change((design) => withValue(design, `${path}.${key}`, value));
  const seats = useStore(work.store, (state) => state.design.seats);
  const { seat, part, of, sigma, shape = 'normal' } = entry;
  return (
    <li>
      <Choice
        title="Seat"
        path={`${path}.seat`}
        value={seat}
        options={seats.map(({ name }) => ({ value: name, text: name }))}
        set={(value) => set('seat', value)}
      />
      <Choice
        title="Part"
        path={`${path}.part`}
        value={part}
        options={[
          { value: 'journal', text: 'journal' },
          { value: 'bush', text: 'bush' },
        ]}
        set={(value) => set('part', value)}
      />
      <Choice
        title="Size"
        path={`${path}.of`}
        value={of}
        options={NUMBERS}
        set={(value) => work.change((design) => withNumber(design, index, value as Spread['of'], system))}
      />
      <div data-path={`${path}.sigma`}>
        <LocalField
          title="Spread"
          about="One standard deviation"
          quantity={of === 'halfAngle' ? 'phase' : 'fine'}
          value={sigma}
          set={(value) => set('sigma', value)}
          system={system}
          bounds={[atLeast(0), atMost(100)]}
        />
      </div>
      <Choice
        title="Shape"
        path={`${path}.shape`}
        value={shape}
        options={[
          { value: 'normal', text: 'normal' },
          { value: 'rectangular', text: 'even within its ends' },
        ]}
        set={(value) => set('shape', value)}
      />
      <button
        type="button"
        aria-label={`Remove spread ${index + 1}`}
        onClick={() => work.change((d) => withoutOne(d, index))}
      >
        Remove
      </button>
    </li>
  );
}

interface ChoiceProps {
  title: string;
  path: string;
  value: string;
  options: readonly { value: string; text: string }[];
  set(value: string): void;
}

function Choice({ title, path, value, options, set }: ChoiceProps) {
  const id = useId();
  return (
    <div className="local">
      <label htmlFor={id}>{title}</label>
      <select id={id} data-path={path} value={value} onChange={(event) => set(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}

const withSpread = (design: Design, change: (spread: readonly Spread[]) => Spread[]): Design => ({
  ...design,
  odds: { ...design.odds, spread: change(design.odds?.spread ?? []) },
});

/** One more, of the first surface that has none yet. */
function withOneMore(design: Design, system: System): Design {
  const listed = design.odds?.spread ?? [];
  const surfaces = design.seats.flatMap(({ name }) =>
    (['journal', 'bush'] as const).map((part) => ({ seat: name, part })),
  );
  const free = surfaces.find(({ seat, part }) => !listed.some((one) => one.seat === seat && one.part === part));
  const { seat, part } = free ?? surfaces[0]!;
  return withSpread(design, (spread) => [...spread, { seat, part, of: 'diameter', sigma: usual('diameter', system) }]);
}

/** Another size: an angle's spread is none of a length's. */
const withNumber = (design: Design, index: number, of: Spread['of'], system: System): Design =>
  withSpread(design, (spread) =>
    spread.map((one, i) => (i === index && one.of !== of ? { ...one, of, sigma: usual(of, system) } : one)),
  );

/** The last one taken away leaves nothing behind. */
function withoutOne(design: Design, index: number): Design {
  const left = withSpread(design, (spread) => spread.filter((_, i) => i !== index));
  if (left.odds!.spread!.length > 0) return left;
  const emptied = without(left, 'odds.spread');
  return Object.keys(emptied.odds ?? {}).length === 0 ? without(emptied, 'odds') : emptied;
}
