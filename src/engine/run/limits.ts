/**
 * What speed and what cold clearance stay safe, cold as it starts and once everything is warm.
 *
 * Every point is a steady state of its own (heat/warmUp.ts), so it holds for a spindle that has run for hours; whether
 * the way there is safe too, the warm-up tells. Long work comes as a generator of points, so that whoever drives it can
 * show them, and stop.
 */
import type { Metres } from '../../design/dimension.ts';
import { summedCoefficients } from '../film/films.ts';
import { type Rotor, rotorWhirl } from '../film/whirl.ts';
import { type WarmFilm, type Warming, type WarmVerdict, warmFilm } from '../heat/warmFilm.ts';
import { steadyState } from '../heat/warmUp.ts';
import { coldFilm, setPosition } from './coldPosition.ts';

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
  /** a film, but its drag before anything has warmed is more than what drives it gives */
  | 'drags'
  | 'notConverged';

export interface SteadyPoint {
  /** rad/s, or m of clearance: what is varied */
  at: number;
  condition: Condition;
  /** °C, m, W; null where there is no steady state */
  journal: number | null;
  bush: number | null;
  leastFilm: Metres | null;
  power: number | null;
}

/** Of a spindle cut otherwise, or at another speed, whose film is needed from the start too, everything still cold. */
export interface SteadyCut extends SteadyPoint {
  /** the least film before anything has warmed, and the drag (W) then; null where there is none */
  coldFilm: Metres | null;
  coldPower: number | null;
}

/**
 * °C: hotter, mineral oil ages fast in a bearing without forced oil.
 * @source ISO7902-3 (its limit for such bearings)
 */
export const OIL_LASTS = 90;

/** What is asked of a running spindle. */
export interface Needs {
  /** m */
  film: Metres;
  /** W: the most it may drag cold; left out, as much as it will */
  power?: number;
  /** for whirl; left out, none is looked for */
  rotor?: Rotor;
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
        power: null,
      },
      state: null,
    };
  const leastFilm = leastOf(verdict);
  const hottest = Math.max(verdict.journal, verdict.bush, ...verdict.oil);
  const condition =
    leastFilm < needs.film
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
      power: verdict.total.power,
    },
    state: verdict,
  };
}

/** The same of one that must have its film cold as well, and be turned then. */
export function steadyCut(
  at: number,
  warming: Warming,
  needs: Needs,
  near: WarmFilm | null = null,
): { point: SteadyCut; state: WarmFilm | null } {
  const { point, state } = steadyPoint(at, warming, needs, near);
  if (state === null) return { point: { ...point, coldFilm: null, coldPower: null }, state };
  // Last, since it solves the films anew on the same grids: whirl was judged of those that run warm.
  const { coldFilm, coldPower } = coldOf(warming);
  const drags = (coldPower ?? 0) > (needs.power ?? Number.POSITIVE_INFINITY);
  const { condition: warm } = point;
  // In the order in which the verdict tells them.
  const calmed = warm === 'works' || warm === 'loose';
  const condition = (coldFilm ?? 0) < needs.film ? 'thin' : drags && calmed ? 'drags' : warm;
  return { point: { ...point, condition, coldFilm, coldPower }, state };
}

const leastOf = ({ seats }: WarmFilm): number => Math.min(...seats.map(({ least }) => least.film));

/** The least film (m) and the drag (W) before anything has warmed; null where nothing carries. */
function coldOf(warming: Warming): Pick<SteadyCut, 'coldFilm' | 'coldPower'> {
  const cold = warmFilm(warming, warming.ambient, warming.ambient, null);
  if (cold.status !== 'solved') return { coldFilm: null, coldPower: null };
  return { coldFilm: leastOf(cold), coldPower: cold.total.power };
}

/** Whether it does not whirl in the state whose films stand solved. */
export function calm({ grids, omega, stand }: Warming, { run, stop }: WarmFilm, rotor: Rotor): boolean {
  const held = 'pose' in stand || stop !== 0;
  return rotorWhirl(rotor, omega, summedCoefficients(grids, run, 1e-5), held)?.stable !== false;
}

/** With this much cold film (m) added to every seat. */
export const withClearance = (warming: Warming, extra: number): Warming => ({
  ...warming,
  extra: warming.grids.seats.map(() => extra),
});

/** With every seat that is aimed at cut so that its least cold film, the journal centred as it is set, is this (m). */
export function withFilm(warming: Warming, film: Metres, aimed: readonly boolean[]): Warming {
  const position = setPosition(warming);
  return {
    ...warming,
    extra: aimed.map((is, seat) => (is ? film - coldFilm(warming, seat, position) : 0)),
  };
}

/** Steady states of what is cut otherwise (`cut`: to this clearance, or film; m), one after another. */
export function* overCuts(cut: (at: number) => Warming, values: readonly number[], needs: Needs): Generator<SteadyCut> {
  let near: WarmFilm | null = null;
  for (const at of values) {
    const { point, state } = steadyCut(at, cut(at), needs, near);
    near = state;
    yield point;
  }
}

/** With the spindle turning at this speed (rad/s). */
export const atSpeed = (warming: Warming, omega: number): Warming => ({ ...warming, omega });

/**
 * Steady states at these speeds (rad/s), one after another: it starts cold at any of them, and must have its film then
 * too.
 */
export const overSpeeds = (warming: Warming, speeds: readonly number[], needs: Needs): Generator<SteadyCut> =>
  overCuts((omega) => atSpeed(warming, omega), speeds, needs);

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
  film: Metres;
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
