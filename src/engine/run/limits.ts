/**
 * What speed and what cold clearance stay safe once everything is warm, and where to set the journal cold.
 *
 * Every point is a steady state of its own (heat/warmUp.ts), so it holds for a spindle that has run for hours; whether
 * the way there is safe too, the warm-up tells. Long work comes as a generator of points, so that whoever drives it can
 * show them, and stop.
 */
import { closingSide } from '../film/equilibrium.ts';
import { leastFilmIn, summedCoefficients } from '../film/films.ts';
import { type Rotor, rotorWhirl } from '../film/whirl.ts';
import { growths, type WarmFilm, type Warming, type WarmVerdict, warmFilm } from '../heat/warmFilm.ts';
import { steadyState } from '../heat/warmUp.ts';

export type Condition =
  /** the least film is what is needed, and the spindle runs calmly */
  | 'works'
  /** the films close as they warm, or no film carries the load */
  | 'seizes'
  /** a film, but thinner than needed */
  | 'thin'
  /** it whirls: too much clearance for so little load */
  | 'loose'
  /** a film, but hotter than its oil lasts */
  | 'hot'
  | 'notConverged';

export interface SteadyPoint {
  /** rad/s, or m of clearance: what is varied */
  at: number;
  condition: Condition;
  /** °C, m, W; null where there is no steady state */
  journal: number | null;
  bush: number | null;
  leastFilm: number | null;
  /** m: the least film before anything has warmed, where it is asked for; null where there is none */
  coldFilm: number | null;
  power: number | null;
}

/**
 * °C: hotter, mineral oil ages fast in a bearing without forced oil.
 * @source ISO7902-3 (its limit for such bearings)
 */
export const OIL_LASTS = 90;

/** What is asked of a running spindle. */
export interface Needs {
  /** m */
  film: number;
  /** for whirl; left out, none is looked for */
  rotor?: Rotor;
  /** whether the film is needed from the start too, everything still cold */
  fromCold?: boolean;
}

/** The steady state of one setup, judged. */
export function steadyPoint(
  at: number,
  warming: Warming,
  needs: Needs,
  near: WarmFilm | null = null,
): { point: SteadyPoint; state: WarmFilm | null } {
  let verdict: WarmVerdict = steadyState(warming, near);
  if (verdict.status !== 'solved' && near !== null) verdict = steadyState(warming);
  if (verdict.status !== 'solved')
    return {
      point: {
        at,
        condition: verdict.status === 'contact' ? 'seizes' : 'notConverged',
        journal: null,
        bush: null,
        leastFilm: null,
        coldFilm: null,
        power: null,
      },
      state: null,
    };
  const leastFilm = leastOf(verdict);
  const coldFilm = needs.fromCold ? leastCold(warming) : null;
  const hottest = Math.max(verdict.journal, verdict.bush, ...verdict.oil);
  const condition =
    leastFilm < needs.film || (needs.fromCold && (coldFilm ?? 0) < needs.film)
      ? 'thin'
      : needs.rotor && !calm(warming, verdict, needs.rotor)
        ? 'loose'
        : hottest > OIL_LASTS
          ? 'hot'
          : 'works';
  return {
    point: {
      at,
      condition,
      journal: verdict.journal,
      bush: verdict.bush,
      leastFilm,
      coldFilm,
      power: verdict.total.power,
    },
    state: verdict,
  };
}

const leastOf = ({ seats }: WarmFilm): number => Math.min(...seats.map(({ least }) => least.film));

/** m: the least film before anything has warmed; null where nothing carries. */
function leastCold(warming: Warming): number | null {
  const cold = warmFilm(warming, warming.ambient, warming.ambient, null);
  return cold.status === 'solved' ? leastOf(cold) : null;
}

/** Whether it does not whirl in the state whose films stand solved. */
export function calm({ grids, omega, stand }: Warming, { run, stop }: WarmFilm, rotor: Rotor): boolean {
  const held = 'pose' in stand || stop !== 0;
  return rotorWhirl(rotor, omega, summedCoefficients(grids, run, 1e-5), held)?.stable !== false;
}

/** Steady states at these speeds (rad/s), one after another. */
export function* overSpeeds(warming: Warming, speeds: readonly number[], needs: Needs): Generator<SteadyPoint> {
  let near: WarmFilm | null = null;
  for (const omega of speeds) {
    const { point, state } = steadyPoint(omega, { ...warming, omega }, needs, near);
    near = state;
    yield point;
  }
}

/** With this much cold film (m) added to every seat. */
export const withClearance = (warming: Warming, extra: number): Warming => ({
  ...warming,
  extra: warming.grids.seats.map(() => extra),
});

