/**
 * The film solver: time and cells per second from ten thousand cells to a million, the equilibrium of three seats, and
 * beside it a general-purpose sparse direct solver from the registry on the same matrix.
 */
import { readFileSync } from 'node:fs';
import choleskySolve from 'cholesky-solve';
import { afterAll, bench, describe } from 'vitest';
import type { Design } from '../src/design/definition.ts';
import { equilibrium } from '../src/engine/film/equilibrium.ts';
import { newGrids, type SpindleRun } from '../src/engine/film/films.ts';
import { newFilmSpace, solveFilm } from '../src/engine/film/reynolds.ts';
import { loadAt } from '../src/engine/spindle/pose.ts';
import { toFilmSeats } from '../src/report/film/toSpindle.ts';
import { at, type Cone, coneShape, RAD } from './engine/film/bearings.ts';

const MU = 0.0086;
const OMEGA = 125.66;
const shallow: Cone = { halfAngle: 3 * RAD, radius: 0.011, from: -0.025, to: -0.0005, film: 2.5e-6 };
const steep: Cone = { halfAngle: 45 * RAD, radius: 0.013, from: -0.003, to: 0, film: 2.5e-6 };
const pose = at({ x: 9e-7, y: -1.2e-6, tiltX: 1e-5 });

/** Times of each bench, printed with cells per second at the end. */
const times = new Map<string, { cells: number; seconds: number[] }>();

function timed(name: string, cells: number, work: () => void): () => void {
  times.set(name, { cells, seconds: [] });
  return () => {
    const start = performance.now();
    work();
    times.get(name)!.seconds.push((performance.now() - start) / 1000);
  };
}

afterAll(() => {
  for (const [name, { cells, seconds }] of times) {
    if (seconds.length === 0) continue;
    const median = seconds.sort((a, b) => a - b)[seconds.length >> 1]!;
    process.stdout.write(
      `${name}: ${(1000 * median).toFixed(1)} ms, ${(cells / median / 1e6).toFixed(2)} million cells/s, ${((1e9 * median) / cells).toFixed(0)} ns a cell\n`,
    );
  }
});

const few = (iterations: number) => ({ time: 0, iterations, warmupTime: 0, warmupIterations: 2 });

describe('pressure of one seat', () => {
  const sizes: [string, Cone, number, number, number][] = [
    ['shallow cone, 64 × 256', shallow, 64, 256, 60],
    ['steep cone, 64 × 256', steep, 64, 256, 60],
    ['shallow cone, 10 thousand cells (80 × 128)', shallow, 80, 128, 60],
    ['shallow cone, 100 thousand cells (200 × 512)', shallow, 200, 512, 12],
    ['shallow cone, a million cells (1024 × 1024)', shallow, 1024, 1024, 5],
    ['steep cone, a million cells (1024 × 1024)', steep, 1024, 1024, 5],
    // all in one row, all in one column: as anisotropic as it gets
    ['shallow cone, 4 × 4096', shallow, 4, 4096, 40],
    ['shallow cone, 2048 × 8', shallow, 2048, 8, 40],
  ];
  for (const [name, cone, rows, columns, iterations] of sizes) {
    const space = newFilmSpace(rows, columns);
    const shape = coneShape(cone);
    bench(
      name,
      timed(name, rows * columns, () => {
        solveFilm(space, shape, pose, { viscosity: MU, omega: OMEGA });
      }),
      few(iterations),
    );
  }
});

describe.each([
  [32, 64, 5],
  [64, 256, 2],
])('the same matrix, whole film, %d × %d', (rows, columns, iterations) => {
  const space = newFilmSpace(rows, columns);
  const shape = coneShape(shallow);
  const whole = { viscosity: MU, omega: OMEGA, grooves: [{ angle: 0, from: -1, to: 1, width: 1e-9, pressure: 1e9 }] };
  solveFilm(space, shape, pose, whole);
  const { along, around, diagonal, b } = space.solver.levels[0]!;
  const held = space.solver.held[0]!;
  const entries: [number, number, number][] = [];
  for (let k = 0; k < rows * columns; k++) {
    entries.push([k, k, held[k] ? 1 : diagonal[k]!]);
    const next = (k + rows) % (rows * columns);
    if (k % rows < rows - 1 && !held[k] && !held[k + 1]) entries.push([k, k + 1, -along[k]!]);
    if (!held[k] && !held[next]) entries.push([Math.min(k, next), Math.max(k, next), -around[k]!]);
  }
  const right = Array.from(b, (value, k) => (held[k] ? 0 : value));

  const multigrid = `multigrid, ${rows} × ${columns}, film laid and matrix made too`;
  bench(
    multigrid,
    timed(multigrid, rows * columns, () => {
      solveFilm(space, shape, pose, whole);
    }),
    few(40),
  );
  // the held column breaks the ring, so the order as it stands is a band as narrow as can be
  const direct = `sparse Cholesky (cholesky-solve), ${rows} × ${columns}`;
  bench(
    direct,
    timed(direct, rows * columns, () => {
      choleskySolve.prepare(entries, rows * columns)(right);
    }),
    few(iterations),
  );
});

describe('equilibrium of three seats', () => {
  const design = JSON.parse(
    readFileSync(new URL('../assets/designs/rear-bearing.conepair.json', import.meta.url), 'utf8'),
  ) as Design;
  const seats = toFilmSeats(design).map((seat) => ({ ...seat, grooves: [] }));
  const run: SpindleRun = { omega: OMEGA, viscosity: seats.map(() => MU), growth: seats.map(() => 0) };
  for (const [name, size] of [
    ['32 × 128 a seat', { rows: 32, columns: 128 }],
    ['16 × 64 a seat', { rows: 16, columns: 64 }],
  ] as const) {
    const grids = newGrids(seats, size);
    const coarse = newGrids(seats, { rows: 8, columns: 32 });
    const cells = 3 * size.rows * size.columns;
    const cold = `from cold, ${name}`;
    bench(
      cold,
      timed(cold, cells, () => {
        equilibrium(grids, loadAt(0, -120, -40, 0.03), run, { position: 0, coarse });
      }),
      few(15),
    );
    // a hand that pulls: 2 % more load from frame to frame, and back
    let near = equilibrium(grids, loadAt(0, -120, -40, 0.03), run, { position: 0, coarse });
    let frame = 0;
    const follow = `following a drag, ${name}`;
    bench(
      follow,
      timed(follow, cells, () => {
        frame++;
        const pull = 120 * (1 + 0.02 * Math.abs((frame % 20) - 10));
        const found = equilibrium(grids, loadAt(0, -pull, -40, 0.03), run, {
          position: 0,
          close: 1e-4,
          ...(near.status === 'solved' && { near }),
        });
        if (found.status !== 'solved') throw new Error(found.status);
        near = found;
      }),
      few(40),
    );
  }
});
