/**
 * npm run -s fuzz -- [--seed N] [--count N] [--running SHARE] [--seconds N] [--limit SECONDS]
 *
 * Solves designs made at random (grammar.ts), the same with one field damaged, and as damaged bytes, each with a seed
 * of its own, and holds every report against the laws (laws.ts). What is broken goes to standard output, a line of JSON
 * each, with its seed and the design: the same design comes again with that seed and a count of 1. One in three leans
 * to the ends of every range. A design that takes longer than the limit is ended and told.
 */
import { once } from 'node:events';
import { parseArgs } from 'node:util';
import type { Worker } from 'node:worker_threads';
import fc from 'fast-check';
import { threadOf } from '../../src/cli/thread.ts';
import type { Design } from '../../src/design/definition.ts';
import { bytes, damaged } from './damage.ts';
import { validDesign } from './grammar.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string' },
    count: { type: 'string' },
    running: { type: 'string' },
    seconds: { type: 'string' },
    limit: { type: 'string' },
  },
});
const seed = Number(values.seed ?? Math.floor(Math.random() * 1e9));
const count = Number(values.count ?? 1_000);
const running = Number(values.running ?? 0.05);
const limit = Number(values.limit ?? 60);
const until = performance.now() + 1000 * Number(values.seconds ?? Number.POSITIVE_INFINITY);
const designs = validDesign(running);
const kinds = {
  design: designs as fc.Arbitrary<unknown>,
  damaged: damaged(designs),
  bytes: bytes(designs).map((text) => ({ text: [...text] })),
};

process.stderr.write(`fuzz: seed ${seed}, ${count} designs, ${running} of them running\n`);

const start = () => threadOf(new URL('./worker.ts', import.meta.url));

/** What is broken, or null where it took too long: the worker is then ended. */
async function ask(worker: Worker, kind: string, value: unknown): Promise<string[] | null> {
  const over = new AbortController();
  const timer = setTimeout(() => over.abort(), 1000 * limit);
  try {
    worker.postMessage({ kind, value });
    const [broken] = (await once(worker, 'message', { signal: over.signal })) as [string[]];
    return broken;
  } catch (error) {
    await worker.terminate();
    return over.signal.aborted ? null : [`throws ${(error as Error).message}`];
  } finally {
    clearTimeout(timer);
  }
}

let worker = start();
let [done, wrong, slowest, slowestSeed] = [0, 0, 0, seed];
for (let i = 0; i < count && performance.now() < until; i++) {
  const kind = (seed + i) % 4 === 2 ? 'damaged' : (seed + i) % 16 === 3 ? 'bytes' : 'design';
  const [value] = fc.sample(kinds[kind], { seed: seed + i, numRuns: 1, unbiased: (seed + i) % 3 !== 0 });
  const began = performance.now();
  const broken = await ask(worker, kind, value);
  const took = (performance.now() - began) / 1000;
  if (took > slowest) [slowest, slowestSeed] = [took, seed + i];
  if (broken === null || broken.some((one) => one.startsWith('throws'))) {
    await worker.terminate();
    worker = start();
  }
  done++;
  if (broken === null || broken.length > 0) {
    wrong++;
    process.stdout.write(
      `${JSON.stringify({ seed: seed + i, kind, broken: broken ?? [`takes over ${limit} s`], value: value as Design })}\n`,
    );
  }
}
await worker.terminate();
process.stderr.write(
  `fuzz: seed ${seed}: ${done} done, ${wrong} with something broken; the slowest took ${slowest.toFixed(1)} s (seed ${slowestSeed})\n`,
);
process.exitCode = wrong > 0 ? 1 : 0;
