import { defineConfig } from 'vitest/config';

/** Stryker starts this in its copy of the tree; run.ts names the test files. */
export default defineConfig({
  root: process.cwd(),
  test: {
    environment: 'node',
    include: (process.env.MUTATION_TESTS ?? '').split(','),
    exclude: [],
    setupFiles: ['tests/mutation/noShrinking.ts'],
    testTimeout: 240_000,
    // Beside other work the hooks that simulate notebooks take minutes.
    hookTimeout: 900_000,
  },
});
