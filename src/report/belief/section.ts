/** The `belief` section of the report: both parts as they most likely are by now, and how sure that is. */
import type { Design } from '../../design/definition.ts';
import type { Metres, Millimetres } from '../../design/dimension.ts';
import { consequencesOf, type FirstSeat } from '../../engine/belief/consequences.ts';
import { covarianceOf, uncertaintyOf, unit } from '../../engine/belief/decomposition.ts';
import { type Quantity, valuesOf } from '../../engine/belief/quantities.ts';
import { leastFilm } from '../../engine/contact/film.ts';
import { seatLines } from '../../engine/contact/fit.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import type { Trial, TrialInput } from '../../engine/cutting/trial.ts';
import { believed } from '../../engine/cutting/trialReadings.ts';
import type { WholeBelief } from '../../engine/gauging/believe.ts';
import type { Part } from '../../engine/parts/line.ts';
import { degrees, metres, millimetres, toSeats } from '../convert.ts';
import { openTrials, tellsAnything } from '../cut/openTrials.ts';
import { type Cut, toPlanInput, toTrials } from '../cut/toCut.ts';
import { usedReadings } from '../measure/usedReadings.ts';
import { openedBy, partsNow } from '../sheet/partsAfterTrials.ts';
import { believedOf, likelyNow, pairsAfter, settledSection } from './believed.ts';
import type { BeliefReport, BelievedQuantity } from './definition.ts';
import { filmSpread, limitsOf } from './spread.ts';

/** Of a design of which nothing was ever read or stated there is nothing to believe: it is as drawn. */
export function beliefSection(design: Design): BeliefReport | undefined {
  const cut = design.cut ?? { allow: [] };
  const trials = openTrials(cut).some(tellsAnything) ? toTrials(design, cut) : [];
  const read = (design.readings?.length ?? 0) + (design.priors?.length ?? 0);
  if (read === 0 && trials.length === 0 && cut.doubt === undefined) return undefined;
  const { belief } = believedOf(design);
  const position = metres(design.position ?? 0);
  const told = trials.length === 0 ? linear(design, cut, belief, position) : byDraws(design, cut, trials, position);
  return {
    position: millimetres(position),
    assumed: assumedSection(design, belief.unread),
    disagreeing: usedPlaces(design, belief.disagreeing),
    ...settledSection(design),
    ...told,
  };
}

/** Numbers that nobody has read. */
export const assumedSection = ({ seats }: Design, unread: WholeBelief['unread']): BeliefReport['assumed'] =>
  unread.map(({ seat, part, of, sigma }) => ({
    seat: seats[seat]!.name,
    part,
    ...(of === 'radius' ? { of: 'diameter', sd: 2 * millimetres(sigma) } : { of, sd: degrees(sigma) }),
  }));

/** Places in the notebook of readings that are used. */
function usedPlaces(design: Design, used: readonly number[]): number[] {
  const { places } = usedReadings(design, toSeats(design));
  return used.map((k) => places[k]!);
}

type Told = Omit<BeliefReport, 'position' | 'assumed' | 'disagreeing' | 'notAsRead'>;

/** As Measure tells it (engine/belief/consequences.ts), with what nobody has read in it. */
function linear(design: Design, cut: Cut, belief: WholeBelief, position: Metres): Told {
  const { all, first } = consequencesOf(belief, position);
  const quantity = (of: Quantity['of'], seat?: number): BelievedQuantity | null => {
    const found = all.find(({ quantity: q }) => q.of === of && (!('seat' in q) || q.seat === seat));
    if (!found || found.value === null || found.sigma === null || found.interval === null) return null;
    return {
      mean: millimetres(found.value),
      sd: millimetres(found.sigma),
      low: millimetres(found.interval[0]),
      high: millimetres(found.interval[1]),
    };
  };
  return {
    surfaces: linearSurfaces(design, belief),
    first: first && Object.fromEntries(design.seats.map(({ name }, i) => [name, chanceOf(first, i)])),
    firstPosition: quantity('firstPosition'),
    relation: quantity('relation'),
    films: withLikely(
      design,
      design.seats.map((_, i) => quantity('film', i)),
      likelyFilms(design, toPlanInput(design, cut), [], position),
    ),
    method: 'linear',
  };
}

const chanceOf = (first: readonly FirstSeat[], seat: number) =>
  first.find((one) => one.seat === seat)?.probability ?? 0;

/** Of parts no pair of which goes with what was read. */
const NOTHING: Told = {
  surfaces: [],
  first: null,
  firstPosition: null,
  relation: null,
  films: {},
  method: 'draws',
  effective: 0,
};

function byDraws(design: Design, cut: Cut, trials: readonly Trial[], position: Metres): Told {
  const input = toPlanInput(design, cut);
  const drawn = pairsAfter(design, input, trials);
  if (drawn.pairs.length === 0) return NOTHING;
  const values = drawn.pairs.map((pair) => valuesOf(pair, position));
  const seats = design.seats.length;
  const quantity = (k: number) => quantityOf(values, drawn.weights, k);
  return {
    surfaces: drawnSurfaces(design, drawn),
    first: firstOf(design, values, drawn.weights),
    firstPosition: quantity(1),
    relation: quantity(0),
    films: withLikely(
      design,
      design.seats.map((_, i) => quantity(2 + seats + i)),
      likelyFilms(design, input, trials, position),
    ),
    method: 'draws',
    ...standsSection(design, likelyNow(design, input, trials)?.films),
    effective: drawn.effective,
  };
}

