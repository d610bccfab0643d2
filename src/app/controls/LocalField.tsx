/** A number that a calculation on the page works with; it is no part of the design. */
import { type FormEvent, type KeyboardEvent, useId } from 'react';
import type { Quantity } from '../../design/definition.ts';
import type { Bound } from '../../design/place.ts';
import { quantityText, restingText, typedField } from '../../design/quantity.ts';
import type { System } from '../../design/units.ts';
import { keysFor } from './keys.ts';
import { TypedField } from './TypedField.tsx';

interface Props {
  title: string;
  about: string;
  quantity: Quantity;
  /** null: nothing typed yet */
  value: number | null;
  set(value: number): void;
  /** The field was emptied; without it an empty field is refused. */
  clear?(): void;
  /**
   * Whether the text in the field is other than what was last taken: what follows from that no longer stands beside it.
   */
  pending?(open: boolean): void;
  /** Shown while nothing is typed. */
  instead?: string;
  system: System;
  bounds?: Bound[];
  /** The two ways it may go, above nought and below, chosen beside the field in place of a sign. */
  sides?: readonly [above: string, below: string] | undefined;
}

export function LocalField({
  title,
  about,
  quantity,
  value,
  set,
  clear,
  pending,
  instead,
  system,
  bounds = [],
  sides,
}: Props) {
  const id = useId();
  const sized = value !== null && sides ? Math.abs(value) : value;
  const shown = sized === null ? '' : quantityText(quantity, sized, system);
  const take = (text: string) => {
    if (clear && text.trim() === '') {
      clear();
    } else {
      const typed = typedField(
        { title, description: about, quantity, unit: '', bounds, optional: false },
        text,
        system,
      );
      if (!typed.ok) return typed.message;
      const signed = /^\s*[+\-−]/.test(text);
      set(sides && !signed && value !== null && value < 0 ? -typed.value : typed.value);
    }
    pending?.(false);
    return null;
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only listens to what its field is told
    <div
      className="local"
      onInput={(event: FormEvent) => pending?.((event.target as HTMLInputElement).value !== shown)}
      onKeyDown={(event: KeyboardEvent) => event.key === 'Escape' && pending?.(false)}
    >
      <label htmlFor={id}>{title}</label>
      <TypedField
        id={id}
        shown={shown}
        resting={sized === null ? '' : restingText(quantity, sized, system)}
        about={about}
        instead={instead}
        take={take}
        keys={keysFor({ quantity, bounds }, system, sides !== undefined)}
      />
      {sides && value !== null && value !== 0 && (
        <select aria-label={`${title}: which way`} value={value < 0 ? 'below' : 'above'} onChange={() => set(-value)}>
          <option value="above">{sides[0]}</option>
          <option value="below">{sides[1]}</option>
        </select>
      )}
    </div>
  );
}

/** Bounds in the unit of the file. */
export const above = (value: number): Bound => ({ side: 'least', value, inclusive: false });
export const atMost = (value: number): Bound => ({ side: 'greatest', value, inclusive: true });
export const below = (value: number): Bound => ({ side: 'greatest', value, inclusive: false });
export const atLeast = (value: number): Bound => ({ side: 'least', value, inclusive: true });
