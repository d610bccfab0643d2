/**
 * What is believed of the parts: the most likely shape, and how sure each of its numbers is. Measure finds one from
 * readings and priors (gauging/estimate.ts); what follows from it is worked out here, for Measure, Cut and the odds
 * alike: films and their covariance (filmsBelieved.ts), quantities with their uncertainty (consequences.ts), shapes
 * drawn (draws.ts), and what trial assemblies tell (accounts.ts).
 */
import type { SeatInput } from '../contact/fit.ts';
import type { Decomposition } from './decomposition.ts';
import type { Unknowns } from './unknowns.ts';

export interface Belief {
  /** the most likely shape */
  seats: SeatInput[];
  /** which of its numbers are not known for sure */
  unknowns: Unknowns;
  /** what they are (rad, m), in that order: the mean */
  numbers: Float64Array;
  /** their covariance, and what is left open */
  decomposition: Decomposition;
}
