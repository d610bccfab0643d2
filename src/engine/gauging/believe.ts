/**
 * Everything known of both parts before any trial assembly, as one belief: what readings and priors tell, and of what
 * neither speaks of, the shape drawn, with the doubt that the person states or the default.
 *
 * That doubt is stated of a film (m): so far may the film of a seat be off that was never measured. The numbers of a
 * surface share it so that its line may be off by half as much in its lean, from end to end, as it may be altogether:
 *
 *   σ_R = √(3/8)·D'/cos a      σ_a = √(1/8)·D'·cos a/length       independent, of both surfaces of the seat
 *
 * D' such that the film of the seat has the doubt D, were nothing of it known (filmGradient.ts). Of a seat that is
 * measured in part only the numbers that are open get theirs. Numbers are open by what was read on the parts
 * themselves: a stand-off or a shake tells of all surfaces together, and of none alone.
 *
 * A size that nobody has drawn either is no better than a guess: σ_R = D_g/cos a, D_g what that guess may be off by,
 * square to the line. (Its half angle is taken to be that of the part it runs on, to the doubt above.)
 * @source derived (propagation: JCGM100 5.1.2); practice (the shares of lean and size)
 */
import type { Metres } from '../../design/dimension.ts';
import type { Belief } from '../belief/belief.ts';
import { decompose, unit } from '../belief/decomposition.ts';
import { leastFilmFollowed } from '../belief/filmGradient.ts';
import { gradientOf, isStraight, numbersOf, type On } from '../belief/unknowns.ts';
import { type SeatInput, seatLines } from '../contact/fit.ts';
import type { Part } from '../parts/line.ts';
import { type Estimate, estimate } from './estimate.ts';
import type { Prior } from './linearise.ts';
import type { Reading } from './reading.ts';
import { startingShape } from './shape.ts';

/** A belief of every surface. */
export interface WholeBelief extends Belief {
  /** the numbers that nobody has read, and how far each is taken to be known */
  unread: Prior[];
  /** readings (their places) that do not go with the others */
  disagreeing: number[];
}

const PARTS: readonly Part[] = ['journal', 'bush'];
const surfacesOf = (seats: readonly SeatInput[]): On[] =>
  seats.flatMap((_, seat) => PARTS.map((part) => ({ seat, part })));

/** A surface whose size is a guess, and how far that may be off square to its line (m, a standard uncertainty). */
export interface Guess extends On {
  sigma: number;
}

/**
 * @param doubt standard uncertainty (m) of the film of a seat that was never measured
 * @param position of the journal (m), where that film is
 */
export function believe(
  nominal: readonly SeatInput[],
  readings: readonly Reading[],
  priors: readonly Prior[],
  doubt: number,
  position: Metres,
  guesses: readonly Guess[] = [],
): WholeBelief {
  const ofParts = readings.filter((reading) => 'seat' in reading);
  const own = ofParts.length > 0 ? estimate(nominal, ofParts, priors) : null;
  const unread = openNumbers(nominal, own?.kind === 'estimate' ? own : null, priors).map((open): Prior => {
    const { seat, part, of } = open;
    const guess = of === 'radius' ? guesses.find((one) => one.seat === seat && one.part === part) : undefined;
    if (guess) return { ...open, sigma: guess.sigma / Math.cos(nominal[seat]![part].halfAngle) };
    return { ...open, sigma: doubtsOf(nominal[seat]!, seat, doubt, position)[part][of] };
  });
  const all = [...priors, ...unread];
  const found = readings.length > 0 ? estimate(nominal, readings, all) : null;
  if (found?.kind !== 'estimate') return { ...byPriors(nominal, all), unread, disagreeing: [] };
  return { ...found, unread, disagreeing: found.disagreeing.map(({ index }) => index) };
}

/** Which numbers neither the readings nor the priors tell. */
function openNumbers(
  nominal: readonly SeatInput[],
  own: Estimate | null,
  priors: readonly Prior[],
): Omit<Prior, 'sigma'>[] {
  return surfacesOf(nominal).flatMap((on) =>
    (['halfAngle', 'radius'] as const).flatMap((of) => {
      if (of === 'halfAngle' && isStraight(nominal, on)) return [];
      const isThis = (u: On & { of: string }) => u.seat === on.seat && u.part === on.part && u.of === of;
      const place = own ? own.unknowns.list.findIndex(isThis) : -1;
      const open = place >= 0 ? own!.held[place]! : !priors.some(isThis);
      return open ? [{ ...on, of }] : [];
    }),
  );
}

/** Of the numbers of both surfaces of a seat, the standard uncertainties (rad, m) that give its film this doubt (m). */
function doubtsOf(
  seat: SeatInput,
  index: number,
  doubt: number,
  position: Metres,
): Record<Part, Record<Prior['of'], number>> {
  const shared = (part: Part) => {
    const { halfAngle, from, to } = seat[part];
    const cos = Math.cos(halfAngle);
    return { radius: (Math.sqrt(3 / 8) * doubt) / cos, halfAngle: (Math.sqrt(1 / 8) * doubt * cos) / (to - from) };
  };
  const each = { journal: shared('journal'), bush: shared('bush') };
  const film = leastFilmFollowed(seatLines(seat), index, position);
  const pair = Array.from({ length: index + 1 }, () => seat);
  const { unknowns } = startingShape(
    pair,
    PARTS.map((part) => ({ seat: index, part })),
    [],
  );
  const gradient = film && gradientOf(film.influences, pair, unknowns);
  const variance = gradient
    ? unknowns.list.reduce((sum, { part, of }, j) => sum + (gradient[j]! * each[part][of as Prior['of']]) ** 2, 0)
    : 0;
  const scale = variance > 0 ? doubt / Math.sqrt(variance) : 1;
  const scaled = ({ radius, halfAngle }: Record<Prior['of'], number>) => ({
    radius: scale * radius,
    halfAngle: scale * halfAngle,
  });
  return { journal: scaled(each.journal), bush: scaled(each.bush) };
}

/** The shape as drawn, each number with its own doubt. */
function byPriors(nominal: readonly SeatInput[], priors: readonly Prior[]): Belief {
  const { seats, unknowns } = startingShape(nominal, surfacesOf(nominal), []);
  const rows = priors.flatMap(({ seat, part, of, sigma }) => {
    const place = unknowns.list.findIndex((u) => u.seat === seat && u.part === part && u.of === of);
    return place < 0 ? [] : [unit(unknowns.list.length, place).map((one) => one / sigma)];
  });
  return {
    seats,
    unknowns,
    numbers: numbersOf(seats, unknowns),
    decomposition: decompose(rows, unknowns.list.length, unknowns.points),
  };
}
