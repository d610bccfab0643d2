/** The pose for a load: balance, exact derivatives, and what is said where there is none. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { equilibrium } from '../../../src/engine/film/equilibrium.ts';
import {
  type FilmSeat,
  newGrids,
  placesFor,
  type SpindleRun,
  solveFilms,
  summedCoefficients,
} from '../../../src/engine/film/films.ts';
import { newFilmSpace } from '../../../src/engine/film/reynolds.ts';
import { coefficients, newAdjoints } from '../../../src/engine/film/stiffness.ts';
import { asFive, asPose, type Five, loadAt } from '../../../src/engine/spindle/pose.ts';
import { toFilmSeats } from '../../../src/report/film/toSpindle.ts';
import { type Cone, coneSeat, coneShape, forceAt, lobed, RAD, solved } from './bearings.ts';

/** Seats of a demo, without grooves. */
const seatsOf = (name: string): FilmSeat[] =>
  toFilmSeats(
    JSON.parse(
      readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
    ) as Design,
  ).map((seat) => ({ ...seat, grooves: [] }));
const runOf = (seats: readonly FilmSeat[], omega = 125.66): SpindleRun => ({
  omega,
  viscosity: seats.map(() => 0.0086),
  growth: seats.map(() => 0),
});
const COARSE = { rows: 8, columns: 32 };
const SIZE = { rows: 16, columns: 64 };

describe('stiffness and damping against finite differences', () => {
  const lobes = [{ count: 3, amplitude: 2e-7, phase: 0.3 }];
  const steep: Cone = {
    halfAngle: 45 * RAD,
    radius: 0.013,
    from: -0.003,
    to: 0,
    film: 2.5e-6,
    journalLobes: lobes,
    bushLobes: [{ count: 2, amplitude: 1e-7, phase: 1 }],
  };
  const tapered: Cone = {
    ...steep,
    halfAngle: -30 * RAD,
    journalProfile: [
      [-0.003, 0],
      [0, 5e-7],
    ],
  };
  it.each<[string, Cone, Five, rows?: number]>([
    [
      'shallow',
      { halfAngle: 3 * RAD, radius: 0.011, from: -0.025, to: -0.0005, film: 2.5e-6, journalLobes: lobes },
      [1e-6, -8e-7, 1e-7, 1e-5, -2e-5],
    ],
    ['steep', steep, [1e-6, -8e-7, 1e-7, 1e-5, -2e-5]],
    ['closing noseward, tapered journal', tapered, [5e-7, 4e-7, -3e-7, 2e-5, 3e-5]],
    ['one row of cells, both ends in one edge', tapered, [5e-7, 4e-7, -3e-7, 2e-5, 3e-5], 1],
    ['straight', { halfAngle: 0, radius: 0.009, from: -0.13, to: -0.11, film: 2.5e-6 }, [1e-6, 1e-6, 0, 1e-6, 2e-6]],
  ])('%s: a seat with a groove in it', (_, cone, q, rows = 12) => {
    const shape = coneShape(cone);
    const space = newFilmSpace(rows, 48);
    const run = {
      viscosity: 0.0086,
      omega: 125,
      tolerance: 1e-13,
      grooves: [{ angle: 2, from: -1, to: 1, width: 0.002, pressure: 1e5 }],
    };
    solved(space, shape, asPose(q), run);
    const { stiffness, damping } = coefficients(space, run, newAdjoints(space), 1e-12);
    for (let j = 0; j < 5; j++) {
      const step = j < 3 ? 1e-11 : 1e-9;
      const [plus, minus] = [forceAt(space, shape, q, run, j, step), forceAt(space, shape, q, run, j, -step)];
      const rate = (sign: number) =>
        solved(space, shape, asPose(q), {
          ...run,
          velocity: [0, 1, 2, 3, 4].map((c) => (c === j ? sign * step * 100 : 0)) as Five,
        }).force;
      const [forward, backward] = [rate(1), rate(-1)];
      for (let i = 0; i < 5; i++) {
        const size = Math.sqrt(Math.abs(stiffness[i]![i]! * stiffness[j]![j]!)) + Math.abs(stiffness[i]![j]!);
        expect(Math.abs(stiffness[i]![j]! + (plus[i]! - minus[i]!) / (2 * step))).toBeLessThanOrEqual(1e-6 * size);
        const drag = Math.sqrt(damping[i]![i]! * damping[j]![j]!);
        expect(Math.abs(damping[i]![j]! + (forward[i]! - backward[i]!) / (200 * step))).toBeLessThanOrEqual(
          1e-6 * drag,
        );
        expect(Math.abs(damping[i]![j]! - damping[j]![i]!)).toBeLessThanOrEqual(1e-6 * drag);
      }
    }
  });
});

