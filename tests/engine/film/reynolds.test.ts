/** The pressure of one seat: against other methods, and what any right answer must satisfy. */
import choleskySolve from 'cholesky-solve';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newFilmSpace, solveFilm } from '../../../src/engine/film/reynolds.ts';
import { brakingTorque, oilForce, seatFilm } from '../../../src/engine/film/seatFilm.ts';
import type { Part } from '../../../src/engine/parts/line.ts';
import type { Pose } from '../../../src/engine/spindle/pose.ts';
import { at, type Cone, coneShape, lobed, RAD, solved, solvedOn, straight } from './bearings.ts';
import { bruteEquations, projectedRelaxation } from './bruteFilm.ts';

const MU = 0.0086;
const OMEGA = 125;
const shallow: Cone = { halfAngle: 3 * RAD, radius: 0.011, from: -0.025, to: -0.0005, film: 2.5e-6 };
const steep: Cone = { halfAngle: 45 * RAD, radius: 0.013, from: -0.003, to: 0, film: 2.5e-6 };
const rear: Cone = { halfAngle: -22.5 * RAD, radius: 0.008, from: -0.006, to: 0, film: 3e-6 };
const sleeve = straight(0.009, 0.018, 2.5e-6);

const off = (found: number, wanted: number, size = Math.abs(wanted)) => Math.abs(found - wanted) / size;

describe('against other methods, on small grids, to 1e-9', () => {
  it.each([
    ['shallow cone off centre', shallow, at({ x: 1e-6, y: -1.2e-6 })],
    ['shallow cone tilted too', shallow, at({ x: 5e-7, y: 4e-7, z: 3e-6, tiltX: 3e-5, tiltY: -2e-5 })],
    ['steep cone', steep, at({ x: -1e-6, y: 1.5e-6, z: 5e-7, tiltX: 4e-5 })],
    ['cone closing noseward', rear, at({ x: 2e-6, z: -4e-7, tiltY: 5e-5 })],
    ['straight, nearly touching', sleeve, at({ y: -2.47e-6 })],
  ])('%s: projected relaxation', (_, cone, pose) => {
    const [rows, columns] = [8, 32];
    const wanted = projectedRelaxation(bruteEquations(cone, pose, MU, OMEGA, rows, columns, null));
    const space = newFilmSpace(rows, columns);
    solved(space, coneShape(cone), pose, { viscosity: MU, omega: OMEGA, tolerance: 1e-13 });
    const top = Math.max(...wanted);
    expect(top).toBeGreaterThan(1e3);
    for (let k = 0; k < wanted.length; k++) expect(off(space.pressure[k]!, wanted[k]!, top)).toBeLessThan(1e-9);
  });

  it('a film kept whole by its supply: sparse Cholesky factors', () => {
    const [rows, columns] = [12, 48];
    const pose = at({ x: 1.1e-6, y: 6e-7, tiltY: 2e-5 });
    const pressure = 1e9;
    const brute = bruteEquations(shallow, pose, MU, OMEGA, rows, columns, { column: 5, pressure });
    const wanted = choleskySolve.prepare(brute.entries, rows * columns)(brute.b);
    const space = newFilmSpace(rows, columns);
    // long enough for no cell to break; sealed ends would make it singular without the groove
    solved(space, coneShape(shallow), pose, {
      viscosity: MU,
      omega: OMEGA,
      tolerance: 1e-13,
      grooves: [{ angle: (5 * 2 * Math.PI) / columns, from: -1, to: 1, width: 1e-16, pressure }],
    });
    const whole = wanted.filter((p) => p >= 0).length === wanted.length;
    if (whole)
      for (let k = 0; k < wanted.length; k++) expect(off(space.pressure[k]!, wanted[k]!, pressure)).toBeLessThan(1e-9);
    expect(whole).toBe(true);
  });
});

