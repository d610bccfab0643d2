/** Everything known of both parts before any trial that is not in the surfaces yet: one belief for all screens. */

import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import type { ErrorName, FilmsBefore } from '../../engine/belief/accounts.ts';
import { atEnds, beyondFilms, type FilmsBelieved, filmsBelieved } from '../../engine/belief/filmsBelieved.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { type PairsDrawn, pairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import { type Trial, type TrialInput, type TrialResult, trialsOf } from '../../engine/cutting/trial.ts';
import { believe, type WholeBelief } from '../../engine/gauging/believe.ts';
import { metres, millimetres, toSeats } from '../convert.ts';
import { closedCount, openTrials, tellsAnything } from '../cut/openTrials.ts';
import { toPlanInput, toTrials } from '../cut/toCut.ts';
import { historyOf } from '../measure/metalBetween.ts';
import { toPriors } from '../measure/toReading.ts';
import { usedReadings } from '../measure/usedReadings.ts';
import { guessesOf } from './guesses.ts';
import { isApart, type NotAsRead } from './notAsRead.ts';

export interface Believed {
  belief: WholeBelief;
  /** of the films of the design's own surfaces, at its position */
  films: FilmsBefore;
  /** errors of metal off at trials that readings of the bench lean on too: each with its place among the numbers */
  errors: { name: ErrorName; at: number }[];
  /** the same for every choice of ends at which they may be least */
  ends: FilmsBelieved[];
  /** pairs drawn already, by the trials they know of */
  drawn: Map<string, PairsDrawn>;
  /** what trials told already, by the trials */
  told: Map<string, TrialResult[]>;
}

const known = new WeakMap<Design, Believed>();
/**
 * The newest last: what is asked beside the screen comes as a copy each time, and the next trial leaves most as it was.
 */
const lately = new Map<string, Believed>();
/** Pairs drawn take much room. */
const KEPT = 3;

/** Worked out once for a design: several sections ask for it, and the next trial asks for the pairs before it. */
export function believedOf(design: Design): Believed {
  const found = known.get(design) ?? foundBefore(design);
  known.set(design, found);
  return found;
}

function foundBefore(design: Design): Believed {
  const key = keyOf(design);
  const found = lately.get(key) ?? believed(design);
  lately.delete(key);
  lately.set(key, found);
  for (const oldest of [...lately.keys()].slice(0, -KEPT)) lately.delete(oldest);
  return found;
}

/** What no belief hangs on. */
const APART = ['title', 'notes', 'run', 'odds', 'adjuster'];

/** All that a belief may hang on; what trials tell is kept by those trials. */
function keyOf(design: Design): string {
  const { cut, readings = [] } = design;
  const parts = Object.fromEntries(Object.entries(design).filter(([name]) => !APART.includes(name)));
  // Readings of the bench may lean on what came off between trials.
  if (!cut || readings.length > 0) return JSON.stringify(parts);
  const { trials = [], work: _, ...rest } = cut;
  return JSON.stringify({ ...parts, cut: { ...rest, trials: trials.filter(({ inShapes }) => inShapes) } });
}

function believed(design: Design): Believed {
  const seats = toSeats(design);
  const position = metres(design.position ?? 0);
  const doubt = metres(design.cut?.doubt ?? defaultAt('cut.doubt'));
  const { readings } = usedReadings(design, seats);
  const belief = believe(seats, readings, toPriors(design), doubt, position, guessesOf(design));
  const errors = errorsReadToo(design, belief);
  const of = { belief, design: seats, position, places: errors.map(({ at }) => at), doubt };
  const films = filmsBelieved(of);
  const beyond = beyondFilms(belief, films)!;
  return {
    belief,
    films: { ...films, beyond, errors: errors.map(({ name }) => name) },
    errors,
    ends: atEnds(of),
    drawn: new Map(),
    told: new Map(),
  };
}

/**
 * Why the shapes of the design are not those that were read: by their films, while no trial tells of them. (After one
 * it is what is believed that is planned with.)
 */
