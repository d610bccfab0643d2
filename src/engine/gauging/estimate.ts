/**
 * The true shape of the parts from any mixture of readings: weighted least squares over half angle and radius of
 * every surface that a reading tells of (and the profile of those whose straightness was read).
 *
 *   chi-square  X² = Σ [(value - f(x))/σ]²     least (gaussNewton.ts)
 *   covariance  C = (JᵀJ)⁻¹                    J rows ∂f/∂x / σ (decomposition.ts); not scaled by X², since every σ is
 *   stated
 *   freedom     n = informative readings + priors - rank of J
 *   residual e = value - f(x), its own uncertainty σ·√(1 - h), h leverage
 *   normalised  w = e/(σ·√(1 - h))             unit variance whatever the leverage: e/σ would hide a wrong reading
 *                                              that pulls the fit to itself; 0 where h = 1, for then nothing checks it
 *
 * Numbers that the readings leave open are held as drawn, as few as will do, half angles before radii; they and
 * all that leans on them are told as undetermined. A reading that cannot be taken from the fitted parts is left out of
 * the fit; where the parts as drawn would allow it, it speaks against the others (disagreement.ts). A surface drawn
 * straight is taken to be straight; what the readings say against that is told beside (taper.ts).
 * @source JCGM100 5.2; JCGM102; GolubVanLoan chapter 5 (least squares); Baarda1968 (normalised residuals)
 */

import type { Belief } from '../belief/belief.ts';
import { type Decomposition, decompose, isTold, unit } from '../belief/decomposition.ts';
import { chiSquareTail } from '../belief/distributions.ts';
import { isStraight, numbersOf, type On, type Unknowns } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { type Assessment, assessed, freedomOf } from './assess.ts';
import {
  type Agreement,
  type Disagreeing,
  disagreeingOf,
  isDoubtful,
  type Suspect,
  suspectsOf,
} from './disagreement.ts';
import { minimise } from './gaussNewton.ts';
import { heldOf } from './held.ts';
import { type LeastSquares, type Linearised, linearise, type Prior } from './linearise.ts';
import type { Fault, Reading } from './reading.ts';
import { predict, seeksProfile, surfacesOf } from './readings/index.ts';
import { startingShape } from './shape.ts';
import { isTapered, type Taper, tapersOf } from './taper.ts';

export interface Impossible {
  /** place in the list of readings */
  index: number;
  fault: Fault;
  /**
   * whether the parts as drawn would allow it: then it is the other readings that speak against it, and it against them
   */
  possibleAsDrawn: boolean;
}

export interface Estimate extends Assessment, Belief {
  kind: 'estimate';
  settled: boolean;
  /** of each unknown: whether the readings tell it */
  told: boolean[];
  /** of each unknown: whether it was held as drawn, since the readings leave it open */
  held: boolean[];
  impossible: Impossible[];
  disagreeing: Disagreeing[];
  /** of the surfaces drawn straight whose taper the readings tell */
  tapers: Taper[];
  /** which surfaces are held straight */
  isHeld: (on: On) => boolean;
  /** what the others tell without one reading; sought once. Null where they tell nothing */
  fitWithout: (index: number) => Rest | null;
}

/** What is left of an estimate without one reading. */
export type Rest = Pick<Belief, 'seats' | 'unknowns' | 'decomposition'>;

/** `unusable`: no reading can be used, or none can be predicted from the nominal shape. */
export type Outcome = Estimate | { kind: 'unusable'; impossible: Impossible[] };

/** Rounds of leaving readings out, and of holding unknowns; two or three do. */
const ROUNDS = 5;

/** The shape that goes best with the readings. Rad and m; every sigma above 0. */
export function estimate(
  nominal: readonly SeatInput[],
  readings: readonly Reading[],
  priors: readonly Prior[] = [],
): Outcome {
  const held = (on: On) => isStraight(nominal, on);
  const notebook: Notebook = { nominal, readings, priors, isHeld: held };
  const found = settle(notebook);
  if (!('linear' in found)) return { kind: 'unusable', ...found };
  const tapers = taperedWithin(notebook, found);
  const told = { ...whole(found, notebook), tapers };
  const tapered = tapers.filter(isTapered);
  if (tapered.length === 0) return told;
  // What only a taper explains does not speak against a reading.
  const opened: Notebook = {
    ...notebook,
    isHeld: (on) => held(on) && !tapered.some(({ seat, part }) => seat === on.seat && part === on.part),
  };
  const open = settle(opened);
  return 'linear' in open ? { ...told, disagreeing: whole(open, opened).disagreeing } : told;
}

