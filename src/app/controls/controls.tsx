/**
 * The kinds of control, each a row of a leva panel. A row holds the path of what it edits; the design stays in the
 * store.
 */

import { Components, createPlugin, useInputContext } from 'leva/plugin';
import { useContext, useId } from 'react';
import { useStore } from 'zustand';
import type { Design, Surface } from '../../design/definition.ts';
import { quantityAt, valueAt, without, withValue } from '../../design/place.ts';
import { hintText, inSystem, quantityText, typedQuantity } from '../../design/quantity.ts';
import { madeIn } from '../../design/tools.ts';
import { angleText, fineUnit, lengthUnit, taperOfHalfAngle } from '../../design/units.ts';
import { MOTIONS, type Motion } from '../../engine/spindle/pose.ts';
import { FREE } from '../../report/play/toPlay.ts';
import { DrawnFactorContext, useWork } from './context.ts';
import { lobesText, profileText, readLobes, readProfile } from './lists.ts';
import { TypedField } from './TypedField.tsx';

export type Control =
  /** a number of the design */
  | {
      kind: 'quantity';
      path: string;
      title?: string /** what holds where the design says nothing, where that is other than the definition has it; in the unit of the file */;
      otherwise?: number /** the size of a tool, in whichever system that is made in */;
      tool?: boolean;
    }
  /** text of the design; `change` where more follows from it than the text itself */
  | {
      kind: 'words';
      path: string;
      title: string;
      about: string;
      lines?: number;
      change?: (design: Design, text: string) => Design;
    }
  /** one of a few; `change` where more follows from it than the value itself, `read` where no one value tells which */
  | {
      kind: 'choice';
      path: string;
      title: string;
      about: string;
      options: readonly { value: string; text: string }[];
      change?: (design: Design, value: string) => Design;
      read?: (design: Design) => string;
    }
  /** a measured line, or lobes, of a surface */
  | { kind: 'profile' | 'lobes'; path: string }
  /** which motions of the spindle are free */
  | { kind: 'motions' }
  /** how the pictures show the pair */
  | { kind: 'factor' | 'sector' };

const { Row, Label } = Components as {
  Row: React.ComponentType<{ input?: boolean; children: React.ReactNode }>;
  Label: React.ComponentType<{ htmlFor: string; title?: string; children: string }>;
};

/** One leva input for all of them. */
export const control = createPlugin<Control, Control, object>({
  normalize: (input) => ({ value: input as Control, settings: {} }),
  sanitize: (value) => value,
  format: (value) => value,
  component: () => <ControlRow {...useInputContext<{ value: Control }>().value} />,
});

function ControlRow(row: Control) {
  switch (row.kind) {
    case 'quantity':
      return <QuantityRow {...row} />;
    case 'words':
      return <WordsRow {...row} />;
    case 'choice':
      return <ChoiceRow {...row} />;
    case 'profile':
    case 'lobes':
      return <ListRow {...row} />;
    case 'motions':
      return <MotionsRow />;
    case 'factor':
      return <FactorRow />;
    case 'sector':
      return <SectorRow />;
  }
}

function Labelled({
  title,
  about,
  children,
}: {
  title: string;
  about: string;
  children: (id: string) => React.ReactNode;
}) {
  const id = useId();
  return (
    <Row input>
      <Label htmlFor={id} title={about}>
        {title}
      </Label>
      {children(id)}
    </Row>
  );
}

function QuantityRow({ path, title, otherwise, tool }: Control & { kind: 'quantity' }) {
  const work = useWork();
  const liked = useStore(work.store, (state) => state.system);
  const value = useStore(work.store, (state) => valueAt(state.design, path)) as number | undefined;
  const system = tool && value !== undefined ? madeIn(value, liked) : liked;
  const at = quantityAt(path, work.store.getState().design);
  const take = (text: string) => {
    if (text.trim() === '' && at.optional) return inUnits(complaint(work.change((design) => without(design, path))));
    const typed = typedQuantity(at, text, system);
    return typed.ok ? inUnits(complaint(work.change((design) => withValue(design, path, typed.value)))) : typed.message;
  };
  // What is wrong is said of the file, in its units; a person reads it in the unit of the field.
  const inUnits = (message: string | null) => message && inSystem(message, system, at.quantity);
  const holds = otherwise ?? at.default;
  const hint = hintText(at, system, holds);
  const about = at.quantity === 'angle' ? `${hint}. Type degrees, or 6 incl, 1:20, 0.6 in/ft` : hint;
  return (
    <Labelled title={title ?? at.title} about={about}>
      {(id) => (
        <TypedField
          id={id}
          shown={value === undefined ? '' : quantityText(at.quantity, value, system)}
          about={`${about}.`}
          instead={holds === undefined ? undefined : quantityText(at.quantity, holds, system)}
          beside={at.quantity === 'angle' && value !== undefined ? taperText(value) : undefined}
          take={take}
        />
      )}
    </Labelled>
  );
}

function WordsRow({
  path,
  title,
  about,
  lines,
  change = (design, text) => withValue(design, path, text),
}: Control & { kind: 'words' }) {
  const work = useWork();
  const shown = useStore(work.store, (state) => valueAt(state.design, path)) as string | undefined;
  return (
    <Labelled title={title} about={about}>
      {(id) => (
        <TypedField
          id={id}
          shown={shown ?? ''}
          about={about}
          lines={lines}
          take={(text) => complaint(work.change((design) => change(design, text)))}
        />
      )}
    </Labelled>
  );
}

