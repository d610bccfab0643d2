/** The `measure` section of the report. */
import type { Design, Part } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { type Consequence, consequencesOf } from '../../engine/belief/consequences.ts';
import { covarianceOf, uncertaintyOf, unit } from '../../engine/belief/decomposition.ts';
import { relatedSeats } from '../../engine/belief/quantities.ts';
import { isOfShape, type On, type ShapeUnknown, type Unknown } from '../../engine/belief/unknowns.ts';
import { seatLines } from '../../engine/contact/fit.ts';
import { type Estimate, estimate } from '../../engine/gauging/estimate.ts';
import {
  nextFor,
  nextForUnknown,
  type Suggestion,
  type WholePair,
  wholePairOf,
} from '../../engine/gauging/nextReading.ts';
import { degrees, metres, millimetres, toSeats } from '../convert.ts';
import { shopTools } from '../shopTools.ts';
import type { ConsequenceReport, MeasureReport, SuggestionReport } from './definition.ts';
import { disagreeingSection } from './disagreeing.ts';
import { faultReport } from './faultText.ts';
import { fromReading, toPriors } from './toReading.ts';
import { usedReadings } from './usedReadings.ts';

/** `tools`: which system's tools the shop has, for the readings that are suggested. */
export function measureSection(design: Design, tools: System = 'metric'): MeasureReport | undefined {
  if (!design.readings || design.readings.length === 0) return undefined;
  const seats = toSeats(design);
  const { readings, places, overtaken, aside } = usedReadings(design, seats);
  const priors = toPriors(design);
  const found = estimate(seats, readings, priors);
  const impossible = found.impossible.map(({ index, fault, possibleAsDrawn }) => ({
    ...faultReport(design, places[index]!, fault),
    possibleAsDrawn,
  }));
  const named = ({ seat, part }: On) => ({ seat: design.seats[seat]!.name, part });
  const old = overtaken.flatMap((on, index) => (on.length === 0 ? [] : [{ index, surfaces: on.map(named) }]));
  const open = aside.map(({ index, touchers, unread }) => ({
    index,
    touched: Object.fromEntries(touchers.map(({ seat, chance }) => [design.seats[seat]!.name, chance])),
    unread: unread.map(named),
  }));
  if (found.kind === 'unusable') return { ...NOTHING, impossible, overtaken: old, aside: open };
  const position = metres(design.position ?? 0);
  const pair = wholePairOf(found, readings, priors, shopTools(design, tools));
  const whole = standOffTells(found) ? pair : withoutStandOff(pair);
  const consequences = consequencesSection(design, found, position);
  return {
    surfaces: surfacesOf(found).map((on) => surfaceSection(design, found, on)),
    correlations: correlationsSection(design, found),
    readings: found.readings.map(({ index, fitted, residual, normalised, leverage }) => ({
      index: places[index]!,
      fitted: millimetres(fitted),
      residual: millimetres(residual),
      normalised,
      leverage,
    })),
    chiSquare: found.chiSquare,
    freedom: found.freedom,
    probability: found.probability,
    settled: found.settled,
    impossible,
    overtaken: old,
    aside: open,
    disagreeing: disagreeingSection(design, found, readings, places, tools),
    undetermined: found.unknowns.list.flatMap((unknown, j) =>
      found.told[j] || !isOfShape(unknown) ? [] : [undeterminedSection(design, found, whole, unknown, j)],
    ),
    consequences,
    next: nextSection(design, whole, position, consequences),
  };
}

/** A stand-off counts once every seat that may have touched was read (usedReadings.ts). */
function standOffTells({ seats, unknowns, told }: Estimate): boolean {
  const closing = seats.flatMap((input, seat) => (seatLines(input).closes === 'rearward' ? [seat] : []));
  const isRead = (seat: number, part: Part) => {
    const own = unknowns.list.flatMap((u, j) => (u.seat === seat && u.part === part ? [told[j]!] : []));
    return own.length > 0 && own.every(Boolean);
  };
  return closing.length < 2 || closing.every((seat) => isRead(seat, 'journal') && isRead(seat, 'bush'));
}

function withoutStandOff(pair: WholePair): WholePair {
  const places = pair.candidates.flatMap(({ kind }, k) => (kind === 'standOff' ? [] : [k]));
  return { ...pair, candidates: places.map((k) => pair.candidates[k]!), rows: places.map((k) => pair.rows[k]!) };
}

/** What a notebook without one usable reading gives. */
const NOTHING: Omit<MeasureReport, 'impossible' | 'overtaken' | 'aside'> = {
  surfaces: [],
  correlations: { numbers: [], matrix: [] },
  readings: [],
  chiSquare: 0,
  freedom: 0,
  probability: 1,
  settled: true,
  disagreeing: [],
  undetermined: [],
  consequences: {
    relation: null,
    relationBetween: null,
    firstPosition: null,
    seatPositions: {},
    films: {},
    first: null,
  },
  next: null,
};

/** The surfaces that are told of, in the order of the design, each once. */
const surfacesOf = ({ unknowns }: Estimate): On[] =>
  unknowns.list.filter((u) => u.of === 'radius').map(({ seat, part }) => ({ seat, part }));

