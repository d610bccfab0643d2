/**
 * A plan does not jump: a small change of a diameter, a station, a target or a limit changes the stock by no more than
 * a film is worth times that change, whatever the seats are and whichever limits are met. In half angles it may turn
 * only where a seat's film costs as much as it is worth, at sin a near 1/WORTH (0.6°).
 */
import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { planCut, planIn } from '../../../src/engine/cutting/plan.ts';
import type { Allowed, PlanInput } from '../../../src/engine/cutting/problem.ts';
import { WORTH } from '../../../src/engine/cutting/programme.ts';
import { LONG } from '../../long.ts';
import { MM, rad, surface, withFilm } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 120_000 * LONG });

const RUNS = 80 * LONG;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** m: a nanometre */
const SMALL = 1e-9;
/** m: the plan's own rounding */
const ROUNDING = 1e-12;

const angle = fc.oneof(
  between(1.5, 8),
  between(20, 60),
  between(-50, -2),
  fc.constant(0),
  between(1e-6, 1e-3),
  between(0.01, 0.4),
);
const room = fc.oneof(
  fc.constant(null),
  fc.record({ cleanup: fc.oneof(fc.constant(0), between(0, 0.006)), limit: between(0.006, 0.15), renew: fc.boolean() }),
);

interface Room {
  cleanup: number;
  limit: number;
  renew: boolean;
}
interface Drawn {
  angle: number;
  mismatch: number;
  clearance: number;
  target: number;
  journal: Room | null;
  bush: Room | null;
}
const drawn: fc.Arbitrary<Drawn[]> = fc.array(
  fc.record({
    angle,
    mismatch: fc.oneof(fc.constant(0), between(-0.02, 0.02)),
    clearance: between(-0.03, 0.03),
    target: between(0.001, 0.006),
    journal: room,
    bush: room,
  }),
  {
    minLength: 1,
    maxLength: 4,
  },
);

function inputOf(seats: Drawn[], share: number): PlanInput {
  return {
    seats: seats.map(({ angle, mismatch, clearance, target }, k): SeatInput => {
      const at = 30 * k;
      return withFilm(
        {
          name: `${k}`,
          journal: surface(angle + mismatch, 40, at, at - 6, at + 6),
          bush: surface(angle, 40 + 2 * clearance, at, at - 5, at + 5),
        },
        target,
      );
    }),
    position: 0,
    share,
    reach: { from: -2 * MM, to: 2 * MM },
    allow: seats.flatMap(({ angle, journal, bush }, seat): Allowed[] =>
      (
        [
          ['journal', journal],
          ['bush', bush],
        ] as const
      ).flatMap(([part, room]) =>
        room
          ? [
              {
                seat,
                part,
                cleanup: room.cleanup * MM,
                limit: room.limit * MM,
                ...(room.renew && { renew: rad(angle) }),
              },
            ]
          : [],
      ),
    ),
  };
}

type Change = (input: PlanInput, seat: number, by: number) => PlanInput;
const onSeat = (input: PlanInput, seat: number, change: (seat: SeatInput) => SeatInput): PlanInput => ({
  ...input,
  seats: input.seats.map((s, i) => (i === seat ? change(s) : s)),
});
const CHANGES: Record<string, Change> = {
  'journal diameter': (input, seat, by) =>
    onSeat(input, seat, (s) => ({ ...s, journal: { ...s.journal, radius: s.journal.radius + by / 2 } })),
  'bush diameter': (input, seat, by) =>
    onSeat(input, seat, (s) => ({ ...s, bush: { ...s.bush, radius: s.bush.radius + by / 2 } })),
  station: (input, seat, by) =>
    onSeat(input, seat, (s) => ({ ...s, journal: { ...s.journal, station: s.journal.station + by } })),
  target: (input, seat, by) => onSeat(input, seat, (s) => ({ ...s, target: s.target! + by })),
  limit: (input, seat, by) => ({
    ...input,
    allow: input.allow.map((a) => (a.seat === seat ? { ...a, limit: a.limit + by } : a)),
  }),
  cleanup: (input, seat, by) => ({
    ...input,
    allow: input.allow.map((a) => (a.seat === seat ? { ...a, cleanup: a.cleanup + Math.abs(by) } : a)),
  }),
};

it('stock follows diameters, stations, targets and limits', () => {
  const seen = { planned: 0, infeasible: 0, moved: 0 };
  fc.assert(
    fc.property(drawn, fc.constantFrom(0, 0.8), fc.nat(3), fc.constantFrom(SMALL, -SMALL), (seats, share, nth, by) => {
      const input = inputOf(seats, share);
      const before = planCut(input);
      const was = planIn(before);
      if (!was) return;
      if (before.status === 'planned' || before.status === 'infeasible') seen[before.status]++;
      for (const [name, change] of Object.entries(CHANGES)) {
        const is = planIn(planCut(change(input, nth % seats.length, by)));
        if (!is) return expect.fail(`${name}: no plan beside one`);
        const moved = is.total - was.total;
        if (Math.abs(moved) > ROUNDING) seen.moved++;
        expect(Math.abs(moved), name).toBeLessThan(WORTH * SMALL + ROUNDING);
      }
    }),
    { seed: 31, numRuns: RUNS },
  );
  expect(seen.planned).toBeGreaterThan(0.1 * RUNS);
  expect(seen.infeasible).toBeGreaterThan(0.2 * RUNS);
  expect(seen.moved).toBeGreaterThan(RUNS);
});
