/** Random spindles for the tests of seat and play: two or three seats, tilted lines, lobes, profiles. mm, degrees. */

import fc from 'fast-check';
import type { Design, Seat, Surface } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import type { Motion } from '../../../src/engine/spindle/pose.ts';
import { type Spindle, spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { toSeats } from '../../../src/report/convert.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lobes = (finest: number) =>
  fc.array(
    fc.record({ count: fc.integer({ min: 1, max: finest }), amplitude: between(0, 0.0015), phase: between(-180, 180) }),
    { maxLength: 3 },
  );
const profile = fc.oneof(fc.constant<number[]>([]), fc.array(between(-0.002, 0.002), { minLength: 2, maxLength: 6 }));

export interface Kind {
  lobed: boolean;
  profiled: boolean;
  finest?: number;
}

/** A seat about a place: `angle` degrees, `clearance` mm on the diameter. */
function seatOf(
  name: string,
  angle: fc.Arbitrary<number>,
  diameter: number,
  [from, to]: [number, number],
  clearance: fc.Arbitrary<number>,
  { lobed, profiled, finest = 9 }: Kind,
): fc.Arbitrary<Seat> {
  const none = fc.constant<number[]>([]);
  const round = fc.constant<NonNullable<Surface['lobes']>>([]);
  return fc
    .record({
      angle,
      clearance,
      mismatch: fc.oneof(fc.constant(0), between(-0.03, 0.03)),
      over: fc.tuple(between(-1, 1), between(-1, 1)),
      lines: fc.tuple(profiled ? profile : none, profiled ? profile : none),
      rounds: fc.tuple(lobed ? lobes(finest) : round, lobed ? lobes(finest) : round),
    })
    .map((c): Seat => {
      const surface = (
        a: number,
        d: number,
        f: number,
        t: number,
        line: number[],
        round: Surface['lobes'],
      ): Surface => ({
        halfAngle: a,
        diameter: d,
        station: from,
        from: f,
        to: t,
        ...(line.length > 0
          ? {
              profile: line.map((deviation, i): [number, number] => [f + ((t - f) * i) / (line.length - 1), deviation]),
            }
          : {}),
        ...(round && round.length > 0 ? { lobes: round } : {}),
      });
      const tilt = c.angle === 0 ? 0 : c.mismatch;
      const short = 0.2 * (to - from);
      return {
        name,
        journal: surface(
          c.angle + tilt,
          diameter,
          from + short * c.over[0],
          to + short * c.over[1],
          c.lines[0],
          c.rounds[0],
        ),
        bush: surface(c.angle, diameter + c.clearance, from, to, c.lines[1], c.rounds[1]),
      };
    });
}

/** A double cone, with a straight bearing, an opposed cone, a third cone or nothing behind it. */
export const spindleDesign = (kind: Kind): fc.Arbitrary<Design> =>
  fc
    .tuple(
      seatOf('shallow', between(2, 6), 22, [-25, -0.5], between(0.004, 0.016), kind),
      seatOf('steep', between(30, 50), 24, [1, 4], between(0.001, 0.016), kind),
      fc.oneof(
        fc.constant(null),
        seatOf('rear', fc.constant(0), 18, [-100, -80], between(0.009, 0.03), kind),
        seatOf('rear', between(-45, -20), 24, [-96, -91], between(0.03, 0.07), kind),
        seatOf('rear', between(8, 20), 20, [-60, -50], between(0.004, 0.04), kind),
      ),
    )
    .map(([shallow, steep, rear]): Design => ({ conepair: 1, seats: rear ? [shallow, steep, rear] : [shallow, steep] }))
    .filter((design) => validateDesign(design).ok);

export const ALL: readonly Motion[] = ['x', 'y', 'tiltX', 'tiltY'];
export const spindleFrom = (design: Design, free: readonly Motion[] = ALL): Spindle => spindleOf(toSeats(design), free);

/** A seat of the engine from a few numbers: mm, degrees. */
export function coneSeat(
  name: string,
  halfAngle: number,
  journalDiameter: number,
  bushDiameter: number,
  bush: [number, number],
  journal = bush,
  lobes: { journal?: Surface['lobes']; bush?: Surface['lobes'] } = {},
): SeatInput {
  const surface = (diameter: number, [from, to]: [number, number], round: Surface['lobes']): Surface => ({
    halfAngle,
    diameter,
    station: 0,
    from,
    to,
    ...(round ? { lobes: round } : {}),
  });
  return toSeats({
    conepair: 1,
    seats: [
      {
        name,
        journal: surface(journalDiameter, journal, lobes.journal),
        bush: surface(bushDiameter, bush, lobes.bush),
      },
    ],
  })[0]!;
}
