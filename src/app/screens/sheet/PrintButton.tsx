/** Prints once everything on the pages is worked out; after a while, or when asked again, without what is not. */
import { useEffect, useState } from 'react';

/** ms: longer nobody waits for a sheet of paper. */
export const PATIENCE = 30_000;

interface Props {
  /** whether nothing on the pages is still being worked out */
  ready: boolean;
  /** whether there is nothing to print before that */
  needed?: boolean;
  patience?: number;
}

export function PrintButton({ ready, needed = false, patience = PATIENCE }: Props) {
  const [waiting, setWaiting] = useState(false);
  useEffect(() => {
    if (!waiting) return;
    // What came last must be drawn and measured before it goes to paper.
    const timer = setTimeout(
      () => {
        setWaiting(false);
        window.print();
      },
      ready ? 0 : patience,
    );
    return () => clearTimeout(timer);
  }, [waiting, ready, patience]);
  return (
    <>
      <button
        type="button"
        className="main"
        disabled={needed && !ready}
        aria-busy={waiting}
        onClick={() => setWaiting(true)}
      >
        {waiting ? 'Preparing…' : 'Print'}
      </button>
      {waiting && !ready && (
        <button
          type="button"
          onClick={() => {
            setWaiting(false);
            window.print();
          }}
        >
          Print now, without the films
        </button>
      )}
      <span role="status" className="fine">
        {waiting && !ready ? 'The films are being worked out; it prints when they are there.' : ''}
      </span>
    </>
  );
}
