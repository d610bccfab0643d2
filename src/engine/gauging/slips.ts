/**
 * What may have gone wrong with a reading that does not go with the others: the likely slips of a bench, each tried.
 *
 * What all else tells that the set-up should have read is normal: predicted by the fit without the reading, with the
 * variance σ² + gᵀ·C·g. A slip is another set-up (a roll or ball of the shop or of another reading, another face) or
 * another value (ten times, a thou or a turn of the thimble out, the other sign, a radius for a diameter), or another
 * amount of the metal that came off between this reading and others (amountSlips.ts). By Bayes' rule the chance of
 * each is
 *
 *   chance_s ∝ prior_s·N(value_s - predicted_s; variance_s)
 *
 * beside that of no slip at all, and of some other slip, which may be anything within a millimetre either way. Of other
 * sizes the k-th next in the drawer counts 1/k² as much as the next.
 * @source MacKay chapter 28.1 (comparing hypotheses); practice (which slips, and how often)
 */
import { metres } from '../../design/dimension.ts';
import { THOU as THOU_IN_MM } from '../../design/units.ts';
import { uncertaintyOf } from '../belief/decomposition.ts';
import type { SeatInput } from '../contact/fit.ts';
import { timesMeant } from './amountSlips.ts';
import { type CutBetween, type Since, seenBy } from './cutsBetween.ts';
import type { Estimate } from './estimate.ts';
import { isSize, type Reading } from './reading.ts';
import { predict, tellsOf } from './readings/index.ts';
import { gradientSeen } from './shape.ts';
import type { Tooling } from './tooling.ts';

export type SlipKind = 'roll' | 'ball' | 'tenfold' | 'thou' | 'turn' | 'sign' | 'face' | 'halved' | 'metal';

interface Slip {
  kind: SlipKind;
  /** the reading as it would be without the slip */
  instead: Reading;
  /** the metal written down, and how much (m) of it was meant; of that slip alone */
  metal?: { cut: CutBetween; meant: number };
  /** that it is this, beside all others, no slip and some other slip */
  chance: number;
}

/** Chance of a slip that has a name, all kinds together, and of any other. @source practice */
const NAMED = 0.02;
const OTHER = 0.01;
/** m: how far another slip may put a value off, either way. */
const ANYTHING = 1e-3;
/** A slip less likely than this is not worth a word; nor is one with which the rest would still not go. */
const WORTH_TELLING = 0.2;
const AGREES = 2.576;
/** m */
const THOU = metres(THOU_IN_MM);

/** The likely ones, the most likely first; none where all else does not tell what it should read. */
export function slipsOf(found: Estimate, readings: readonly Reading[], index: number, tooling: Tooling): Slip[] {
  const reading = readings[index]!;
  const rest = found.fitWithout(index);
  if (!rest) return [];
  const off = (as: Reading): { off: number; sigma: number } | null => {
    const { value, influences } = predict(as, rest.seats);
    if (value === null) return null;
    const seen = seenBy(as, rest.seats);
    const told = uncertaintyOf(rest.decomposition, gradientSeen(as, influences, seen, rest.unknowns));
    return told === null ? null : { off: as.value - value, sigma: Math.hypot(as.sigma, told) };
  };
  const none = off(reading);
  if (!none) return [];
  const metals = otherMetal(reading, readings, rest.seats);
  const tried = [...insteadOf(reading, readings, tooling), ...metals].flatMap(({ kind, all, metal }) =>
    all.flatMap((instead, k) => {
      const found = off(instead);
      const whole = all.reduce((sum, _, j) => sum + 1 / (1 + rankOf(j)) ** 2, 0) * (metal ? metals.length : 1);
      return found
        ? [{ kind, instead, metal: metal?.[k], found, prior: NAMED / KINDS / (1 + rankOf(k)) ** 2 / whole }]
        : [];
    }),
  );
  const weights = tried.map(({ found, prior }) => prior * density(found));
  const whole =
    (1 - NAMED - OTHER) * density(none) + OTHER / (2 * ANYTHING) + weights.reduce((sum, weight) => sum + weight, 0);
  return tried
    .map(({ kind, instead, metal, found }, k) => ({ kind, instead, metal, chance: weights[k]! / whole, found }))
    .filter(({ chance, found }) => chance >= WORTH_TELLING && Math.abs(found.off) < AGREES * found.sigma)
    .sort((a, b) => b.chance - a.chance)
    .map(({ kind, instead, metal, chance }) => ({ kind, instead, ...(metal && { metal }), chance }));
}

