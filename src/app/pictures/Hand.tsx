/** What belongs to a picture besides what it shows: its buttons, and what hand and keys do in it. */
import type { ReactNode } from 'react';
import { useMedia } from './useMedia.ts';

/** On a phone they open when asked for. */
export function Tools({ children }: { children: ReactNode }) {
  const narrow = useMedia('(max-width: 599px)');
  if (!narrow) return children;
  return (
    <details className="hand">
      <summary>Picture</summary>
      <div className="buttons">{children}</div>
    </details>
  );
}

export function Hand({ children }: { children: ReactNode }) {
  return (
    <details className="hand hint">
      <summary aria-label="Hand and keys" title="Hand and keys">
        ?
      </summary>
      <p>{children}</p>
    </details>
  );
}
