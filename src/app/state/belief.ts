/** What is believed of the parts, asked of the worker where anything was read. */
import type { Design } from '../../design/definition.ts';
import { useSolved } from './useSolved.ts';

/** Of a design of which nothing is known there is none; while the next is worked out the last stays. */
export const useBelief = (design: Design) => useSolved('belief', isKnown(design) ? design : null);

/** Whether anything was read, or is stated of how far the parts may be other than drawn. */
export const isKnown = (design: Design) => isRead(design) || design.cut?.doubt !== undefined;

export const isRead = ({ readings, priors, cut }: Design) =>
  (readings?.length ?? 0) + (priors?.length ?? 0) + (cut?.trials?.length ?? 0) > 0;
