/** Seating where journal and bush are cones of different half angles and the bush is lobed, in closed form. */

import { expect, it } from 'vitest';
import { NOSEWARD, REARWARD, seat } from '../../../src/engine/play/seating.ts';
import { spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { toSeats } from '../../../src/report/convert.ts';
import { ALL } from './designs.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** mm: radius of the bush's small end, its place, radius of the journal at the datum, height of the crests */
const [SMALL, END, LARGE, HEIGHT] = [10, 1.5, 10.2, 0.0016];

// The steeper bush (b) is touched at its small end, by n crests of height A along its normal:
//   r_j = r₀ - A·cos(b - j)/cos j   and the journal (j) has that radius (R - r_j)/tan j behind its datum.
// A guess at the position takes only the share tan j/tan b of what is left.
it.each([
  [0.84, 3.84, 7, 1],
  [3, 3.5, 3, 1],
  [0.3, 12, 4, 1],
  [20, 34, 5, 1],
  [0.84, 3.84, 7, -1],
])(
  'a journal of %f° in a lobed bush of %f°, %i lobes, closing %i: on the crests of its small end',
  (j, b, count, closes) => {
    const [from, to] = closes > 0 ? [END, 6] : [-6, -END];
    const bush = { halfAngle: closes * b, diameter: 2 * SMALL, station: closes * END, from, to };
    const journal = { halfAngle: closes * j, diameter: 2 * LARGE, station: 0, from: -60, to: 60 };
    const lobes = [{ count, amplitude: HEIGHT, phase: 20 }];
    const seats = toSeats({ conepair: 1, seats: [{ name: 'one', journal, bush: { ...bush, lobes } }] });
    const found = seat(spindleOf(seats, ALL), closes > 0 ? REARWARD : NOSEWARD);
    if (found.status !== 'solved') throw new Error(found.status);
    const radius = SMALL - (HEIGHT * Math.cos(rad(b - j))) / Math.cos(rad(j));
    const position = (END + (LARGE - radius) / Math.tan(rad(j))) / 1000;
    expect(Math.abs(closes * found.pose.z - position)).toBeLessThan(1e-12);
    expect(found.contacts).toHaveLength(count);
    for (const { film } of found.contacts) expect(Math.abs(film)).toBeLessThan(1e-12);
  },
);
