/** A part of the program without a picture of its own that comes when it is asked for, once for the page. */
import { useEffect, useState } from 'react';

interface Part<T> {
  /** null until it is there; where it does not come, whoever asks next asks again */
  now: T | null;
  load(): Promise<T | null>;
}

export function onceLoaded<T extends object>(load: () => Promise<T>): Part<T> {
  const part: Part<T> = {
    now: null,
    load: async () => {
      part.now ??= await load().catch(() => null);
      return part.now;
    },
  };
  return part;
}

export function useLoaded<T extends object>(part: Part<T>, wanted: boolean): T | null {
  const [found, setFound] = useState(part.now);
  useEffect(() => {
    if (wanted && !found) void part.load().then(setFound);
  }, [part, wanted, found]);
  return found;
}
