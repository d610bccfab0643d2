/** The balls and rolls this shop has, where they are not the usual set: sizes in a row. */
import { useId } from 'react';
import type { Design } from '../../../design/definition.ts';
import { toolExact } from '../../../design/rounded.ts';
import { toolText } from '../../../design/tools.ts';
import { lengthUnit, type System, typedLength } from '../../../design/units.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import type { Work } from '../../state/store.ts';
import { withShop } from '../../state/tools.ts';

interface Props {
  work: Work;
  design: Design;
  system: System;
}

const KINDS = [
  ['balls', 'Balls there are'],
  ['rolls', 'Rolls there are'],
] as const;

export function OwnTools({ work, design, system }: Props) {
  const id = useId();
  return (
    <div className="locals">
      {KINDS.map(([key, title]) => (
        <div className="local" key={key} data-path={`shop.${key}`}>
          <label htmlFor={`${id} ${key}`}>{title}</label>
          <TypedField
            id={`${id} ${key}`}
            keys="words"
            shown={(design.shop?.[key] ?? []).map((mm) => toolText(mm, system)).join('; ')}
            about="Diameters with semicolons between; none typed: the usual set."
            instead="the usual set"
            take={(text) => {
              const read = sizesOf(text, system);
              if (typeof read === 'string') return read;
              return work.change((d) => withShop(d, key, read.length > 0 ? read : null))[0]?.message ?? null;
            }}
          />
        </div>
      ))}
    </div>
  );
}

/** Sizes (mm) typed in a row, or what is wrong with one of them. */
function sizesOf(text: string, system: System): number[] | string {
  const sizes: number[] = [];
  for (const word of text.split(/[;\n]/).map((part) => part.trim())) {
    if (word === '') continue;
    const typed = typedLength(word, lengthUnit(system).size);
    if (!typed.ok) return `“${word}”: ${typed.message}`;
    if (typed.value <= 0) return `“${word}” is no diameter`;
    sizes.push(toolExact(typed.value));
  }
  return [...new Set(sizes)];
}
