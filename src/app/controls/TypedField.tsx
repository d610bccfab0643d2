/**
 * A field of a number or of words: what is typed is taken on Enter or on leaving it; what cannot be taken says why and
 * stays. Escape puts back what was taken last.
 */
import { type FocusEvent, type KeyboardEvent, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { keepPress } from './keepPress.ts';
import type { Keys } from './keys.ts';
import { SignKey } from './SignKey.tsx';

interface Props {
  id: string;
  shown: string;
  /** the same with fewer digits, while nobody is typing */
  resting?: string | undefined;
  /** What the field is, for whoever asks. */
  about: string;
  /** What holds while the field is empty, or how to write in it. */
  instead?: string | undefined;
  /** Said below it always. */
  beside?: string | undefined;
  lines?: number | undefined;
  /** Taken at every pause of the hand too: words that are long to write are not lost with the page. */
  atPauses?: boolean;
  /** what a phone brings up for it */
  keys?: Keys;
  /** Takes what was typed; the reason when it cannot. */
  take(text: string): string | null;
  /** What was typed before and is kept for it elsewhere, not taken, and why. */
  held?: { text: string; why: string } | undefined;
  /** What is taken, but does not go with other fields. */
  fault?: string | undefined;
  /** Gives up what is held. */
  leave?: (() => void) | undefined;
  /** Whether nobody has read or drawn what is shown. */
  assumed?: boolean;
}

/** ms */
const PAUSE = 700;

export function TypedField({ keys = 'number', assumed = false, fault = '', atPauses = false, ...props }: Props) {
  const { id, shown, resting = shown, about, instead, beside, lines, take, held, leave } = props;
  const said = useId();
  // What is being typed belongs to what was shown when it began: another value shown does away with it at once.
  const [draft, setDraft] = useState<{ text: string; error: string; of: string } | null>(null);
  const stood = held?.text ?? shown;
  const own = draft?.of === stood ? draft : null;
  const text = own?.text ?? stood;
  const [typing, setTyping] = useState(false);
  const rests = !typing && own === null && !held;
  const error = own?.error || (held?.why ?? fault);
  const type = (typed: string) => setDraft({ text: typed, error: own?.error ?? '', of: stood });
  const pause = useRef(0);
  useEffect(() => () => clearTimeout(pause.current), []);
  const write = (typed: string) => {
    type(typed);
    clearTimeout(pause.current);
    if (atPauses) pause.current = window.setTimeout(() => take(typed), PAUSE);
  };
  const putBack = () => {
    clearTimeout(pause.current);
    setDraft(null);
    leave?.();
  };
  const finish = (asked: boolean) => {
    clearTimeout(pause.current);
    if (held && text === shown) return putBack();
    // What is held is tried again when that is asked for; what is assumed is so when it is typed, or asked for.
    const again = (held && asked) || (assumed && (asked || own !== null));
    const refused = text === stood && !again ? null : take(text);
    setDraft(refused === null ? null : { text, error: refused, of: stood });
  };
  const selecting = useRef(false);
  const kept = useRef<(() => void) | null>(null);
  useEffect(() => () => kept.current?.(), []);
  const field = useRef<HTMLInputElement>(null);
  // Put in place of the one at rest, the whole figure is taken hold of anew.
  useLayoutEffect(() => {
    if (typing) field.current?.select();
  }, [typing]);
  const common = {
    id,
    value: rests ? resting : text,
    placeholder: instead,
    autoComplete: 'off',
    className: assumed && !held ? 'assumed' : undefined,
    'aria-invalid': error !== '',
    'aria-describedby': said,
    onFocus: ({ currentTarget }: FocusEvent<HTMLElement>) => {
      kept.current?.();
      kept.current = keepPress(currentTarget);
    },
    onBlur: () => {
      kept.current?.();
      kept.current = null;
      setTyping(false);
      finish(false);
    },
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter' && (lines === undefined || event.ctrlKey)) finish(true);
      if (event.key === 'Escape') putBack();
    },
  };
  return (
    <div className="typed">
      {lines === undefined ? (
        <input
          {...common}
          ref={field}
          inputMode={keys === 'words' ? undefined : 'decimal'}
          onChange={(event) => type(event.target.value)}
          // A click or a tap takes hold of the whole figure, as the Tab key does: what is typed then stands for it.
          onFocus={(event) => {
            const { currentTarget } = event;
            common.onFocus(event);
            setTyping(true);
            currentTarget.select();
            selecting.current = true;
          }}
          onMouseUp={(event) => {
            if (selecting.current) event.preventDefault();
            selecting.current = false;
          }}
        />
      ) : (
        <textarea {...common} rows={lines} spellCheck={false} onChange={(event) => write(event.target.value)} />
      )}
      {keys === 'signed' && <SignKey of={id} text={text} type={type} />}
      <div id={said} className="said">
        {held && <p className="error">Not taken yet.</p>}
        {assumed && !held && <p className="unseen">Assumed. Enter says that it is so.</p>}
        {error !== '' && <p className="error">{error}</p>}
        {beside !== undefined && <p>{beside}</p>}
        <p className="about">{about}</p>
      </div>
      {held && (
        <button type="button" className="leave" onClick={putBack}>
          Leave it: {shown === '' ? 'empty' : resting}
        </button>
      )}
    </div>
  );
}
