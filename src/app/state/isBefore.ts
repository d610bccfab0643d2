/** Whether what was worked out is of another history than that of now: other trials, readings, or doubt. */
import type { Design } from '../../design/definition.ts';

export function isBefore(of: Design | null, now: Design): boolean {
  if (of === null || of === now) return false;
  const known = ({ cut, readings, priors }: Design) => [cut?.trials, cut?.doubt, readings, priors];
  const [then, all] = [known(of), known(now)];
  return all.some((one, k) => one !== then[k] && JSON.stringify(one) !== JSON.stringify(then[k]));
}
