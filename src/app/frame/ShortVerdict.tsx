/** A verdict in three steps: what is so now, in few words and one height; why, in one sentence; the rest opens. */
import { type ReactNode, useState } from 'react';
import { Explained } from '../glossary/Explained.tsx';
import './shortVerdict.css';

interface Props {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  now: string;
  why: string;
  rest: readonly string[];
  /** what the line says that opens the rest */
  more: string;
  /** more is on its way */
  busy?: boolean;
  stale?: boolean;
  /** where what the rest speaks of is seen to */
  elsewhere?: ReactNode;
  /** what can be done about it */
  children?: ReactNode;
}

export function ShortVerdict({ tone, now, why, rest, more, busy = false, stale = false, elsewhere, children }: Props) {
  // Shut, its words are not looked up at every move of a hand.
  const [open, setOpen] = useState(false);
  return (
    <section className={`verdict short ${tone}${stale ? ' stale' : ''}`} aria-live="polite" aria-busy={busy}>
      <p className="now">
        <Explained>{now}</Explained>
      </p>
      <h2>
        <Explained>{why}</Explained>
      </h2>
      {rest.length > 0 && (
        <details onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary>{more}</summary>
          {rest.map((sentence, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: with another figure in it a sentence is written over
            <p key={i}>{open ? <Explained>{sentence}</Explained> : sentence} </p>
          ))}
          {elsewhere}
        </details>
      )}
      {children}
    </section>
  );
}
