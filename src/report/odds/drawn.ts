/**
 * What pairs are drawn from: everything known of the parts, with the spreads of the design on top; or, where nothing
 * was read, the parts as drawn with the spreads alone, and without any of these with the doubt of parts never measured.
 */
import type { Design } from '../../design/definition.ts';
import { isOfParts, type Spread } from '../../design/oddsDefinition.ts';
import { isOfShape } from '../../engine/belief/unknowns.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import type { Trial } from '../../engine/cutting/trial.ts';
import type { Prior } from '../../engine/gauging/linearise.ts';
import { type AddedSpread, believedSampler, spreadSampler } from '../../engine/odds/believed.ts';
import type { Question } from '../../engine/odds/outcomes.ts';
import {
  type Linear,
  type LinearSampler,
  linearSampler,
  type Sampler,
  type Source,
  withAdded,
} from '../../engine/odds/sampler.ts';
import { weightedSampler } from '../../engine/odds/weighted.ts';
import { believedOf, pairsAfter } from '../belief/believed.ts';
import { metres, radians, toSeats } from '../convert.ts';
import { openTrials, tellsAnything } from '../cut/openTrials.ts';
import { toPlanInput, toTrials } from '../cut/toCut.ts';
import type { SourceReport } from './definition.ts';
import { questionOf } from './question.ts';

/** A state of the pair that is asked about. */
export interface State {
  sampler: Sampler;
  /** the pair about which is drawn, with what is wanted of each seat */
  middle: SeatInput[];
  question: Question;
  /** the same with numbers that follow evenly, each source named; null where a measured line is itself in doubt */
  linear: { linear: Linear; names: SourceReport[] } | null;
}

export interface Start {
  from: 'belief' | 'drawing';
  /** without what is not asked for */
  design: Design;
  /** what trials are gone by */
  trials: Trial[];
  unread: Prior[];
  now: State;
}

const told = ({ cut }: Design) => (cut && openTrials(cut).some(tellsAnything)) ?? false;
const isRead = (design: Design) => (design.readings?.length ?? 0) + (design.priors?.length ?? 0) > 0 || told(design);

/** `spread`: in place of the design's own. Null where what was read and tried goes together in no pair. */
export function startOf(given: Design, spread: readonly Spread[] = given.odds?.spread ?? []): Start | null {
  const from = given.odds?.from ?? (isRead(given) ? 'belief' : 'drawing');
  const design = from === 'drawing' ? asDrawn(given) : given;
  const spreads = partSpreads(design, spread);
  const asked = questionOf(design, design.position ?? 0);
  const start = { from, design, unread: [] };
  if (from === 'drawing' && spreads.length > 0) {
    const middle = toSeats(design);
    return { ...start, trials: [], now: named(design, spreadSampler(middle, spreads), middle, asked) };
  }
  const { belief } = believedOf(design);
  const known = { ...start, unread: belief.unread };
  if (told(design)) {
    const trials = toTrials(design, design.cut!);
    const drawn = pairsAfter(design, toPlanInput(design, design.cut!), trials);
    return drawn.pairs.length === 0 ? null : { ...known, trials, now: afterTrials(design, drawn, spreads, asked) };
  }
  const sampler = believedSampler(belief, spreads);
  const middle = sampler.varied?.seats ?? belief.seats;
  return { ...known, trials: [], now: named(design, sampler, middle, asked) };
}

/** Nothing read, nothing tried. */
function asDrawn({ readings: _, priors: __, ...design }: Design): Design {
  const { cut } = design;
  return cut ? { ...design, cut: { ...cut, trials: (cut.trials ?? []).filter(({ inShapes }) => inShapes) } } : design;
}

const partSpreads = ({ seats }: Design, spread: readonly Spread[]): AddedSpread[] =>
  spread.filter(isOfParts).map(({ seat, part, of, sigma, shape = 'normal' }) => ({
    seat: seats.findIndex(({ name }) => name === seat),
    part,
    of: of === 'diameter' ? 'radius' : of,
    sigma: of === 'halfAngle' ? radians(sigma) : of === 'diameter' ? metres(sigma) / 2 : metres(sigma),
    shape,
  }));

const isLinear = (sampler: Sampler): sampler is LinearSampler => 'linear' in sampler;

function named(design: Design, sampler: Sampler, middle: SeatInput[], question: Question): State {
  const linear = isLinear(sampler)
    ? { linear: sampler.linear, names: sampler.linear.sources.map((source) => nameOf(design, source)) }
    : null;
  return { sampler, middle, question, linear };
}

const nameOf = ({ seats }: Design, { seat, part, of }: Source): SourceReport => ({
  seat: seats[seat]!.name,
  part,
  of: of === 'radius' ? 'diameter' : of,
});

const PARTS = ['journal', 'bush'] as const;

/** Pairs that trials leave, spreads on top; what matters by a normal estimate of the same mean and covariance. */
function afterTrials(
  design: Design,
  { pairs, weights }: PairsDrawn,
  spreads: readonly AddedSpread[],
  question: Question,
): State {
  const sources = design.seats.flatMap((_, seat) =>
    PARTS.flatMap((part) => (['halfAngle', 'radius'] as const).map((of): Source => ({ seat, part, of }))),
  );
  const numberOf = (pair: SeatInput[], { seat, part, of }: Source) => pair[seat]![part][of];
  const mean = sources.map((source) => pairs.reduce((sum, pair, k) => sum + weights[k]! * numberOf(pair, source), 0));
  const first = pairs[0]!;
  const middle = withAdded(
    first,
    sources,
    sources.map((source, i) => mean[i]! - numberOf(first, source)),
  );
  const about = middle ?? first;
  const sampler = weightedSampler(
    about,
    pairs,
    weights,
    spreads.length > 0 ? spreadSampler(about, spreads) : undefined,
  );
  const off = pairs.map((pair) => sources.map((source, i) => numberOf(pair, source) - mean[i]!));
  const known = sources.map((_, i) =>
    sources.map((__, k) => off.reduce((sum, x, p) => sum + weights[p]! * x[i]! * x[k]!, 0)),
  );
  const covariance = [
    ...known.map((row) => [...row, ...spreads.map(() => 0)]),
    ...spreads.map(({ sigma }, i) => [...known.map(() => 0), ...spreads.map((_, k) => (i === k ? sigma * sigma : 0))]),
  ];
  const all = [...sources, ...spreads.map(({ seat, part, of }): Source => ({ seat, part, of }))];
  const straight = about.every((seat) => PARTS.every((part) => seat[part].profile.length === 0));
  if (!straight && isBent(design)) return { sampler, middle: about, question, linear: null };
  const { linear } = linearSampler(about, all, covariance, [
    ...sources.map(() => 'normal' as const),
    ...spreads.map(({ shape }) => shape),
  ]);
  return { sampler, middle: about, question, linear: { linear, names: all.map((source) => nameOf(design, source)) } };
}

/** Whether points of a profile are in doubt too. */
const isBent = (design: Design) =>
  believedOf(design).belief.unknowns.list.some((unknown) => isOfShape(unknown) && unknown.of === 'deviation');
