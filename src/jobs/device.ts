/** What this browser gives to keep work with; any part of it may be forbidden, and asking for it may throw. */
import type { Device, Word } from './keeper.ts';

export const thisDevice = (): Device => ({
  storage: allowed(() => window.localStorage),
  session: allowed(() => window.sessionStorage),
  tabs: tabs(),
  written: (hear) => window.addEventListener('storage', ({ key, newValue }) => hear(key, newValue)),
  now: () => Date.now(),
  newName: () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`,
});

function allowed(open: () => Storage): Storage | null {
  try {
    const storage = open();
    storage.getItem('');
    return storage;
  } catch {
    return null;
  }
}

function tabs(): Device['tabs'] {
  try {
    const channel = new BroadcastChannel('conepair.tabs');
    return {
      post: (word) => channel.postMessage(word),
      listen: (hear) => channel.addEventListener('message', ({ data }: MessageEvent<Word>) => hear(data)),
    };
  } catch {
    return null;
  }
}
