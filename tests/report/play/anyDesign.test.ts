/**
 * Any valid design, however odd, has a `play` and a `print` section that keep to their definition and read as plain
 * words.
 *
 * @module-tag long
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Design, Seat, Surface } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { report as definition } from '../../../src/report/definition.ts';
import { playVerdict } from '../../../src/report/play/verdict.ts';
import { printVerdict } from '../../../src/report/print/verdict.ts';
import { solve } from '../../../src/report/report.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lobes = fc.array(
  fc.record({
    count: fc.oneof(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 60 })),
    amplitude: fc.oneof(fc.constant(0), between(0, 0.003), between(0, 0.2)),
    phase: between(-360, 360),
  }),
  { maxLength: 3 },
);

const seat: fc.Arbitrary<Omit<Seat, 'name'>> = fc
  .record({
    angle: fc.oneof(fc.constant(0), between(-85, 85), between(1, 8), between(30, 60), between(0, 0.05)),
    mismatch: fc.oneof(fc.constant(0), between(-0.1, 0.1), between(-10, 10)),
    diameter: between(10, 60),
    clearance: fc.oneof(fc.constant(0), between(0, 0.02), between(-0.02, 0.02), between(-1, 1)),
    from: between(-100, 0),
    length: fc.oneof(between(0.1, 3), between(3, 40)),
    over: fc.tuple(between(-1, 1), between(-1, 1)),
    wear: fc.array(between(-0.01, 0.01), { maxLength: 12 }),
    lobes: fc.tuple(lobes, lobes),
  })
  .map((c) => {
    const { from, length } = c;
    const profile = c.wear.map((deviation, i): [number, number] => [from + (length * i) / 12, deviation]);
    const worn: Partial<Surface> = profile.length > 0 ? { profile } : {};
    return {
      journal: {
        halfAngle: c.angle + c.mismatch,
        diameter: c.diameter - c.clearance,
        station: from,
        from: from + 0.3 * length * c.over[0],
        to: from + length + 0.3 * length * c.over[1],
        lobes: c.lobes[0],
      },
      bush: {
        halfAngle: c.angle,
        diameter: c.diameter,
        station: from,
        from,
        to: from + length,
        ...worn,
        lobes: c.lobes[1],
      },
    };
  });

const design: fc.Arbitrary<Design> = fc
  .record({
    seats: fc.array(seat, { minLength: 1, maxLength: 4 }),
    position: fc.oneof(fc.constant(0), between(-0.1, 0.1), between(-5, 5)),
    play: fc.record({ indicator: between(-100, 100), free: fc.subarray(['x', 'y', 'z', 'tiltX', 'tiltY'] as const) }),
    thickness: between(0, 0.01),
  })
  .map(
    ({ seats, position, play, thickness }): Design => ({
      conepair: 1,
      seats: seats.map((s, i) => ({ name: `s${i}`, ...s })),
      position,
      play: { ...play, free: [...play.free] },
      print: { thickness },
    }),
  )
  .filter((d) => validateDesign(d).ok);

it('is answered', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(design, (d) => {
      const found = solve(d, 'f', ['fit', 'play', 'print']);
      expect(definition.safeParse(found).error?.issues ?? []).toEqual([]);
      expect(JSON.parse(JSON.stringify(found))).toEqual(found);
      for (const { headline, sentences } of [
        playVerdict(d, found.play!, found.fit!, 'metric'),
        printVerdict(d, found.print!, 'inch'),
      ])
        expect([headline, ...sentences].join(' ')).not.toMatch(/undefined|NaN|null|Infinity/);
      seen.add(found.play!.seated.status);
    }),
    { seed: 61, numRuns: 80 },
  );
  for (const status of ['solved', 'unbounded', 'infeasible']) expect(seen).toContain(status);
}, 60_000);
