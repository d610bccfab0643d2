/** What comes off by a plan, with the doubt of the dial; and how far the films may be off then. */
import type { Design } from '../../design/definition.ts';
import { COVER } from '../../design/units.ts';
import { leastFilm } from '../../engine/contact/film.ts';
import { type SeatInput, seatLines } from '../../engine/contact/fit.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import type { Plan } from '../../engine/cutting/plan.ts';
import { NO_STEP, type PlanInput } from '../../engine/cutting/problem.ts';
import type { Trial } from '../../engine/cutting/trial.ts';
import { type CutOff, cutPair } from '../../engine/odds/cut.ts';
import { FEWEST_DRAWN, limitsOf } from '../belief/spread.ts';
import { degrees, metres, millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';
import { FACE_SIGMA, takenSigma } from './metalDoubt.ts';
import type { Cut } from './toCut.ts';

/** `input`: rooms that are left; its seats are the parts as they are taken to be. */
export interface ToCutOff {
  cut: Cut;
  input: PlanInput;
  before: CutOff['before'];
}

/** Surfaces that something came off already: a line is renewed once. */
export const cutBefore = (trials: readonly Trial[]): CutOff['before'] =>
  trials.flatMap(({ taken }) => taken.map(({ seat, part }) => ({ seat, part })));

/** Less than is set on a dial is lapped off and gauged as it comes (engine/cutting/leftToCut.ts): no dial errs then. */
export function cutOffBy({ cut, input, before }: ToCutOff, { rooms, amounts }: Plan): CutOff {
  const taken = rooms.flatMap(({ of }, k) => {
    const normal = amounts[k]!;
    if (of.kind !== 'surface' || normal < NO_STEP) return [];
    const { seat, part } = of;
    const halfAngle = degrees(input.seats[seat]![part].halfAngle);
    const dial = (mm: number) => metres(takenSigma(cut, mm, halfAngle));
    return [{ seat, part, normal, sigma: normal < dial(0) ? 0 : dial(millimetres(normal)) }];
  });
  const faces = rooms.flatMap(({ of }, k) =>
    of.kind === 'face' && Math.abs(amounts[k]!) >= NO_STEP
      ? [{ face: of.face, off: amounts[k]!, sigma: metres(FACE_SIGMA) }]
      : [],
  );
  return { input, off: { taken, faces }, before };
}

/**
 * How far each film may be off the plan's once all of it is off (mm): by the pairs drawn, each cut by the plan, and by
 * the dial at every cut.
 *
 *   σ_i² = Σ w_k·(film_ik - film_i)² + Σ_c (film_i with σ_c more off - film_i)²
 *
 * Undefined where hardly a pair goes with what was read; null of a film that is not to be had there.
 */
export function filmsOffThen(
  { seats }: Pick<Design, 'seats'>,
  to: ToCutOff,
  plan: Plan,
  likely: readonly SeatInput[],
  { pairs, weights, effective }: PairsDrawn,
): Pick<NonNullable<CutReport['remaining']>, 'sigmas' | 'limits'> | undefined {
  if (effective < FEWEST_DRAWN) return undefined;
  const off = cutOffBy(to, plan);
  const filmsOf = (pair: readonly SeatInput[], errors?: readonly number[]) =>
    cutPair(off, pair, errors).map((seat) => leastFilm(seatLines(seat).gap, plan.position));
  const about = filmsOf(likely);
  const sum = about.map(() => 0);
  const all = about.map(() => 0);
  const add = (films: readonly (number | null)[], weight: number, share: number) => {
    for (const [i, film] of films.entries())
      if (film !== null && about[i] !== null) {
        sum[i]! += weight * (film - about[i]!) ** 2;
        all[i]! += share;
      }
  };
  const each = pairs.map((pair) => filmsOf(pair));
  for (const [k, films] of each.entries()) add(films, weights[k]!, weights[k]!);
  const drawn = [...sum];
  const sigmas = [...off.off.taken, ...(off.off.faces ?? [])].map(({ sigma }) => sigma);
  for (const [c, sigma] of sigmas.entries())
    add(
      filmsOf(
        likely,
        sigmas.map((_, k) => (k === c ? sigma : 0)),
      ),
      1,
      0,
    );
  const named = <T>(of: (i: number) => T) =>
    Object.fromEntries(seats.map(({ name }, i) => [name, all[i]! > MOST_HAVE ? of(i) : null]));
  // The dial is wrong either way alike, and apart from the parts.
  const ends = (i: number): [number, number] | null => {
    const dial = COVER ** 2 * (sum[i]! - drawn[i]!);
    const found = limitsOf(
      each.map((films) => films[i]!),
      weights,
    );
    if (!found || about[i] === null) return null;
    const [low, high] = found.map((end) => end - about[i]!);
    return [about[i] - Math.hypot(low!, Math.sqrt(dial)), about[i] + Math.hypot(high!, Math.sqrt(dial))].map(
      millimetres,
    ) as [number, number];
  };
  return { sigmas: named((i) => millimetres(Math.sqrt(sum[i]!))), limits: named(ends) };
}

/** Share of the pairs that must have a film for it to say anything of the parts. */
const MOST_HAVE = 0.975;
