/** What stands on the page of a new job; it outlives a look at another screen. */

import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { QuantityAt } from '../../../design/place.ts';
import { typedField } from '../../../design/quantity.ts';
import type { AngleWay, System } from '../../../design/units.ts';
import type { Work } from '../../state/store.ts';
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
  /** as chosen for this job; null: as the one that is open */
  system: System | null;
}

const EMPTY: Form = { arrangement: null, title: '', sizes: {}, system: null };

export function useForm({ begun }: Work): [Form, (form: Form | null) => void] {
  const written = useStore(begun.store, (state) => state.written);
  return [useMemo(() => formOf(written), [written]), begun.write];
}

/** The units of the job that is begun. */
export function useFormSystem(work: Work): System {
  const [{ system }] = useForm(work);
  const open = useStore(work.store, (state) => state.system);
  return system ?? open;
}

const isGroup = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What was written down, as far as it is a form of this program. */
export function formOf(written: unknown): Form {
  if (!isGroup(written)) return EMPTY;
  const { arrangement, title, sizes, system } = written as Partial<Record<keyof Form, unknown>>;
  return {
    arrangement: typeof arrangement === 'string' ? arrangement : null,
    title: typeof title === 'string' ? title : '',
    sizes: isGroup(sizes)
      ? Object.fromEntries(Object.entries(sizes).flatMap(([id, entry]) => (isEntry(entry) ? [[id, entry]] : [])))
      : {},
    system: system === 'inch' || system === 'metric' ? system : null,
  };
}

function isEntry(entry: unknown): entry is Entry {
  if (!isGroup(entry)) return false;
  const { value, text, why } = entry as Partial<Record<keyof Entry, unknown>>;
  if (value !== undefined) return typeof value === 'number' && Number.isFinite(value);
  return typeof text === 'string' && typeof why === 'string';
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
  const typed = typedField(at, text, system, way);
  const entry: Entry = typed.ok ? { value: typed.value } : { text, why: typed.message };
  // What is typed is in these units from then on, whatever another job is in.
  return { ...form, system: form.system ?? system, sizes: { ...form.sizes, [id]: entry } };
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
