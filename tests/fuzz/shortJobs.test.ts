/**
 * The short form of the fuzz of what comes from anywhere (`npm run fuzz:jobs` is the long one).
 *
 * @module-tag long
 */
import { expect, test } from 'vitest';
import { LONG } from '../long.ts';
import { batchOfJobs } from './batchOfJobs.ts';
import { KINDS } from './grammarJobs.ts';

const seed = Number(process.env.FUZZ_SEED ?? 1612);
const BATCHES = 15 * LONG;
const CASES = 200;

test(
  'files, records, links, tables and lists, whole and damaged: taken whole or refused in few words',
  async () => {
    const seen = Object.fromEntries(KINDS.map((kind) => [kind, { taken: 0, refused: 0 }]));
    for (let i = 0; i < BATCHES; i++)
      for (const { one, tried } of await batchOfJobs(seed + i, CASES)) {
        expect(tried.broken, `seed ${seed + i}: ${one.kind}: ${one.text.slice(0, 200)}`).toEqual([]);
        seen[one.kind]![tried.taken ? 'taken' : 'refused']++;
      }
    // A fuzz that makes nothing, or nothing that is whole, finds nothing.
    for (const [kind, { taken, refused }] of Object.entries(seen)) {
      expect(taken, kind).toBeGreaterThan(20 * LONG);
      expect(refused, kind).toBeGreaterThan(100 * LONG);
    }
  },
  240_000 * LONG,
);
