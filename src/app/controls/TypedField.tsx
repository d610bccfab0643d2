/** A field of text: what is typed is taken on Enter or on leaving it; what cannot be taken says why and stays. */
import { type KeyboardEvent, useId, useState } from 'react';

interface Props {
  id: string;
  shown: string;
  /** What the field is, for whoever asks. */
  about: string;
  /** What holds while the field is empty, or how to write in it. */
  instead?: string | undefined;
  /** Said below it always. */
  beside?: string | undefined;
  lines?: number | undefined;
  /** Takes what was typed; the reason when it cannot. */
  take(text: string): string | null;
}

export function TypedField({ id, shown, about, instead, beside, lines, take }: Props) {
  const said = useId();
  // What is being typed belongs to what was shown when it began: another value shown does away with it at once.
  const [draft, setDraft] = useState<{ text: string; error: string; of: string } | null>(null);
  const own = draft?.of === shown ? draft : null;
  const text = own?.text ?? shown;
  const error = own?.error ?? '';
  const type = (typed: string) => setDraft({ text: typed, error, of: shown });
  const finish = () => {
    const refused = text === shown ? null : take(text);
    setDraft(refused === null ? null : { text, error: refused, of: shown });
  };
  const common = {
    id,
    value: text,
    placeholder: instead,
    autoComplete: 'off',
    'aria-invalid': error !== '',
    'aria-describedby': said,
    onBlur: finish,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter' && (lines === undefined || event.ctrlKey)) finish();
      if (event.key === 'Escape') {
        setDraft(null);
      }
    },
  };
  return (
    <div className="typed">
      {lines === undefined ? (
        <input {...common} onChange={(event) => type(event.target.value)} />
      ) : (
        <textarea {...common} rows={lines} spellCheck={false} onChange={(event) => type(event.target.value)} />
      )}
      <div id={said} className="said">
        {error !== '' && <p className="error">{error}</p>}
        {beside !== undefined && <p>{beside}</p>}
        <p className="about">{about}</p>
      </div>
    </div>
  );
}
