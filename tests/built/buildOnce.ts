/** The page is built once for all tests that use it as a person gets it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** folder of the built page */
    built: string;
  }
}

const top = join(import.meta.dirname, '../..');

export default async function setup(project: TestProject) {
  const outDir = mkdtempSync(join(tmpdir(), 'built-'));
  await build({ configFile: join(top, 'vite.config.ts'), logLevel: 'silent', build: { outDir, emptyOutDir: true } });
  project.provide('built', outDir);
  return () => rmSync(outDir, { recursive: true, force: true });
}
