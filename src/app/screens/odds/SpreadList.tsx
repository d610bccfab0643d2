/** A list of spreads: the design's own, or those of a way to make the parts. */
import { useId } from 'react';
import { useStore } from 'zustand';
import type { Design, Quantity } from '../../../design/definition.ts';
import type { Spread } from '../../../design/oddsDefinition.ts';
import { valueAt, withValue } from '../../../design/place.ts';
import { type System, TENTH } from '../../../design/units.ts';
import { atLeast, atMost, LocalField } from '../../controls/LocalField.tsx';
import type { Work } from '../../state/store.ts';

type Of = Spread['of'];

const MOST = 160;
const NUMBERS: readonly { value: Of; text: string }[] = [
  { value: 'halfAngle', text: 'half angle' },
  { value: 'diameter', text: 'diameter' },
  { value: 'station', text: 'station' },
  { value: 'from', text: 'rear end' },
  { value: 'to', text: 'nose end' },
  { value: 'lobeAmplitude', text: 'lobe height (runs)' },
  { value: 'temperature', text: 'room’s temperature (runs)' },
  { value: 'speed', text: 'speed (runs)' },
  { value: 'position', text: 'where it is set (runs)' },
];
const isSetting = (of: Of): of is 'temperature' | 'speed' | 'position' =>
  of === 'temperature' || of === 'speed' || of === 'position';

/** How a spread of it is typed: an angle in minutes, a difference of temperatures. */
const QUANTITIES: Partial<Record<Of, Quantity>> = { halfAngle: 'phase', temperature: 'warmer', speed: 'speed' };

/** What stands in a new entry (file units): a micrometre or half a tenth, thrice that for a place. @source practice */
function usual(of: Of, system: System): number {
  if (of === 'halfAngle') return 0.001;
  if (of === 'temperature') return 3;
  if (of === 'speed') return 20;
  return (
    (of === 'diameter' || of === 'lobeAmplitude' ? 1 : of === 'position' ? 3 : 50) *
    (system === 'inch' ? TENTH / 2 : 0.001)
  );
}

/** One and the same, so that a screen that looks at it is not drawn again. */
const NONE: readonly Spread[] = [];
const listAt = (design: Design, path: string) => (valueAt(design, path) as readonly Spread[] | undefined) ?? NONE;
const withList = (design: Design, path: string, change: (spread: readonly Spread[]) => Spread[]): Design =>
  withValue(design, path, change(listAt(design, path)));

interface ListProps {
  work: Work;
  /** of the list */
  path: string;
  /** what it is, for the buttons that are told apart by it */
  of: string;
  /** what is left of the design when the last entry is taken away */
  emptied?(design: Design): Design;
}

export function SpreadList({ work, path, of, emptied = (design) => design }: ListProps) {
  const spread = useStore(work.store, (state) => listAt(state.design, path));
  const system = useStore(work.store, (state) => state.system);
  const remove = (index: number) =>
    work.change((design) => {
      const left = withList(design, path, (list) => list.filter((_, i) => i !== index));
      return listAt(left, path).length > 0 ? left : emptied(left);
    });
  return (
    <>
      <ol className="spreads">
        {spread.map((entry, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: entries are told apart by their place alone
          <SpreadRow key={i} work={work} entry={entry} path={`${path}[${i}]`} list={path} index={i} system={system}>
            <button type="button" aria-label={`Remove spread ${i + 1}${of}`} onClick={() => remove(i)}>
              Remove
            </button>
          </SpreadRow>
        ))}
      </ol>
      <p className="buttons">
        <button
          type="button"
          aria-label={of === '' ? undefined : `+ Spread${of}`}
          disabled={spread.length >= MOST}
          onClick={() => work.change((d) => withOneMore(d, path, system))}
        >
          + Spread
        </button>
      </p>
    </>
  );
}

interface RowProps {
  work: Work;
  entry: Spread;
  path: string;
  list: string;
  index: number;
  system: System;
  children: React.ReactNode;
}

function SpreadRow({ work, entry, path, list, index, system, children }: RowProps) {
  const set = (key: string, value: string | number) =>
    work.change((design) => withValue(design, `${path}.${key}`, value));
  const seats = useStore(work.store, (state) => state.design.seats);
  const { of, sigma, shape = 'normal' } = entry;
  return (
    <li>
      {'seat' in entry && (
        <>
          <Choice
            title="Seat"
            path={`${path}.seat`}
            value={entry.seat}
            options={seats.map(({ name }) => ({ value: name, text: name }))}
            set={(value) => set('seat', value)}
          />
          <Choice
            title="Part"
            path={`${path}.part`}
            value={entry.part}
            options={[
              { value: 'journal', text: 'journal' },
              { value: 'bush', text: 'bush' },
            ]}
            set={(value) => set('part', value)}
          />
        </>
      )}
      <Choice
        title="Size"
        path={`${path}.of`}
        value={of}
        options={NUMBERS}
        set={(value) => work.change((design) => withNumber(design, list, index, value as Of, system))}
      />
      <div data-path={`${path}.sigma`}>
        <LocalField
          title="Spread"
          about="One standard deviation"
          quantity={QUANTITIES[of] ?? 'fine'}
          value={sigma}
          set={(value) => set('sigma', value)}
          system={system}
          bounds={[atLeast(0), atMost(isSetting(of) ? 10_000 : 100)]}
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
      {children}
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

export function Choice({ title, path, value, options, set }: ChoiceProps) {
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

type Surface = { seat: string; part: 'journal' | 'bush' };
const surfacesOf = ({ seats }: Design): Surface[] =>
  seats.flatMap(({ name }) => (['journal', 'bush'] as const).map((part) => ({ seat: name, part })));

/** One more, of the first surface that has none yet. */
function withOneMore(design: Design, path: string, system: System): Design {
  const listed = listAt(design, path);
  const surfaces = surfacesOf(design);
  const has = ({ seat, part }: Surface) =>
    listed.some((one) => 'seat' in one && one.seat === seat && one.part === part);
  const surface = surfaces.find((one) => !has(one)) ?? surfaces[0]!;
  return withList(design, path, (spread) => [
    ...spread,
    { ...surface, of: 'diameter', sigma: usual('diameter', system) },
  ]);
}

/** Another size: an angle's spread is none of a length's, and the room is no surface's. */
const withNumber = (design: Design, path: string, index: number, of: Of, system: System): Design =>
  withList(design, path, (spread) =>
    spread.map((one, i): Spread => {
      if (i !== index || one.of === of) return one;
      const common = { sigma: usual(of, system), ...(one.shape && { shape: one.shape }) };
      if (isSetting(of)) return { of, ...common };
      const { seat, part } = 'seat' in one ? one : surfacesOf(design)[0]!;
      return { seat, part, of, ...common };
    }),
  );