describe('forces are the gradient of virtual work', () => {
  it('∫ p δh dA for a small move, by the films themselves', () => {
    const cone: Cone = {
      halfAngle: 20 * RAD,
      radius: 0.011,
      from: -0.01,
      to: 0,
      film: 3e-6,
      bushProfile: [
        [-0.01, 0],
        [-0.004, 4e-7],
        [0, 0],
      ],
    };
    const shape = coneShape(cone);
    const space = newFilmSpace(24, 64);
    const q: Five = [1e-6, 5e-7, 2e-7, 2e-5, -1e-5];
    const run = { viscosity: 0.01, omega: 100 };
    const { force } = solved(space, shape, asPose(q), run);
    const pressure = space.pressure.slice();
    const area = Float64Array.from(
      pressure,
      (_, k) => space.grid.radius[k % 24]! * ((space.grid.to - space.grid.from) / 24) * ((2 * Math.PI) / 64),
    );
    for (let j = 0; j < 5; j++) {
      const step = j < 3 ? 1e-10 : 1e-8;
      const filmAt = (by: number) => {
        forceAt(space, shape, q, run, j, by);
        return space.film.centre.slice();
      };
      const [plus, minus] = [filmAt(step), filmAt(-step)];
      const work = pressure.reduce((sum, p, k) => sum + (p * area[k]! * (plus[k]! - minus[k]!)) / (2 * step), 0);
      expect(Math.abs(work / force[j]! - 1)).toBeLessThan(1e-5);
    }
  });
});