const density = ({ off, sigma }: { off: number; sigma: number }) =>
  Math.exp(-((off / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI));

const KINDS = 9;
/** Those that come first in a list are tried in pairs: one more, one less. */
const rankOf = (place: number) => Math.floor(place / 2);

/** The ways in which one slip may have been made: of metal, those of one cut among all. */
interface Tried {
  kind: SlipKind;
  all: Reading[];
  metal?: NonNullable<Slip['metal']>[];
}

/**
 * The reading as if another amount had come off between it and the others: it saw so much more off, or less, than the
 * parts that these tell of.
 */
function otherMetal(reading: Reading, readings: readonly Reading[], seats: readonly SeatInput[]): Tried[] {
  const own = reading.since ?? [];
  const cuts = new Map(readings.flatMap(({ since = [] }) => since.map((one) => [one.cut, one.sign] as const)));
  return [...cuts].map(([cut, sign]): Tried => {
    const amounts = timesMeant(cut.of === 'surface' ? seats[cut.seat]![cut.part].halfAngle : null).map(
      ({ times }) => times * cut.normal,
    );
    const seen = own.find((one) => one.cut === cut);
    const moreBy = (more: number): Since => ({
      cut: { ...cut, normal: more, sigma: 0 },
      sign: seen?.sign ?? (-sign as 1 | -1),
    });
    return {
      kind: 'metal',
      all: amounts.map((meant) => ({ ...reading, since: [...own, moreBy(meant - cut.normal)] })),
      metal: amounts.map((meant) => ({ cut, meant })),
    };
  });
}

/** The reading without each slip there may have been. */
function insteadOf(reading: Reading, readings: readonly Reading[], { rolls, balls, system }: Tooling): Tried[] {
  const { kind, value } = reading;
  const valued = (...values: number[]) => values.map((other): Reading => ({ ...reading, value: other }));
  const others = (sizes: readonly number[], own: number) =>
    [...new Set(sizes)]
      .filter((size) => Math.abs(size - own) > 1e-6)
      .sort((a, b) => Math.abs(a - own) - Math.abs(b - own));
  const usedRolls = readings.flatMap((one) => (one.kind === 'overRolls' ? [one.roll] : []));
  const usedBalls = readings.flatMap((one) => (one.kind === 'ballDepth' ? [one.ball] : []));
  const turn = system === 'inch' ? 25 * THOU : 0.5e-3;
  const tells = tellsOf(kind);
  const tried: Tried[] = [
    {
      kind: 'roll',
      all:
        kind === 'overRolls'
          ? others([...rolls, ...usedRolls], reading.roll).map((roll) => ({ ...reading, roll }))
          : [],
    },
    {
      kind: 'ball',
      all:
        kind === 'ballDepth'
          ? others([...balls, ...usedBalls], reading.ball).map((ball) => ({ ...reading, ball }))
          : [],
    },
    { kind: 'tenfold', all: value === 0 ? [] : valued(10 * value, value / 10) },
    { kind: 'thou', all: valued(value + THOU, value - THOU) },
    { kind: 'turn', all: isSize(tells) ? valued(value + turn, value - turn) : [] },
    { kind: 'sign', all: value !== 0 && tells !== 'diameter' && tells !== 'travel' ? valued(-value) : [] },
    { kind: 'face', all: kind === 'ballDepth' ? facesBeside(reading, readings) : [] },
    { kind: 'halved', all: tells === 'diameter' ? valued(2 * value) : [] },
  ];
  return tried.filter(({ all }) => all.length > 0);
}

/** From the other faces that balls were read from in that part. */
function facesBeside(reading: Reading & { kind: 'ballDepth' }, readings: readonly Reading[]): Reading[] {
  const faces = readings.flatMap((other) =>
    other.kind === 'ballDepth' && other.part === reading.part && Math.abs(other.face - reading.face) > 1e-6
      ? [other.face]
      : [],
  );
  return [...new Set(faces)].map((face) => ({ ...reading, face }));
}