/** As the parts most likely stand by now, by how much (m) each film is most likely greater; the same as on Cut. */
function standsSection(design: Design, more: readonly number[] | undefined): Pick<Told, 'stands'> {
  if (!more) return {};
  const by = new Map(design.seats.map(({ name }, i) => [name, millimetres(more[i]!)]));
  const { seats } = openedBy(partsNow(design), (seat) => by.get(seat)!);
  return { stands: seats.map(({ name, journal, bush }) => ({ seat: name, journal, bush })) };
}

/** Most likely film of every seat, and how far it may be off (m). */
interface LikelyFilms {
  films: (number | null)[];
  off: number[] | null;
}

/** As Cut tells it; null where it is the mean of normal numbers, and where the trials do not go together. */
function likelyFilms(
  design: Design,
  input: TrialInput,
  trials: readonly Trial[],
  position: Metres,
): LikelyFilms | null {
  const known = likelyNow(design, input, trials);
  if (!known) return null;
  const { parts, films } = known;
  return {
    films: believed(parts, films).map((seat) => leastFilm(seatLines(seat).gap, position)),
    off: filmSpread(parts, films, pairsAfter(design, input, trials), position),
  };
}

function withLikely(
  { seats }: Design,
  quantities: readonly (BelievedQuantity | null)[],
  likely: LikelyFilms | null,
): BeliefReport['films'] {
  return Object.fromEntries(
    seats.map(({ name }, i) => {
      const [quantity, film] = [quantities[i]!, likely?.films[i] ?? null];
      return quantity && likely?.off && film !== null
        ? [name, { ...withIn(quantity, millimetres(film)), off: millimetres(likely.off[i]!) }]
        : [name, quantity];
    }),
  );
}

/** With the most likely, which lies between its limits. */
const withIn = (quantity: BelievedQuantity, likely: Millimetres) => ({
  ...quantity,
  low: Math.min(quantity.low, likely),
  high: Math.max(quantity.high, likely),
  likely,
});

const PARTS: readonly Part[] = ['journal', 'bush'];
const surfaces = (design: Design) =>
  design.seats.flatMap(({ name }, seat) => PARTS.map((part) => ({ name, seat, part })));

function linearSurfaces(design: Design, { seats, unknowns, decomposition }: WholeBelief): BeliefReport['surfaces'] {
  return surfaces(design).map(({ name, seat, part }) => {
    const gradient = (of: 'halfAngle' | 'radius') => {
      const place = unknowns.list.findIndex((u) => u.seat === seat && u.part === part && u.of === of);
      return place < 0 ? null : unit(unknowns.list.length, place);
    };
    const [angle, radius] = [gradient('halfAngle'), gradient('radius')];
    const sd = (of: Float64Array | null) => (of && uncertaintyOf(decomposition, of)) ?? 0;
    const [a, r] = [sd(angle), sd(radius)];
    const { halfAngle, radius: mean } = seats[seat]![part];
    return {
      seat: name,
      part,
      halfAngle: { mean: degrees(halfAngle), sd: degrees(a) },
      diameter: { mean: 2 * millimetres(mean), sd: 2 * millimetres(r) },
      correlation: a > 0 && r > 0 ? covarianceOf(decomposition, angle!, radius!) / (a * r) : null,
    };
  });
}

function drawnSurfaces(design: Design, { pairs, weights }: PairsDrawn): BeliefReport['surfaces'] {
  const mean = (of: (k: number) => number) => weights.reduce((sum, weight, k) => sum + weight * of(k), 0);
  return surfaces(design).map(({ name, seat, part }) => {
    const angle = (k: number) => pairs[k]![seat]![part].halfAngle;
    const radius = (k: number) => pairs[k]![seat]![part].radius;
    const [a, r] = [mean(angle), mean(radius)];
    const [sdA, sdR] = [Math.sqrt(mean((k) => (angle(k) - a) ** 2)), Math.sqrt(mean((k) => (radius(k) - r) ** 2))];
    return {
      seat: name,
      part,
      halfAngle: { mean: degrees(a), sd: degrees(sdA) },
      diameter: { mean: 2 * millimetres(r), sd: 2 * millimetres(sdR) },
      correlation: sdA > 0 && sdR > 0 ? mean((k) => (angle(k) - a) * (radius(k) - r)) / (sdA * sdR) : null,
    };
  });
}

/** Null where hardly a pair has it: then it says nothing of the parts. */
function quantityOf(
  values: readonly (number | null)[][],
  weights: readonly number[],
  k: number,
): BelievedQuantity | null {
  const each = values.flatMap((of, i) => (of[k] == null ? [] : [{ value: of[k]!, weight: weights[i]! }]));
  const limits = limitsOf(
    values.map((of) => of[k] ?? null),
    weights,
  );
  if (!limits) return null;
  const all = each.reduce((sum, { weight }) => sum + weight, 0);
  const mean = each.reduce((sum, { value, weight }) => sum + weight * value, 0) / all;
  const variance = each.reduce((sum, { value, weight }) => sum + weight * (value - mean) ** 2, 0) / all;
  return {
    mean: millimetres(mean),
    sd: millimetres(Math.sqrt(variance)),
    low: millimetres(limits[0]),
    high: millimetres(limits[1]),
  };
}

function firstOf(
  design: Design,
  values: readonly (number | null)[][],
  weights: readonly number[],
): BeliefReport['first'] {
  const counts = design.seats.map(() => 0);
  let all = 0;
  for (const [i, of] of values.entries()) {
    const first = of[1];
    // The position of first touch is that of the seat which touches there.
    const seat = design.seats.findIndex((_, k) => first != null && of[2 + k] === first);
    if (seat < 0) continue;
    counts[seat]! += weights[i]!;
    all += weights[i]!;
  }
  return all === 0 ? null : Object.fromEntries(design.seats.map(({ name }, i) => [name, counts[i]! / all]));
}
