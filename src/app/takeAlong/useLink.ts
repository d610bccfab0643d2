/** A link that carries a design: opened as a piece of work of its own, on Fit; a bad one is refused and said. */
import { useEffect } from 'react';
import { sayAngles } from '../state/angles.ts';
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
      const { designOfLink, screenOfLink, systemOfLink, wayOfLink } = await import('./link.ts');
      const read = designOfLink(hash);
      work.open('the link', read, systemOfLink(hash) ?? undefined);
      const way = wayOfLink(hash);
      if (read.ok && way !== null) sayAngles(way);
      if (read.ok && screenOfLink(hash) === 'show') window.location.hash = '#show';
    };
    void open();
    window.addEventListener('hashchange', open);
    return () => window.removeEventListener('hashchange', open);
  }, [work]);
}
