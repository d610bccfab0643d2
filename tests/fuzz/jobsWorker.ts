/** Tries batches of cases, and says what is broken in each. */
import { parentPort } from 'node:worker_threads';
import { batchOfJobs } from './batchOfJobs.ts';

parentPort!.on('message', async ({ seed, count }: { seed: number; count: number }) => {
  const batch = await batchOfJobs(seed, count);
  parentPort!.postMessage({
    taken: batch.filter(({ tried }) => tried.taken).length,
    broken: batch.flatMap(({ one: { kind, text }, tried: { broken } }, place) =>
      broken.length === 0 ? [] : [{ place, kind, broken, text }],
    ),
  });
});
