/** So many cases of one seed, about designs of that seed, each tried. */
import fc from 'fast-check';
import { validDesign } from './grammar.ts';
import { type Case, caseOf } from './grammarJobs.ts';
import { type Tried, triedCase } from './triedJobs.ts';

const DESIGNS = 3;

export async function batchOfJobs(seed: number, count: number): Promise<{ one: Case; tried: Tried }[]> {
  const designs = fc.sample(validDesign(0), { seed, numRuns: DESIGNS, unbiased: true });
  const cases = fc.sample(caseOf(designs), { seed, numRuns: count });
  const all: { one: Case; tried: Tried }[] = [];
  for (const one of cases) all.push({ one, tried: await triedCase(one) });
  return all;
}
