/**
 * Plans of designs as odd as a file may hold them: mismatched, worn, opposed, straight, any preference. Whatever a plan
 * says must be so by the fit alone.
 */
import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { planCut } from '../../../src/engine/cutting/plan.ts';
import type { PlanInput } from '../../../src/engine/cutting/problem.ts';
import { MISSED } from '../../../src/engine/cutting/programme.ts';
import { LONG } from '../../long.ts';
import { MM, rad, surface, withFilm } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 60_000 });

const RUNS = 120 * LONG;
const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => Math.round(x * 1e6) / 1e6);

const profile = (at: number) =>
  fc.oneof(
    fc.constant([]),
    fc
      .tuple(fc.constantFrom(0.0005, 0.005, 0.03), fc.array(between(-1, 1), { minLength: 2, maxLength: 7 }))
      .map(([height, ds]) => ds.map((d, i): [number, number] => [at - 10 + (20 * i) / (ds.length - 1), d * height])),
  );

const seat = (k: number) =>
  fc
    .record({
      angle: fc.oneof(between(1.5, 8), between(20, 60), fc.constant(0)),
      sign: fc.constantFrom(1, 1, 1, -1),
      mismatch: fc.oneof(fc.constant(0), between(-0.05, 0.05), between(-1, 1)),
      clearance: between(-0.05, 0.05),
      length: between(2, 10),
      off: between(-0.3, 0.3),
      journal: profile(30 * k),
      bush: profile(30 * k),
      target: between(0, 0.006),
    })
    .map(({ angle, sign, mismatch, clearance, length, off, journal, bush, target }) => {
      const [a, at, half] = [angle * sign, 30 * k, length / 2];
      return withFilm(
        {
          name: `${k}`,
          journal: surface(a === 0 ? 0 : a + mismatch, 40, at, at - half + off, at + half + off, journal),
          bush: surface(a, 40 + 2 * clearance, at, at - half, at + half, bush),
        },
        target,
      );
    });

const input: fc.Arbitrary<PlanInput> = fc.integer({ min: 1, max: 4 }).chain((n) =>
  fc
    .record({
      seats: fc.tuple(...Array.from({ length: n }, (_, k) => seat(k))),
      position: between(-0.1, 0.1).map((p) => p * MM),
      allow: fc
        .tuple(
          ...Array.from({ length: 2 * n }, (_, k) =>
            fc.option(
              fc
                .record({
                  cleanup: fc.oneof(fc.constant(0), between(0, 0.01)),
                  limit: between(0.01, 1),
                  renew: fc.boolean(),
                })
                .map((room) => ({ ...room, k })),
            ),
          ),
        )
        .map((rooms) => rooms.flatMap((room) => (room ? [room] : [])))
        .map((rooms) =>
          rooms.map(({ k, cleanup, limit, renew }) => ({
            seat: k >> 1,
            part: k % 2 === 0 ? ('journal' as const) : ('bush' as const),
            cleanup: cleanup * MM,
            limit: limit * MM,
            renewed: renew && k % 3 === 0,
          })),
        ),
      prefer: fc.constantFrom({}, { spare: 'journal' as const }, { keepPosition: true }, { oneSetUp: true }),
    })
    .map(({ allow, ...rest }) => ({
      ...rest,
      allow: allow.map(({ renewed, ...a }) =>
        renewed ? { ...a, renew: rest.seats[a.seat]![a.part].halfAngle || rad(0) } : a,
      ),
    })),
);

it('what is planned is so, what is not has its reasons', () => {
  const seen = { planned: 0, infeasible: 0, apart: 0 };
  fc.assert(
    fc.property(input, (question) => {
      const verdict = planCut(question);
      expect(verdict.status).not.toBe('stalled');
      if (verdict.status === 'planned') {
        seen.planned++;
        const { plan } = verdict;
        for (const [i, s] of solveFit(plan.seats, plan.position).seats.entries())
          expect(Math.abs(s.leastFilm! - question.seats[i]!.target!)).toBeLessThan(MISSED);
        for (const [k, { least, most }] of plan.rooms.entries()) {
          expect(plan.amounts[k]).toBeGreaterThan(least - 1e-12);
          expect(plan.amounts[k]).toBeLessThan(most + 1e-12);
        }
      } else if (verdict.status === 'infeasible') {
        seen.infeasible++;
        const targets = question.seats.map(({ target }) => target!);
        // a cleanup above its limit stands in the way though every film is met
        const shut = verdict.conflicts.some(({ what }) => what === 'cleanup');
        if (!shut)
          expect(
            Math.max(...verdict.nearest.films.map((film, i) => Math.abs(film! - targets[i]!))),
          ).toBeGreaterThanOrEqual(MISSED);
      } else seen.apart++;
    }),
    { seed: 41, numRuns: RUNS, endOnFailure: true },
  );
  expect(seen.planned).toBeGreaterThan(0.2 * RUNS);
  expect(seen.infeasible).toBeGreaterThan(0.1 * RUNS);
});