function surfaceSection(
  design: Design,
  { seats, unknowns, decomposition, tapers, isHeld }: Estimate,
  { seat, part }: On,
): MeasureReport['surfaces'][number] {
  const count = unknowns.list.length;
  const placeOf = (of: Unknown['of'], station?: number) =>
    unit(
      count,
      unknowns.list.findIndex((u) => u.seat === seat && u.part === part && u.of === of && u.station === station),
    );
  const [angle, radius] = [placeOf('halfAngle'), placeOf('radius')];
  const straight = isHeld({ seat, part });
  const taper = tapers.find((t) => t.seat === seat && t.part === part);
  const [sigmaAngle, sigmaRadius] = [
    straight ? 0 : uncertaintyOf(decomposition, angle),
    uncertaintyOf(decomposition, radius),
  ];
  const surface = seats[seat]![part];
  const deviations = unknowns.list.filter((u) => u.seat === seat && u.part === part && u.of === 'deviation');
  const profile = deviations.map(({ station }) => {
    const sigma = uncertaintyOf(decomposition, placeOf('deviation', station));
    return {
      station: millimetres(station!),
      deviation: millimetres(surface.profile.find(([z]) => z === station)![1]),
      sigma: orNull(sigma, millimetres),
    };
  });
  return {
    seat: design.seats[seat]!.name,
    part,
    halfAngle: degrees(surface.halfAngle),
    diameter: 2 * millimetres(surface.radius),
    sigma: { halfAngle: orNull(sigmaAngle, degrees), diameter: orNull(sigmaRadius, (r) => 2 * millimetres(r)) },
    correlation:
      sigmaAngle === null || sigmaRadius === null || straight
        ? null
        : covarianceOf(decomposition, angle, radius) / (sigmaAngle * sigmaRadius),
    ...(profile.length > 0 && { profile }),
    ...(straight && { straight }),
    ...(taper && {
      tapered: {
        halfAngle: degrees(taper.halfAngle),
        sigma: degrees(taper.sigma),
        diameter: 2 * millimetres(taper.radius),
        significance: taper.significance,
      },
    }),
  };
}

/** Between all half angles and diameters that are told; points of profiles are left out. */
function correlationsSection(
  design: Design,
  { unknowns: { list }, decomposition }: Estimate,
): MeasureReport['correlations'] {
  const lines = list.flatMap(({ of }, j) => (of === 'radius' || of === 'halfAngle' ? [j] : []));
  const gradients = lines.map((j) => unit(list.length, j));
  const sigmas = gradients.map((gradient) => uncertaintyOf(decomposition, gradient));
  const between = (a: number, b: number) =>
    sigmas[a] === null || sigmas[b] === null
      ? null
      : a === b
        ? 1
        : covarianceOf(decomposition, gradients[a]!, gradients[b]!) / (sigmas[a]! * sigmas[b]!);
  return {
    numbers: lines.map((j) => ({
      seat: design.seats[list[j]!.seat]!.name,
      part: list[j]!.part,
      of: list[j]!.of === 'radius' ? 'diameter' : 'halfAngle',
    })),
    matrix: lines.map((_, a) => lines.map((_, b) => between(a, b))),
  };
}

const orNull = (value: number | null, convert: (x: number) => number) => (value === null ? null : convert(value));

function undeterminedSection(
  design: Design,
  { held }: Estimate,
  whole: WholePair,
  unknown: ShapeUnknown,
  place: number,
): MeasureReport['undetermined'][number] {
  const { seat, part, of, station } = unknown;
  const [next] = nextForUnknown(whole, unknown);
  return {
    seat: design.seats[seat]!.name,
    part,
    of: of === 'radius' ? 'diameter' : of,
    ...(station !== undefined && { station: millimetres(station) }),
    held: held[place]!,
    next: next
      ? suggestionSection(
          design,
          next,
          of === 'halfAngle' ? degrees : of === 'radius' ? (r) => 2 * millimetres(r) : millimetres,
        )
      : null,
  };
}

function suggestionSection(
  design: Design,
  { reading, sigma }: Suggestion,
  convert: (x: number) => number,
): SuggestionReport {
  return { reading: fromReading(design, reading), sigma: orNull(sigma, convert) };
}

function consequencesSection(design: Design, found: Estimate, position: number): MeasureReport['consequences'] {
  const { all, first } = consequencesOf(found, position);
  const nameOf = (seat: number) => design.seats[seat]!.name;
  const told = (of: Consequence['quantity']['of'], seat?: number) =>
    consequenceSection(
      nameOf,
      all.find(({ quantity: q }) => q.of === of && (!('seat' in q) || q.seat === seat)),
    );
  const bySeat = (of: 'seatPosition' | 'film') =>
    Object.fromEntries(design.seats.map(({ name }, seat) => [name, told(of, seat)]));
  const between = relatedSeats(found.seats);
  return {
    relation: told('relation'),
    relationBetween: between && [nameOf(between[0]), nameOf(between[1])],
    firstPosition: told('firstPosition'),
    seatPositions: bySeat('seatPosition'),
    films: bySeat('film'),
    first: first && Object.fromEntries(first.map(({ seat, probability }) => [nameOf(seat), probability])),
  };
}

function consequenceSection(
  nameOf: (seat: number) => string,
  consequence: Consequence | undefined,
): ConsequenceReport | null {
  if (!consequence || consequence.value === null) return null;
  const { value, sigma, interval, asDrawn } = consequence;
  return {
    value: millimetres(value),
    sigma: orNull(sigma, millimetres),
    interval: interval && [millimetres(interval[0]), millimetres(interval[1])],
    asDrawn: asDrawn.map(({ seat, part }: On): { seat: string; part: Part } => ({ seat: nameOf(seat), part })),
  };
}

function nextSection(
  design: Design,
  whole: WholePair,
  position: number,
  { relation, firstPosition }: MeasureReport['consequences'],
): MeasureReport['next'] {
  const quantity = relation ? 'relation' : firstPosition ? 'firstPosition' : null;
  if (quantity === null) return null;
  const sigma = (relation ?? firstPosition)!.sigma;
  return {
    quantity,
    sigma,
    suggestions: nextFor(whole, { of: quantity }, position).map((s) => suggestionSection(design, s, millimetres)),
  };
}
