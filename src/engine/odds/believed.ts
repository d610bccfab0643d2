/**
 * Pairs drawn as a belief has it (belief/belief.ts: normal about its numbers), with spreads added on top: half angles
 * and radii by their covariance, the fast way. Where points of profiles are in doubt too, one by one, in the directions
 * that are told. What the belief leaves open stays as it is.
 */
import type { Belief } from '../belief/belief.ts';
import { covarianceOf, drawOf, unit } from '../belief/decomposition.ts';
import { isOfShape, type ShapeUnknown, withNumbers } from '../belief/unknowns.ts';
import { normalsOf } from './normal.ts';
import { type LinearSampler, linearSampler, type Marginal, type Sampler, type Source, withAdded } from './sampler.ts';

export interface AddedSpread extends Source {
  /** standard deviation (rad, m) */
  sigma: number;
  shape: Marginal;
}

export function believedSampler(belief: Belief, spreads: readonly AddedSpread[]): Sampler {
  const ofShape = belief.unknowns.list.flatMap((unknown, place) => (isOfShape(unknown) ? [{ unknown, place }] : []));
  return ofShape.every(({ unknown }) => unknown.of !== 'deviation')
    ? straightBelieved(belief, ofShape, spreads)
    : bentBelieved(belief, spreads);
}

/** The spreads alone, about a pair as drawn. */
export const spreadSampler = (seats: SeatInputs, spreads: readonly AddedSpread[]): LinearSampler =>
  linearSampler(
    seats,
    spreads.map(sourceOf),
    spreads.map(({ sigma }, i) => spreads.map((_, k) => (i === k ? sigma * sigma : 0))),
    spreads.map(({ shape }) => shape),
  );

type SeatInputs = Belief['seats'];
const sourceOf = ({ seat, part, of }: Source): Source => ({ seat, part, of });

function straightBelieved(
  { seats, unknowns, numbers, decomposition }: Belief,
  ofShape: readonly { unknown: ShapeUnknown; place: number }[],
  spreads: readonly AddedSpread[],
): LinearSampler {
  const rows = ofShape.map(({ place }) => unit(unknowns.list.length, place));
  const known = rows.map((one) => rows.map((other) => covarianceOf(decomposition, one, other)));
  const covariance = [
    ...known.map((row) => [...row, ...spreads.map(() => 0)]),
    ...spreads.map(({ sigma }, i) => [...known.map(() => 0), ...spreads.map((_, k) => (i === k ? sigma * sigma : 0))]),
  ];
  return linearSampler(
    withNumbers(seats, unknowns, numbers),
    [
      ...ofShape.map(({ unknown: { seat, part, of } }) => ({ seat, part, of: of as 'halfAngle' | 'radius' })),
      ...spreads.map(sourceOf),
    ],
    covariance,
    [...known.map((): Marginal => 'normal'), ...spreads.map(({ shape }) => shape)],
  );
}

function bentBelieved({ seats, unknowns, numbers, decomposition }: Belief, spreads: readonly AddedSpread[]): Sampler {
  const { rank } = decomposition;
  const added = spreadSampler(seats, spreads);
  const w = new Float64Array(rank);
  const shape = (u: Float64Array) => {
    normalsOf(u, w);
    const change = drawOf(decomposition, w);
    const drawn = withNumbers(
      seats,
      unknowns,
      numbers.map((x, j) => x + change[j]!),
    );
    const by = spreads.map(() => new Float64Array(1));
    added.varied.add(
      Array.from(u.subarray(rank), (x) => Float64Array.of(x)),
      by,
    );
    return withAdded(
      drawn,
      added.varied.sources,
      by.map((column) => column[0]!),
    );
  };
  return { dimensions: rank + added.dimensions, shape };
}
