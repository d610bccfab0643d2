import { resolve } from 'node:path';
import type { LogLevel } from '@stryker-mutator/api/core';
import { Stryker } from '@stryker-mutator/core';
import { keyOf } from './key.mjs';
import { EXCLUDED, type Mutant } from './mutants.ts';

/**
 * What became of each of the mutants, by its key; with `atLoading` they act from the start where a test file comes by
 * them as it is loaded.
 */
export async function run(
  mutants: readonly Mutant[],
  testFiles: readonly string[],
  atLoading: boolean,
  workers: number,
): Promise<Map<string, string>> {
  const chosen = mutants.map(({ key }) => key);
  const options = {
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
    plugins: ['@stryker-mutator/vitest-runner', resolve('tests/mutation/chosen.mjs')],
    checkers: ['chosen'],
    chosen,
    mutate: [...new Set(mutants.map(({ file }) => file))],
    mutator: { excludedMutations: EXCLUDED },
    coverageAnalysis: 'perTest' as const,
    ignoreStatic: !atLoading,
    // TypeScript 7 has no compiler interface that Stryker could call: a file that is not there keeps it from trying.
    tsconfigFile: 'none.json',
    disableTypeChecks: false,
    concurrency: workers,
    // Other work on the machine must not pass for a change that runs without end.
    timeoutMS: 10_000,
    dryRunTimeoutMinutes: 60,
    reporters: [],
    logLevel: 'error' as string as LogLevel,
    warnings: false,
    tempDirName: 'node_modules/.stryker',
    allowEmpty: true,
  };
  // Read by vitest.config.ts. Stryker's own `testFiles` would switch a change on only after what a test file works out
  // as it is loaded.
  process.env.MUTATION_TESTS = testFiles.join();
  const results = await new Stryker(options).runMutationTest();
  const fromZero = ({ line, column }: { line: number; column: number }) => ({ line: line - 1, column: column - 1 });
  return new Map(
    results.map((one) => [
      keyOf({ ...one, location: { start: fromZero(one.location.start), end: fromZero(one.location.end) } }),
      one.status,
    ]),
  );
}
