/**
 * Every kind of reading the program knows. In the engine another kind is one file here, one line below and its
 * set-up in `Reading` (reading.ts); what else there is to it, DEVELOPERS.md tells ("A reading").
 */

import type { On } from '../../belief/unknowns.ts';
import type { SeatInput } from '../../contact/fit.ts';
import { seenBy } from '../cutsBetween.ts';
import type { Kind, Prediction, Reading, ReadingKind, Tells } from '../reading.ts';
import { ballDepth } from './ballDepth.ts';
import { diameter } from './diameter.ts';
import { overRolls } from './overRolls.ts';
import { shake } from './shake.ts';
import { sineRise } from './sineRise.ts';
import { standOff } from './standOff.ts';
import { straightness } from './straightness.ts';

const KINDS: { [K in Kind]: ReadingKind<K> } = {
  diameter,
  overRolls,
  ballDepth,
  sineRise,
  straightness,
  standOff,
  shake,
};

const kindOf = (reading: Reading) => KINDS[reading.kind] as ReadingKind<Kind>;

export const tellsOf = (kind: Kind): Tells => KINDS[kind].tells;
export const usualSigma = (kind: Kind): number => KINDS[kind].usualSigma;

/**
 * What a set-up would read on a shape (m), how that follows the shape, and whether it can be read at all; with the
 * metal on or off as it then was.
 */
export const predict = (reading: Reading, seats: readonly SeatInput[]): Prediction =>
  predictSeen(reading, seenBy(reading, seats));

/** The same from the shape that the reading itself saw. */
export const predictSeen = (reading: Reading, seen: readonly SeatInput[]): Prediction =>
  kindOf(reading).predict(reading, seen);

/** Stations (m) at which a reading seeks the profile of its surface; none where it tells of the line alone. */
export const profileAt = (reading: Reading) => kindOf(reading).profileAt(reading);
export const seeksProfile = (reading: Reading): boolean => profileAt(reading).length > 0;

/** The surfaces a reading tells of. */
export const surfacesOf = (reading: Reading, seats: readonly SeatInput[]): On[] =>
  kindOf(reading).surfaces(reading, seats);
