/**
 * npm run -s mutate -- AREA or FILE ... [--sample N] [--seed N] [--workers N]
 *
 * Changes the source in small ways, one at a time, and tells which changes no test notices. Areas and their tests stand
 * in areas.ts; without an area or file all are run. A sample takes N of an area's mutants at random, the same ones with
 * the same seed; the share killed then has the Wilson interval of 95 %. A change that makes a test run on without end
 * counts as killed. Text is not mutated (StringLiteral): words are for people, and tests are not to repeat them.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { AREAS, type Area } from './areas.ts';
import { filesUnder } from './filesUnder.ts';
import { type Mutant, mutantsOf } from './mutants.ts';
import { run } from './run.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { sample: { type: 'string' }, seed: { type: 'string' }, workers: { type: 'string' } },
});
const sample = Number(values.sample ?? Number.POSITIVE_INFINITY);
const seed = Number(values.seed ?? 1);
const workers = Number(values.workers ?? 2);

/** Files named are mutated as part of the area they belong to. */
function asked(): [string, Area, string[]][] {
  const all = Object.entries(AREAS).map(
    ([name, area]) => [name, area, filesUnder(area.sources, ['.ts'])] as [string, Area, string[]],
  );
  if (positionals.length === 0) return all;
  const unknown = positionals.filter((word) => !all.some(([name, , files]) => name === word || files.includes(word)));
  if (unknown.length > 0)
    throw new Error(
      `${unknown.join(', ')}: no area and no source file of one; areas are ${Object.keys(AREAS).join(', ')}`,
    );
  return all
    .map(
      ([name, area, files]) =>
        [name, area, positionals.includes(name) ? files : files.filter((file) => positionals.includes(file))] as [
          string,
          Area,
          string[],
        ],
    )
    .filter(([, , files]) => files.length > 0);
}

/** The first `sample` in an order shuffled by the seed; a mutant keeps its place in it whatever else there is. */
const drawn = (mutants: Mutant[]) => {
  const rank = ({ key }: Mutant) => createHash('sha256').update(`${seed} ${key}`).digest('hex');
  return mutants
    .map((mutant) => [rank(mutant), mutant] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .slice(0, sample)
    .map(([, mutant]) => mutant);
};

/** 95 % interval of a share. @source Wilson1927 */
function wilson(killed: number, of: number): [number, number] {
  const z = 1.96;
  const share = killed / of;
  const middle = (share + (z * z) / (2 * of)) / (1 + (z * z) / of);
  const half = (z / (1 + (z * z) / of)) * Math.sqrt((share * (1 - share)) / of + (z / (2 * of)) ** 2);
  return [middle - half, middle + half];
}

const TESTS = ['.test.ts', '.test.tsx'];
const percent = (share: number) => (100 * share).toFixed(1);

/** What stands at a mutant, on one line. */
function told({ file, location: { start, end }, mutatorName, replacement }: Mutant): string {
  const lines = readFileSync(file, 'utf8')
    .split('\n')
    .slice(start.line, end.line + 1);
  lines[lines.length - 1] = lines.at(-1)!.slice(0, end.column);
  lines[0] = lines[0]!.slice(start.column);
  const short = (text: string) => (text.length > 100 ? `${text.slice(0, 97)}...` : text);
  const flat = (text: string) => short(text.replace(/\s+/g, ' '));
  return `${file}:${start.line + 1}:${start.column + 1}  ${mutatorName}  ${flat(lines.join('\n'))}  →  ${flat(replacement ?? '')}`;
}

for (const [name, area, files] of asked()) {
  const all = await mutantsOf(files);
  const chosen = drawn(all);
  if (chosen.length === 0) continue;
  let left = chosen;
  let timeouts = 0;
  const broken: Mutant[] = [];
  const [quick, slower] = [
    filesUnder(area.tests, TESTS).filter((file) => !area.slower.includes(file)),
    filesUnder(area.slower, TESTS),
  ];
  // What a test file works out as it is loaded is hidden from the first look, which only runs the tests that come by
  // the place.
  for (const [testFiles, atLoading] of [
    [quick, false],
    [quick, true],
    [slower, false],
  ] as const) {
    if (testFiles.length === 0 || left.length === 0) continue;
    process.stderr.write(`${name}: ${left.length} mutants against ${testFiles.length} test files\n`);
    const found = await run(left, testFiles, atLoading, workers);
    const is = (...status: string[]) => left.filter(({ key }) => status.includes(found.get(key)!));
    const lost = left.find(({ key }) => !found.has(key));
    if (lost !== undefined) throw new Error(`no result for ${told(lost)}`);
    timeouts += is('Timeout').length;
    broken.push(...is('RuntimeError', 'CompileError'));
    left = is('Survived', 'NoCoverage', 'Ignored');
    // A run that is broken off has told something, too.
    process.stderr.write(`${left.map((mutant) => `  lives so far: ${told(mutant)}\n`).join('')}`);
  }
  const of = chosen.length - broken.length;
  const killed = of - left.length;
  const [low, high] = wilson(killed, of);
  for (const mutant of left) console.log(told(mutant));
  for (const mutant of broken) console.log(`not run: ${told(mutant)}`);
  console.log(
    `${name}: ${of} of ${all.length} mutants, ${killed} killed (${timeouts} without end), ${left.length} survived: ${percent(killed / of)} % (${percent(low)} to ${percent(high)}), seed ${seed}`,
  );
}
