/**
 * The odds of the run: spindles run from cold to warm and equilibria found a second, on one core and on two, and what
 * the small grid costs of film and temperature. Asked: 100 equilibria a second on two cores.
 */
import { readFileSync } from 'node:fs';
import type { Worker } from 'node:worker_threads';
import { afterAll, bench, describe, vi } from 'vitest';
import { threadOf } from '../src/cli/thread.ts';
import type { Design } from '../src/design/definition.ts';
import { gridError } from '../src/engine/odds/running.ts';
import { RUN_BLOCK, RUN_GRID } from '../src/engine/odds/runningGrid.ts';
import type { Piece } from '../src/report/odds/pieces.ts';
import { askedOf, type Done, runnerOf } from '../src/report/odds/running.ts';

const found = vi.hoisted(() => ({ equilibria: 0 }));
vi.mock('../src/engine/film/equilibrium.ts', async (original) => {
  const real = await original<typeof import('../src/engine/film/equilibrium.ts')>();
  return {
    ...real,
    equilibrium: (...given: Parameters<typeof real.equilibrium>) => {
      found.equilibria++;
      return real.equilibrium(...given);
    },
  };
});

const demo = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8')) as Design;
/** Two seats, adjusted, under the load of the demo; spreads of a well made pair. */
const design: Design = {
  ...demo('correct'),
  odds: {
    spread: [
      { seat: 'steep', part: 'bush', of: 'station', sigma: 0.003 },
      { seat: 'shallow', part: 'journal', of: 'diameter', sigma: 0.0004 },
    ],
  },
};
const pieces: Piece[] = Array.from({ length: 4 }, (_, b) => ({ from: b * RUN_BLOCK, count: RUN_BLOCK, fine: false }));
const count = pieces.length * RUN_BLOCK;
const run = runnerOf(askedOf(design)!);
run({ from: 0, count: 2, fine: false });
found.equilibria = 0;
const small = pieces.map(run);
const each = found.equilibria / count;

const threads: Worker[] = [0, 1].map(() => threadOf(new URL('./oddsRunThread.ts', import.meta.url)));
const ask = (thread: Worker, message: unknown) =>
  new Promise<Done>((resolve, reject) => {
    thread.once('message', resolve);
    thread.once('error', reject);
    thread.postMessage(message);
  });
await Promise.all(threads.map((thread) => ask(thread, { design, piece: { ...pieces[0]!, count: 2 } })));

/** Beside other work a core is not one's own: what counts then is the time that was had of it, all threads together. */
const coreSeconds = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const seconds = new Map<string, { wall: number; core: number }[]>();
const timed = (name: string, work: () => Promise<void> | void) => async () => {
  const [start, used] = [performance.now(), coreSeconds()];
  await work();
  const took = { wall: (performance.now() - start) / 1000, core: coreSeconds() - used };
  seconds.set(name, [...(seconds.get(name) ?? []), took]);
};

afterAll(async () => {
  for (const [name, times] of seconds) {
    const { wall, core } = times.sort((a, b) => a.wall - b.wall)[times.length >> 1]!;
    process.stdout.write(
      `${name}: ${(count / wall).toFixed(1)} spindles a second, ${((count * each) / wall).toFixed(0)} equilibria a second (${each.toFixed(1)} a spindle; ${((count * each) / core).toFixed(0)} in a second of a core’s own time)\n`,
    );
  }
  const fine = Array.from({ length: 8 }, (_, from) => run({ from, count: 1, fine: true }));
  const drawn = (done: readonly Done[]) => done.flatMap(({ block }) => block.draws);
  const { checked, film, hottest } = gridError(drawn(small).slice(0, 8), drawn(fine));
  process.stdout.write(
    `${RUN_GRID.rows} × ${RUN_GRID.columns} cells against the grid of Run, ${checked} spindles: 19 films in 20 to ${(1e6 * film.error).toFixed(3)} µm (bias ${(1e6 * film.bias).toFixed(3)}), temperatures to ${hottest.error.toFixed(2)} K\n`,
  );
  await Promise.all(threads.map((thread) => thread.terminate()));
}, 600_000);

describe(`odds of the run, ${count} spindles of two seats, cold to warm`, () => {
  const few = { time: 0, iterations: 3, warmupTime: 0, warmupIterations: 0 };
  const [one, two] = ['one core', 'two cores'];
  bench(
    one,
    timed(one, () => void pieces.map(run)),
    few,
  );
  bench(
    two,
    timed(two, async () => {
      const left = [...pieces];
      await Promise.all(
        threads.map(async (thread) => {
          for (let piece = left.shift(); piece; piece = left.shift()) await ask(thread, { design, piece });
        }),
      );
    }),
    few,
  );
});