describe('order of convergence', () => {
  /** log2 of the ratio of successive differences over grids doubled each time. */
  const orders = (values: number[]) =>
    values.slice(2).map((value, i) => Math.log2((values[i + 1]! - values[i]!) / (value - values[i + 1]!)));
  const SIZES = [8, 16, 32, 64, 128];

  it('is 2 where nothing breaks: a tilted cone pressed home', () => {
    const found = SIZES.map((rows) =>
      solvedOn(rows, 4 * rows, coneShape(steep), at({ x: 6e-7, tiltX: 5e-5 }), {
        viscosity: MU,
        omega: 20,
        velocity: [0, 0, -1e-4, 0, 0],
        tolerance: 1e-11,
      }),
    );
    for (const of of [
      (i: number) => found[i]!.force[2],
      (i: number) => found[i]!.force[0],
      (i: number) => found[i]!.torque,
    ]) {
      for (const order of orders(SIZES.map((_, i) => of(i)))) expect(order).toBeGreaterThan(1.9);
      for (const order of orders(SIZES.map((_, i) => of(i)))) expect(order).toBeLessThan(2.1);
    }
  });

  it('a groove whose edges fall anywhere among the cells costs no order: the error against a fine grid falls with the square of the cell', () => {
    const run = {
      viscosity: MU,
      omega: OMEGA,
      tolerance: 1e-11,
      grooves: [{ angle: 0.7, from: -0.02, to: -0.004, width: 0.0021, pressure: 2e5 }],
    };
    const load = (rows: number) => {
      const { force } = solvedOn(rows, 4 * rows, coneShape(shallow), at({ x: -1.2e-6 }), run);
      return Math.hypot(force[0], force[1]);
    };
    const exact = load(256);
    // edges fall differently on every grid, so the error does not fall smoothly: its size is held against h²
    for (const rows of [16, 24, 32, 48, 64]) expect(off(load(rows), exact)).toBeLessThan(0.02 * (16 / rows) ** 2);
  });

  it('is near 2 with a broken film: load of a shallow cone off centre', () => {
    const load = SIZES.map((rows) => {
      const { force } = solvedOn(rows, 4 * rows, coneShape(shallow), at({ x: -1.5e-6 }), {
        viscosity: MU,
        omega: OMEGA,
        tolerance: 1e-11,
      });
      return Math.hypot(force[0], force[1]);
    });
    const mean = orders(load).reduce((sum, order) => sum + order, 0) / (SIZES.length - 2);
    expect(mean).toBeGreaterThan(1.7);
    expect(mean).toBeLessThan(2.3);
  });
});

describe('work does not grow with the cells', () => {
  it.each([
    ['a thousand', 16, 64],
    ['all around', 4, 2048],
    ['all along', 1024, 8],
    ['a quarter of a million', 256, 1024],
  ])('%s cells: at most a dozen cycles, however the cells are shaped and thin the film', (_, rows, columns) => {
    const cases: [Cone, Pose][] = [
      [shallow, at({ x: 1e-6, y: -1.5e-6 })],
      [steep, at({ x: -2e-6 })],
      [sleeve, at({ y: -2.49e-6 })],
      [{ ...shallow, bushLobes: [{ count: 7, amplitude: 8e-7, phase: 1 }] }, at({ x: 1e-6 })],
    ];
    for (const [cone, pose] of cases) {
      expect(
        solvedOn(rows, columns, coneShape(cone), pose, { viscosity: MU, omega: OMEGA }).solution.cycles,
      ).toBeLessThanOrEqual(12);
    }
  });
});

