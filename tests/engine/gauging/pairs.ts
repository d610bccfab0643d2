/** Random pairs, true shapes near them, and notebooks of readings taken from those. SI units. */
import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { normalQuantile } from '../../../src/engine/belief/distributions.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { type Estimate, estimate } from '../../../src/engine/gauging/estimate.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import type { Part, Surface } from '../../../src/engine/parts/line.ts';

export const MM = 1e-3;
export const UM = 1e-6;
export const DEG = Math.PI / 180;

export const cone = (
  halfAngle: number,
  diameter: number,
  station: number,
  from: number,
  to: number,
  profile: [number, number][] = [],
): Surface => ({
  halfAngle: halfAngle * DEG,
  radius: (diameter / 2) * MM,
  station: station * MM,
  from: from * MM,
  to: to * MM,
  profile: profile.map(([z, d]) => [z * MM, d * MM] as const),
});

/** The double cone of the demos: mm, degrees. */
export const doubleCone = (): SeatInput[] => [
  {
    name: 'shallow',
    journal: cone(3, 22, 0, -26, 0),
    bush: cone(3, 22.005, 0, -25, -0.5),
    target: 2.5 * UM,
    tolerance: 0.5 * UM,
  },
  {
    name: 'steep',
    journal: cone(45, 24, 1.2, 1.2, 4.2),
    bush: cone(45, 24.0071, 1.2, 1, 4),
    target: 2.5 * UM,
    tolerance: 0.5 * UM,
  },
];

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A double cone of any angles and sizes, either way round. */
export const anyPair = fc
  .record({
    shallow: between(1.5, 9),
    steep: between(22, 60),
    diameter: between(16, 40),
    length: between(15, 30),
    clearance: between(2, 12),
    turned: fc.boolean(),
  })
  .map(({ shallow, steep, diameter, length, clearance, turned }): SeatInput[] => {
    const wide = diameter + 2;
    const pair: SeatInput[] = [
      {
        name: 'shallow',
        journal: cone(shallow, diameter, 0, -length - 1, 0),
        bush: cone(shallow, diameter + clearance / 1000, 0, -length, -0.5),
        target: 2.5 * UM,
      },
      {
        name: 'steep',
        journal: cone(steep, wide, 1.2, 1.2, 4.2),
        bush: cone(steep, wide + clearance / 1000, 1.2, 1, 4),
        target: 2.5 * UM,
      },
    ];
    return turned
      ? pair.map((seat) => ({ ...seat, journal: turnedAbout(seat.journal), bush: turnedAbout(seat.bush) }))
      : pair;
  });

/** Seen from the other end. */
const turnedAbout = ({ halfAngle, radius, station, from, to, profile }: Surface): Surface => ({
  halfAngle: -halfAngle,
  radius,
  station: -station,
  from: -to,
  to: -from,
  profile: profile.map(([z, d]) => [-z, d] as const).reverse(),
});

/** How far the parts are from the drawing: up to a tenth of a degree and 20 µm. */
export const errors = fc.array(between(-1, 1), { minLength: 8, maxLength: 8 });

export function disturbed(nominal: readonly SeatInput[], by: readonly number[]): SeatInput[] {
  const surface = (s: Surface, k: number): Surface => ({
    ...s,
    halfAngle: s.halfAngle + 0.1 * DEG * by[k]!,
    radius: s.radius + 20 * UM * by[k + 1]!,
  });
  return nominal.map((seat, i) => ({
    ...seat,
    journal: surface(seat.journal, 4 * i),
    bush: surface(seat.bush, 4 * i + 2),
  }));
}

/** Every surface read in several ways; exact values of `truth`; only set-ups that are possible on both shapes. */
export function notebook(nominal: readonly SeatInput[], truth: readonly SeatInput[]): Reading[] {
  const readings = nominal.flatMap((_, seat) => [...journalReadings(nominal, seat), ...bushReadings(nominal, seat)]);
  readings.push({ kind: 'standOff', value: 0, sigma: 2 * UM });
  return readings.flatMap((reading) => (predict(reading, nominal).fault ? [] : readFrom(truth, reading)));
}

const at = ({ from, to }: Surface, share: number) => from + share * (to - from);

