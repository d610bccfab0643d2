/**
 * Pairs drawn from a list of shapes, each with its weight: what trials leave of a belief where no normal one holds. The
 * first dimension picks: even draws, taken in order, fall on each shape as often as its weight says, to within one. A
 * spread of other sources may be added on top, in the dimensions after it. However often the list is drawn from, it
 * tells no more than its own pairs do:
 *
 *   effective number = (Σ w)²/Σ w²
 *
 * @source Kish1965 (effective number)
 */
import type { SeatInput } from '../contact/fit.ts';
import { type Sampler, type Source, type Varied, withAdded } from './sampler.ts';

const BOTH = ['journal', 'bush'] as const;
const NUMBERS = ['halfAngle', 'radius', 'station', 'from', 'to'] as const;

/** `middle`: the pair about which the shapes lie, with what is wanted of each seat. */
export function weightedSampler(
  middle: SeatInput[],
  shapes: readonly (readonly SeatInput[])[],
  weights: ArrayLike<number>,
  spread?: Sampler & { varied: Varied },
): Sampler {
  const upTo = cumulative(weights, shapes.length);
  const varied = withoutProfiles([middle, ...shapes]) ? variedOf(middle, shapes, upTo, spread) : null;
  const shape = (u: Float64Array) => {
    const picked = shapes[pick(upTo, u[0]!)]!;
    if (!spread) return withAdded(picked, [], []);
    const { sources, add } = spread.varied;
    const by = sources.map(() => new Float64Array(1));
    add(
      Array.from(u.subarray(1), (x) => Float64Array.of(x)),
      by,
    );
    return withAdded(
      picked,
      sources,
      by.map((column) => column[0]!),
    );
  };
  const shares = upTo.map((x, i) => x - (i === 0 ? 0 : upTo[i - 1]!));
  const effective = 1 / shares.reduce((sum, share) => sum + share * share, 0);
  return { dimensions: 1 + (spread?.dimensions ?? 0), shape, effective, ...(varied && { varied }) };
}

/** The numbers of each shape less those of the middle, a source for each that differs anywhere. */
function variedOf(
  middle: SeatInput[],
  shapes: readonly (readonly SeatInput[])[],
  upTo: Float64Array,
  spread: (Sampler & { varied: Varied }) | undefined,
): Varied {
  const every = middle.flatMap((_, seat) => BOTH.flatMap((part) => NUMBERS.map((of): Source => ({ seat, part, of }))));
  const table = every.map(({ seat, part, of }) =>
    Float64Array.from(shapes, (shape) => shape[seat]![part][of] - middle[seat]![part][of]),
  );
  const used = every.flatMap((_, i) => (table[i]!.some((by) => by !== 0) ? [i] : []));
  const own = used.map((i) => every[i]!);
  return {
    seats: middle,
    sources: [...own, ...(spread?.varied.sources ?? [])],
    add: (u, columns) => {
      const first = u[0]!;
      for (let k = 0; k < first.length; k++) {
        const at = pick(upTo, first[k]!);
        for (let i = 0; i < used.length; i++) columns[i]![k]! += table[used[i]!]![at]!;
      }
      spread?.varied.add(u.slice(1), columns.slice(own.length));
    },
  };
}

const withoutProfiles = (shapes: readonly (readonly SeatInput[])[]) =>
  shapes.every((shape) => shape.every((seat) => BOTH.every((part) => seat[part].profile.length === 0)));

function cumulative(weights: ArrayLike<number>, count: number): Float64Array {
  const upTo = new Float64Array(count);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    if (!(weights[i]! >= 0)) throw new RangeError(`weight ${i} is ${weights[i]}: allowed is 0 or more`);
    sum += weights[i]!;
    upTo[i] = sum;
  }
  if (!(sum > 0)) throw new RangeError('weights: none is more than 0');
  return upTo.map((x) => x / sum);
}

/** The first shape up to which the weights reach more than u. */
function pick(upTo: Float64Array, u: number): number {
  let [low, high] = [0, upTo.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (upTo[middle]! > u) high = middle;
    else low = middle + 1;
  }
  return low;
}
