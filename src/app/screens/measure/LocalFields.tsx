/** The fields that a calculation of the bench works with, side by side. */
import type { ComponentProps, ReactNode } from 'react';
import type { System } from '../../../design/units.ts';
import { LocalField } from '../../controls/LocalField.tsx';
import type { OpenFields } from './useOpenFields.ts';

export type Field = Omit<ComponentProps<typeof LocalField>, 'pending' | 'system'> & { system?: System };

interface Props {
  fields: readonly Field[];
  open: OpenFields;
  /** where a field has none of its own */
  system: System;
  /** after them */
  children?: ReactNode;
}

export function LocalFields({ fields, open, system, children }: Props) {
  return (
    <div className="locals">
      {fields.map((field) => (
        <LocalField key={field.title} system={system} pending={open.of(field.title)} {...field} />
      ))}
      {children}
    </div>
  );
}
