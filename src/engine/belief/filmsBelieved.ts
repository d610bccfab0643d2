/**
 * What is believed of the films: by how much the least film of every seat is most likely greater than a design gives,
 * and how sure that is, with the errors of metal that readings and films both lean on.
 *
 *   mean_i = film_i as believed - film_i of the design        C_ij = g_iᵀ·C·g_j
 *
 * g_i how the film of seat i follows the numbers (filmGradient.ts), C their covariance. The least film is the least of
 * those along the line; where the lines may lean either way it is not known at which end it stands. `atEnds` tells the
 * films of one end of each seat, for every choice of ends that may be so.
 * @source JCGM100 5.2.2
 */
import type { Metres } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import { lowerRoot, lowerSolved } from '../algebra/triangular.ts';
import { leastFilm } from '../contact/film.ts';
import { type SeatInput, seatLines } from '../contact/fit.ts';
import type { FilmsBefore } from './accounts.ts';
import type { Belief } from './belief.ts';
import { covarianceOf, toldParts, unit } from './decomposition.ts';
import { filmBranches, leastFilmFollowed } from './filmGradient.ts';
import { type Branch, gradientOf } from './unknowns.ts';

/** of the greatest variance: less is rounding */
const ROUND_OFF = 1e-9;

export interface FilmsBelieved {
  /** m; films, then errors */
  mean: number[];
  /** m², of films and errors */
  covariance: number[][];
  /** how each of them follows the numbers; of nothing where the film of a seat is not to be had */
  gradients: Float64Array[];
}

/** The question: of the films of which design, at which position (m). */
interface FilmsOf {
  belief: Belief;
  design: readonly SeatInput[];
  position: Metres;
  /** of the errors among the numbers */
  places: readonly number[];
  /** m, of a film that is not to be had there: the parts are apart */
  doubt: number;
}

export function filmsBelieved(of: FilmsOf): FilmsBelieved {
  const { belief, position } = of;
  return told(
    of,
    belief.seats.map((seat, i) => leastFilmFollowed(seatLines(seat), i, position)),
  );
}

/**
 * Variance (m²) of a value that follows the shapes so, beyond what the films tell of it: a shake leans on both ends of
 * every line.
 *   gᵀ·C·g - cᵀ·F⁻¹·c      c covariances of the value with the films, F those of the films
 */
export function beyondFilms(belief: Belief, { covariance, gradients }: FilmsBelieved): FilmsBefore['beyond'] {
  const { unknowns, decomposition } = belief;
  const least = ROUND_OFF * Math.max(...covariance.map((row, i) => row[i]!));
  const root = lowerRoot(covariance.length, (i, k) => covariance[i]![k]!, least);
  return (influences, seats) => {
    const gradient = gradientOf(influences, seats, unknowns);
    const whole = covarianceOf(decomposition, gradient, gradient);
    const along = lowerSolved(
      root,
      gradients.map((film) => covarianceOf(decomposition, film, gradient)),
    );
    return Math.max(0, whole - dot(along, along));
  };
}

/** Beyond so many choices of ends only one seat at a time is taken at its other end. */
const CHOICES = 16;
/** An end whose film is this many standard deviations above that of the other is never the least. */
const NEVER = 4;

export function atEnds(of: FilmsOf): FilmsBelieved[] {
  const ends = of.belief.seats.map((seat, i) => endsOf(of.belief, filmBranches(seatLines(seat), i, of.position)));
  const all = ends.reduce((product, { length }) => product * Math.max(1, length), 1) <= CHOICES;
  const first: (Branch | null)[] = ends.map((of) => of[0] ?? null);
  const choices = all
    ? ends.reduce<(Branch | null)[][]>(
        (made, of) => made.flatMap((choice) => (of.length > 0 ? of : [null]).map((end) => [...choice, end])),
        [[]],
      )
    : [first, ...ends.flatMap((of, i) => of.slice(1).map((end) => first.map((own, k) => (k === i ? end : own))))];
  return choices.map((choice) => told(of, choice));
}

/** The least, and of the two ends of the line that which may be it instead. */
function endsOf({ seats, unknowns, decomposition }: Belief, branches: readonly Branch[]): Branch[] {
  if (branches.length === 0) return [];
  const least = branches.reduce((a, b) => (b.value < a.value ? b : a));
  const gradient = gradientOf(least.influences, seats, unknowns);
  const isRival = (end: Branch) => {
    const apart = gradientOf(end.influences, seats, unknowns).map((g, j) => g - gradient[j]!);
    return end.value - least.value < NEVER * Math.hypot(...toldParts(decomposition, apart));
  };
  const ends = [branches[0]!, branches[branches.length - 1]!].filter((end) => end !== least && isRival(end));
  return [least, ...ends];
}

/** By how much these films are more than the design's, and how sure that is. */
function told({ belief, design, position, places, doubt }: FilmsOf, films: readonly (Branch | null)[]): FilmsBelieved {
  const { seats, unknowns, decomposition, numbers } = belief;
  const count = unknowns.list.length;
  const ofFilms = films.map((found, i) => {
    const drawn = leastFilm(seatLines(design[i]!).gap, position);
    return found && drawn !== null
      ? { mean: found.value - drawn, gradient: gradientOf(found.influences, seats, unknowns) }
      : null;
  });
  const all = [...ofFilms, ...places.map((place) => ({ mean: numbers[place]!, gradient: unit(count, place) }))];
  return {
    mean: all.map((each) => each?.mean ?? 0),
    covariance: all.map((a, i) =>
      all.map((b, j) => (a && b ? covarianceOf(decomposition, a.gradient, b.gradient) : i === j ? doubt * doubt : 0)),
    ),
    gradients: all.map((each) => each?.gradient ?? new Float64Array(count)),
  };
}
