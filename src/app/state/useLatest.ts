/** The newest value, for what runs later: written once it is on the page, never while it is rendered. */
import { type RefObject, useLayoutEffect, useRef } from 'react';

export function useLatest<T>(value: T): Readonly<RefObject<T>> {
  const latest = useRef(value);
  useLayoutEffect(() => {
    latest.current = value;
  });
  return latest;
}
