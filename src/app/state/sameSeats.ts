/**
 * Whether two designs have the same seats by name and order: what was worked out for the one can then be shown beside
 * the other.
 */
import type { Design } from '../../design/definition.ts';

export const sameSeats = (a: Design, b: Design): boolean => namesOf(a) === namesOf(b);

/** All seats by name, as one text. */
export const namesOf = ({ seats }: Design): string => JSON.stringify(seats.map(({ name }) => name));
