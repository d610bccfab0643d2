/**
 * Slips of the hand in an amount of metal, each as how many times what is written down was meant:
 *
 *   diameter   what the diameter lost for what came off square to the surface, s = Δ/2·cos a, or the reverse
 *   ten        a point in a wrong place, a thou for a tenth, hundredths for thousandths: ×10, ×1/10
 *   inch       inches typed as millimetres, or the reverse: ×25.4, ×1/25.4
 *
 * a half angle (rad) of the surface; of a face, which has none, only the last two.
 * @source practice (which); derived
 */
import { INCH } from '../../design/units.ts';
import { radialOf } from '../parts/stock.ts';

export type AmountSlip = 'diameter' | 'ten' | 'inch';

/** In pairs: more was meant, less was meant. */
export function timesMeant(halfAngle: number | null): { kind: AmountSlip; times: number }[] {
  const across = halfAngle === null ? null : 2 * radialOf(1, halfAngle);
  const pair = (kind: AmountSlip, times: number) => [
    { kind, times },
    { kind, times: 1 / times },
  ];
  return [...(across === null ? [] : pair('diameter', across)), ...pair('ten', 10), ...pair('inch', INCH)];
}
