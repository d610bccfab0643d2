/**
 * Pairs drawn, then cut by a plan: the same plan off every one of them, and of each cut so much more or less as the
 * dial may be wrong.
 *
 *   stock off a surface   s + σ·w        radius by -/+ (s + σ·w)/cos a, a as drawn or of the line renewed
 *   metal off a face      m + σ·w        its seats along the axis by that
 *
 * w standard normal, a dimension of its own for each cut, after those of the pair. A line cut anew keeps nothing of the
 * old one but its radius; its half angle is taken as set.
 * @source derived (parts/stock.ts, parts/shift.ts)
 */
import type { SeatInput } from '../contact/fit.ts';
import { cutBy, type Trial, type TrialInput } from '../cutting/trial.ts';
import { outward, type Part } from '../parts/line.ts';
import { radialOf } from '../parts/stock.ts';
import { normalsOf, standardNormal } from './normal.ts';
import { type Linear, type LinearSampler, linearSampler, type Sampler, type Source, type Varied } from './sampler.ts';

/** What comes off, as a trial has it, and the surfaces that were cut before: a line is renewed once. */
export interface CutOff {
  input: TrialInput;
  off: Pick<Trial, 'taken' | 'faces'>;
  before: readonly { seat: number; part: Part }[];
}

/** A pair with all of it off, `errors` (m) more of each: those of the surfaces, then those of the faces. */
export function cutPair({ input, off, before }: CutOff, pair: readonly SeatInput[], errors?: ArrayLike<number>) {
  const { taken, faces = [] } = off;
  const trial: Trial = {
    taken: taken.map((one, i) => ({ ...one, more: errors?.[i] ?? 0 })),
    faces: faces.map((one, i) => ({ ...one, off: one.off + (errors?.[taken.length + i] ?? 0) })),
    thickness: 0,
  };
  return cutBy(input, pair, trial, new Set(before.map(({ seat, part }) => `${seat} ${part}`)));
}

const sigmasOf = ({ off: { taken, faces = [] } }: CutOff) => [...taken, ...faces].map(({ sigma }) => sigma);

export function cutSampler(base: Sampler, cut: CutOff): Sampler {
  const sigmas = sigmasOf(cut);
  const dimensions = base.dimensions + sigmas.length;
  const shape = (u: Float64Array) => {
    const pair = base.shape(u.subarray(0, base.dimensions));
    return (
      pair &&
      cutPair(
        cut,
        pair,
        sigmas.map((sigma, i) => sigma * standardNormal(u[base.dimensions + i]!)),
      )
    );
  };
  const { effective, varied } = base;
  return {
    dimensions,
    shape,
    ...(effective !== undefined && { effective }),
    ...(varied && { varied: variedOf(base.dimensions, varied, cut) }),
  };
}

type Move = (columns: readonly Float64Array[], w: Float64Array) => void;