/** With every seat that is aimed at cut so that its least cold film, the journal centred as it is set, is this (m). */
export function withFilm(warming: Warming, film: number, aimed: readonly boolean[]): Warming {
  const position = setPosition(warming);
  return {
    ...warming,
    extra: aimed.map((is, seat) => (is ? film - coldFilm(warming, seat, position) : 0)),
  };
}

/** Steady states of what is cut otherwise (`cut`: to this clearance, or film; m), one after another. */
export function* overCuts(
  cut: (at: number) => Warming,
  values: readonly number[],
  needs: Needs,
): Generator<SteadyPoint> {
  let near: WarmFilm | null = null;
  for (const at of values) {
    const { point, state } = steadyPoint(at, cut(at), needs, near);
    near = state;
    yield point;
  }
}

/** m: where the journal is set, or held by hand */
const setPosition = ({ stand }: Warming): number => ('pose' in stand ? stand.pose.z : stand.position);

/** m: the least cold film of a seat, the journal centred at a position; 0 where it does not reach its bush */
function coldFilm(warming: Warming, seat: number, position: number): number {
  const growth = growths(warming, warming.ambient, warming.ambient);
  const cold = { omega: 0, viscosity: [], growth };
  const centred = { x: 0, y: 0, z: position, tiltX: 0, tiltY: 0 };
  return leastFilmIn(warming.grids.seats[seat]!, centred, cold, seat)?.film ?? 0;
}

/**
 * Where a stretch of points that work begins and ends, around the point nearest `from`, brought to 1 part in 100 of a
 * step; null: none works.
 */
export function workingStretch(
  points: readonly SteadyPoint[],
  from: number,
  judge: (at: number) => Condition,
): { from: number; to: number; openBelow: boolean; openAbove: boolean } | null {
  const working = points.map((point, i) => ({ point, i })).filter(({ point }) => point.condition === 'works');
  if (working.length === 0) return null;
  const nearest = working.reduce((a, b) => (Math.abs(b.point.at - from) < Math.abs(a.point.at - from) ? b : a)).i;
  let first = nearest;
  let last = nearest;
  while (first > 0 && points[first - 1]!.condition === 'works') first--;
  while (last < points.length - 1 && points[last + 1]!.condition === 'works') last++;
  const border = (inside: number, outside: number) => {
    for (let i = 0; i < 7; i++) {
      const middle = (inside + outside) / 2;
      if (judge(middle) === 'works') inside = middle;
      else outside = middle;
    }
    return inside;
  };
  return {
    from: first === 0 ? points[0]!.at : border(points[first]!.at, points[first - 1]!.at),
    to: last === points.length - 1 ? points[last]!.at : border(points[last]!.at, points[last + 1]!.at),
    openBelow: first === 0,
    openAbove: last === points.length - 1,
  };
}

/** A film to aim for (m), and how far off it a seat may be cut and still run well. */
export interface Aim {
  film: number;
  tolerance: number;
}

/** Of the way to the nearer end of what works; the rest is for what is left out here. @source practice */
const NEARER = 0.8;

/**
 * The film to aim for within a stretch that works: its geometric middle, as far from too tight as from too loose in
 * proportion; but no looser than where the warm film stops growing, for beyond it clearance only adds play.
 */
export function aimWithin(points: readonly SteadyPoint[], { from, to }: { from: number; to: number }): Aim | null {
  const within = points.filter(({ at, leastFilm }) => leastFilm !== null && at >= from && at <= to);
  if (within.length === 0) return null;
  const thickest = within.reduce((a, b) => (b.leastFilm! > a.leastFilm! ? b : a)).at;
  const middle = Math.sqrt(from * to);
  const film = thickest > from ? Math.min(middle, thickest) : middle;
  return { film, tolerance: NEARER * Math.min(film - from, to - film) };
}

export type ColdPosition =
  /** m, position to set cold, and the state it warms to */
  | { status: 'found'; position: number; state: WarmFilm }
  /** moving the journal does not set this film: the seat is straight, or the oil finds the position itself */
  | { status: 'notSet' }
  /** the load presses the journal off its adjuster, to where this seat keeps `film` (m) and no more */
  | { status: 'pressed'; film: number }
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
export function coldPositionFor(warming: Warming, seat: number, film: number): ColdPosition {
  const sine = warming.grids.seats[seat]!.sin;
  if (Math.abs(sine) < 1e-6) return { status: 'notSet' };
  const setAt = (position: number): Warming => ({
    ...warming,
    stand: 'pose' in warming.stand ? { pose: { ...warming.stand.pose, z: position } } : { ...warming.stand, position },
  });
  // From where the cold film is the one wanted: what is found is then the same wherever the journal stands now.
  const now = setPosition(warming);
  let position = now + (film - coldFilm(warming, seat, now)) / sine;
  let slope = sine;
  let before: { position: number; film: number } | null = null;
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