function ChoiceRow({
  path,
  title,
  about,
  options,
  change = (design, value) => withValue(design, path, value),
  read = (design) => valueAt(design, path) as string,
}: Control & { kind: 'choice' }) {
  const work = useWork();
  const value: string | undefined = useStore(work.store, (state) => read(state.design));
  return (
    <Labelled title={title} about={about}>
      {(id) => (
        <select
          id={id}
          value={value ?? ''}
          onChange={(event) => work.change((design) => change(design, event.target.value))}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.text}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}

const LISTS = {
  profile: {
    title: 'Line as measured',
    about: (unit: string, fine: string) =>
      `Each line of text a station (${unit}) and how far metal stands proud there (${fine}), parted by a semicolon; straight between. Empty: a straight line.`,
    like: (unit: string, fine: string) => `station ${unit}; proud ${fine}`,
    beside: undefined,
  },
  lobes: {
    title: 'Lobes',
    about: (_: string, fine: string) =>
      `Each line of text how many lobes around, their amplitude (${fine}) and the angle of a crest (degrees), parted by semicolons. Empty: round.`,
    like: (_: string, fine: string) => `count; amplitude ${fine}; angle °`,
    beside: 'Lobes count in seat and play, blue and running; the films of the fit are those of the mean line.',
  },
};

function ListRow({ kind, path }: Control & { kind: 'profile' | 'lobes' }) {
  const work = useWork();
  const system = useStore(work.store, (state) => state.system);
  const list = useStore(work.store, (state) => valueAt(state.design, path));
  const shown =
    list === undefined
      ? ''
      : kind === 'profile'
        ? profileText(list as NonNullable<Surface['profile']>, system)
        : lobesText(list as NonNullable<Surface['lobes']>, system);
  const take = (text: string) => {
    const read = kind === 'profile' ? readProfile(text, system) : readLobes(text, system);
    if (!read.ok) return read.message;
    return complaint(
      work.change((design) => (read.value.length === 0 ? without(design, path) : withValue(design, path, read.value))),
    );
  };
  const { title, about, like, beside } = LISTS[kind];
  const units = [lengthUnit(system).name, fineUnit(system).name] as const;
  return (
    <Labelled title={title} about={about(...units)}>
      {(id) => (
        <TypedField
          id={id}
          shown={shown}
          about={about(...units)}
          instead={like(...units)}
          beside={shown === '' ? undefined : beside}
          lines={Math.min(6, Math.max(2, shown.split('\n').length))}
          take={take}
        />
      )}
    </Labelled>
  );
}

const MOTION_NAMES: Record<Motion, string> = {
  x: 'sideways',
  y: 'up and down',
  z: 'axially',
  tiltX: 'tilt up and down',
  tiltY: 'tilt sideways',
};

function MotionsRow() {
  const work = useWork();
  const free = useStore(work.store, (state) => state.design.play?.free) ?? FREE;
  const set = (motion: Motion, on: boolean) =>
    work.change((design) =>
      withValue(
        design,
        'play.free',
        MOTIONS.filter((m) => (m === motion ? on : free.includes(m))),
      ),
    );
  return (
    <Labelled
      title="Free to move"
      about="Motions of the spindle that nothing but the seats restrains; a driven or located spindle has fewer"
    >
      {(id) => (
        <div id={id} className="motions">
          {MOTIONS.map((motion) => (
            <label key={motion}>
              <input
                type="checkbox"
                checked={free.includes(motion)}
                onChange={(event) => set(motion, event.target.checked)}
              />{' '}
              {MOTION_NAMES[motion]}
            </label>
          ))}
        </div>
      )}
    </Labelled>
  );
}

const GREATEST_FACTOR = 5000;
const round = (factor: number) => Math.round(factor).toLocaleString('en');

function FactorRow() {
  const work = useWork();
  const factor = useStore(work.store, (state) => state.factor);
  const drawn = useContext(DrawnFactorContext) ?? factor;
  return (
    <Labelled
      title="Gaps drawn"
      about="How many times gaps and displacements are drawn larger; lengths and diameters stay true"
    >
      {(id) => (
        <Slider
          id={id}
          max={Math.log10(GREATEST_FACTOR)}
          step={0.01}
          value={Math.log10(factor)}
          text={drawn < 0.99 * factor ? `×${round(drawn)}: all that fits` : `×${round(factor)}`}
          set={(value) => work.store.setState({ factor: Math.min(GREATEST_FACTOR, 10 ** value) })}
        />
      )}
    </Labelled>
  );
}

function SectorRow() {
  const work = useWork();
  const sector = useStore(work.store, (state) => state.sector);
  return (
    <Labelled title="Bush cut open" about="How much of the bush is left out of the solid picture">
      {(id) => (
        <Slider
          id={id}
          max={340}
          step={1}
          value={sector}
          text={`${Math.round(sector)}°`}
          set={(value) => work.store.setState({ sector: value })}
        />
      )}
    </Labelled>
  );
}

function Slider({
  id,
  max,
  step,
  value,
  text,
  set,
}: {
  id: string;
  max: number;
  step: number;
  value: number;
  text: string;
  set(value: number): void;
}) {
  return (
    <div className="slider">
      <input
        id={id}
        type="range"
        min={0}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        onChange={(event) => set(Number(event.target.value))}
      />
      <output htmlFor={id}>{text}</output>
    </div>
  );
}

/** The first of what is wrong with a change; null when it was taken. */
const complaint = (errors: readonly { path: string; message: string }[]): string | null => errors[0]?.message ?? null;

/** The same angle as the trade also writes it. */
function taperText(halfAngle: number): string {
  const taper = Math.abs(taperOfHalfAngle(halfAngle));
  return taper === 0
    ? 'straight'
    : `included ${angleText(Math.abs(2 * halfAngle))} · 1:${(1 / taper).toFixed(4)} · ${(taper * 12).toFixed(4)} in/ft`;
}