export function notAsReadSection(design: Design): { notAsRead?: NotAsRead } {
  const { belief, films } = believedOf(design);
  if (belief.disagreeing.length > 0) return { notAsRead: 'contradict' };
  const tried = design.cut && openTrials(design.cut).some(tellsAnything);
  const other = design.seats.some((_, i) =>
    isApart(millimetres(films.mean[i]!), millimetres(Math.sqrt(films.covariance[i]![i]!))),
  );
  return other && !tried ? { notAsRead: 'other' } : {};
}

/** The same where trials are told of by their doubt alone: what was read at them may not go with the rest. */
export function settledSection(design: Design): { notAsRead?: NotAsRead } {
  const found = notAsReadSection(design);
  const { cut } = design;
  if (found.notAsRead || !cut || !openTrials(cut).some(tellsAnything)) return found;
  const last = toldByTrials(design, toPlanInput(design, cut), toTrials(design, cut)).at(-1);
  return last?.status === 'updated' && last.clashes.length === 0 ? {} : { notAsRead: 'trials' };
}

/** How many pairs are drawn: a chance is then told to about 0.02, a shake costs far more to tell than a touch. */
const PAIRS = 1200;
const SHAKEN = 500;
const SEED = 1;
/** Sets of pairs: those of each trial of a long job, and of what a form asks while one is typed. */
const DRAWN_KEPT = 24;

/** Pairs as everything known after these trials allows: the design's own open ones, or with fewer readings. */
export function pairsAfter(design: Design, input: TrialInput, trials: readonly Trial[]): PairsDrawn {
  const { belief, errors, ends, drawn } = believedOf(design);
  const key = JSON.stringify(trials);
  const found = drawn.get(key);
  if (found) return found;
  const count = trials.some(({ shake }) => shake) ? SHAKEN : PAIRS;
  const pairs = pairsDrawn({ belief, input, trials, errors, films: ends }, count, SEED);
  drawn.set(key, pairs);
  for (const oldest of [...drawn.keys()].slice(0, -DRAWN_KEPT)) drawn.delete(oldest);
  return pairs;
}

/** What these trials told, one after the other. */
export function toldByTrials(design: Design, input: TrialInput, trials: readonly Trial[]): TrialResult[] {
  const { films, told } = believedOf(design);
  const key = JSON.stringify(trials);
  const found = told.get(key) ?? trialsOf(input, trials, films);
  told.set(key, found);
  return found;
}

/** The parts as they are taken to be by now, and by how much each film is most likely greater (m). */
interface LikelyNow {
  parts: readonly SeatInput[];
  films: readonly number[];
}

/**
 * Null where what was read at the trials cannot be taken in, and before any where the films are told as Measure tells
 * them: all was read, or each is surely least at one end.
 */
export function likelyNow(design: Design, input: TrialInput, trials: readonly Trial[]): LikelyNow | null {
  const last = toldByTrials(design, input, trials).at(-1);
  if (last) return last.status === 'updated' ? last : null;
  const { belief, films, ends } = believedOf(design);
  return ends.length > 1 && belief.unread.length > 0
    ? { parts: input.seats, films: films.mean.slice(0, input.seats.length) }
    : null;
}

/** Errors of metal off at trials that readings of the bench lean on too: each with its place among the numbers. */
function errorsReadToo(design: Design, { unknowns }: WholeBelief): { name: ErrorName; at: number }[] {
  const { cut } = design;
  if (!cut) return [];
  const open = historyOf(design).entries.slice(closedCount(cut));
  return openTrials(cut).flatMap(({ taken = [] }, trial) =>
    open[trial]!.cuts.flatMap((amount, k) => {
      const at = unknowns.stock.get(amount);
      if (at === undefined) return [];
      const name: ErrorName =
        k < taken.length ? { trial, of: 'taken', place: k } : { trial, of: 'faces', place: k - taken.length };
      return [{ name, at }];
    }),
  );
}
