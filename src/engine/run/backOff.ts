/**
 * Where else the adjuster could stand: the position nearest to the one set at which, cold, the films part the surfaces
 * under this load.
 *
 * Looked for both ways: opened where a seat is shut or too tight, closed where the journal lies so loose that it sinks.
 * By growing steps on a coarse grid, then by halving on the grid of the warm-up.
 */
import type { Metres } from '../../design/dimension.ts';
import { effortOf, isSpent } from '../film/effort.ts';
import { closingSide, equilibrium } from '../film/equilibrium.ts';
import { type Grids, leastFilmIn, newGrids } from '../film/films.ts';
import { COARSE, type Running, WARM } from './running.ts';

interface BackOff {
  /** m */
  position: Metres;
  /** m, of all seats, cold under the load */
  leastFilm: Metres;
}

/** m of film: the first step */
const FIRST = 2e-7;
const GROWING = 1.5;
/** Steps: up to 0.4 mm of film, and then to a thousandth of the last one. */
const STEPS = 20;
const HALVINGS = 9;

export interface Sought {
  /** null where no position within reach parts the surfaces, or none is held by an adjuster */
  backOff: BackOff | null;
  /** none was found before the effort was spent */
  givenUp: boolean;
}

export function backOff(running: Running): Sought {
  const effort = effortOf(running.most.backOff);
  const backOff = nearestPosition({ ...running, run: { ...running.run, effort } });
  return { backOff, givenUp: backOff === null && isSpent(effort) };
}

function nearestPosition({ seats, load, position, adjusted, run, needed }: Running): BackOff | null {
  const side = closingSide(seats);
  if (load === null || !adjusted || side === 'both' || side === 'neither') return null;
  const coarse = newGrids(seats, COARSE);
  let fine: Grids | undefined;
  const least = (grids: Grids, z: number): number | null => {
    const found = equilibrium(grids, load, run, {
      position: z,
      adjusted,
      close: 1e-4,
      ...(grids !== coarse && { coarse }),
    });
    if (found.status !== 'solved') return null;
    // Pressed off the adjuster: setting it there is setting it nowhere.
    return found.stop === 0 ? null : Math.min(...found.seats.map((seat) => seat.least.film));
  };
  const sines = seats.map(({ sin }) => Math.abs(sin));
  const steepest = Math.max(...sines);
  // Where the last seat just opens, measured toward where all open.
  const opens = Math.max(
    ...seats.map((seat, i) =>
      sines[i]! > 1e-9
        ? -(leastFilmIn(seat, { x: 0, y: 0, z: position, tiltX: 0, tiltY: 0 }, run, i)?.film ?? 0) / sines[i]!
        : Number.NEGATIVE_INFINITY,
    ),
  );
  const steps = (from: number) => Array.from({ length: STEPS }, (_, k) => from + (FIRST * GROWING ** k) / steepest);
  // Nearest first. Closing goes no further than where the last seat opens.
  const opening = [Math.max(0, opens), ...steps(Math.max(0, opens))];
  const closing = [
    0,
    ...steps(opens)
      .filter((by) => by < 0)
      .reverse(),
  ];
  const found = [opening, closing].flatMap((places) => {
    const at = places.findIndex((by, k) => k > 0 && (least(coarse, position + side * by) ?? 0) >= needed);
    if (at < 0) return [];
    fine ??= newGrids(seats, WARM);
    return nearestOf(places[at - 1]!, places[at]!, (by) => least(fine!, position + side * by), needed) ?? [];
  });
  if (found.length === 0) return null;
  const nearest = found.reduce((a, b) => (Math.abs(b.by) < Math.abs(a.by) ? b : a));
  return { position: position + side * nearest.by, leastFilm: nearest.film };
}

/**
 * Between a place that does not do and one that should, the nearest to the first that does; null: the second does not
 * either.
 */
function nearestOf(
  from: number,
  to: number,
  filmAt: (by: number) => number | null,
  needed: number,
): { by: number; film: Metres } | null {
  let best = { by: to, film: filmAt(to) };
  if (best.film === null || best.film < needed) return null;
  let fails = from;
  for (let half = 0; half < HALVINGS; half++) {
    const by = (fails + best.by) / 2;
    const film = filmAt(by);
    if (film !== null && film >= needed) best = { by, film };
    else fails = by;
  }
  return best as { by: number; film: Metres };
}
