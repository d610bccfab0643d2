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
import { type Decomposition, decompose, isTold, leverageOf, NOTHING, unit } from './decomposition.ts';
import { chiSquareTail, twoSidedTail } from './distributions.ts';
import { minimise } from './gaussNewton.ts';
import { linearise, type Prior, type Problem } from './linearise.ts';
import type { Fault, Reading } from './reading.ts';
import { predict, surfacesOf } from './readings/index.ts';
import { numbersOf, startingShape, type Unknowns } from './shape.ts';

export interface ReadingFit {
  /** place in the list of readings */
  index: number;
  /** m */
  fitted: number;
  /** value less fitted (m) */
  residual: number;
  normalised: number;
  leverage: number;
}

/** A reading that does not go with the others. */
export interface Disagreeing {
  index: number;
  normalised: number;
  /** chance that the greatest of all normalised residuals is as great as this where no reading is wrong */
  probability: number;
  /** chi-square of the others without it, to first order */
  chiSquareWithout: number;
}

export interface Impossible {
  index: number;
  fault: Fault;
}

export interface Estimate {
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
  readings: ReadingFit[];
  impossible: Impossible[];
  chiSquare: number;
  freedom: number;
  /** of a chi-square as great as this or greater, where every stated uncertainty is right */
  probability: number;
  disagreeing: Disagreeing[];
}

/** `unusable`: no reading can be used, or none can be predicted from the nominal shape. */
export type Outcome = Estimate | { kind: 'unusable'; impossible: Impossible[] };

const ROUNDS = 5;
/** Chance below which the greatest residual is called a disagreement. */
const SUSPECT = 0.01;

/** The shape that goes best with the readings. Rad and m; every sigma above 0. */
export function estimate(nominal: readonly SeatInput[], readings: readonly Reading[], priors: readonly Prior[] = []): Outcome {
  let shape: readonly SeatInput[] = nominal;
  let barred: number[] = [];
  for (let round = 0; ; round++) {
    const impossible = faultsOf(readings, shape);
    // A set-up that is right for the fitted shape may be taken back once; after that readings only leave.
    if (round > 1) for (const index of barred) if (!impossible.some((i) => i.index === index)) impossible.push({ index, fault: faultsOf(readings, nominal).find((i) => i.index === index)?.fault ?? { what: 'stalled' } });
    impossible.sort((a, b) => a.index - b.index);
    const same = round > 0 && impossible.length === barred.length && impossible.every(({ index }, k) => index === barred[k]);
    barred = impossible.map((i) => i.index);
    const used = readings.flatMap((_, i) => (barred.includes(i) ? [] : [i]));
    const found =
      used.length === 0
        ? null
        : fitted(
            nominal,
            used.map((i) => readings[i]!),
            priors,
          );
    if (!found) return { kind: 'unusable', impossible };
    if (same || round === ROUNDS) return assessed(found, used, impossible);
    shape = found.seats;
  }
}

const faultsOf = (readings: readonly Reading[], seats: readonly SeatInput[]): Impossible[] =>
  readings.flatMap((reading, index) => {
    const { fault } = predict(reading, seats);
    return fault ? [{ index, fault }] : [];
  });

interface Fitted {
  problem: Problem;
  seats: SeatInput[];
  numbers: Float64Array;
  settled: boolean;
  held: boolean[];
}

function fitted(nominal: readonly SeatInput[], readings: readonly Reading[], priors: readonly Prior[]): Fitted | null {
  const surfaces = [...readings.flatMap((reading) => surfacesOf(reading, nominal)), ...priors];
  const { seats: start, unknowns } = startingShape(
    nominal,
    surfaces.map(({ seat, part }) => ({ seat, part })),
    readings,
  );
  const startNumbers = numbersOf(start, unknowns);
  const problem: Problem = { start, unknowns, startNumbers, readings, priors };
  const first = linearise(problem, startNumbers);
  if (!first) return null;
  let held = heldOf(decompose(first.rows, unknowns.list.length), unknowns);
  for (let round = 0; ; round++) {
    const minimum = minimise(problem, startNumbers, held);
    if (!minimum) return null;
    const { numbers, linear, settled } = minimum;
    const again = heldOf(decompose(linear.rows, unknowns.list.length), unknowns);
    const count = (h: readonly boolean[]) => h.filter(Boolean).length;
    if (round === ROUNDS || count(again) === count(held)) return { problem, seats: linear.seats, numbers, settled, held };
    held = again;
  }
}

