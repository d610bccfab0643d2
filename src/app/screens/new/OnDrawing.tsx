/** The drawing with its figures, what is asked beside it, and what of it does not go together. */
import { useId } from 'react';
import type { QuantityAt } from '../../../design/place.ts';
import { quantityText, restingText } from '../../../design/quantity.ts';
import type { System } from '../../../design/units.ts';
import { keysFor } from '../../controls/keys.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Arrangement } from './arrangements.ts';
import { faultAt } from './faults.ts';
import { type Form, withEntry, withoutEntry } from './form.ts';
import type { Impossible } from './impossible.ts';
import { FILM, PITCH, sizesOf, USUAL_FILM } from './newDesign.ts';
import { type Held, Sketch } from './Sketch.tsx';
import { Wrong } from './Wrong.tsx';

/** What stands in a field and is no number. */
function heldIn({ sizes }: Form, id: string): Held | undefined {
  const entry = sizes[id];
  return entry?.text === undefined ? undefined : { text: entry.text, why: entry.why ?? '' };
}

interface Props {
  plan: Arrangement;
  form: Form;
  setForm(form: Form): void;
  /** every size, typed or in proportion */
  sizes: Readonly<Record<string, number>>;
  faults: readonly Impossible[];
  system: System;
}

export function OnDrawing({ plan, form, setForm, sizes, faults, system }: Props) {
  const way = useAngles();
  const unread = sizesOf(plan).flatMap(({ id, title }) => {
    const why = form.sizes[id]?.why;
    return why === undefined ? [] : [`${title}: ${why}`];
  });
  return (
    <>
      <figure>
        <Sketch
          plan={plan}
          sizes={sizes}
          known={(id) => form.sizes[id]?.value !== undefined}
          held={(id) => heldIn(form, id)}
          fault={(id) => faultAt(faults, id)}
          take={({ id, at }, text) => setForm(withEntry(form, id, at, text, { system, way }))}
          leave={(id) => setForm(withoutEntry(form, id))}
          system={system}
        />
        <Caption plan={plan} system={system} />
      </figure>
      <Wrong unread={unread} faults={faults} />
    </>
  );
}

export function Caption({ plan, system }: { plan: Arrangement; system: System }) {
  return (
    <figcaption>
      Not to scale; lengths in {system === 'inch' ? 'inches' : 'mm'}, along the journal. Stations along the spindle
      count from 0, {plan.zero.words}: toward the nose +, toward the rear −.
    </figcaption>
  );
}

/** What is asked beside the drawing: the film, the thread, the name. */
export function BesideDrawing({ form, setForm, system }: Pick<Props, 'form' | 'setForm' | 'system'>) {
  const beside = { form, setForm, system };
  return (
    <div className="locals">
      <Beside {...beside} id="film" at={FILM} otherwise={USUAL_FILM[system]} />
      <Beside {...beside} id="pitch" at={PITCH} />
      <Title form={form} setForm={setForm} />
    </div>
  );
}

interface BesideProps {
  id: string;
  at: QuantityAt;
  otherwise?: number;
  form: Form;
  setForm(form: Form): void;
  system: System;
}

function Beside({ id, at, otherwise, form, setForm, system }: BesideProps) {
  const way = useAngles();
  const field = useId();
  const value = form.sizes[id]?.value ?? otherwise;
  const known = form.sizes[id]?.value !== undefined;
  return (
    <div className="local">
      <label htmlFor={field}>{at.title}</label>
      <TypedField
        id={field}
        keys={keysFor(at, system)}
        shown={value === undefined ? '' : quantityText(at.quantity, value, system)}
        resting={value === undefined ? '' : restingText(at.quantity, value, system)}
        about={`${at.description}.`}
        take={(text) => {
          setForm(withEntry(form, id, at, text, { system, way }));
          return null;
        }}
        held={heldIn(form, id)}
        leave={() => setForm(withoutEntry(form, id))}
        assumed={!known && value !== undefined}
      />
    </div>
  );
}

function Title({ form, setForm }: Pick<Props, 'form' | 'setForm'>) {
  const id = useId();
  return (
    <div className="local">
      <label htmlFor={id}>Name of the job</label>
      <input
        id={id}
        value={form.title}
        maxLength={200}
        autoComplete="off"
        placeholder="untitled"
        onChange={(event) => setForm({ ...form, title: event.target.value })}
      />
    </div>
  );
}
