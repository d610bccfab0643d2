/**
 * Slips that a hand makes as it writes a trial down, each of which says what was meant by what stands there:
 *
 *   of an amount of metal   amountSlips.ts
 *   of a reading            ten and inch of the same, and
 *   sign       a stand-off of the other sign
 *   seat       another seat printed than the one that is said to
 *
 * @source practice (which, how often); derived
 */
import type { ErrorName } from '../belief/accounts.ts';
import type { SeatInput } from '../contact/fit.ts';
import { type AmountSlip, timesMeant } from '../gauging/amountSlips.ts';
import type { Trial } from './trial.ts';
import type { Blue } from './trialReadings.ts';

export type HandSlip = AmountSlip | 'sign' | 'seat';

/** How often each is made, by the number. @source practice */
export const SLIP: Record<HandSlip, number> = { ten: 0.005, inch: 0.002, diameter: 0.005, sign: 0.005, seat: 0.005 };

/** Of a number: so many times as much was meant. */
export interface Meant {
  kind: Exclude<HandSlip, 'seat'>;
  times: number;
}
/** Of metal off, by its place. */
export type MetalSlip = ErrorName & Meant;
export type NumberSlip = { trial: number; what: 'standOff' | 'shake' } & Meant;
/** Of the blue: this seat printed, in place of the one that is said to. */
export interface SeatSlip {
  trial: number;
  what: 'blue';
  kind: 'seat';
  seat: number;
}
export type ReadSlip = NumberSlip | SeatSlip;

/** Of a number that belongs to no surface. */
const ofNumber = (): Meant[] => timesMeant(null);

export function metalSlips(name: ErrorName, seats: readonly SeatInput[], trials: readonly Trial[]): MetalSlip[] {
  const off = name.of === 'taken' ? trials[name.trial]!.taken[name.place] : undefined;
  const meant = timesMeant(off ? seats[off.seat]![off.part].halfAngle : null);
  return meant.map((one) => ({ ...name, ...one }));
}

export function readSlips(trials: readonly Trial[]): ReadSlip[] {
  return trials.flatMap(({ standOff, shake, blue = [] }, trial): ReadSlip[] => {
    const sign: Meant = { kind: 'sign', times: -1 };
    const of = (what: NumberSlip['what'], all: Meant[]) => all.map((one): NumberSlip => ({ trial, what, ...one }));
    const one = blue.filter(({ prints }) => prints).length === 1;
    return [
      ...(standOff ? of('standOff', [...ofNumber(), sign]) : []),
      ...(shake ? of('shake', ofNumber()) : []),
      ...(one ? blue.filter(({ prints }) => !prints) : []).map(
        ({ seat }): SeatSlip => ({ trial, what: 'blue', kind: 'seat', seat }),
      ),
    ];
  });
}

/** What the blue showed, had it been this seat alone. */
export const printedBy = (blue: Blue, seat: number): Blue =>
  blue.map((seen) => ({ ...seen, prints: seen.seat === seat }));
