/** Asks for what was read. Only what a person types becomes an entry: the size as drawn is shown, and is no reading. */
import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { typedQuantity } from '../../design/quantity.ts';
import { fineText, lengthText, type System } from '../../design/units.ts';
import type { Work } from '../store.ts';
import { withReadings } from './entries.ts';
import { isSize, KINDS, type Reading } from './kinds.ts';
import { setUpText } from './setUpText.ts';

interface Props {
  work: Work;
  /** The set-up, with the value that the parts as they are drawn or fitted would give. */
  reading: Reading;
  system: System;
  /** Written down, at this place in the notebook. */
  written(index: number): void;
  cancel(): void;
}

export function NewEntry({ work, reading, system, written, cancel }: Props) {
  const id = useId();
  const said = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [error, setError] = useState('');
  useEffect(() => field.current?.focus(), []);
  const size = isSize(reading);
  const write = (event: FormEvent) => {
    event.preventDefault();
    const typed = typedQuantity({ title: 'Read', description: '', quantity: size ? 'length' : 'fine', unit: '', bounds: [], optional: false }, text, system);
    if (!typed.ok) return setError(text.trim() === '' ? 'type what was read' : typed.message);
    const index = work.store.getState().design.readings?.length ?? 0;
    const [refused] = work.change((design) => withReadings(design, [{ ...reading, value: typed.value }]));
    if (refused) return setError(refused.message);
    written(index);
  };
  return (
    <form className="new-entry" onSubmit={write} onKeyDown={(event) => event.key === 'Escape' && cancel()}>
      <label htmlFor={id}>Read: {setUpText(reading, system)}</label>
      <input
        id={id}
        ref={field}
        value={text}
        autoComplete="off"
        placeholder={size ? lengthText(Number(reading.value.toFixed(4)), system) : fineText(reading.value, system)}
        aria-invalid={error !== ''}
        aria-describedby={said}
        onChange={(event) => setText(event.target.value)}
      />
      <div id={said} className="said">
        {error !== '' && <p className="error">{error}</p>}
        <p>{KINDS[reading.kind].how} The grey number is what the design would give; it is not written down. Where and on what it was read can be changed once it is an entry.</p>
      </div>
      <p className="buttons">
        <button type="submit" className="main">
          Write it down
        </button>
        <button type="button" onClick={cancel}>
          Leave it
        </button>
      </p>
    </form>
  );
}
