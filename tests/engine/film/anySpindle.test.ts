/**
 * Any spindle under any load: the answer balances, its films are films, and nothing is ever not a number.
 */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { equilibrium } from '../../../src/engine/film/equilibrium.ts';
import { newGrids, type SpindleRun, solveFilms } from '../../../src/engine/film/films.ts';
import { asFive, loadAt } from '../../../src/engine/spindle/pose.ts';
import { LONG } from '../../long.ts';
import { type Cone, coneSeat, RAD } from './bearings.ts';

// A busy machine only takes longer.
vi.setConfig({ testTimeout: 240_000 * LONG });

const SIZE = { rows: 8, columns: 32 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Evenly over the powers of ten. */
const spread = (min: number, max: number) => between(Math.log(min), Math.log(max)).map(Math.exp);

const angle = between(3, 60);
const layouts = fc.oneof(
  fc.tuple(between(1, 6), angle).map(([shallow, steep]): [number, number, number][] => [
    [shallow, -0.025, 0],
    [steep, 0.001, 0.005],
  ]),
  fc.tuple(angle, angle).map(([front, rear]): [number, number, number][] => [
    [front, 0, 0.006],
    [-rear, -0.08, -0.077],
  ]),
  fc.constant<[number, number, number][]>([
    [3, -0.025, 0],
    [45, 0.001, 0.004],
    [0, -0.14, -0.12],
  ]),
  fc.constant<[number, number, number][]>([
    [0, -0.03, 0],
    [0, -0.12, -0.1],
  ]),
);
const lobes = fc.array(
  fc.record({ count: fc.integer({ min: 1, max: 6 }), amplitude: between(0.001, 0.1), phase: between(0, 6) }),
  { maxLength: 1 },
);

const drawn = fc.record({
  layout: layouts,
  clearance: spread(1.5e-6, 2e-5),
  films: fc.array(between(0.7, 1.5), { minLength: 3, maxLength: 3 }),
  lobes: fc.array(fc.tuple(lobes, lobes), { minLength: 3, maxLength: 3 }),
  radius: between(0.012, 0.02),
  omega: fc.tuple(spread(5, 1500), fc.constantFrom(1, -1)).map(([speed, sign]) => speed * sign),
  viscosity: spread(0.002, 0.08),
  load: fc.tuple(spread(1, 2000), between(0, 6.3), between(-1, 1), between(-0.15, 0.05)),
  position: between(-0.2, 0.5),
});

test('the oil and the stop balance the load wherever an answer is given', () => {
  const counted: Record<string, number> = {};
  fc.assert(
    fc.property(
      drawn,
      ({
        layout,
        clearance,
        films,
        lobes: each,
        radius,
        omega,
        viscosity,
        load: [newtons, direction, thrust, station],
        position,
      }) => {
        const seats = layout.map(([halfAngle, from, to], i) => {
          const film = clearance * films[i]!;
          const scaled = (list: Cone['bushLobes']) =>
            (list ?? []).map((lobe) => ({ ...lobe, amplitude: lobe.amplitude * film }));
          // a rear cone that narrows backward would come to its apex: it is given a radius of its own
          return coneSeat(
            {
              halfAngle: halfAngle * RAD,
              radius: radius + (halfAngle < 0 ? to * Math.tan(halfAngle * RAD) * -1 : 0),
              from,
              to,
              film,
              bushLobes: scaled(each[i]![0]),
              journalLobes: scaled(each[i]![1]),
            },
            `${i}`,
          );
        });
        const run: SpindleRun = { omega, viscosity: seats.map(() => viscosity), growth: seats.map(() => 0) };
        const load = loadAt(newtons * Math.cos(direction), newtons * Math.sin(direction), newtons * thrust, station);
        const found = equilibrium(newGrids(seats, SIZE), load, run, { position: position * clearance });
        counted[found.status] = (counted[found.status] ?? 0) + 1;
        expect(found.status).not.toBe('notConverged');
        if (found.status === 'contact') expect(found.least.film).toBeLessThan(0.06 * 1.5 * clearance);
        if (found.status !== 'solved') return;
        for (const value of asFive(found.pose)) expect(Number.isFinite(value)).toBe(true);
        for (const seat of found.seats) expect(seat.least.film).toBeGreaterThan(0);
        const again = solveFilms(newGrids(seats, SIZE), asFive(found.pose), run, 1e-11);
        if (again.status !== 'solved') throw new Error(again.status);
        // what the films could push with, wedged all round: forces are known to a part of that, however small the load
        const wedge = Math.max(
          ...layout.map(
            ([, from, to], i) =>
              (6 * viscosity * Math.abs(omega) * radius ** 3 * 2 * Math.PI * (to - from)) /
              (clearance * films[i]!) ** 2,
          ),
        );
        const size =
          Math.max(Math.hypot(load[0], load[1], load[2]), Math.hypot(load[3], load[4]) / 0.14) + 1e-6 * wedge;
        [0, 0, found.stop].forEach((stop, i) => {
          expect(Math.abs(again.total.force[i]! + load[i]! + stop)).toBeLessThan(1e-5 * size);
        });
        expect(Math.abs(again.total.force[3]! + load[3]!)).toBeLessThan(1e-5 * size * 0.14);
        expect(Math.abs(again.total.force[4]! + load[4]!)).toBeLessThan(1e-5 * size * 0.14);
      },
    ),
    { numRuns: 40 * LONG, seed: 9, endOnFailure: LONG > 1 },
  );
  expect(counted.solved).toBeGreaterThan(20);
});
