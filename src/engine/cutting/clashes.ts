/**
 * What was read at trials that does not go with the rest. Each reading is left out in turn and everything estimated
 * anew without it: the least cost is so much less then, and the root of that is how far the reading lies from what all
 * else tells, in standard deviations of the two together. (So it is exactly where no bound holds anything back; with
 * bounds it is the ratio of likelihoods.) What the blue shows is held against the rest in the same way.
 * @source CookWeisberg 2.2 (deleted residuals); Wilks1938 (likelihood ratio)
 */

import { costOf } from '../belief/accounts.ts';
import { fit, type SeatInput } from '../contact/fit.ts';
import { predict } from '../gauging/readings/index.ts';
import type { Trial, TrialResult, Updated } from './trial.ts';

interface ReadingName {
  /** place of the trial in the history */
  trial: number;
  what: 'standOff' | 'shake' | 'blue';
}

export interface Clash extends ReadingName {
  /**
   * m: what was read, and what all else tells that it should read; null for the blue, and where it has no such reading
   */
  read: number | null;
  expected: number | null;
  /** standard deviations */
  deviations: number;
}

/** Deviations that are called out: chance reaches them once in a hundred times. */
const CLASHES = 2.576;

const READINGS: readonly ReadingName['what'][] = ['standOff', 'shake', 'blue'];

/** The worst first. @param again the estimates after other trials */
export function clashesOf(
  trials: readonly Trial[],
  last: Updated,
  again: (trials: readonly Trial[]) => TrialResult[],
): Clash[] {
  const names = trials.flatMap((told, trial) =>
    READINGS.filter((what) => told[what] !== undefined).map((what): ReadingName => ({ trial, what })),
  );
  return names
    .flatMap((name): Clash[] => {
      const rest = again(withoutReading(trials, name));
      const then = rest.at(-1);
      if (then?.status !== 'updated') return [];
      const deviations = Math.sqrt(Math.max(0, costOf(last.accounts[0]!) - costOf(then.accounts[0]!)));
      if (deviations <= CLASHES) return [];
      const told = trials[name.trial]!;
      const read = name.what === 'blue' ? null : told[name.what]!.value;
      const there = rest[name.trial];
      return [
        {
          ...name,
          read,
          expected: there?.status === 'updated' ? expectedOf(told, name.what, there.seats) : null,
          deviations,
        },
      ];
    })
    .sort((a, b) => b.deviations - a.deviations);
}

/** What parts would read at a trial (m). */
function expectedOf({ shake }: Trial, what: ReadingName['what'], parts: readonly SeatInput[]): number | null {
  if (what === 'standOff') return fit(parts, 0).firstPosition;
  return what === 'shake' && shake ? predict({ kind: 'shake', ...shake }, parts).value : null;
}

/** The trials as they would be had that not been read. */
export const withoutReading = (trials: readonly Trial[], { trial, what }: ReadingName): Trial[] =>
  trials.map((all, place) => {
    if (place !== trial) return all;
    const { [what]: _, ...rest } = all;
    return rest;
  });