describe('what any right answer satisfies', () => {
  const cones = fc.record({
    halfAngle: fc.constantFrom(0, 1e-7, 3, 20, 45, -45, 80, 89).map((a) => a * RAD),
    radius: fc.double({ min: 0.005, max: 0.05, noNaN: true }),
    slant: fc.double({ min: 0.001, max: 0.004, noNaN: true }),
    film: fc.double({ min: 5e-7, max: 2e-5, noNaN: true }),
    lobes: fc.array(
      fc.record({
        count: fc.integer({ min: 1, max: 5 }),
        amplitude: fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        phase: fc.double({ min: -3, max: 3, noNaN: true }),
      }),
      { maxLength: 2 },
    ),
    off: fc.tuple(
      fc.double({ min: 0.001, max: 0.7, noNaN: true }),
      fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
      fc.double({ min: -0.08, max: 0.08, noNaN: true }),
      fc.double({ min: -0.08, max: 0.08, noNaN: true }),
    ),
    omega: fc.oneof(
      fc.double({ min: 0.1, max: 500, noNaN: true }),
      fc.double({ min: -500, max: -0.1, noNaN: true }),
      fc.constant(0),
    ),
    grid: fc.constantFrom([4, 8], [8, 32], [5, 24], [16, 16], [1, 64], [9, 12]),
    groove: fc.option(
      fc.record({
        angle: fc.double({ min: -7, max: 7, noNaN: true }),
        width: fc.double({ min: 1e-4, max: 1e-2, noNaN: true }),
        pressure: fc.oneof(fc.constant(0), fc.double({ min: 1e3, max: 1e6, noNaN: true })),
      }),
    ),
  });
  type Drawn = typeof cones extends fc.Arbitrary<infer T> ? T : never;

  function make({ halfAngle, radius, slant, film, lobes, off: [e, angle, tx, ty], omega, groove }: Drawn) {
    const half = (slant / 2) * Math.cos(halfAngle);
    const scaled = lobes.map((lobe) => ({ ...lobe, amplitude: lobe.amplitude * film }));
    const cone: Cone = {
      halfAngle,
      radius,
      from: -half,
      to: half,
      film,
      journalLobes: scaled.slice(0, 1),
      bushLobes: scaled.slice(1),
    };
    const u = radius * Math.abs(Math.sin(halfAngle)) + slant;
    const pose = at({
      x: e * 0.9 * film * Math.cos(angle),
      y: e * 0.9 * film * Math.sin(angle),
      tiltX: (tx * film) / u,
      tiltY: (ty * film) / u,
    });
    const run = {
      viscosity: MU,
      omega,
      tolerance: 1e-12,
      ...(groove && { grooves: [{ from: -1, to: 1, ...groove }] }),
    };
    return { shape: coneShape(cone), pose, run };
  }

  it('p ≥ 0, no more flows into a broken cell than it takes, and the full region keeps its oil to round-off', () => {
    fc.assert(
      fc.property(cones, (drawn) => {
        const { shape, pose, run } = make(drawn);
        const space = newFilmSpace(drawn.grid[0]!, drawn.grid[1]!);
        const found = seatFilm(space, shape, pose, run);
        expect(found.status).toBe('solved');
        const level = space.solver.levels[0]!;
        const { rows, columns, along, around, edge, b } = level;
        const { p } = level;
        const total = b.reduce((sum, one) => sum + Math.abs(one), 0);
        let kept = 0;
        let moved = 0;
        for (let j = 0; j < columns; j++) {
          for (let i = 0; i < rows; i++) {
            const k = j * rows + i;
            if (space.solver.held[0]![k] === 2) continue;
            const [w, e] = [((j + columns - 1) % columns) * rows + i, ((j + 1) % columns) * rows + i];
            let out = edge[k]! * p[k]! + around[k]! * (p[k]! - p[e]!) + around[w]! * (p[k]! - p[w]!);
            if (i > 0) out += along[k - 1]! * (p[k]! - p[k - 1]!);
            if (i < rows - 1) out += along[k]! * (p[k]! - p[k + 1]!);
            expect(p[k]).toBeGreaterThanOrEqual(0);
            moved += Math.abs(b[k]!);
            if (p[k]! > 0) kept += b[k]! - out;
            else expect(b[k]! - out).toBeLessThanOrEqual(1e-11 * total);
          }
        }
        // all that crosses the border of the full region, and what is dragged in it, adds up to nothing
        expect(Math.abs(kept)).toBeLessThanOrEqual(1e-11 * Math.max(moved, total));
        for (const value of [...space.pressure, ...(found.status === 'solved' ? found.force : [])])
          expect(Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 150, seed: 4 },
    );
  });

  it('power is what shear and the flow under pressure lose, less what pumps bring in', () => {
    fc.assert(
      fc.property(cones, (drawn) => {
        const { shape, pose, run } = make(drawn);
        const space = newFilmSpace(drawn.grid[0]!, drawn.grid[1]!);
        const found = solved(space, shape, pose, run);
        const { rows, columns, along, around, edge } = space.solver.levels[0]!;
        const { pressure, film, grid } = space;
        const cell = ((grid.to - grid.from) / rows) * ((2 * Math.PI) / columns);
        let lost = 0;
        for (let j = 0; j < columns; j++) {
          for (let i = 0; i < rows; i++) {
            const k = j * rows + i;
            const e = ((j + 1) % columns) * rows + i;
            lost += around[k]! * (pressure[k]! - pressure[e]!) ** 2 + edge[k]! * pressure[k]! ** 2;
            if (i < rows - 1) lost += along[k]! * (pressure[k]! - pressure[k + 1]!) ** 2;
            if (space.solver.held[0]![k] !== 2)
              lost += (MU * (run.omega * grid.radius[i]!) ** 2 * grid.radius[i]! * cell) / film.centre[k]!;
          }
        }
        // flow out of a groove against its pressure, what is dragged out of it included
        const pressureOf = drawn.groove?.pressure ?? 0;
        let pumped = 0;
        for (let k = 0; k < pressure.length; k++)
          if (space.solver.held[0]![k] === 2) pumped += pressureOf * netOut(space, k, run.omega);
        expect(found.power).toBeCloseTo(found.torque * run.omega, 12);
        expect(off(found.power + pumped, lost, Math.max(lost, 1e-12))).toBeLessThan(1e-9);
      }),
      { numRuns: 100, seed: 5 },
    );
  });

  it('turning seat, pose and lobes by whole columns turns the answer', () => {
    fc.assert(
      fc.property(cones, fc.integer({ min: 1, max: 40 }), (drawn, shift) => {
        const { shape, pose, run } = make({ ...drawn, groove: null });
        const [rows, columns] = drawn.grid as [number, number];
        const angle = (2 * Math.PI * shift) / columns;
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const turn = (x: number, y: number) => [c * x - s * y, s * x + c * y] as const;
        const [x, y] = turn(pose.x, pose.y);
        const [tiltX, tiltY] = turn(pose.tiltX, pose.tiltY);
        const turnedLobes = (part: Part) =>
          (shape.parts[part].lobes ?? []).map((lobe) => ({ ...lobe, phase: lobe.phase + angle }));
        const one = solvedOn(rows, columns, shape, pose, run);
        const other = solvedOn(
          rows,
          columns,
          lobed(lobed(shape, turnedLobes('bush'), 'bush'), turnedLobes('journal'), 'journal'),
          { ...pose, x, y, tiltX, tiltY },
          run,
        );
        const [fx, fy] = turn(one.force[0], one.force[1]);
        const size = Math.max(1e-9, ...one.force.map(Math.abs));
        expect(off(other.force[0], fx, size)).toBeLessThan(1e-7);
        expect(off(other.force[1], fy, size)).toBeLessThan(1e-7);
        expect(off(other.force[2], one.force[2], size)).toBeLessThan(1e-7);
        expect(off(other.torque, one.torque, Math.max(1e-12, Math.abs(one.torque)))).toBeLessThan(1e-7);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it('is the same for µ and ω that have the same product', () => {
    const pose = at({ x: 1e-6, tiltY: 2e-5 });
    const one = solvedOn(16, 64, coneShape(shallow), pose, { viscosity: 0.01, omega: 100, tolerance: 1e-12 });
    const other = solvedOn(16, 64, coneShape(shallow), pose, { viscosity: 0.05, omega: 20, tolerance: 1e-12 });
    one.force.forEach((q, i) => {
      expect(off(other.force[i]!, q)).toBeLessThan(1e-9);
    });
  });

  it('backward is a mirror of forward', () => {
    const one = solvedOn(16, 64, coneShape(steep), at({ y: 1e-6 }), { viscosity: MU, omega: OMEGA, tolerance: 1e-12 });
    const other = solvedOn(16, 64, coneShape(steep), at({ y: 1e-6 }), {
      viscosity: MU,
      omega: -OMEGA,
      tolerance: 1e-12,
    });
    expect(off(other.force[0], -one.force[0])).toBeLessThan(1e-9);
    expect(off(other.force[1], one.force[1])).toBeLessThan(1e-9);
    expect(off(other.torque, -one.torque)).toBeLessThan(1e-9);
    expect(other.power).toBeCloseTo(one.power, 9);
  });
});

describe('lobes', () => {
  const lobes = [{ count: 3, amplitude: 3e-7, phase: 0.4 }];
  const run = { viscosity: MU, omega: OMEGA, tolerance: 1e-12 };

  it('of the bush and of the journal wedge with opposite sign', () => {
    // The same film now; in a frame that turns with the journal its lobes stand still and the bush turns backward.
    const bush = solvedOn(16, 128, coneShape({ ...shallow, bushLobes: lobes }), at({}), run);
    const journal = solvedOn(16, 128, coneShape({ ...shallow, journalLobes: lobes }), at({}), {
      ...run,
      omega: -OMEGA,
    });
    expect(bush.peak.pressure).toBeGreaterThan(1e4);
    expect(off(journal.peak.pressure, bush.peak.pressure)).toBeLessThan(1e-9);
    expect(off(journal.force[2], bush.force[2])).toBeLessThan(1e-9);
  });

  it('that turn half with the journal would make no wedge: run-out of the journal against an equal one of the bush', () => {
    // h_b - h_j has no change around when both stand proud alike
    const both = solvedOn(16, 64, coneShape({ ...shallow, journalLobes: lobes, bushLobes: lobes }), at({}), run);
    expect(both.peak.pressure).toBeLessThan(1e-6);
  });

  it('turn with the journal: a turned run-out is one of another phase', () => {
    const space = newFilmSpace(8, 64);
    const runOut = { count: 1, amplitude: 5e-7, phase: 0 };
    const turned = solved(space, coneShape({ ...shallow, journalLobes: [runOut] }), at({}), {
      ...run,
      turned: Math.PI / 4,
    });
    const phased = solved(
      space,
      coneShape({ ...shallow, journalLobes: [{ ...runOut, phase: Math.PI / 4 }] }),
      at({}),
      run,
    );
    turned.force.forEach((q, i) => {
      expect(off(q, phased.force[i]!, Math.abs(turned.force[2]))).toBeLessThan(1e-9);
    });
    expect(off(turned.least.film, 2e-6)).toBeLessThan(1e-6);
  });
});

describe('verdicts', () => {
  const space = newFilmSpace(8, 32);
  const run = { viscosity: MU, omega: OMEGA };

  it('contact: the film is nothing somewhere, and where', () => {
    const verdict = solveFilm(space, coneShape(shallow), at({ x: 2.6e-6 }), run);
    expect(verdict).toMatchObject({ status: 'contact', angle: 0 });
    if (verdict.status === 'contact') expect(verdict.film).toBeCloseTo(2.5e-6 - 2.6e-6 * Math.cos(3 * RAD), 12);
  });

  it('apart: the journal is out of its bush', () => {
    expect(solveFilm(space, coneShape(shallow), at({ z: 0.1 }), run).status).toBe('apart');
  });

  it('a journal that stands still presses on no oil', () => {
    const found = solved(space, coneShape(shallow), at({ x: 1e-6 }), { viscosity: MU, omega: 0 });
    expect(found.force).toEqual([0, 0, 0, 0, 0]);
    expect(found.torque).toBe(0);
    expect(Math.max(...oilForce(space).map(Math.abs), brakingTorque(space, { viscosity: MU, omega: 0 }))).toBe(0);
  });

  it('a hole smaller than a cell still feeds one', () => {
    const hole = {
      angle: 1,
      from: 0.0101 * Math.sin(3 * RAD) - 0.01,
      to: 0.0101 * Math.sin(3 * RAD) - 0.00999,
      width: 1e-5,
      pressure: 3e5,
    };
    const found = solved(space, coneShape(shallow), at({ x: 1e-7 }), { ...run, grooves: [hole] });
    expect(space.solver.held[0]!.filter((state) => state === 2)).toHaveLength(1);
    expect(found.supplied).toBeGreaterThan(0);
    const beyond = { ...hole, from: 1, to: 2 };
    solved(space, coneShape(shallow), at({ x: 1e-7 }), { ...run, grooves: [beyond] });
    expect(space.solver.held[0]!.filter((state) => state === 2)).toHaveLength(0);
  });

  it('a profile takes film away where it stands proud', () => {
    const proud: Cone = {
      ...shallow,
      bushProfile: [
        [-0.025, 0],
        [-0.0125, 1e-6],
        [-0.0005, 0],
      ],
    };
    const found = solved(newFilmSpace(64, 32), coneShape(proud), at({ x: 2e-7 }), run);
    expect(found.least.film).toBeCloseTo(1.5e-6 - 2e-7 * Math.cos(3 * RAD), 10);
    expect(found.least.u).toBeCloseTo(
      -0.0125 * Math.cos(3 * RAD) + 0.011 * Math.sin(3 * RAD) - 0.0125 * Math.tan(3 * RAD) * Math.sin(3 * RAD),
      6,
    );
  });
});

/** m³/s out of cell k: pressure flow and what is dragged on. */
function netOut({ solver, pressure, film, grid }: ReturnType<typeof newFilmSpace>, k: number, omega: number): number {
  const { rows, columns, along, around, edge } = solver.levels[0]!;
  const i = k % rows;
  const j = (k - i) / rows;
  const w = ((j + columns - 1) % columns) * rows + i;
  const e = ((j + 1) % columns) * rows + i;
  const before = (j + columns - 1) % columns;
  const dl = (grid.to - grid.from) / rows;
  let out =
    edge[k]! * pressure[k]! + around[k]! * (pressure[k]! - pressure[e]!) + around[w]! * (pressure[k]! - pressure[w]!);
  if (i > 0) out += along[k - 1]! * (pressure[k]! - pressure[k - 1]!);
  if (i < rows - 1) out += along[k]! * (pressure[k]! - pressure[k + 1]!);
  return (
    out +
    (omega / 2) *
      grid.radius[i]! *
      dl *
      (film.around[k]! - film.around[w]! + 2 * (film.turning[j]! - film.turning[before]!))
  );
}
