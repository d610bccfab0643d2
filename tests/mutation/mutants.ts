import { readFileSync } from 'node:fs';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { keyOf, type Placed } from './key.mjs';

export const EXCLUDED = ['StringLiteral'];

export interface Mutant extends Placed {
  key: string;
  file: string;
  mutatorName: string;
}

const silent = {
  isTraceEnabled: off,
  isDebugEnabled: off,
  isInfoEnabled: off,
  isWarnEnabled: off,
  isErrorEnabled: off,
  isFatalEnabled: off,
  trace() {},
  debug() {},
  info() {},
  warn() {},
  error() {},
  fatal() {},
};
function off() {
  return false;
}

/** Every mutant that Stryker makes of the files; lines and columns from 0. */
export async function mutantsOf(files: readonly string[]): Promise<Mutant[]> {
  const { mutants } = await new Instrumenter(silent).instrument(
    files.map((name) => ({ name, content: readFileSync(name, 'utf8'), mutate: true })),
    { plugins: null, excludedMutations: EXCLUDED, ignorers: [] },
  );
  return mutants
    .filter(({ status }) => status !== 'Ignored')
    .map((mutant) => ({ ...mutant, key: keyOf(mutant), file: mutant.fileName }));
}
