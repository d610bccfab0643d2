/**
 * Asks for what was read, and tells before that what a set-up would read. Only what a person types becomes an entry:
 * the predicted value is shown, and is no reading.
 */

import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import type { Design, Part } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { quantityAt } from '../../../design/place.ts';
import { hintText, typedField } from '../../../design/quantity.ts';
import { madeIn } from '../../../design/tools.ts';
import { fineText, lengthText, type System } from '../../../design/units.ts';
import { farOffText } from '../../../report/measure/farOff.ts';
import { faultText } from '../../../report/measure/faultText.ts';
import { predictedReading } from '../../../report/measure/predictedReading.ts';
import { LocalField } from '../../controls/LocalField.tsx';
import { SignKey } from '../../controls/SignKey.tsx';
import { Entered } from '../../record/Entered.tsx';
import { bare, withTold } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { onSurface, readNow, withReadings } from './entries.ts';
import { KINDS, type Reading, saidOfAsked, setUpText, tellsSize } from './kinds.ts';
import { SetUp } from './SetUp.tsx';
import type { HalfEntry } from './useAsked.ts';
import { type OpenFields, openText, useOpenFields } from './useOpenFields.ts';

interface Props {
  work: Work;
  design: Design;
  /** The parts as the readings so far tell them; null where there are none. */
  fitted: Design | null;
  /** What stands in it so far. */
  entry: HalfEntry;
  edit(entry: HalfEntry): void;
  system: System;
  tools: System;
  /** Written down, or given up. */
  close(): void;
}

/** What no person can have read, whatever the parts are like. */
const NEVER: readonly string[] = ['negative', 'ofEnd'];

export function NewEntry({ work, design, fitted, entry, edit, system, tools, close }: Props) {
  const id = useId();
  const said = useId();
  const field = useRef<HTMLInputElement>(null);
  const { text } = entry;
  const reading = readNow(design, entry.reading);
  const [error, setError] = useState('');
  const open = useOpenFields();
  useEffect(() => field.current?.focus(), []);
  const size = tellsSize(reading);
  const { value: drawn, fault } = predictedReading(design, reading);
  const asFitted = fitted && predictedReading(fitted, reading).value;
  const { sides } = KINDS[reading.kind];
  const sized = (mm: Millimetres) => (size ? lengthText(Number(mm.toFixed(4)), system) : fineText(mm, system));
  const show = (mm: Millimetres) => (sides ? `${sized(Math.abs(mm))} ${sides[mm < 0 ? 1 : 0]}` : sized(mm));
  const expected = asFitted ?? drawn;
  // A sign that is typed counts before the side that is chosen.
  const signed = /^\s*[+\-−]/.test(text);
  const minus = /^\s*[-−]/.test(text);
  const side: 1 | -1 = signed ? (minus ? -1 : 1) : (entry.side ?? (expected !== null && expected < 0 ? -1 : 1));
  const read = typedField(
    { title: 'Read', description: '', quantity: size ? 'length' : 'fine', unit: '', bounds: [], optional: false },
    text,
    system,
  );
  const typed = read.ok && sides ? { ...read, value: side * Math.abs(read.value) } : read;
  const far = typed.ok && !open.any ? farOffText(design, { ...reading, value: typed.value }, system) : null;
  const write = (event: FormEvent) => {
    event.preventDefault();
    if (open.any)
      return setError(`mend the set-up first: ${open.titles.map((title) => title.toLowerCase()).join(', ')}`);
    if (!typed.ok) return setError(text.trim() === '' ? 'type what was read' : typed.message);
    const never = predictedReading(design, { ...reading, value: typed.value }).fault;
    if (never && NEVER.includes(never.what)) return setError(faultText(never, system));
    const [refused] = work.change((d) => withReadings(d, [{ ...reading, value: typed.value }]));
    if (refused) return setError(refused.message);
    close();
  };
  return (
    <form className="new-entry" onSubmit={write} onKeyDown={(event) => event.key === 'Escape' && close()}>
      <label htmlFor={id}>Read: {setUpText(reading, system)}</label>
      <input
        id={id}
        ref={field}
        value={text}
        autoComplete="off"
        inputMode={size && system === 'inch' ? undefined : 'decimal'}
        placeholder={expected === null || open.any ? '' : sized(sides ? Math.abs(expected) : expected)}
        aria-invalid={error !== ''}
        aria-describedby={said}
        // What is typed goes the way that stands beside it then, whatever the set-up becomes.
        onChange={(event) => edit({ ...entry, text: event.target.value, side: entry.side ?? side })}
      />
      {!sides && !size && <SignKey of={id} text={text} type={(typed) => edit({ ...entry, text: typed })} />}
      {sides && (
        <select
          aria-label="Which way"
          value={side}
          onChange={(event) =>
            edit({ ...entry, text: text.replace(/^\s*[+\-−]/, ''), side: event.target.value === '-1' ? -1 : 1 })
          }
        >
          <option value={1}>{sides[0]}</option>
          <option value={-1}>{sides[1]}</option>
        </select>
      )}
      <div id={said} className="said">
        {error !== '' && <p className="error">{error}</p>}
        {far && <p className="far">{far}</p>}
        <p role="status" className={fault && !open.any ? 'error' : ''}>
          {open.any ? openText(open) : predictedText(drawn, asFitted, show)}
          {!open.any &&
            fault &&
            ` ${drawn === null ? 'It' : 'But it'} cannot be read like this: ${faultText(fault, system)}.`}
        </p>
        <p>{KINDS[reading.kind].how} The grey number is not written down; only what you type is.</p>
      </div>
      <p className="buttons">
        <button type="submit" className="main">
          Write it down
        </button>
        <button type="button" onClick={close}>
          Leave it
        </button>
      </p>
      <div className="groups">
        <SetUpFields
          design={design}
          reading={reading}
          change={(to) => edit({ ...entry, reading: to })}
          open={open}
          system={system}
          tools={tools}
        />
        <figure>
          <SetUp design={design} reading={drawn === null ? reading : { ...reading, value: drawn }} system={system} />
          <figcaption>
            <em>{KINDS[reading.kind].formula}</em> <small>Source: {KINDS[reading.kind].source}.</small>
          </figcaption>
        </figure>
      </div>
      {/* Enter takes what is typed in a field here; it does not write the reading down. */}
      <fieldset onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}>
        <legend>when, who, stage</legend>
        <Entered told={bare(reading)} change={(told) => edit({ ...entry, reading: withTold(reading, told) })} note />
      </fieldset>
    </form>
  );
}

