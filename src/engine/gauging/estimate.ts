/**
 * The true shape of the parts from any mixture of readings: weighted least squares over half angle and radius of
 * every surface that a reading tells of (and the profile of those whose straightness was read).
 *
 *   chi-square  X² = Σ [(value - f(x))/σ]²     least (gaussNewton.ts)
 *   covariance  C = (JᵀJ)⁻¹                    J rows ∂f/∂x / σ (decomposition.ts); not scaled by X², since every σ is stated
 *   freedom     n = informative readings + priors - rank of J
 *   residual e = value - f(x), its own uncertainty σ·√(1 - h), h leverage
 *   normalised  w = e/(σ·√(1 - h))             unit variance whatever the leverage: e/σ would hide a wrong reading
 *                                              that pulls the fit to itself; 0 where h = 1, for then nothing checks it
 *
 * Numbers that the readings leave open are held as drawn, as few as will do, half angles before radii; they and
 * all that leans on them are told as undetermined. A reading that cannot be taken from the fitted parts is left out.
 * @source JCGM 100:2008, 5.2; JCGM 102:2011; least squares e.g. Golub and Van Loan, "Matrix Computations", 5 (from memory);
 *         normalised residuals: W. Baarda, "A testing procedure for use in geodetic networks", 1968 (from memory)
 */
import type { SeatInput } from '../contact/fit.ts';
import { type Assessment, assessed } from './assess.ts';
import { type Decomposition, decompose, isTold, unit } from './decomposition.ts';
import { minimise } from './gaussNewton.ts';
import { heldOf } from './held.ts';
import { type Linear, linearise, type Prior, type Problem } from './linearise.ts';
import type { Fault, Reading } from './reading.ts';
import { predict, surfacesOf } from './readings/index.ts';
import { numbersOf, startingShape, type Unknowns } from './shape.ts';

export interface Impossible {
  /** place in the list of readings */
  index: number;
  fault: Fault;
}

export interface Estimate extends Assessment {
  kind: 'estimate';
  settled: boolean;
  /** the fitted shape */
  seats: SeatInput[];
  unknowns: Unknowns;
  numbers: Float64Array;
  decomposition: Decomposition;
  /** of each unknown: whether the readings tell it */
  told: boolean[];
  /** of each unknown: whether it was held as drawn, since the readings leave it open */
  held: boolean[];
  impossible: Impossible[];
}

/** `unusable`: no reading can be used, or none can be predicted from the nominal shape. */
export type Outcome = Estimate | { kind: 'unusable'; impossible: Impossible[] };

/** Rounds of leaving readings out, and of holding unknowns; two or three do. */
const ROUNDS = 5;

/** The shape that goes best with the readings. Rad and m; every sigma above 0. */
export function estimate(nominal: readonly SeatInput[], readings: readonly Reading[], priors: readonly Prior[] = []): Outcome {
  let impossible = faultsOf(readings, nominal);
  let before: readonly SeatInput[] = nominal;
  for (let round = 1; ; round++) {
    const used = readings.flatMap((_, i) => (impossible.some(({ index }) => index === i) ? [] : [i]));
    const notebook = used.map((i) => readings[i]!);
    const found = used.length === 0 ? null : fitted(nominal, notebook, priors, before);
    if (!found) return { kind: 'unusable', impossible };
    // What the fitted shape does not allow goes; what only it allows is taken back, in the first round.
    const now = faultsOf(readings, found.linear.seats);
    const next = round === 1 ? now : [...impossible, ...now.filter(({ index }) => used.includes(index))].sort((a, b) => a.index - b.index);
    if (round === ROUNDS || samePlaces(next, impossible)) return whole(found, notebook, used, impossible, nominal, priors);
    impossible = next;
    before = found.linear.seats;
  }
}

const samePlaces = (one: readonly Impossible[], other: readonly Impossible[]) => one.length === other.length && one.every(({ index }, k) => index === other[k]!.index);

const faultsOf = (readings: readonly Reading[], seats: readonly SeatInput[]): Impossible[] =>
  readings.flatMap((reading, index) => {
    const { fault } = predict(reading, seats);
    return fault ? [{ index, fault }] : [];
  });

interface Fitted {
  unknowns: Unknowns;
  numbers: Float64Array;
  linear: Linear;
  settled: boolean;
  held: boolean[];
}

/**
 * From the nominal shape; where a reading has no value there (a set-up that only the true parts allow), from `before`.
 * Assembled pairs have kinks, and a least chi-square on each side of them; so the parts are fitted by their own
 * readings first, which have none, and that shape is where the whole notebook starts.
 */
function fitted(nominal: readonly SeatInput[], readings: readonly Reading[], priors: readonly Prior[], before: readonly SeatInput[]): Fitted | null {
  const surfaces = [...readings.flatMap((reading) => surfacesOf(reading, nominal)), ...priors].map(({ seat, part }) => ({ seat, part }));
  const { seats: start, unknowns } = startingShape(nominal, surfaces, readings);
  const startNumbers = numbersOf(start, unknowns);
  const problem: Problem = { start, unknowns, startNumbers, readings, priors };
  const nominalOrBefore = linearise(problem, startNumbers) ? startNumbers : numbersOf(startingShape(before, surfaces, readings).seats, unknowns);
  const ofParts = readings.filter((reading) => 'seat' in reading);
  const from = ofParts.length === readings.length ? nominalOrBefore : (least({ ...problem, readings: ofParts }, nominalOrBefore)?.numbers ?? nominalOrBefore);
  return least(problem, from) ?? least(problem, nominalOrBefore);
}

/** The least chi-square, with as few numbers held as the readings there leave open. */
function least(problem: Problem, from: Float64Array): Fitted | null {
  const { unknowns } = problem;
  const first = linearise(problem, from);
  if (!first) return null;
  let held = heldOf(decompose(first.rows, unknowns.list.length, unknowns.points), unknowns);
  for (let round = 1; ; round++) {
    const minimum = minimise(problem, from, held);
    if (!minimum) return null;
    const { numbers, linear, settled } = minimum;
    const again = heldOf(decompose(linear.rows, unknowns.list.length, unknowns.points), unknowns);
    if (round === ROUNDS || countOf(again) === countOf(held)) return { unknowns, numbers, linear, settled, held };
    held = again;
  }
}

const countOf = (held: readonly boolean[]) => held.filter(Boolean).length;

function whole({ unknowns, numbers, linear, settled, held }: Fitted, notebook: readonly Reading[], used: readonly number[], impossible: Impossible[], nominal: readonly SeatInput[], priors: readonly Prior[]): Estimate {
  const count = unknowns.list.length;
  const decomposition = decompose(linear.rows, count, unknowns.points);
  const without = (k: number) => notebook.filter((_, i) => i !== k);
  const chiSquareWithout = (k: number) => fitted(nominal, without(k), priors, linear.seats)?.linear.chiSquare ?? 0;
  return {
    kind: 'estimate',
    settled,
    seats: linear.seats,
    unknowns,
    numbers,
    decomposition,
    told: unknowns.list.map((_, j) => isTold(decomposition, unit(count, j))),
    held,
    impossible,
    ...assessed(linear, decomposition, notebook, used, chiSquareWithout),
  };
}
