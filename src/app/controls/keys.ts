/** Which keys a phone brings up for a field. */
import type { QuantityAt } from '../../design/place.ts';
import type { System } from '../../design/units.ts';

/** `number`: digits and a point · `signed`: with a key for the sign beside the field · `words`: all of them */
export type Keys = 'number' | 'signed' | 'words';

/**
 * Lengths in inch are written as fractions too, 11/16, and tapers as 1:20; the number keys of phones have no stroke and
 * no colon: they keep all keys. A unit other than the field's own has to be chosen for the page first. `sideChosen`:
 * beside the field, in place of a sign.
 */
export function keysFor(
  { quantity, bounds }: Pick<QuantityAt, 'quantity' | 'bounds'>,
  system: System,
  sideChosen = false,
): Keys {
  if (quantity === 'angle' || (quantity === 'length' && system === 'inch')) return 'words';
  return sideChosen || bounds.some(({ side, value }) => side === 'least' && value >= 0) ? 'number' : 'signed';
}
