/** Lengths a person typed on the drawing of a job (screens/new/lengths.ts), mm, by seat and what they are of. */
import type { State } from './store.ts';

export const TYPED_LENGTHS = 'lengths typed';

export type Lengths = Readonly<Record<string, number>>;

/** mm: nearer is the same length */
export const SAME_LENGTH = 1e-6;

const NONE: Lengths = {};

export function typedLengths({ piece, unfinished }: Pick<State, 'piece' | 'unfinished'>): Lengths {
  const held = unfinished[TYPED_LENGTHS];
  return held?.piece === piece ? (held.written as Lengths) : NONE;
}
