/** What is believed of the parts, asked of the worker where anything was read. */
import type { Design } from '../../design/definition.ts';
import { useSolved } from './useSolved.ts';

/** Of a design of which nothing was read there is none; while the next is worked out the last stays. */
export const useBelief = (design: Design) => useSolved('belief', isRead(design) ? design : null);

export const isRead = ({ readings, priors, cut }: Design) =>
  (readings?.length ?? 0) + (priors?.length ?? 0) + (cut?.trials?.length ?? 0) > 0;
