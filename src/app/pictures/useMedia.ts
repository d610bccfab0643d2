/** Whether a media query holds, followed as it changes. */
import { useMemo, useSyncExternalStore } from 'react';

export function useMedia(query: string): boolean {
  // One list for as long as the query stands: asking for another at every render is dear.
  const { subscribe, matches } = useMemo(() => {
    const list = window.matchMedia(query);
    return {
      subscribe(changed: () => void) {
        list.addEventListener('change', changed);
        return () => list.removeEventListener('change', changed);
      },
      matches: () => list.matches,
    };
  }, [query]);
  return useSyncExternalStore(subscribe, matches);
}
