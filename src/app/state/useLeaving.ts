/** What is not written yet is, as the page is hidden or closed; asks first where work would be lost. */
import { useEffect } from 'react';
import type { Work } from './store.ts';

export function useLeaving(work: Work) {
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      if (work.unkept()) event.preventDefault();
    };
    const onHidden = () => {
      if (document.visibilityState === 'hidden') work.keepAll();
    };
    window.addEventListener('beforeunload', onLeave);
    window.addEventListener('pagehide', work.keepAll);
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      window.removeEventListener('beforeunload', onLeave);
      window.removeEventListener('pagehide', work.keepAll);
      document.removeEventListener('visibilitychange', onHidden);
    };
  }, [work]);
}