describe('equilibrium', () => {
  it.each<[string, string, number, Five]>([
    ['three seats, cutting force beyond the nose and thrust', 'rear-bearing', 0, loadAt(0, -120, -40, 0.03)],
    ['three seats, a heavy cut', 'rear-bearing', 0, loadAt(100, -500, -200, 0.04)],
    ['opposed cones, weight', 'opposed-cones', 0.003e-3, loadAt(0, -10, -3, 0)],
    ['opposed cones, a heavy cut', 'opposed-cones', 0.003e-3, loadAt(0, -2000, -100, 0.02)],
    ['two cones, almost all thrust', 'correct', 0, loadAt(0, -20, -100, 0)],
  ])('%s: the oil balances the load, by all five', (_, name, position, load) => {
    const seats = seatsOf(name);
    const grids = newGrids(seats, SIZE);
    const found = equilibrium(grids, load, runOf(seats), { position, coarse: newGrids(seats, COARSE) });
    expect(found.status).toBe('solved');
    if (found.status !== 'solved') return;
    expect(found.stop).toBe(0);
    // solved afresh at the pose, by hand
    const again = solveFilms(newGrids(seats, SIZE), asFive(found.pose), runOf(seats), 1e-11);
    expect(again.status).toBe('solved');
    if (again.status !== 'solved') return;
    const size = Math.hypot(load[0], load[1], load[2]);
    for (let i = 0; i < 3; i++) expect(Math.abs(again.total.force[i]! + load[i]!)).toBeLessThan(2e-6 * size);
    for (let i = 3; i < 5; i++) expect(Math.abs(again.total.force[i]! + load[i]!)).toBeLessThan(2e-6 * size * 0.14);
    for (const seat of found.seats) expect(seat.least.film).toBeGreaterThan(0);
  });

  it('follows a load that grows, from pose to pose, to where it would have come from cold', () => {
    const seats = seatsOf('rear-bearing');
    const grids = newGrids(seats, SIZE);
    let near: Parameters<typeof equilibrium>[3]['near'];
    for (const newtons of [100, 110, 125, 150]) {
      const load = loadAt(0, -newtons, -40, 0.03);
      const found = equilibrium(grids, load, runOf(seats), {
        position: 0,
        coarse: newGrids(seats, COARSE),
        ...(near && { near }),
      });
      if (found.status !== 'solved') throw new Error(found.status);
      near = found;
    }
    const cold = equilibrium(grids, loadAt(0, -150, -40, 0.03), runOf(seats), {
      position: 0,
      coarse: newGrids(seats, COARSE),
    });
    if (cold.status !== 'solved') throw new Error(cold.status);
    asFive(cold.pose).forEach((value, i) => {
      expect(Math.abs(value - asFive(near!.pose)[i]!)).toBeLessThan(i < 3 ? 1e-11 : 1e-9);
    });
  });

  it('turning the other way mirrors the pose', () => {
    const seats = seatsOf('rear-bearing');
    const load = loadAt(0, -120, -40, 0.03);
    const [one, other] = [125.66, -125.66].map((omega) =>
      equilibrium(newGrids(seats, SIZE), load, runOf(seats, omega), {
        position: 0,
        coarse: newGrids(seats, COARSE),
      }),
    );
    if (one!.status !== 'solved' || other!.status !== 'solved') throw new Error('no equilibrium');
    expect(other!.pose.x).toBeCloseTo(-one!.pose.x, 12);
    expect(other!.pose.y).toBeCloseTo(one!.pose.y, 12);
    expect(other!.pose.z).toBeCloseTo(one!.pose.z, 10);
  });

  it('cones that all close rearward under a sideways load alone need a stop, and its force is what the oil pushes', () => {
    const seats = seatsOf('correct');
    const found = equilibrium(newGrids(seats, SIZE), loadAt(0, -120, 0, -0.012), runOf(seats), {
      position: 0,
      coarse: newGrids(seats, COARSE),
    });
    if (found.status !== 'solved') throw new Error(found.status);
    expect(found.pose.z).toBe(0);
    expect(found.stop).toBeCloseTo(-found.total.force[2], 9);
    expect(found.total.force[2]).toBeGreaterThan(1);
    expect(Math.abs(found.total.force[1] - 120)).toBeLessThan(1e-3);
  });

  it.each([0, -5, -15, -40, -80, -200])(
    'an adjuster keeps cones on their seats, and no more: thrust %i N',
    (thrust) => {
      const seats = seatsOf('correct');
      const [position, load] = [1e-6, loadAt(0, -40, thrust, 0.03)];
      for (const omega of [20, 60, 157]) {
        const found = equilibrium(newGrids(seats, SIZE), load, runOf(seats, omega), {
          position,
          adjusted: true,
          coarse: newGrids(seats, COARSE),
        });
        if (found.status !== 'solved') throw new Error(`${omega}: ${found.status}`);
        expect(Math.abs(found.total.force[2] + thrust + found.stop)).toBeLessThan(3e-6 * Math.hypot(40, thrust));
        // either it stands at the adjuster, pushed onto its seats, or the load has pressed it closer
        if (found.stop === 0) expect(found.pose.z).toBeLessThan(position);
        else expect(found.pose.z).toBe(position);
        expect(found.stop).toBeLessThanOrEqual(0);
        if (thrust === 0) expect(found.stop).toBeLessThan(0);
        if (thrust === -200) expect(found.stop).toBe(0);
      }
    },
  );

  it('cones that close noseward are held from the other side: the mirror image', () => {
    const cones = (sign: 1 | -1): FilmSeat[] =>
      [
        { halfAngle: 3, radius: 0.011, from: -0.025, to: -0.0005 },
        { halfAngle: 45, radius: 0.013, from: 0.0005, to: 0.0035 },
      ].map(({ halfAngle, radius, from, to }, i) =>
        coneSeat(
          {
            halfAngle: sign * halfAngle * RAD,
            radius,
            from: sign * (sign === 1 ? from : to),
            to: sign * (sign === 1 ? to : from),
            film: 2.5e-6,
          },
          `${i}`,
        ),
      );
    for (const thrust of [10, 200]) {
      const [one, other] = ([1, -1] as const).map((sign) => {
        const seats = cones(sign);
        const found = equilibrium(newGrids(seats, SIZE), loadAt(0, -40, -sign * thrust, sign * 0.03), runOf(seats), {
          position: 0,
          adjusted: true,
          coarse: newGrids(seats, COARSE),
        });
        if (found.status !== 'solved') throw new Error(found.status);
        return found;
      });
      expect(other!.pose.z).toBeCloseTo(-one!.pose.z, 11);
      expect(other!.pose.y).toBeCloseTo(one!.pose.y, 11);
      expect(other!.stop).toBeCloseTo(-one!.stop, 4);
      expect(one!.stop === 0).toBe(thrust === 200);
    }
  });

  it('following a thrust that grows past the adjuster and back finds what a fresh search finds', () => {
    const seats = seatsOf('correct');
    const grids = newGrids(seats, SIZE);
    const coarse = newGrids(seats, COARSE);
    let near: Parameters<typeof equilibrium>[3]['near'];
    for (const thrust of [-10, -30, -60, -120, -60, -30, -10]) {
      const load = loadAt(0, -40, thrust, 0.03);
      const followed = equilibrium(grids, load, runOf(seats), {
        position: 0,
        adjusted: true,
        coarse,
        ...(near && { near }),
      });
      const fresh = equilibrium(newGrids(seats, SIZE), load, runOf(seats), { position: 0, adjusted: true, coarse });
      if (followed.status !== 'solved' || fresh.status !== 'solved') throw new Error('no equilibrium');
      near = followed;
      expect(followed.pose.z).toBeCloseTo(fresh.pose.z, 11);
      expect(followed.stop).toBeCloseTo(fresh.stop, 3);
    }
  });

  it('on its oil alone: from a stop found at another setting, or set where a seat is shut, it finds what it finds afresh', () => {
    const seats = seatsOf('correct');
    const coarse = newGrids(seats, COARSE);
    // The oil drives it off its seats: a stop holds it.
    const light = loadAt(0, -40, 0, 0.03);
    const find = (load: typeof light, position: number, near?: Parameters<typeof equilibrium>[3]['near']) => {
      const found = equilibrium(newGrids(seats, SIZE), load, runOf(seats), { position, coarse, ...(near && { near }) });
      if (found.status !== 'solved') throw new Error(found.status);
      return found;
    };
    const stopped = find(light, 1e-6);
    expect(stopped.stop).toBeLessThan(0);
    const moved = find(light, 3e-6, stopped);
    expect(moved.pose.z).toBe(3e-6);
    expect(moved.stop).toBeCloseTo(find(light, 3e-6).stop, 3);
    // Pressed on by a load it floats, wherever it was set, with a seat shut there too.
    const heavy = loadAt(0, -40, -200, 0.03);
    const free = find(heavy, 1e-6);
    expect(free.stop).toBe(0);
    for (const position of [-6e-6, -2e-5]) expect(find(heavy, position).pose.z).toBeCloseTo(free.pose.z, 10);
  });

  it('set where a seat is shut there is no room, and the seat is told', () => {
    const seats = seatsOf('steep-first');
    const shut = equilibrium(newGrids(seats, SIZE), loadAt(0, -60, -20, 0.03), runOf(seats), {
      position: -1e-3,
      adjusted: true,
    });
    expect(shut).toEqual({ status: 'noRoom', seat: seats.findIndex(({ name }) => name === 'steep') });
  });

  it('cones face to face: no stop is supposed, and wherever the search begins it ends alike', () => {
    const seats = seatsOf('opposed-cones');
    const loads = [
      loadAt(10, -30, -10, 0.012),
      loadAt(0, -300, 20, 0.012),
      loadAt(0, -5, 0, 0),
      loadAt(0, -20, -60, 0.012),
      loadAt(0, -20, -100, 0.012),
    ];
    for (const load of loads) {
      const ends = [-2e-6, 0, 3e-6, 5e-6].map((position) =>
        equilibrium(newGrids(seats, SIZE), load, runOf(seats, 314), {
          position,
          adjusted: true,
          coarse: newGrids(seats, COARSE),
        }),
      );
      for (const end of ends) {
        expect(end.status).toBe(ends[0]!.status);
        if (end.status === 'solved' && ends[0]!.status === 'solved') {
          expect(end.stop).toBe(0);
          expect(end.pose.z).toBeCloseTo(ends[0]!.pose.z, 10);
        }
      }
    }
  });

  it('straight seats alone take no thrust: the stop takes it', () => {
    const seats = seatsOf('rear-bearing').filter((seat) => seat.name === 'rear');
    const found = equilibrium(newGrids(seats, SIZE), loadAt(0, -50, -30, -0.129), runOf(seats), {
      position: 1e-5,
      coarse: newGrids(seats, COARSE),
    });
    if (found.status !== 'solved') throw new Error(found.status);
    expect(found.pose.z).toBe(1e-5);
    expect(found.stop).toBeCloseTo(30, 6);
  });

  it('pure thrust on cones that run true finds no wedge, and sinks to metal', () => {
    const seats = seatsOf('correct');
    const found = equilibrium(newGrids(seats, SIZE), loadAt(0, 0, -40, 0), runOf(seats), {
      position: 0,
      coarse: newGrids(seats, COARSE),
    });
    expect(found.status).toBe('contact');
    if (found.status === 'contact') expect(found.least.film).toBeLessThan(2e-7);
  });

  it('a run-out of the journal makes the wedge that carries thrust: the mean over a turn balances', () => {
    const seats = seatsOf('correct').map((seat) => lobed(seat, [{ count: 1, amplitude: 5e-7, phase: 0.3 }], 'journal'));
    const load = loadAt(0, 0, -40, 0);
    const run = { ...runOf(seats), places: placesFor(seats)! };
    expect(run.places).toBe(8);
    const found = equilibrium(newGrids(seats, SIZE), load, run, { position: 0, coarse: newGrids(seats, COARSE) });
    if (found.status !== 'solved') throw new Error(found.status);
    expect(found.stop).toBe(0);
    expect(found.total.force[2]).toBeCloseTo(40, 3);
    // it stands true, and every angle of the turn pushes as much along the axis and turns its sideways force with it
    expect(Math.hypot(found.pose.x, found.pose.y)).toBeLessThan(1e-8);
    const turn = [0, 1, 2, 3].map((place) =>
      solveFilms(newGrids(seats, SIZE), asFive(found.pose), { ...run, places: 1, turned: (Math.PI * place) / 4 }),
    );
    const axial = turn.map((one) => (one.status === 'solved' ? one.total.force[2] : Number.NaN));
    for (const force of axial) expect(force).toBeCloseTo(40, 1);
    // what a film still has at the worst moment of the turn
    for (const seat of found.seats) expect(seat.least.film).toBeGreaterThan(0);
    expect(found.seats[1]!.least.film).toBeCloseTo(2.5e-6 + found.pose.z * Math.SQRT1_2 - 5e-7, 7);
  });

  it('K and B over a turn are means: the force gained by giving way, averaged', () => {
    const seats = seatsOf('correct').map((seat) => lobed(seat, [{ count: 2, amplitude: 3e-7, phase: 0.3 }], 'journal'));
    const grids = newGrids(seats, SIZE);
    const run = { ...runOf(seats), places: 8 };
    const q: Five = [4e-7, -3e-7, 3e-7, 5e-6, 3e-6];
    solveFilms(grids, q, run, 1e-12);
    const { stiffness } = summedCoefficients(grids, run, 1e-11);
    const force = (by: number) => {
      const moved = solveFilms(
        newGrids(seats, SIZE),
        q.map((value, i) => value + (i === 1 ? by : 0)) as Five,
        run,
        1e-12,
      );
      if (moved.status !== 'solved') throw new Error(moved.status);
      return moved.total.force;
    };
    const [plus, minus] = [force(1e-11), force(-1e-11)];
    for (let i = 0; i < 5; i++) expect(-(plus[i]! - minus[i]!) / 2e-11 / stiffness[i]![1]!).toBeCloseTo(1, 4);
  });

  it('standing still, no load is carried', () => {
    const seats = seatsOf('rear-bearing');
    expect(equilibrium(newGrids(seats, SIZE), loadAt(0, -120, -40, 0.03), runOf(seats, 0), { position: 0 })).toEqual({
      status: 'standing',
    });
  });

  it('standing still on oil from three grooves under pressure, it floats', () => {
    const cone: Cone = { halfAngle: 0, radius: 0.02, from: -0.02, to: 0.02, film: 1e-5 };
    const grooves = [90, 210, 330].map((angle) => ({
      angle: angle * RAD,
      from: -0.015,
      to: 0.015,
      width: 0.01,
      pressure: 2e6,
    }));
    const seats = [coneSeat(cone, 'floating', grooves)];
    // held grooves give no stiffness of their own; what is between them does
    const found = equilibrium(newGrids(seats, SIZE), loadAt(0, -30, 0, 0), runOf(seats, 0), {
      position: 0,
      coarse: newGrids(seats, COARSE),
    });
    if (found.status !== 'solved') throw new Error(found.status);
    expect(Math.abs(found.total.force[1] - 30)).toBeLessThan(1e-4);
    expect(found.total.torque).toBeCloseTo(0, 12);
  });

  it('no room: a straight journal larger than its bush', () => {
    const cone: Cone = { halfAngle: 0, radius: 0.01, from: 0, to: 0.02, film: -1e-6 };
    const seats = [coneSeat(cone, 'tight')];
    expect(equilibrium(newGrids(seats, SIZE), loadAt(0, -1, 0, 0.01), runOf(seats), { position: 0 })).toEqual({
      status: 'noRoom',
      seat: 0,
    });
  });

  it('the stiffness of the whole is the force gained by giving way', () => {
    const seats = seatsOf('opposed-cones');
    const grids = newGrids(seats, SIZE);
    const run = runOf(seats);
    const q: Five = [4e-7, -3e-7, 3e-6, 5e-6, 3e-6];
    solveFilms(grids, q, run, 1e-12);
    const { stiffness } = summedCoefficients(grids, run, 1e-11);
    const moved = solveFilms(grids, q.map((value, i) => value + (i === 2 ? 1e-10 : 0)) as Five, run, 1e-12);
    const still = solveFilms(grids, q, run, 1e-12);
    if (moved.status !== 'solved' || still.status !== 'solved') throw new Error('not solved');
    for (let i = 0; i < 5; i++)
      expect((still.total.force[i]! - moved.total.force[i]!) / 1e-10 / stiffness[i]![2]!).toBeCloseTo(1, 3);
  });
});
