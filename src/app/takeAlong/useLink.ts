/** A link that carries a design: opened as a piece of work of its own, on Fit; a bad one is refused and said. */
import { useEffect } from 'react';
import type { Work } from '../state/store.ts';

const CARRIES = '#job=';

export function useLink(work: Work): void {
  useEffect(() => {
    const open = async () => {
      const { hash } = window.location;
      if (!hash.startsWith(CARRIES)) return;
      // Out of the address at once: loaded again, the page is not to open it a second time.
      window.history.replaceState(null, '', '#fit');
      window.dispatchEvent(new HashChangeEvent('hashchange'));
      const { designOfLink, systemOfLink } = await import('./link.ts');
      work.open('the link', designOfLink(hash), systemOfLink(hash) ?? undefined);
    };
    void open();
    window.addEventListener('hashchange', open);
    return () => window.removeEventListener('hashchange', open);
  }, [work]);
}