function variedOf(own: number, base: Varied, cut: CutOff): Varied {
  const seats = cutPair(cut, base.seats);
  const { off, input } = cut;
  const sources: Source[] = [...base.sources];
  /** The place of a number, which is added where it is not there yet. */
  const placeOf = (wanted: Source) => {
    const same = ({ seat, part, of }: Source) => seat === wanted.seat && part === wanted.part && of === wanted.of;
    const found = sources.findIndex(same);
    return found >= 0 ? found : sources.push(wanted) - 1;
  };
  const cuts = off.taken.map((one): Move => {
    const { seat, part, normal, sigma } = one;
    const { halfAngle } = seats[seat]![part];
    const [angle, radius] = [placeOf({ seat, part, of: 'halfAngle' }), placeOf({ seat, part, of: 'radius' })];
    const set = isRenewed(cut, one);
    const middle = radialOf(normal, halfAngle);
    return (columns, w) => {
      const [angles, radii] = [columns[angle]!, columns[radius]!];
      if (set) angles.fill(0);
      for (let k = 0; k < w.length; k++)
        radii[k]! -= outward(part) * (radialOf(normal + sigma * w[k]!, halfAngle + angles[k]!) - middle);
    };
  });
  const moves = (off.faces ?? []).map(({ face, sigma }): Move => {
    const { seats: moved, part, moves: way } = input.faces![face]!;
    const places = moved.flatMap((seat) =>
      (['station', 'from', 'to'] as const).map((of) => placeOf({ seat, part, of })),
    );
    return (columns, w) => {
      for (const place of places) for (let k = 0; k < w.length; k++) columns[place]![k]! += way * sigma * w[k]!;
    };
  });
  const all = [...cuts, ...moves];
  let w = new Float64Array(0);
  // A number that has several sources is one column here, so that what is drawn of an angle is known whole.
  const known = base.sources.map(placeOf);
  return {
    seats,
    sources,
    add: (u, columns) => {
      const count = columns[0]?.length ?? 0;
      if (w.length !== count) w = new Float64Array(count);
      base.add(
        u.slice(0, own),
        known.map((place) => columns[place]!),
      );
      all.forEach((move, i) => {
        normalsOf(u[own + i]!, w);
        move(columns, w);
      });
    },
  };
}

/** Whether a surface is cut to a new line by this, and not before. */
function isRenewed({ input, before }: CutOff, { seat, part, normal }: { seat: number; part: Part; normal: number }) {
  const same = (one: { seat: number; part: Part }) => one.seat === seat && one.part === part;
  return normal > 0 && !before.some(same) && (input.allow ?? []).some((a) => same(a) && a.renew !== undefined);
}

/** What a source of the cut pair is: one of the pair's own, or a cut by its place. */
type CutSource = { own: number } | { cut: number };

/** The same with numbers that follow evenly, for what matters: stock as a spread of the radius. */
export function cutLinear(linear: Linear, cut: CutOff): { sampler: LinearSampler; from: CutSource[] } {
  const { off, input } = cut;
  const seats = cutPair(cut, linear.seats);
  const { taken, faces = [] } = off;
  const stays = linear.sources.map(
    (source) => source.of !== 'halfAngle' || !taken.some((one) => isSame(one, source) && isRenewed(cut, one)),
  );
  const factor = linear.factor.map((row, i) => (stays[i] ? row : row.map(() => 0)));
  const own = factor.map((row) => factor.map((other) => row.reduce((sum, f, d) => sum + f * other[d]!, 0)));
  const stock = taken.map(({ seat, part, sigma }, i) => ({
    sources: [{ seat, part, of: 'radius' } as Source],
    sigma: radialOf(sigma, seats[seat]![part].halfAngle),
    cut: i,
  }));
  const moved = faces.map(({ face, sigma }, i) => {
    const { seats: of, part } = input.faces![face]!;
    const sources = of.flatMap((seat) =>
      (['station', 'from', 'to'] as const).map((number): Source => ({ seat, part, of: number })),
    );
    return { sources, sigma, cut: taken.length + i };
  });
  const added = [...stock, ...moved].flatMap(({ sources, ...rest }) => sources.map((source) => ({ source, ...rest })));
  const n = own.length;
  const all = n + added.length;
  const covariance = Array.from({ length: all }, (_, i) =>
    Float64Array.from({ length: all }, (__, k) => {
      if (i < n && k < n) return own[i]![k]!;
      if (i < n || k < n || added[i - n]!.cut !== added[k - n]!.cut) return 0;
      return added[i - n]!.sigma * added[k - n]!.sigma;
    }),
  );
  return {
    sampler: linearSampler(seats, [...linear.sources, ...added.map(({ source }) => source)], covariance, [
      ...linear.marginals,
      ...added.map(() => 'normal' as const),
    ]),
    from: [...linear.sources.map((_, i) => ({ own: i })), ...added.map(({ cut: place }) => ({ cut: place }))],
  };
}

const isSame = (one: { seat: number; part: Part }, other: { seat: number; part: Part }) =>
  one.seat === other.seat && one.part === other.part;
