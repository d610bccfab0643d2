/** The values that can be put into a field: in words, with what each is now; the most used first, and all by a search. */
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { type Offered, offeredAt } from '../../../../lessons/offered.ts';
import { type Speech, told } from '../../../../lessons/template.ts';
import { useEditing } from './editing.ts';

interface Props {
  path: string;
  label: string;
  put(chosen: Offered): void;
}

export function ValueList({ path, label, put }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <div className="value-list">
      <button
        type="button"
        aria-expanded={open}
        aria-label={`Put a value into: ${label}`}
        onClick={() => setOpen(!open)}
      >
        {open ? 'Close the values' : 'Put in a value…'}
      </button>
      {open && (
        <Values
          path={path}
          put={(one) => {
            setOpen(false);
            put(one);
          }}
        />
      )}
    </div>
  );
}

function Values({ path, put }: Pick<Props, 'path' | 'put'>) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const { lesson, speech } = useEditing();
  const groups = useMemo(() => offeredAt(lesson, path), [lesson, path]);
  const [sought, setSought] = useState('');
  useEffect(() => field.current?.focus(), []);
  const parts = sought.toLowerCase().split(/\s+/);
  const shown = groups.map(({ group, values }) => ({
    group,
    values: values.filter(({ words, name }) => parts.every((part) => `${words} ${name}`.toLowerCase().includes(part))),
  }));
  const none = shown.every(({ values }) => values.length === 0);
  return (
    <div className="values">
      <label htmlFor={`${id}sought`}>Look for a value</label>
      <input
        id={`${id}sought`}
        ref={field}
        type="search"
        value={sought}
        placeholder="film, tangent, steep…"
        autoComplete="off"
        onChange={({ target }) => setSought(target.value)}
      />
      <div className="values-found">
        {none && <p>No value has these words.</p>}
        {shown.map(
          ({ group, values }) =>
            values.length > 0 && (
              <section key={group} aria-label={group}>
                <h4>{group}</h4>
                {values.map((one) => (
                  <button key={one.name} type="button" data-value={one.name} onClick={() => put(one)}>
                    <span>{one.words}</span> <strong>{nowText(one, speech)}</strong> <code>{one.name}</code>
                  </button>
                ))}
              </section>
            ),
        )}
      </div>
    </div>
  );
}

function nowText({ value, as }: Offered, speech: Speech): string {
  if (value === null) return '';
  return typeof value === 'number' ? told(value, as, speech) : `“${value}”`;
}
