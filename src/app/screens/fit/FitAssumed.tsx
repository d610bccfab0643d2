/** Fit of a job in which sizes are assumed: no praise by them. */
import type { FitProps } from './FitBelieved.tsx';
import { KNOWN } from './known.ts';

export default function FitAssumed({ draw: Draw, ...props }: FitProps) {
  return <Draw {...props} draw={Draw} known={KNOWN} />;
}
