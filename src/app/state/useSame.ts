/** A value as it was first seen with what it hangs on: the same object for as long as that stays. */
import { useRef } from 'react';

export function useSame<T>(value: T, of: unknown): T {
  const kept = useRef({ value, of });
  if (kept.current.of !== of) kept.current = { value, of };
  return kept.current.value;
}
