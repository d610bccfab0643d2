import { defineConfig } from 'vitest/config';

/** Stryker starts this in its copy of the tree; run.ts names the test files. */
export default defineConfig({
  root: process.cwd(),
  test: {
    environment: 'node',
    include: (process.env.MUTATION_TESTS ?? '').split(','),
    exclude: [],
    setupFiles: ['tests/mutation/noShrinking.ts'],
    // Counted and beside other work a test of the film takes minutes; a change without end is seen by Stryker.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
  },
});