/** What the set-up would read. */
function predictedText(drawn: number | null, fitted: number | null, show: (mm: Millimetres) => string): string {
  if (drawn === null) return '';
  return fitted === null
    ? `The parts as drawn would read ${show(drawn)}.`
    : `The parts as drawn would read ${show(drawn)}, as the readings so far tell them ${show(fitted)}.`;
}

/** Where, on what and with what it is read. */
function SetUpFields({
  design,
  reading,
  change,
  open,
  system,
  tools,
}: {
  design: Design;
  reading: Reading;
  change(reading: Reading): void;
  open: OpenFields;
  system: System;
  tools: System;
}) {
  const { parts, asks } = KINDS[reading.kind];
  const on = 'seat' in reading ? reading : null;
  const place = on ? `${on.seat} ${on.part}` : '';
  // Another surface has another set-up: what was being typed of the former goes with it.
  const move = (seat: string, part: Part) => {
    open.close();
    change(onSurface(design, reading, seat, part, tools));
  };
  // What the definition says of an entry hangs on its kind, so it must stand in a notebook.
  const holder: Design = { ...design, readings: [reading] };
  return (
    // Enter takes the number of a field here; it does not write the reading down.
    <fieldset onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}>
      <legend>set-up</legend>
      <div className="locals">
        {on && (
          <>
            <Choice
              title="Seat"
              value={on.seat}
              options={design.seats.map(({ name }) => name)}
              choose={(seat) => move(seat, on.part)}
            />
            {parts.length > 1 && (
              <Choice title="Part" value={on.part} options={parts} choose={(part) => move(on.seat, part as Part)} />
            )}
          </>
        )}
        {[...asks, 'sigma'].map((key) => {
          const at = quantityAt(`readings[0].${key}`, holder);
          const { title, quantity, bounds } = at;
          const value = (reading as unknown as Record<string, number>)[key]!;
          return (
            <LocalField
              key={`${place} ${key}`}
              title={title}
              about={hintText(at, system)}
              quantity={quantity}
              value={value}
              pending={open.of(title)}
              set={(typed) => change({ ...reading, [key]: typed })}
              system={saidOfAsked(key).tool ? madeIn(value, system) : system}
              bounds={bounds}
              sides={saidOfAsked(key).sides}
            />
          );
        })}
      </div>
    </fieldset>
  );
}

function Choice({
  title,
  value,
  options,
  choose,
}: {
  title: string;
  value: string;
  options: readonly string[];
  choose(value: string): void;
}) {
  const id = useId();
  return (
    <div className="local">
      <label htmlFor={id}>{title}</label>
      <select id={id} value={value} onChange={(event) => choose(event.target.value)}>
        {options.map((option) => (
          <option key={option} value={option}>
            {option}
          </option>
        ))}
      </select>
    </div>
  );
}