function journalReadings(seats: readonly SeatInput[], seat: number): Reading[] {
  const on = { seat, part: 'journal' as const, value: 0 };
  const surface = seats[seat]!.journal;
  const roll = 3 * MM;
  const rolls = [0.15, 0.5, 0.85].map(
    (share): Reading => ({
      ...on,
      kind: 'overRolls',
      roll,
      station: at(surface, share) - (roll / 2) * Math.sin(surface.halfAngle),
      sigma: UM,
    }),
  );
  return [...rolls, ...bothWays(on, surface)];
}

function bushReadings(seats: readonly SeatInput[], seat: number): Reading[] {
  const on = { seat, part: 'bush' as const, value: 0 };
  const surface = seats[seat]!.bush;
  const radius = (share: number) =>
    surface.radius + (at(surface, share) - surface.station) * Math.tan(surface.halfAngle);
  const balls = [0.15, 0.5, 0.85].map(
    (share): Reading => ({
      ...on,
      kind: 'ballDepth',
      ball: (2 * radius(share)) / Math.cos(surface.halfAngle),
      face: 5 * MM,
      sigma: 2 * UM,
    }),
  );
  return [...balls, ...bothWays(on, surface)];
}

function bothWays(on: { seat: number; part: Part; value: number }, surface: Surface): Reading[] {
  const bar = 100 * MM;
  const stack = Math.round(bar * Math.sin(surface.halfAngle) * 1e5) / 1e5;
  return [
    { ...on, kind: 'diameter', station: at(surface, 0.3), sigma: UM },
    { ...on, kind: 'diameter', station: at(surface, 0.9), sigma: UM },
    { ...on, kind: 'sineRise', bar, stack, travel: 0.8 * (surface.to - surface.from), sigma: UM },
  ];
}

/** The reading as `truth` gives it; none where it cannot be taken. */
export function readFrom(truth: readonly SeatInput[], reading: Reading): Reading[] {
  const { value, fault } = predict(reading, truth);
  return value === null || fault ? [] : [{ ...reading, value }];
}

/** Independent standard normal draws. */
export function normals(seed: number): () => number {
  const random = mersenne(seed);
  return () => normalQuantile(uniformFloat64(random) + Number.EPSILON / 4);
}

export const noisy = (readings: readonly Reading[], draw: () => number): Reading[] =>
  readings.map((reading) => ({ ...reading, value: reading.value + reading.sigma * draw() }));

/** The estimate, which must be there. */
export function estimated(...of: Parameters<typeof estimate>): Estimate {
  const found = estimate(...of);
  if (found.kind !== 'estimate') throw new Error(`no estimate: ${JSON.stringify(found.impossible)}`);
  return found;
}

/**
 * Greatest distance of a sample from a distribution, times the root of its size (Kolmogorov–Smirnov); above 1.95 in one
 * case of a thousand.
 */
export function kolmogorov(sample: readonly number[], cdf: (x: number) => number): number {
  const sorted = [...sample].sort((a, b) => a - b);
  const n = sorted.length;
  return (
    Math.sqrt(n) *
    sorted.reduce((most, x, i) => Math.max(most, Math.abs(cdf(x) - i / n), Math.abs(cdf(x) - (i + 1) / n)), 0)
  );
}

/**
 * A notebook with the straightness of one journal read at so many stations, bowed twice by a micrometre; exact values.
 */
export function straightnessNotebook(stations: number): { truth: SeatInput[]; readings: Reading[] } {
  const disturbedPair = disturbed(doubleCone(), [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
  const { journal } = disturbedPair[0]!;
  const places = Array.from({ length: stations }, (_, k) => (k + 1) / (stations + 1));
  const profile: [number, number][] = [0, ...places, 1].map((share) => [
    at(journal, share),
    share === 0 || share === 1 ? 0 : UM * Math.sin(2 * Math.PI * share),
  ]);
  const truth = disturbedPair.map((seat, i) => (i === 0 ? { ...seat, journal: { ...journal, profile } } : seat));
  const straight = places.flatMap((share) =>
    readFrom(truth, {
      kind: 'straightness',
      seat: 0,
      part: 'journal',
      station: at(journal, share),
      value: 0,
      sigma: 0.3 * UM,
    }),
  );
  return { truth, readings: [...notebook(doubleCone(), truth), ...straight] };
}
