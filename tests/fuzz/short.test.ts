/**
 * The short form of the fuzz (`npm run fuzz` is the long one): the same designs every day; FUZZ_SEED gives others.
 *
 * @module-tag long
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodedText } from '../../src/design/decodedText.ts';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import { LONG } from '../long.ts';
import { bytes, damaged } from './damage.ts';
import { validDesign } from './grammar.ts';
import { tried, triedErrors, triedRaw } from './tried.ts';

const seed = Number(process.env.FUZZ_SEED ?? 1612);
const still = validDesign(0);

test(
  'any valid design: its report keeps the laws',
  () => {
    const seen = { readings: 0, cut: 0, odds: 0, play: 0, many: 0 };
    fc.assert(
      fc.property(still, (design: Design) => {
        for (const key of ['readings', 'cut', 'odds', 'play'] as const) if (design[key]) seen[key]++;
        if (design.seats.length > 2) seen.many++;
        expect(tried(design)).toEqual([]);
      }),
      { seed, numRuns: 12 * LONG },
    );
    // The grammar reaches what it should: a fuzz that makes nothing finds nothing.
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(LONG);
  },
  240_000 * LONG,
);

test(
  'any running one, its work cut short',
  () => {
    const statuses = new Set<string>();
    fc.assert(
      fc.property(validDesign(1), (design: Design) => {
        expect(tried(design, (report) => statuses.add(report.film!.status))).toEqual([]);
      }),
      { seed, numRuns: 5 * LONG },
    );
    expect(statuses.size).toBeGreaterThan(1);
  },
  240_000 * LONG,
);

test(
  'one field damaged: an answer in few words, or a report that keeps the laws',
  () => {
    fc.assert(
      fc.property(damaged(still), (raw) => {
        expect(triedRaw(raw)).toEqual([]);
      }),
      { seed, numRuns: 16 * LONG },
    );
  },
  240_000 * LONG,
);

test(
  'damaged bytes likewise',
  () => {
    fc.assert(
      fc.property(bytes(still), (text) => {
        const result = parseDesign(decodedText(text));
        expect(result.ok ? tried(result.design) : triedErrors(result.errors)).toEqual([]);
      }),
      { seed, numRuns: 40 * LONG },
    );
  },
  240_000 * LONG,
);
