/** Where to set the journal cold, so that a film is as wanted once everything is warm. */
import type { Metres } from '../../design/dimension.ts';
import { closingSide } from '../film/equilibrium.ts';
import { leastFilmIn } from '../film/films.ts';
import { growths, type WarmFilm, type Warming, type WarmVerdict } from '../heat/warmFilm.ts';
import { steadyState } from '../heat/warmUp.ts';

/** m: where the journal is set, or held by hand */
export const setPosition = ({ stand }: Warming): number => ('pose' in stand ? stand.pose.z : stand.position);

/** m: the least cold film of a seat, the journal centred at a position; 0 where it does not reach its bush */
export function coldFilm(warming: Warming, seat: number, position: Metres): number {
  const growth = growths(warming, warming.ambient, warming.ambient);
  const cold = { omega: 0, viscosity: [], growth };
  const centred = { x: 0, y: 0, z: position, tiltX: 0, tiltY: 0 };
  return leastFilmIn(warming.grids.seats[seat]!, centred, cold, seat)?.film ?? 0;
}

export type ColdPosition =
  /** m, position to set cold, and the state it warms to */
  | { status: 'found'; position: Metres; state: WarmFilm }
  /** moving the journal does not set this film: the seat is straight, or the oil finds the position itself */
  | { status: 'notSet' }
  /** the load presses the journal off its adjuster, to where this seat keeps `film` (m) and no more */
  | { status: 'pressed'; film: Metres }
  /**
   * none found: the nearest warm film (m) met on the way, null when there was none, and what was in the way last: a
   * seat shut even cold and centred there, or one in which metal touches as it warms or under the load. A tighter film
   * runs hotter and may open by growth as fast as it is closed
   */
  | { status: 'notFound'; nearest: number | null; inTheWay: { seat: number; shut: boolean } | null };

/** m: the film of one seat as it stands warm, journal centred: what growth has left of the one that was set. */
export function centredFilm({ grids }: Warming, seat: number, { pose: { z }, run }: WarmFilm): number {
  return leastFilmIn(grids.seats[seat]!, { x: 0, y: 0, z, tiltX: 0, tiltY: 0 }, run, seat)!.film;
}

/** m of film */
const CLOSE = 1e-9;
/** m: less film than this and a seat is shut */
const SHUT = 2e-7;
const MOST_TURNS = 9;

/**
 * Where to set the journal cold so that the film of one seat, warm and steady and the journal centred, is `film` (m).
 * Only for a journal held axially: `warming.stand` a pose, or a load whose equilibrium needs the stop. Secant steps
 * from the slope sin a.
 */
export function coldPositionFor(warming: Warming, seat: number, film: Metres): ColdPosition {
  const sine = warming.grids.seats[seat]!.sin;
  if (Math.abs(sine) < 1e-6) return { status: 'notSet' };
  const setAt = (position: Metres): Warming => ({
    ...warming,
    stand: 'pose' in warming.stand ? { pose: { ...warming.stand.pose, z: position } } : { ...warming.stand, position },
  });
  // From where the cold film is the one wanted: what is found is then the same wherever the journal stands now.
  const now = setPosition(warming);
  let position = now + (film - coldFilm(warming, seat, now)) / sine;
  let slope = sine;
  let before: { position: Metres; film: Metres } | null = null;
  let near: WarmFilm | null = null;
  let nearest: number | null = null;
  let inTheWay: { seat: number; shut: boolean } | null = null;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const state: WarmVerdict = steadyState(setAt(position), near);
    if (state.status !== 'solved') {
      const films = warming.grids.seats.map((_, i) => coldFilm(warming, i, position));
      const least = Math.min(...films);
      inTheWay =
        least < SHUT
          ? { seat: films.indexOf(least), shut: true }
          : state.status === 'contact'
            ? { seat: state.seat, shut: false }
            : null;
      // Too tight there: open by a film and a half, or go half way back.
      position = before === null ? position + (1.5 * film) / sine : (position + before.position) / 2;
      near = null;
      continue;
    }
    const here = centredFilm(warming, seat, state);
    if (!('pose' in warming.stand) && state.stop === 0) {
      if (warming.stand.adjusted !== true || closingSide(warming.grids.seats) === 'both') return { status: 'notSet' };
      if (here < film - CLOSE) return { status: 'pressed', film: here };
      // Off its adjuster now, but it need not be where it is to stand.
      position = state.pose.z;
    }
    near = state;
    if (nearest === null || Math.abs(here - film) < Math.abs(nearest - film)) nearest = here;
    if (Math.abs(here - film) <= CLOSE) return { status: 'found', position, state };
    if (before !== null && Math.abs(position - before.position) > 1e-12) {
      const secant = (here - before.film) / (position - before.position);
      if (secant * sine > 0.05 * sine * sine) slope = secant;
    }
    before = { position, film: here };
    position += (film - here) / slope;
  }
  return { status: 'notFound', nearest, inTheWay };
}
