/** The drawing with its figures, what is asked beside it, and what of it does not go together. */
import { useId } from 'react';
import { type QuantityAt, quantityIfAt } from '../../../design/place.ts';
import { inSystem, quantityText } from '../../../design/quantity.ts';
import type { System } from '../../../design/units.ts';
import type { Validation } from '../../../design/validate.ts';
import { placeName } from '../../../report/assumed.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Arrangement } from './arrangements.ts';
import { type Form, givenOf, withEntry, withoutEntry } from './form.ts';
import { allSizes, FILM, newDesign, PITCH, sizesOf, USUAL_FILM } from './newDesign.ts';
import { Sketch } from './Sketch.tsx';

/** What stands in a field and is no number. */
function heldIn({ sizes }: Form, id: string): { text: string; why: string } | undefined {
  const entry = sizes[id];
  return entry?.text === undefined ? undefined : { text: entry.text, why: entry.why ?? '' };
}

interface Props {
  plan: Arrangement;
  form: Form;
  setForm(form: Form): void;
  system: System;
  result: Validation;
}

export function OnDrawing({ plan, form, setForm, system, result }: Props) {
  const way = useAngles();
  const given = givenOf(plan, form);
  const sizes = allSizes(plan, given.typed, given.film ?? USUAL_FILM[system], system);
  return (
    <>
      <figure>
        <Sketch
          plan={plan}
          sizes={sizes}
          known={(id) => form.sizes[id]?.value !== undefined}
          held={(id) => heldIn(form, id)}
          take={({ id, at }, text) => setForm(withEntry(form, id, at, text, { system, way }))}
          leave={(id) => setForm(withoutEntry(form, id))}
          system={system}
        />
        <figcaption>
          Not to scale; lengths in {system === 'inch' ? 'inches' : 'mm'}. Stations along the spindle count from 0,{' '}
          {plan.zero.words}: toward the nose +, toward the rear −.
        </figcaption>
      </figure>
      <Wrong plan={plan} form={form} result={result} system={system} />
    </>
  );
}

/** What is asked beside the drawing: the film, the thread, the name. */
export function BesideDrawing({ form, setForm, system }: Omit<Props, 'plan' | 'result'>) {
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
        shown={value === undefined ? '' : quantityText(at.quantity, value, system)}
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

/** Each figure that is none, and each that does not go with the others. */
function Wrong({ plan, form, result, system }: Pick<Props, 'plan' | 'form' | 'result' | 'system'>) {
  const unread = sizesOf(plan).flatMap(({ id, title }) => {
    const why = form.sizes[id]?.why;
    return why === undefined ? [] : [`${title}: ${why}`];
  });
  const design = result.ok ? null : newDesign(plan, givenOf(plan, form), system);
  const apart = (result.ok ? [] : result.errors).map(({ path, message }) => {
    const name = /^seats\[\d+\]\.\w+$/.test(path) ? surfaceName(plan, path) : placeName(design!, path);
    const quantity = quantityIfAt(path)?.quantity ?? 'length';
    return `${name[0]!.toUpperCase()}${name.slice(1)}: ${inSystem(message, system, quantity)}`;
  });
  const all = [...unread, ...new Set(apart)];
  if (all.length === 0) return null;
  return (
    <ul className="wrong plain" role="status">
      {all.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function surfaceName({ seats }: Arrangement, path: string): string {
  const [, index, part] = /^seats\[(\d+)\]\.(\w+)$/.exec(path)!;
  return `${seats[Number(index)]!.title}, ${part}`;
}
