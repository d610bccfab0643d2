/** What is not written yet is, as the page is hidden or closed; asks first where work would be lost. */
import { useEffect } from 'react';
import type { Work } from './store.ts';

export function useLeaving(work: Work) {
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      if (work.unkept()) event.preventDefault();
    };
    const keep = () => {
      // What is being typed is taken as by leaving its field: the page may not come back.
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      work.keepAll();
    };
    const onHidden = () => {
      if (document.visibilityState === 'hidden') keep();
    };
    window.addEventListener('beforeunload', onLeave);
    window.addEventListener('pagehide', keep);
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      window.removeEventListener('beforeunload', onLeave);
      window.removeEventListener('pagehide', keep);
      document.removeEventListener('visibilitychange', onHidden);
    };
  }, [work]);
}
