/** A line straightened: told by its distance from the bush line of its seat, which then lies level. */

import type { Metres, Millimetres } from '../../design/dimension.ts';
import { millimetres } from '../../report/convert.ts';
import { type Chain, gapOf, type Line } from '../../report/inFrame.ts';

/** mm: station on the bush, and distance outward, square to the bush line, from that line. */
export type Place = readonly [station: Millimetres, out: Millimetres];

/** @param frame the bush line that lies level · at axial place of the line's part (m) */
export function straightened(frame: Line, line: Line, at: Metres): Place[] {
  const { bush, journal, halfAngle } = gapOf(frame, line);
  return Array.from(
    journal.u,
    (u, i): Place => [
      millimetres(line.z[i]! + at),
      millimetres(journal.v[i]! - at * Math.sin(halfAngle) - vOn(bush, u + at * Math.cos(halfAngle))),
    ],
  );
}

/** v of a chain at u, its end pieces carried on beyond the ends. */
function vOn({ u: us, v, slope }: Chain, u: number): number {
  let k = 0;
  while (k < slope.length - 1 && us[k + 1]! <= u) k++;
  return v[k]! + slope[k]! * (u - us[k]!);
}
