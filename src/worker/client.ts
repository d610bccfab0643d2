/** The way from the screen to the worker; one worker serves all screens. */
import { type Remote, wrap } from 'comlink';
import type { Solvers } from './solver.ts';

let solver: Remote<Solvers> | null = null;

export function solvers(): Remote<Solvers> {
  solver ??= wrap<Solvers>(new Worker(new URL('./solver.ts', import.meta.url), { type: 'module' }));
  return solver;
}
