/** A number that a calculation on the page works with; it is no part of the design. */
import { useId } from 'react';
import type { Quantity } from '../../design/definition.ts';
import type { Bound } from '../../design/place.ts';
import { quantityText, typedQuantity } from '../../design/quantity.ts';
import type { System } from '../../design/units.ts';
import { TypedField } from './TypedField.tsx';

interface Props {
  title: string;
  about: string;
  quantity: Quantity;
  value: number;
  set(value: number): void;
  system: System;
  bounds?: Bound[];
}

export function LocalField({ title, about, quantity, value, set, system, bounds = [] }: Props) {
  const id = useId();
  const take = (text: string) => {
    const typed = typedQuantity({ title, description: about, quantity, unit: '', bounds, optional: false }, text, system);
    if (!typed.ok) return typed.message;
    set(typed.value);
    return null;
  };
  return (
    <div className="local">
      <label htmlFor={id}>{title}</label>
      <TypedField id={id} shown={quantityText(quantity, value, system)} about={about} take={take} />
    </div>
  );
}

/** Bounds in the unit of the file. */
export const above = (value: number): Bound => ({ side: 'least', value, inclusive: false });
export const atMost = (value: number): Bound => ({ side: 'greatest', value, inclusive: true });
export const atLeast = (value: number): Bound => ({ side: 'least', value, inclusive: true });
