/**
 * Seating, shake and end play against a general-purpose linear programming package (HiGHS) on densely sampled
 * constraints written independently (reference.ts). Sampling leaves constraints out, so that the package may
 * only go further; with the contacts' own angles added it may go no further than the engine does.
 */
import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { radiusAt } from '../../../src/engine/contact/fit.ts';
import type { Body } from '../../../src/engine/play/body.ts';
import type { SeatContact } from '../../../src/engine/play/contacts.ts';
import { NOSEWARD, REARWARD, seat } from '../../../src/engine/play/seating.ts';
import { heldAt, shakeOf } from '../../../src/engine/play/shake.ts';
import { axisAt, type Motion, type Push, pushAt } from '../../../src/engine/spindle/pose.ts';
import { LONG } from '../../long.ts';
import { ALL, spindleDesign, spindleFrom } from './designs.ts';
import { leastFilm, type Objective, places, programme } from './reference.ts';

// a busy machine is no fault
vi.setConfig({ testTimeout: 60_000 });

const highs = await loadHighs();
/** mm */
const AGREE = 1e-6;
const CLEAR = 1e-9;
const run = (seed: number, numRuns: number) => ({ seed, numRuns: numRuns * LONG });

/** Value and end of a sampled programme; µm. */
function best(
  design: Design,
  position: number,
  objective: Objective,
  free: readonly Motion[],
  contacts: readonly SeatContact[],
) {
  const text = programme(
    places(design, position),
    objective,
    free,
    120,
    contacts.map((c) => c.angle),
  );
  const { Status, ObjectiveValue } = highs.solve(text, {
    primal_feasibility_tolerance: 1e-9,
    dual_feasibility_tolerance: 1e-9,
  });
  return { status: Status, value: ObjectiveValue };
}

const inMm = (pose: { x: number; y: number; tiltX: number; tiltY: number }) => ({
  ...pose,
  x: 1000 * pose.x,
  y: 1000 * pose.y,
});

/**
 * Net force (N) and moment (N·m, about the bush datum) of contacts on the journal, from stations, angles and shares
 * alone.
 */
function resultant(body: Body, contacts: readonly SeatContact[]): Push {
  const sum: Push = { x: 0, y: 0, z: 0, tiltX: 0, tiltY: 0 };
  for (const { seat: name, station, angle, share } of contacts) {
    const seat = body.spindle.seats.find((s) => s.name === name)!;
    const zn = station + (radiusAt(seat.bush, station) * seat.sin) / seat.cos;
    const x = -share * seat.cos * Math.cos(angle);
    const y = -share * seat.cos * Math.sin(angle);
    sum.x += x;
    sum.y += y;
    sum.z += share * seat.sin;
    sum.tiltX -= zn * y;
    sum.tiltY += zn * x;
  }
  return sum;
}

/** The contacts press, touch, and carry the push to 1e-9 of it. */
function balanced(body: Body, contacts: readonly SeatContact[], push: Push, free: ReadonlySet<Motion>) {
  const carried = resultant(body, contacts);
  const size = Math.hypot(push.x, push.y, push.z) * Math.max(1, ...contacts.map((c) => c.share));
  for (const c of contacts) {
    expect(c.share).toBeGreaterThan(0);
    expect(Math.abs(c.film)).toBeLessThan(1e-12);
  }
  for (const motion of free)
    if (!(Math.abs(carried[motion] + push[motion]) < 1e-9 * size))
      expect.fail(`${motion}: ${carried[motion]} against ${push[motion]}`);
}

describe.each([
  ['true rounds', { lobed: false, profiled: false }],
  ['true rounds with measured lines', { lobed: false, profiled: true }],
  ['lobes', { lobed: true, profiled: false }],
  ['lobes and measured lines', { lobed: true, profiled: true }],
])('%s', (_, kind) => {
  it('a push home, straight or aslant, ends where the package ends', () => {
    const seen = { solved: 0, unbounded: 0 };
    fc.assert(
      fc.property(
        spindleDesign(kind),
        fc.constantFrom<Push>(
          REARWARD,
          NOSEWARD,
          pushAt(0.03, { x: 0.6, y: -0.3, z: -9 }),
          pushAt(0.04, { x: -1, y: 0.5, z: -1.5 }),
        ),
        (design, push) => {
          const spindle = spindleFrom(design);
          const free: Motion[] = ['x', 'y', 'z', 'tiltX', 'tiltY'];
          const found = seat(spindle, push);
          expect(found.status).not.toBe('stalled');
          const objective: Objective = { x: push.x, y: push.y, z: push.z, tiltX: push.tiltX, tiltY: push.tiltY };
          if (found.status === 'unbounded') {
            seen.unbounded++;
            expect(best(design, 0, objective, free, []).status).toMatch(/[Uu]nbounded/);
          }
          if (found.status !== 'solved') return;
          seen.solved++;
          const position = 1000 * found.pose.z;
          expect(leastFilm(places(design, position), inMm(found.pose), 1440)).toBeGreaterThan(-CLEAR);
          balanced(found.body, found.contacts, push, new Set(free));
          // about the position found, the package's travel along the push is that of the pose
          const wanted =
            1e6 *
            (push.x * found.pose.x +
              push.y * found.pose.y +
              push.tiltX * found.pose.tiltX +
              push.tiltY * found.pose.tiltY);
          const reference = best(design, position, objective, free, found.contacts);
          expect(reference.status).toBe('Optimal');
          if (!(Math.abs(reference.value - wanted) <= 1000 * AGREE * Math.hypot(push.x, push.y, push.z)))
            expect.fail(`${wanted} µm, the package ${reference.value} µm`);
        },
      ),
      run(11, 25),
    );
    expect(seen.solved).toBeGreaterThan(12);
  });

  it('shake in any direction, with any motions free, is the package’s', () => {
    let solved = 0;
    const some = fc.constantFrom<readonly Motion[]>(ALL, ALL, ['x', 'y'], ['x', 'tiltY'], ['tiltX', 'tiltY']);
    fc.assert(
      fc.property(
        spindleDesign(kind),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
        some,
        (design, direction, off, free) => {
          const home = seat(spindleFrom(design, free), REARWARD);
          if (home.status !== 'solved') return;
          const position = 1000 * home.pose.z + off;
          const body = heldAt(spindleFrom(design, free), position / 1000);
          const station = 0.035;
          const found = shakeOf(body, { station, direction });
          expect(found.status).not.toBe('stalled');
          if (found.status !== 'solved') return;
          solved++;
          for (const [end, sense] of [
            [found.along, 0],
            [found.back, Math.PI],
          ] as const) {
            const [c, s] = [Math.cos(direction + sense), Math.sin(direction + sense)];
            expect(leastFilm(places(design, position), inMm(end.pose), 1440)).toBeGreaterThan(-CLEAR);
            balanced(body, end.contacts, pushAt(station, { x: c, y: s }), new Set(free));
            const reference = best(
              design,
              position,
              { x: c, y: s, tiltX: -station * s, tiltY: station * c },
              free,
              end.contacts,
            );
            const { x, y } = axisAt(end.pose, station);
            expect(reference.status).toBe('Optimal');
            if (!(Math.abs(reference.value - 1e6 * (x * c + y * s)) <= 1000 * AGREE))
              expect.fail(`${1e6 * (x * c + y * s)} µm, the package ${reference.value} µm`);
          }
        },
      ),
      run(12, 25),
    );
    expect(solved).toBeGreaterThan(12);
  });
});
