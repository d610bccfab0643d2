/**
 * Where else the adjuster could stand: the position nearest to the one set at which, cold, the films part the surfaces under this load.
 *
 * Looked for only toward where the seats open: from there on a load that presses the journal off its adjuster would be carried no better.
 * Opening by growing steps, then halving, on the grid of the sweeps.
 */
import { closingSide, equilibrium } from '../../engine/film/equilibrium.ts';
import { leastFilmIn, newSpindle } from '../../engine/film/spindle.ts';
import { millimetres as mm } from '../toEngine.ts';
import { COARSE, QUICK, type RunInput } from './solveRun.ts';

export interface BackOff {
  /** mm */
  position: number;
  /** mm, of all seats, cold under the load */
  leastFilm: number;
}

/** m */
const FIRST = 2e-7;
const GROWING = 1.5;
/** Steps: up to 80 µm of film, and then to a thousandth of the last one. */
const STEPS = 14;
const HALVINGS = 9;

/** @param needed m. Null where no position within reach parts the surfaces, or none is held by an adjuster. */
export function backOff(input: RunInput, needed: number): BackOff | null {
  const { seats, load, position, adjusted, run } = input;
  const side = closingSide(seats);
  if (load === null || !adjusted || side === 'both' || side === 'neither') return null;
  const spindle = newSpindle(seats, QUICK);
  const coarse = newSpindle(seats, COARSE);
  const leastAt = (z: number): number | null => {
    const found = equilibrium(spindle, load, run, { position: z, adjusted, coarse, close: 1e-4 });
    if (found.status !== 'solved') return null;
    // Pressed off the adjuster: setting it there is setting it nowhere.
    return found.stop === 0 ? null : Math.min(...found.seats.map(({ least }) => least.film));
  };
  const sines = seats.map(({ shape: { gap } }) => Math.abs(Math.sin(gap.halfAngle)));
  const shut = seats.map((seat, i) => Math.max(0, -(leastFilmIn(seat, { x: 0, y: 0, z: position, tiltX: 0, tiltY: 0 }, run, i)?.film ?? 0)) / (sines[i] || Number.POSITIVE_INFINITY));
  let from = position + side * Math.max(...shut);
  for (let k = 0; k < STEPS; k++) {
    let to = from + (side * FIRST * GROWING ** k) / Math.max(...sines);
    let film = leastAt(to);
    if (film !== null && film >= needed) {
      for (let half = 0; half < HALVINGS; half++) {
        const middle = (from + to) / 2;
        const there = leastAt(middle);
        if (there !== null && there >= needed) [to, film] = [middle, there];
        else from = middle;
      }
      return { position: mm(to), leastFilm: mm(film) };
    }
    from = to;
  }
  return null;
}
