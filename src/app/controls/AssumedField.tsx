/** A number that is asked for before there is a place for it in the design: typed, or assumed and shown as such. */
import { useId } from 'react';
import type { QuantityAt } from '../../design/place.ts';
import { inSystem, quantityText, restingText, typedField } from '../../design/quantity.ts';
import type { System } from '../../design/units.ts';
import { keysFor } from './keys.ts';
import { TypedField } from './TypedField.tsx';

interface Props {
  title: string;
  at: QuantityAt;
  /** null: not typed */
  value: number | null;
  /** what is assumed then */
  otherwise: number;
  set(value: number | null): void;
  /** what it is, where that is said otherwise than in the file */
  about?: string | undefined;
  system: System;
}

export function AssumedField({ title, at, value, otherwise, set, about, system }: Props) {
  const id = useId();
  const take = (text: string) => {
    if (text.trim() === '') {
      set(null);
      return null;
    }
    const typed = typedField(at, text, system);
    if (!typed.ok) return typed.message;
    set(typed.value);
    return null;
  };
  return (
    <div className="local">
      <label htmlFor={id}>{title}</label>
      <TypedField
        id={id}
        shown={quantityText(at.quantity, value ?? otherwise, system)}
        resting={restingText(at.quantity, value ?? otherwise, system)}
        // The same whatever is typed: nothing moves under the hand.
        about={`${about ?? inSystem(at.description, system)}.`}
        take={take}
        assumed={value === null}
        keys={keysFor(at, system)}
      />
    </div>
  );
}
