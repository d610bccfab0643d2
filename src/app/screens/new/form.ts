/** What stands on the page of a new job; it outlives a look at another screen. */

import type { QuantityAt } from '../../../design/place.ts';
import { typedQuantity } from '../../../design/quantity.ts';
import type { AngleWay, System } from '../../../design/units.ts';
import type { Work } from '../../state/store.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import type { Arrangement } from './arrangements.ts';
import { type Given, sizesOf } from './newDesign.ts';

/** A number as typed: its value in the unit of the file, or the text that is none and why. */
export interface Entry {
  value?: number;
  text?: string;
  why?: string;
}

export interface Form {
  arrangement: string | null;
  title: string;
  /** by the id of the size; beside them `film` and `pitch` */
  sizes: Readonly<Record<string, Entry | undefined>>;
}

const EMPTY: Form = { arrangement: null, title: '', sizes: {} };

export function useForm(work: Work): [Form, (form: Form | null) => void] {
  const [form, setForm] = useUnfinished<Form>(work, 'new job');
  return [form ?? EMPTY, setForm];
}

/** The form with what was typed into one of its fields; an emptied field is assumed again. */
export function withEntry(
  form: Form,
  id: string,
  at: QuantityAt,
  text: string,
  { system, way }: { system: System; way: AngleWay },
): Form {
  if (text.trim() === '') return withoutEntry(form, id);
  const typed = typedQuantity(at, text, system, way);
  const entry: Entry = typed.ok ? { value: typed.value } : { text, why: typed.message };
  return { ...form, sizes: { ...form.sizes, [id]: entry } };
}

export function withoutEntry(form: Form, id: string): Form {
  const { [id]: _, ...sizes } = form.sizes;
  return { ...form, sizes };
}

/** What is known of an arrangement: sizes typed for another one that it has too stand here as well. */
export function givenOf(plan: Arrangement, { sizes, title }: Form): Given {
  const typed = sizesOf(plan).flatMap(({ id }) => {
    const value = sizes[id]?.value;
    return value === undefined ? [] : [[id, value] as const];
  });
  return {
    typed: Object.fromEntries(typed),
    film: sizes.film?.value ?? null,
    pitch: sizes.pitch?.value ?? null,
    title,
  };
}
