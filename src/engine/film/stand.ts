/** Where the journal stands on its films: held by hand, or where a load puts it. */

import type { Metres } from '../../design/dimension.ts';
import { asFive, type Pose } from '../spindle/pose.ts';
import { type Balance, type Equilibrium, equilibrium, type Load, type Near } from './equilibrium.ts';
import { type Grids, type SpindleRun, solveFilms } from './films.ts';

/**
 * Held by hand, or carrying a load with the journal set to `position` (m), where an adjuster may keep it from coming
 * off its seats.
 */
export type Stand = { pose: Pose } | { load: Load; position: Metres; adjusted?: boolean };

type Stood =
  | ({ status: 'solved' } & Omit<Balance, 'residual' | 'iterations'>)
  | Exclude<Equilibrium, { status: 'solved' }>
  /** held where metal touches, or where a journal does not reach its bush */
  | { status: 'contact' | 'apart'; seat: number; pose: Pose };

/** of the load: good enough for a state among many */
const CLOSE = 1e-4;

/** From a state close by where there is one, and afresh where that leads nowhere. */
export function stand(
  grids: Grids,
  how: Stand,
  run: SpindleRun,
  { coarse, near }: { coarse?: Grids; near?: Near | null } = {},
): Stood {
  if ('pose' in how) {
    const { pose } = how;
    const held = solveFilms(grids, asFive(pose), run);
    if (held.status !== 'solved') return { status: held.status, seat: held.seat, pose };
    return { ...held, pose, coefficients: null, stop: 0 };
  }
  const { load, position, adjusted = false } = how;
  const start = { position, adjusted, close: CLOSE, ...(coarse && { coarse }) };
  const found = equilibrium(grids, load, run, near ? { ...start, near } : start);
  return near && found.status !== 'solved' ? equilibrium(grids, load, run, start) : found;
}
