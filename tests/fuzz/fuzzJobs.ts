/**
 * npm run -s fuzz:jobs -- [--seed N] [--count N] [--limit SECONDS]
 *
 * What comes from anywhere besides a design that is solved: files, files of jobs, kept records, links, tables of
 * readings and pasted lists, whole and damaged (grammarJobs.ts); each must be taken whole or refused in few words
 * (triedJobs.ts). Cases come in batches, each with a seed of its own: what is broken goes to standard output, a line of
 * JSON each, with that seed and its place. A batch that takes longer than the limit is ended and told.
 */
import { once } from 'node:events';
import { parseArgs } from 'node:util';
import type { Worker } from 'node:worker_threads';
import { threadOf } from '../../src/cli/thread.ts';

const { values } = parseArgs({
  options: { seed: { type: 'string' }, count: { type: 'string' }, limit: { type: 'string' } },
});
const seed = Number(values.seed ?? Math.floor(Math.random() * 1e9));
const count = Number(values.count ?? 100_000);
const limit = Number(values.limit ?? 120);
const BATCH = 200;

interface Answer {
  taken: number;
  broken: object[];
}

const start = () => threadOf(new URL('./jobsWorker.ts', import.meta.url));

/** What came of a batch. Where it took too long, or died, the worker is ended. */
async function ask(worker: Worker, batch: { seed: number; count: number }): Promise<Answer | string> {
  const over = new AbortController();
  const timer = setTimeout(() => over.abort(), 1000 * limit);
  try {
    worker.postMessage(batch);
    const [answer] = (await once(worker, 'message', { signal: over.signal })) as [Answer];
    return answer;
  } catch (error) {
    await worker.terminate();
    return over.signal.aborted ? `takes over ${limit} s` : `throws ${(error as Error).message}`;
  } finally {
    clearTimeout(timer);
  }
}

process.stderr.write(`fuzz: seed ${seed}, ${count} cases\n`);
let worker = start();
let [done, taken, wrong] = [0, 0, 0];
for (let i = 0; done < count; i++) {
  const batch = { seed: seed + i, count: Math.min(BATCH, count - done) };
  const answer = await ask(worker, batch);
  done += batch.count;
  if (typeof answer === 'string') {
    worker = start();
    wrong++;
    process.stdout.write(`${JSON.stringify({ ...batch, broken: [answer] })}\n`);
    continue;
  }
  taken += answer.taken;
  wrong += answer.broken.length;
  for (const one of answer.broken) process.stdout.write(`${JSON.stringify({ seed: batch.seed, ...one })}\n`);
}
await worker.terminate();
process.stderr.write(`fuzz: seed ${seed}: ${done} done, ${taken} taken, ${wrong} with something broken\n`);
process.exitCode = wrong > 0 ? 1 : 0;