/** As few unknowns as take the null space away when they are held: deviations first, then half angles, then radii. */
function heldOf(d: Decomposition, { list }: Unknowns): boolean[] {
  const held = list.map(() => false);
  let open = Array.from({ length: d.unknowns - d.rank }, (_, k) => Array.from({ length: d.unknowns }, (_, j) => d.v.get(j, d.rank + k)));
  const order = list.map((_, j) => j).sort((a, b) => ORDER[list[a]!.of] - ORDER[list[b]!.of] || a - b);
  for (const j of order) {
    const lean = Math.hypot(...open.map((vector) => vector[j]!));
    if (open.length === 0 || lean <= NOTHING) continue;
    held[j] = true;
    // Take the direction in which unknown j moves out of the open ones.
    const moved = list.map((_, i) => open.reduce((sum, vector) => sum + (vector[i]! * vector[j]!) / lean, 0));
    open = orthonormal(open.map((vector) => vector.map((v, i) => v - (vector[j]! / lean) * moved[i]!)));
  }
  return held;
}

const ORDER = { deviation: 0, halfAngle: 1, radius: 2 };

/** An orthonormal basis of what the vectors span, which is one dimension fewer than there are vectors (modified Gram–Schmidt). */
function orthonormal(vectors: readonly number[][]): number[][] {
  const basis: number[][] = [];
  let left = vectors.map((vector) => vector.slice());
  while (basis.length < vectors.length - 1) {
    left.sort((a, b) => norm(b) - norm(a));
    const length = norm(left[0]!);
    const direction = left[0]!.map((v) => v / length);
    basis.push(direction);
    left = left.slice(1).map((vector) => {
      const along = vector.reduce((sum, v, i) => sum + v * direction[i]!, 0);
      return vector.map((v, i) => v - along * direction[i]!);
    });
  }
  return basis;
}

const norm = (vector: readonly number[]) => Math.hypot(...vector);

function assessed({ problem, seats, numbers, settled, held }: Fitted, used: readonly number[], impossible: Impossible[]): Estimate {
  const linear = linearise(problem, numbers)!;
  const { unknowns, readings } = problem;
  const count = unknowns.list.length;
  const decomposition = decompose(linear.rows, count);
  const informative = linear.rows.filter((row) => row.some((g) => g !== 0)).length;
  const fits = readings.map((reading, i): ReadingFit => {
    const fittedValue = linear.predictions[i]!.value!;
    const leverage = leverageOf(decomposition, i);
    const residual = reading.value - fittedValue;
    const checked = 1 - leverage > CHECKED;
    return { index: used[i]!, fitted: fittedValue, residual, normalised: checked ? residual / (reading.sigma * Math.sqrt(1 - leverage)) : 0, leverage };
  });
  const { chiSquare } = linear;
  const freedom = informative - decomposition.rank;
  return {
    kind: 'estimate',
    settled,
    seats,
    unknowns,
    numbers,
    decomposition,
    told: unknowns.list.map((_, j) => isTold(decomposition, unit(count, j))),
    held,
    readings: fits,
    impossible,
    chiSquare,
    freedom,
    probability: chiSquareTail(chiSquare, freedom),
    disagreeing: disagreeingOf(fits, chiSquare),
  };
}

/** A part of a reading's own weight that another has a say in; less is rounding. */
const CHECKED = 1e-9;

/**
 * The reading whose normalised residual is greatest, where chance makes so great a one seldom (Bonferroni's bound
 * over all readings); and with it those that cannot be told from it, having the same.
 */
function disagreeingOf(fits: readonly ReadingFit[], chiSquare: number): Disagreeing[] {
  const checked = fits.filter((fit) => 1 - fit.leverage > CHECKED);
  const greatest = Math.max(0, ...checked.map((fit) => Math.abs(fit.normalised)));
  const probability = Math.min(1, checked.length * twoSidedTail(greatest));
  if (checked.length === 0 || probability >= SUSPECT) return [];
  return checked.filter((fit) => Math.abs(fit.normalised) >= greatest * (1 - 1e-6)).map(({ index, normalised }) => ({ index, normalised, probability, chiSquareWithout: Math.max(0, chiSquare - normalised * normalised) }));
}
