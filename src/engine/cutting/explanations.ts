/**
 * What an account of what happened becomes by one trial (trial.ts): which seat touched, and which contact ended the
 * shake.
 *
 * Both are worked out about the films as the account has them, and again about those that follow, until these rest. A
 * shake is the least of what each contact allows, each straight in the films near by:
 *
 *   shake(e) = min_c (s_c + g_c·e)        so told by contact c: read = s_c + g_c·e, and s_c + g_c·e ≤ s_d + g_d·e
 *
 * @source derived (a linear programme's greatest value is concave in what bounds it)
 */
import { dot } from '../algebra/dot.ts';
import type { FilmsBefore } from '../belief/accounts.ts';
import { type Account, type Bound, filmsOf, type Observation, withBounds, withTold } from '../belief/accounts.ts';
import { times } from '../belief/bounded.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { Trial } from './trial.ts';
import { shakeTold, touchOf } from './trialReadings.ts';

/** Rounds of working out again, and the change (m) of a film that asks for another. */
const ROUNDS = 5;
const SETTLED = 1e-12;

export interface Explained extends Account {
  seat: number | null;
}

/** What an account becomes by a trial, with this seat the one that touched; nothing where it cannot have. */
export function explanations(
  parts: readonly SeatInput[],
  before: Account,
  trial: Trial,
  seat: number | null,
  beyond: FilmsBefore['beyond'],
): Explained[] | 'noModel' {
  let about = filmsOf(before);
  let found: { account: Explained; shaken: Observation | undefined } | null = null;
  let fits = true;
  for (let round = 0; round < ROUNDS; round++) {
    const touched = touchTold(parts, before, trial, seat, about);
    fits = touched !== null;
    if (!touched) break;
    const shaken = trial.shake && shakeTold(parts, about, trial.shake, beyond);
    // Parts as they were taken to be may not reach where it was shaken; as the touch has them they do.
    if (shaken === null && found) break;
    const account = withBounds(shaken ? withTold(touched.account, shaken) : touched.account, touched.bounds);
    if (shaken !== null) found = { account: { ...account, seat }, shaken };
    const next = filmsOf(account);
    const moved = Math.max(...next.map((e, i) => Math.abs(e - about[i]!)));
    about = next;
    if (moved < SETTLED) break;
  }
  if (!found) return fits ? 'noModel' : [];
  const { account, shaken } = found;
  return shaken ? [account, ...otherContacts(parts, before, trial, account, shaken, beyond)] : [account];
}

interface Touched {
  account: Account;
  bounds: Bound[];
}

/** What the touch tells, worked out about these films; null where it cannot have been this seat. */
function touchTold(
  parts: readonly SeatInput[],
  before: Account,
  { standOff, blue = [], thickness }: Trial,
  seat: number | null,
  about: readonly number[],
): Touched | null {
  if (seat === null) return { account: before, bounds: [] };
  const touch = touchOf(parts, about, seat, blue, thickness);
  if (!touch) return null;
  const account = standOff ? withTold(before, { ...standOff, predicted: touch.at, gains: touch.gains, about }) : before;
  return { account, bounds: touch.bounds };
}

/** Contacts whose gains differ by less than this share of them are one, worked out elsewhere. */
const ONE_CONTACT = 0.05;
/** So many standard deviations further open it is asked what ends the shake. */
const FURTHER = 2;

/**
 * A shake is the least of what each contact allows: where a film may be much greater than the most likely, it may have
 * been another contact that ended it, and the one found would have allowed more. Each that is come upon is an account.
 */
function otherContacts(
  parts: readonly SeatInput[],
  before: Account,
  trial: Trial,
  found: Explained,
  shaken: Observation,
  beyond: FilmsBefore['beyond'],
): Explained[] {
  const about = filmsOf(found);
  const known: Observation[] = [shaken];
  return about.flatMap((_, i) => {
    const wide = FURTHER * spreadIn(found, i);
    const there = about.map((e, k) => (k === i ? e + wide : e));
    const other = shakeTold(parts, there, trial.shake!, beyond);
    if (!other || known.some((one) => !isOther(one.gains, other.gains))) return [];
    const touched = touchTold(parts, before, trial, found.seat, about);
    if (!touched) return [];
    known.push(other);
    const bounds = [...touched.bounds, endsSooner(other, shaken)];
    return [{ ...withBounds(withTold(touched.account, other), bounds), seat: found.seat }];
  });
}

/** One standard deviation (m) of the film of a seat, bounds not counted. */
function spreadIn({ now, covariance }: Account, seat: number): number {
  const row = now[seat]!;
  return Math.sqrt(Math.max(0, dot(row, times(covariance, row))));
}

const isOther = (a: readonly number[], b: readonly number[]) =>
  Math.hypot(...a.map((g, i) => g - b[i]!)) > ONE_CONTACT * Math.max(Math.hypot(...a), Math.hypot(...b));

/** That the one contact ends the shake no later than the other would. */
function endsSooner(one: Observation, other: Observation): Bound {
  const at = ({ predicted, gains, about }: Observation) => predicted - dot(gains, about);
  return { gains: one.gains.map((g, i) => g - other.gains[i]!), limit: at(other) - at(one) };
}
