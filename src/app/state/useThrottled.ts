/** A value that changes fast, seen at most once in so many milliseconds; the last one always arrives. */
import { useEffect, useRef, useState } from 'react';
import { useLatest } from './useLatest.ts';

export function useThrottled<T>(value: T, milliseconds: number): T {
  const [seen, setSeen] = useState(value);
  const newest = useLatest(value);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  useEffect(() => {
    if (timer.current !== null || value === seen) return;
    timer.current = setTimeout(() => {
      timer.current = null;
      setSeen(newest.current);
    }, milliseconds);
  }, [value, seen, milliseconds]);
  useEffect(
    () => () => {
      if (timer.current !== null) clearTimeout(timer.current);
    },
    [],
  );
  return seen;
}