/** The tapers of the surfaces held straight, from a fit in which none is. */
function taperedWithin(notebook: Notebook, { unknowns }: Settled): Taper[] {
  const held = unknowns.list.filter((u) => u.of === 'radius' && notebook.isHeld(u));
  if (held.length === 0) return [];
  const free = settle({ ...notebook, isHeld: () => false });
  return 'linear' in free ? tapersOf(held, free.linear.seats, free.unknowns, free.decomposition) : [];
}

/** What an estimate is of. */
interface Notebook {
  nominal: readonly SeatInput[];
  readings: readonly Reading[];
  priors: readonly Prior[];
  isHeld: (on: On) => boolean;
}

/** The fit of those readings that it allows. */
interface Settled extends Fitted {
  decomposition: Decomposition;
  /** the readings used, and the place of each in the list of all */
  notebook: Reading[];
  used: number[];
  impossible: Impossible[];
}

function settle(all: Notebook): Settled | { impossible: Impossible[] } {
  const { nominal, readings } = all;
  const asDrawn = faultsOf(readings, nominal);
  let faults = asDrawn;
  let before: readonly SeatInput[] = nominal;
  for (let round = 1; ; round++) {
    const used = readings.flatMap((_, i) => (faults.some(({ index }) => index === i) ? [] : [i]));
    const notebook = used.map((i) => readings[i]!);
    const found = used.length === 0 ? null : fitted({ ...all, readings: notebook }, before);
    const impossible = () =>
      faults.map(({ index, fault }) => ({
        index,
        fault,
        possibleAsDrawn: asDrawn.every((drawn) => drawn.index !== index),
      }));
    if (!found) return { impossible: impossible() };
    // What the fitted shape does not allow goes; what only it allows is taken back, in the first round.
    const now = faultsOf(readings, found.linear.seats);
    const next =
      round === 1
        ? now
        : [...faults, ...now.filter(({ index }) => used.includes(index))].sort((a, b) => a.index - b.index);
    if (round === ROUNDS || samePlaces(next, faults)) {
      const { list, points } = found.unknowns;
      return {
        ...found,
        decomposition: decompose(found.linear.rows, list.length, points),
        notebook,
        used,
        impossible: impossible(),
      };
    }
    faults = next;
    before = found.linear.seats;
  }
}

type Faulty = Omit<Impossible, 'possibleAsDrawn'>;

const samePlaces = (one: readonly Faulty[], other: readonly Faulty[]) =>
  one.length === other.length && one.every(({ index }, k) => index === other[k]!.index);

const faultsOf = (readings: readonly Reading[], seats: readonly SeatInput[]): Faulty[] =>
  readings.flatMap((reading, index) => {
    const { fault } = predict(reading, seats);
    return fault ? [{ index, fault }] : [];
  });

interface Fitted {
  unknowns: Unknowns;
  numbers: Float64Array;
  linear: Linearised;
  settled: boolean;
  held: boolean[];
}

/**
 * From the nominal shape; where a reading has no value there (a set-up that only the true parts allow), from `before`.
 * Assembled pairs have kinks, and a least chi-square on each side of them; so the parts are fitted by their own
 * readings first, which have none, and that shape is where the whole notebook starts.
 */
function fitted({ nominal, readings, priors, isHeld }: Notebook, before: readonly SeatInput[]): Fitted | null {
  const surfaces = [...readings.flatMap((reading) => surfacesOf(reading, nominal)), ...priors].map(
    ({ seat, part }) => ({ seat, part }),
  );
  const { seats: start, unknowns } = startingShape(nominal, surfaces, readings, isHeld);
  const startNumbers = numbersOf(start, unknowns);
  const problem: LeastSquares = { start, unknowns, startNumbers, readings, priors };
  const nominalOrBefore = linearise(problem, startNumbers)
    ? startNumbers
    : numbersOf(startingShape(before, surfaces, readings, isHeld).seats, unknowns);
  const ofParts = readings.filter((reading) => 'seat' in reading);
  const from =
    ofParts.length === readings.length
      ? nominalOrBefore
      : (least({ ...problem, readings: ofParts }, nominalOrBefore)?.numbers ?? nominalOrBefore);
  return least(problem, from) ?? least(problem, nominalOrBefore);
}

