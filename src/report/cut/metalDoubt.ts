/** How far metal taken off may be other than was told, where the person does not say. */
import type { Design, Part } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { diameterChange } from '../../engine/parts/stock.ts';
import { metres, millimetres, radians } from '../convert.ts';
import type { Cut } from './toCut.ts';

/** mm: what an indicator is read to, at a trial, where nothing says better. @source practice */
export const INDICATOR_SIGMA = 0.001;

/** Standard uncertainty (mm) of the next stand-off: as the last one was read. */
export const standOffSigma = ({ trials = [] }: Pick<Cut, 'trials'>): number =>
  trials.findLast(({ standOff }) => standOff)?.standOff?.sigma ?? INDICATOR_SIGMA;

/** mm, of metal off a face, gauged by its thickness */
export const FACE_SIGMA = defaultAt('cut.trials[0].faces[0].sigma');
/**
 * share of the stock by which a dial, the spring of the work and the wear of the wheel may be wrong. @source practice
 */
const SHARE = 0.05;

/**
 * Standard uncertainty (mm) of stock read off the dial of the cross feed: a share of it and half a division, root of
 * squares. A division of d moves the wheel square to the surface by d·cos a; half of that where the dial counts
 * diameters.
 */
export function takenSigma({ machine = {} }: Pick<Cut, 'machine'>, normal: number, halfAngle: number): number {
  const division = machine.division ?? defaultAt('cut.machine.division');
  const half = (division / (machine.dial === 'diameter' ? 4 : 2)) * Math.cos(radians(halfAngle));
  return Math.hypot(SHARE * normal, half);
}

/** The same of a surface of a design. */
export const surfaceSigma = ({ seats, cut }: Design, seat: string, part: Part, normal: number): number =>
  takenSigma(cut ?? {}, normal, seats.find(({ name }) => name === seat)?.[part].halfAngle ?? 0);

/** Change of the diameter (mm) for stock (mm) square to a surface of a design: what rolls and micrometers read. */
export const diameterOf = ({ seats }: Design, seat: string, part: Part, normal: number): number =>
  millimetres(
    diameterChange(metres(normal), radians(seats.find(({ name }) => name === seat)?.[part].halfAngle ?? 0), part),
  );
