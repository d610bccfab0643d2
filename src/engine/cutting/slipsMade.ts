/**
 * Slips that a hand makes as it writes a trial down, each of which says what was meant by what stands there:
 *
 *   ten        a point in a wrong place, a thou for a tenth, hundredths for thousandths: ×10, ×1/10
 *   inch       inches typed as millimetres, or the reverse: ×25.4, ×1/25.4
 *   diameter   what the diameter lost for what came off square to the surface, s = Δ/2·cos a, or the reverse
 *   sign       a stand-off of the other sign
 *   seat       another seat printed than the one that is said to
 *
 * a half angle of the surface.
 * @source practice (which, how often); derived
 */
import { INCH } from '../../design/units.ts';
import type { ErrorName } from '../belief/accounts.ts';
import type { SeatInput } from '../contact/fit.ts';
import { radialOf } from '../parts/stock.ts';
import type { Trial } from './trial.ts';
import type { Blue } from './trialReadings.ts';

export type HandSlip = 'ten' | 'inch' | 'diameter' | 'sign' | 'seat';

/** How often each is made, by the number. @source practice */
export const SLIP: Record<HandSlip, number> = { ten: 0.005, inch: 0.002, diameter: 0.005, sign: 0.005, seat: 0.005 };

const TEN = [10, 1 / 10] as const;
const OTHER_UNIT = [INCH, 1 / INCH] as const;

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

const ofNumber = (): Meant[] => [
  ...TEN.map((times): Meant => ({ kind: 'ten', times })),
  ...OTHER_UNIT.map((times): Meant => ({ kind: 'inch', times })),
];

export function metalSlips(name: ErrorName, seats: readonly SeatInput[], trials: readonly Trial[]): MetalSlip[] {
  const off = name.of === 'taken' ? trials[name.trial]!.taken[name.place] : undefined;
  const across = off ? 2 * radialOf(1, seats[off.seat]![off.part].halfAngle) : null;
  const diameter: Meant[] = across === null ? [] : [1 / across, across].map((times) => ({ kind: 'diameter', times }));
  return [...ofNumber(), ...diameter].map((meant) => ({ ...name, ...meant }));
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
