/**
 * The kinds of control, each a row of a leva panel. A row holds the path of what it edits; the design stays in the
 * store.
 */

import { createPlugin, useInputContext } from 'leva/plugin';
import { useContext } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { valueAt, withValue } from '../../design/place.ts';
import { ANGLE_WAYS, type AngleWay } from '../../design/units.ts';
import { FREE, MOTIONS, type Motion } from '../../report/play/toPlay.ts';
import { timesText } from '../pictures/timesText.ts';
import { ANGLE_NAMES, sayAngles, useAngles } from '../state/angles.ts';
import { leave, typeAt, useHeldText } from '../state/draft.ts';
import { DrawnFactorContext, useWork } from './context.ts';
import { Labelled } from './Labelled.tsx';
import { type ListControl, ListRow } from './ListRow.tsx';
import { type QuantityControl, QuantityRow } from './QuantityRow.tsx';
import { TypedField } from './TypedField.tsx';

export type Control =
  /** a number of the design */
  | QuantityControl
  /** text of the design */
  | { kind: 'words'; path: string; title: string; about: string; lines?: number }
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
  | ListControl
  /** which motions of the spindle are free */
  | { kind: 'motions' }
  /** how the pictures show the pair, and how the person says angles */
  | { kind: 'factor' | 'sector' | 'angles' };

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
    case 'angles':
      return <AnglesRow />;
  }
}

function WordsRow({ path, title, about, lines }: Control & { kind: 'words' }) {
  const work = useWork();
  const shown = useStore(work.store, (state) => valueAt(state.design, path)) as string | undefined;
  const held = useHeldText(work, path);
  return (
    <Labelled title={title} about={about}>
      {(id) => (
        <div data-path={path}>
          <TypedField
            id={id}
            shown={shown ?? ''}
            about={about}
            lines={lines}
            atPauses={lines !== undefined}
            keys="words"
            take={(text) => {
              typeAt(work, path, { text, put: { value: text } });
              return null;
            }}
            held={held}
            leave={() => leave(work, path)}
          />
        </div>
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
          data-path={path}
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
        <div id={id} className="motions" data-path="play.free">
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
          text={drawn < 0.99 * factor ? `${timesText(drawn)}: all that fits` : timesText(factor)}
          set={(value) => work.store.setState({ factor: Math.min(GREATEST_FACTOR, 10 ** value) })}
        />
      )}
    </Labelled>
  );
}

function AnglesRow() {
  const way = useAngles();
  return (
    <Labelled title="Angles said as" about="How half angles stand in every field, and what a number alone means there">
      {(id) => (
        <select id={id} value={way} onChange={(event) => sayAngles(event.target.value as AngleWay)}>
          {ANGLE_WAYS.map((one) => (
            <option key={one} value={one}>
              {ANGLE_NAMES[one]}
            </option>
          ))}
        </select>
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
