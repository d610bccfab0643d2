/** The last value that stood for so long (ms). */
import { useEffect, useState } from 'react';

export function useRested<T>(value: T, rest: number): T {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), rest);
    return () => clearTimeout(timer);
  }, [value, rest]);
  return rested;
}