/**
 * The least chi-square, with as few numbers held as the readings there leave open. What is open at one minimum may be
 * told at the other: where the choices of what is held lead back to one that was tried, the lowest of them is taken.
 */
function least(problem: LeastSquares, from: Float64Array): Fitted | null {
  const { unknowns } = problem;
  const first = linearise(problem, from);
  if (!first) return null;
  let held = heldOf(decompose(first.rows, unknowns.list.length, unknowns.points), unknowns);
  const tried: Fitted[] = [];
  for (let round = 1; ; round++) {
    const minimum = minimise(problem, from, held);
    if (!minimum) return null;
    const found = { unknowns, ...minimum, held };
    tried.push(found);
    const again = heldOf(decompose(minimum.linear.rows, unknowns.list.length, unknowns.points), unknowns);
    if (round === ROUNDS || countOf(again) === countOf(held)) return found;
    if (tried.some((one) => one.held.every((is, j) => is === again[j]))) return lowest(tried);
    held = again;
  }
}

const countOf = (held: readonly boolean[]) => held.filter(Boolean).length;

const lowest = (tried: readonly Fitted[]) =>
  tried.reduce((low, one) => (one.linear.chiSquare < low.linear.chiSquare ? one : low));

function whole(found: Settled, all: Notebook): Omit<Estimate, 'tapers'> {
  const { readings, isHeld } = all;
  const { unknowns, numbers, linear, settled, held, decomposition, notebook, used, impossible } = found;
  const count = unknowns.list.length;
  const assessment = assessed(linear, decomposition, notebook, used);
  const agreement = agreementOf(found);
  const sought = new Map<number, ReturnType<typeof settle>>();
  const restOf = (index: number): Settled | null => {
    const rest = sought.get(index) ?? settle({ ...all, readings: readings.filter((_, i) => i !== index) });
    sought.set(index, rest);
    return 'linear' in rest ? (rest as Settled) : null;
  };
  const suspects = isDoubtful(assessment.readings, agreement)
    ? [...suspectsOf(assessment.readings), ...opponents(found, readings)]
    : [];
  return {
    kind: 'estimate',
    settled,
    seats: linear.seats,
    unknowns,
    numbers,
    decomposition,
    told: unknowns.list.map((_, j) => isTold(decomposition, unit(count, j))),
    held,
    isHeld,
    fitWithout: (index) => shapeOf(restOf(index)),
    impossible,
    ...assessment,
    disagreeing: disagreeingOf(
      suspects.filter(({ index }, k) => suspects.findIndex((s) => s.index === index) === k),
      readings.length,
      agreement,
      (index) => agreed(restOf(index)),
    ),
  };
}

const agreed = (rest: Settled | null): Agreement | null => rest && agreementOf(rest);
const shapeOf = (rest: Settled | null): Rest | null => rest && { ...rest, seats: rest.linear.seats };

function agreementOf({ linear, decomposition, impossible }: Settled): Agreement {
  return {
    chiSquare: linear.chiSquare,
    probability: chiSquareTail(linear.chiSquare, freedomOf(linear, decomposition)),
    contradicted: impossible.filter(({ possibleAsDrawn }) => possibleAsDrawn).length,
  };
}

/**
 * Of readings that only the drawn parts allow: they themselves, and what was read of the same surfaces, as many as are
 * worth a try.
 */
function opponents({ impossible, linear }: Settled, readings: readonly Reading[]): Suspect[] {
  const contradicted = impossible.filter(({ possibleAsDrawn }) => possibleAsDrawn).map(({ index }) => index);
  const surfaces = contradicted.flatMap((index) => surfacesOf(readings[index]!, linear.seats));
  const beside = readings.flatMap((reading, index) =>
    contradicted.includes(index) ||
    !('seat' in reading) ||
    seeksProfile(reading) ||
    !surfaces.some(({ seat, part }) => seat === reading.seat && part === reading.part)
      ? []
      : [index],
  );
  return [...contradicted, ...beside.slice(0, MOST_OPPONENTS)].map((index) => ({ index, normalised: 0 }));
}

const MOST_OPPONENTS = 12;
