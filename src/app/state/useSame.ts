/** A value as it was first seen with what it hangs on: the same object for as long as that stays. */
import { useMemo } from 'react';

export function useSame<T>(value: T, of: unknown): T {
  // biome-ignore lint/correctness/useExhaustiveDependencies: another value of the same is the same
  return useMemo(() => value, [of]);
}
