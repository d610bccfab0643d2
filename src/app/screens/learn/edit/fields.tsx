/** The fields of the editor: text, formula, choice, tick; and a list of parts of one kind. */
import { type ReactNode, useId, useRef } from 'react';
import { exampleAt } from '../../../../lessons/draft.ts';
import type { Offered } from '../../../../lessons/offered.ts';
import { at, useEditing } from './editing.ts';
import { ValueList } from './ValueList.tsx';

interface Props {
  path: string;
  label: string;
  /** what is meant, in a few words */
  hint?: string | undefined;
  long?: boolean;
  /** emptied it is not there at all */
  optional?: boolean;
  /** where it is wrong, a right one is shown */
  example?: boolean;
}

export const sentence = (message: string) =>
  `${message.charAt(0).toUpperCase()}${message.slice(1).replace(/\.$/, '')}.`;

export function Faults({ path, id, example = false }: { path: string; id: string; example?: boolean }) {
  const { faults, doubts, notGiven, lesson } = useEditing();
  const [wrong, doubted, missed] = [faults(path), doubts(path), notGiven(path)];
  return (
    <span id={id} role={wrong.length > 0 ? 'alert' : undefined}>
      {wrong.map((message) => (
        <span key={message} className="error">
          {message}
        </span>
      ))}
      {example && wrong.length > 0 && (
        <span className="edit-example">
          Right, for example: <code>{exampleAt(lesson, path)}</code>
        </span>
      )}
      {wrong.length === 0 &&
        doubted.map((message) => (
          <span key={message} className="doubt">
            <strong>Is it meant so?</strong> {sentence(message)}
          </span>
        ))}
      {wrong.length === 0 &&
        missed.map((message) => (
          <span key={message} className="fine">
            {message}
          </span>
        ))}
    </span>
  );
}

export function TextField({ path, label, hint, long = false, optional = false, example = false }: Props) {
  const { lesson, set, faults } = useEditing();
  const id = useId();
  const put = (text: string) => set(path, optional && text === '' ? undefined : text);
  const common = {
    id,
    value: String(at(lesson, path) ?? ''),
    'aria-invalid': faults(path).length > 0,
    'aria-describedby': `${id}said`,
  };
  return (
    <p className="edit-field" data-path={path}>
      <label htmlFor={id}>{label}</label>
      {hint && <span className="fine">{hint}</span>}
      {long ? (
        <textarea {...common} rows={3} onChange={({ target }) => put(target.value)} />
      ) : (
        <input {...common} autoComplete="off" onChange={({ target }) => put(target.value)} />
      )}
      <Faults path={path} id={`${id}said`} example={example} />
    </p>
  );
}

/** A formula, or a text with `{formula|as}` in it, with the values that it can name to choose from. */
export function FormulaField({ words = false, ...props }: Props & { words?: boolean }) {
  const { lesson, set } = useEditing();
  const box = useRef<HTMLDivElement>(null);
  const { path, label } = props;
  const put = ({ name, as, value }: Offered) => {
    const field = box.current?.querySelector<HTMLInputElement | HTMLTextAreaElement>(
      '.edit-field :is(input, textarea)',
    );
    if (!field) return;
    const text = String(at(lesson, path) ?? '');
    const [from, to] = [field.selectionStart ?? text.length, field.selectionEnd ?? text.length];
    const hole = typeof value === 'string' ? `{${name}}` : `{${name}|${as}}`;
    set(path, text.slice(0, from) + (words ? hole : name) + text.slice(to));
    field.focus();
  };
  return (
    <div className="with-names" ref={box}>
      <TextField {...props} long={props.long ?? words} example />
      <ValueList path={path} label={label} put={put} />
    </div>
  );
}

export function NumberField({ path, label }: Props) {
  const { lesson, set, faults } = useEditing();
  const id = useId();
  return (
    <p className="edit-field short" data-path={path}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="number"
        step="any"
        value={String(at(lesson, path) ?? '')}
        aria-invalid={faults(path).length > 0}
        aria-describedby={`${id}said`}
        onChange={({ target }) => set(path, target.value === '' ? undefined : Number(target.value))}
      />
      <Faults path={path} id={`${id}said`} />
    </p>
  );
}

export function ChoiceField({ path, label, options }: Props & { options: readonly (readonly [string, string])[] }) {
  const { lesson, set } = useEditing();
  const id = useId();
  const value = String(at(lesson, path) ?? '');
  return (
    <p className="edit-field short" data-path={path}>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={({ target }) => set(path, target.value)} aria-describedby={`${id}said`}>
        {!options.some(([key]) => key === value) && <option value={value}>{value || 'choose'}</option>}
        {options.map(([key, text]) => (
          <option key={key} value={key}>
            {text}
          </option>
        ))}
      </select>
      <Faults path={path} id={`${id}said`} />
    </p>
  );
}

/** Ticked: `on` stands there; else `off`, or nothing. */
export function Tick({ path, label, on = true, off }: Props & { on?: unknown; off?: unknown }) {
  const { lesson, set } = useEditing();
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={at(lesson, path) === on}
        onChange={({ target }) => set(path, target.checked ? on : off)}
      />
      {label}
    </label>
  );
}

/** A part that may be there or not; ticked, it begins as `fresh`. */
export function Group({ path, label, fresh, children }: GroupProps) {
  const { lesson, set } = useEditing();
  const id = useId();
  const there = at(lesson, path) !== undefined;
  return (
    <div className="edit-group" data-path={path}>
      <label className="tick">
        <input
          type="checkbox"
          checked={there}
          onChange={({ target }) => set(path, target.checked ? structuredClone(fresh) : undefined)}
        />
        {label}
      </label>
      <Faults path={path} id={`${id}said`} />
      {there && <fieldset aria-label={label}>{children}</fieldset>}
    </div>
  );
}

interface GroupProps {
  path: string;
  label: string;
  fresh: unknown;
  children: ReactNode;
}

interface ListProps {
  path: string;
  /** of one of them: Number, Mistake */
  one: string;
  fresh: unknown;
  least?: number;
  most: number;
  /** without any of them the list is not there at all */
  optional?: boolean;
  children(path: string, at: number): ReactNode;
}

/** Parts of one kind, one after another; another at the end, and each can be taken away. */
export function ListOf({ path, one, fresh, least = 0, most, optional = false, children }: ListProps) {
  const { lesson, set } = useEditing();
  const id = useId();
  const all = (at(lesson, path) ?? []) as unknown[];
  return (
    <div className="edit-list" data-path={path}>
      {all.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: they are known by their place alone
        <fieldset key={i}>
          <legend>
            {one} {all.length > 1 ? i + 1 : ''}
          </legend>
          {children(`${path}[${i}]`, i)}
          {all.length > least && (
            <button
              type="button"
              aria-label={`Take away: ${one} ${i + 1}`}
              onClick={() => {
                const left = all.filter((__, k) => k !== i);
                set(path, optional && left.length === 0 ? undefined : left);
              }}
            >
              Take away
            </button>
          )}
        </fieldset>
      ))}
      <Faults path={path} id={`${id}said`} />
      {all.length < most && (
        <button type="button" onClick={() => set(path, [...all, structuredClone(fresh)])}>
          {one}: add {all.length > 0 ? 'another' : 'one'}
        </button>
      )}
    </div>
  );
}
