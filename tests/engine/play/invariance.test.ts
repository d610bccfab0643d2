/**
 * The answers go along when the design is turned, mirrored, shifted, scaled, or its seats are named in another order.
 */
import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import type { Design, Surface } from '../../../src/design/definition.ts';
import type { SeatContact } from '../../../src/engine/play/contacts.ts';
import { seat } from '../../../src/engine/play/seating.ts';
import { shakeAt } from '../../../src/engine/play/shake.ts';
import { pushAt } from '../../../src/engine/spindle/pose.ts';
import { spindleDesign, spindleFrom } from './designs.ts';

// a busy machine is no fault
vi.setConfig({ testTimeout: 60_000 });

const rad = (degrees: number) => (degrees * Math.PI) / 180;

interface Question {
  design: Design;
  /** mm */
  station: number;
  /** degrees */
  direction: number;
  /** how long a millimetre of the first design is here */
  size: number;
}

const changed = (design: Design, change: (s: Surface) => Surface): Design => ({
  ...design,
  seats: design.seats.map((s) => ({ ...s, journal: change(s.journal), bush: change(s.bush) })),
});
const withLobes = (s: Surface, phase: (count: number, phase: number) => number): Surface =>
  s.lobes ? { ...s, lobes: s.lobes.map((l) => ({ ...l, phase: phase(l.count, l.phase ?? 0) })) } : s;

const CHANGES: Record<string, (q: Question) => Question> = {
  'turned by 40°': (q) => ({
    ...q,
    design: changed(q.design, (s) => withLobes(s, (_, phase) => phase + 40)),
    direction: q.direction + 40,
  }),
  'mirrored left to right': (q) => ({
    ...q,
    design: changed(q.design, (s) => withLobes(s, (_, phase) => 180 - phase)),
    direction: 180 - q.direction,
  }),
  'the datum shifted by 3 m': (q) => ({
    ...q,
    design: changed(q.design, (s) => ({
      ...s,
      station: s.station + 3000,
      from: s.from + 3000,
      to: s.to + 3000,
      ...(s.profile ? { profile: s.profile.map(([z, d]): [number, number] => [z + 3000, d]) } : {}),
    })),
    station: q.station + 3000,
  }),
  'three times as large': (q) => ({
    ...q,
    design: changed(q.design, (s) => ({
      ...s,
      diameter: 3 * s.diameter,
      station: 3 * s.station,
      from: 3 * s.from,
      to: 3 * s.to,
      ...(s.profile ? { profile: s.profile.map(([z, d]): [number, number] => [3 * z, 3 * d]) } : {}),
      ...(s.lobes ? { lobes: s.lobes.map((l) => ({ ...l, amplitude: 3 * l.amplitude })) } : {}),
    })),
    station: 3 * q.station,
    size: 3,
  }),
  'the last seat named first': (q) => ({ ...q, design: { ...q.design, seats: [...q.design.seats].reverse() } }),
};

/** Seated under an oblique push toward the direction, and the shake along it there and a little off. */
function answers({ design, station, direction, size }: Question) {
  const spindle = spindleFrom(design);
  const angle = rad(direction);
  const home = seat(spindle, pushAt(station / 1000, { x: 0.2 * Math.cos(angle), y: 0.2 * Math.sin(angle), z: -1 }));
  if (home.status !== 'solved') return { status: home.status };
  const shake = shakeAt(spindle, home.pose.z + 0.01e-3 * size, { station: station / 1000, direction: angle });
  return {
    status: home.status,
    z: home.pose.z / size,
    nose:
      ((home.pose.x + (home.pose.tiltY * station) / 1000) * Math.cos(angle) +
        (home.pose.y - (home.pose.tiltX * station) / 1000) * Math.sin(angle)) /
      size,
    shared: home.shared,
    contacts: home.contacts,
    total: shake.status === 'solved' ? shake.total / size : shake.status,
  };
}

it.each(Object.entries(CHANGES))('%s', (_, change) => {
  let solved = 0;
  fc.assert(
    fc.property(
      spindleDesign({ lobed: true, profiled: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      (design, direction) => {
        const question: Question = { design, station: 30, direction, size: 1 };
        const before = answers(question);
        const after = answers(change(question));
        expect(after.status).toBe(before.status);
        if (before.status !== 'solved') return;
        solved++;
        expect(Math.abs(after.z! - before.z!)).toBeLessThan(2e-11);
        expect(Math.abs(after.nose! - before.nose!)).toBeLessThan(2e-11);
        if (typeof before.total === 'string') expect(after.total).toBe(before.total);
        else expect(Math.abs((after.total as number) - before.total!)).toBeLessThan(2e-11);
        if (before.shared || after.shared) return;
        const shares = (list: readonly SeatContact[] | undefined) =>
          (list ?? []).map((c) => c.share).sort((a, b) => a - b);
        const [one, other] = [shares(before.contacts), shares(after.contacts)];
        expect(other.length).toBe(one.length);
        one.forEach((share, i) => {
          expect(Math.abs(other[i]! - share)).toBeLessThan(1e-5 * Math.max(1, share));
        });
      },
    ),
    { seed: 21, numRuns: 120 },
  );
  expect(solved).toBeGreaterThan(80);
});
