/**
 * Designs at random over the whole definition of the file: every section, every key, sizes from a hundredth of a
 * millimetre to metres, uncertainties from a picometre. Sensible on the whole, so that most are valid; those that are
 * not are left out (validDesign).
 */
import fc from 'fast-check';
import type { Design, Seat, Surface } from '../../src/design/definition.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { between, perhaps, sized } from './arbitrary.ts';
import { cutOf } from './grammarCut.ts';
import { readingsOf } from './grammarReadings.ts';
import { record, shop } from './grammarRecord.ts';

const ANGLES = fc.oneof(
  between(1, 8),
  between(30, 60),
  fc.constant(0),
  between(-60, 60),
  fc.constantFrom(3, 45, -45, 1e-4),
  between(-88, 88),
);
const MISMATCH = fc.oneof(
  { weight: 4, arbitrary: fc.constant(0) },
  between(-0.02, 0.02),
  between(-3, 3),
  between(-29, 29),
);
const CLEARANCE = fc.oneof(
  { weight: 5, arbitrary: between(0, 0.02) },
  between(-0.005, 0.005),
  sized(1e-9, 1),
  fc.constant(0),
);

const lobes = fc.array(
  fc.record(
    {
      count: fc.oneof(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 200 })),
      amplitude: fc.oneof(sized(1e-9, 0.003), fc.constant(0)),
      phase: perhaps(between(-360, 360)),
    },
    { requiredKeys: ['count', 'amplitude'] },
  ),
  { maxLength: 3 },
);
const wear = fc.tuple(sized(1e-6, 0.01), fc.array(between(-1, 1), { minLength: 1, maxLength: 24 }));

interface Shape {
  halfAngle: number;
  /** radius at the rear end, before any clearance */
  rear: number;
  from: number;
  to: number;
}

/** A surface of the line, its diameter given at the place `at` of its length. */
function surfaceOf(
  { halfAngle, rear, from, to }: Shape,
  at: number,
  [worn, round, caseDepth]: [[number, number[]] | undefined, Surface['lobes'] | undefined, number | undefined],
): Surface {
  const slope = Math.tan((halfAngle * Math.PI) / 180);
  const station = from + at * (to - from);
  const profile = worn?.[1].map((share, i): [number, number] => [
    from + ((i + 0.5) / worn[1].length) * (to - from),
    share * worn[0],
  ]);
  return {
    halfAngle,
    diameter: 2 * (rear + (station - from) * slope),
    station,
    from,
    to,
    ...(profile && { profile }),
    ...(round && { lobes: round }),
    ...(caseDepth !== undefined && { caseDepth }),
  };
}

const seatOf = (name: string): fc.Arbitrary<Seat> =>
  fc
    .record({
      angle: ANGLES,
      mismatch: MISMATCH,
      small: fc.oneof({ weight: 3, arbitrary: between(4, 40) }, sized(0.05, 500)),
      length: fc.oneof({ weight: 3, arbitrary: between(2, 40) }, sized(0.01, 300)),
      rear: fc.oneof({ weight: 3, arbitrary: between(-120, 20) }, between(-2_000, 2_000)),
      over: fc.tuple(between(-0.2, 0.2), between(-0.2, 0.2)),
      at: fc.tuple(between(0, 1), between(0, 1)),
      clearance: CLEARANCE,
      worn: fc.tuple(perhaps(wear), perhaps(wear)),
      round: fc.tuple(perhaps(lobes), perhaps(lobes)),
      hard: fc.tuple(perhaps(sized(1e-3, 20)), perhaps(sized(1e-3, 20))),
      film: perhaps(
        fc.record(
          {
            target: fc.oneof(between(0, 0.01), fc.constant(0)),
            tolerance: perhaps(fc.oneof(between(0, 0.002), fc.constant(0), sized(1e-9, 1))),
          },
          { requiredKeys: ['target'] },
        ),
        4,
      ),
    })
    .map((c): Seat => {
      const slope = Math.tan((c.angle * Math.PI) / 180);
      const bush: Shape = {
        halfAngle: c.angle,
        rear: c.small + Math.max(0, -slope * c.length),
        from: c.rear,
        to: c.rear + c.length,
      };
      const from = c.rear + c.over[0] * c.length;
      const cosine = Math.cos((c.angle * Math.PI) / 180);
      const journal: Shape = {
        halfAngle: c.angle + c.mismatch,
        rear: bush.rear + (from - c.rear) * slope - c.clearance / cosine,
        from,
        to: bush.to + c.over[1] * c.length,
      };
      return {
        name,
        journal: surfaceOf(journal, c.at[0], [c.worn[0], c.round[0], c.hard[0]]),
        bush: surfaceOf(bush, c.at[1], [c.worn[1], c.round[1], c.hard[1]]),
        ...(c.film && { film: c.film }),
      };
    });

const NAMES = ['shallow', 'steep', 'rear', 'a', 'θ/ß', 'null', '=1+1', '日本'];
const seats = fc
  .oneof({ weight: 2, arbitrary: fc.constant(2) }, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 8 }))
  .chain((count) => fc.tuple(...NAMES.slice(0, count).map(seatOf)));

const signed = (max: number) => fc.oneof(between(-max, max), fc.constant(0));
const load = fc.record({
  x: perhaps(signed(500)),
  y: perhaps(signed(500)),
  z: perhaps(signed(500)),
  station: perhaps(between(-200, 200)),
});
const body = fc.record({
  mass: perhaps(sized(0.01, 100)),
  specificHeat: perhaps(between(100, 1000)),
  area: perhaps(sized(100, 1e6)),
  cooling: perhaps(fc.oneof(between(1, 100), fc.constant(0))),
  expansion: perhaps(sized(1e-7, 1e-4)),
  anchor: perhaps(between(-200, 200)),
});
const oil = fc.oneof(
  fc.record({ viscosity: sized(1e-4, 1) }),
  fc.record(
    { grade: sized(2, 500), index: perhaps(between(0, 200)), density: perhaps(between(0.6, 1.2)) },
    { requiredKeys: ['grade'] },
  ),
  fc.record({ measured: fc.tuple(sized(2, 100), between(1.1, 10)).map(([v, times]): [number, number][] => [[40, v * times], [100, v]]) }), // biome-ignore format: a pair a point
);
const runOf = (all: readonly Seat[]) =>
  fc
    .record(
      {
        speed: fc.oneof(between(100, 6_000), between(-20_000, 20_000), fc.constant(0)),
        oil,
        stand: fc.oneof(
          fc.record({ load }),
          fc.record({ load: perhaps(load), loads: fc.array(load, { maxLength: 3 }) }, { requiredKeys: ['loads'] }),
          fc.record({
            pose: fc.record({
              x: perhaps(signed(0.003)),
              y: perhaps(signed(0.003)),
              z: perhaps(signed(0.03)),
              tiltX: perhaps(signed(1e-4)),
              tiltY: perhaps(signed(1e-4)),
            }),
          }),
        ),
        supply: perhaps(
          fc.array(
            fc
              .record({
                seat: fc.constantFrom(...all),
                angle: between(-360, 360),
                ends: fc.tuple(between(0, 1), between(0, 1)),
                width: sized(0.1, 20),
                pressure: fc.oneof(fc.constant(0), between(0, 1)),
              })
              .map(({ seat: { name, bush }, angle, ends, width, pressure }) => ({
                seat: name,
                angle,
                from: bush.from + Math.min(...ends) * (bush.to - bush.from),
                to: bush.from + Math.max(...ends) * (bush.to - bush.from),
                width,
                pressure,
              })),
            { maxLength: 3 },
          ),
        ),
        ambient: perhaps(between(-20, 60)),
        heat: perhaps(fc.record({ journal: perhaps(body), bush: perhaps(body), duration: perhaps(sized(1, 1e5)) })),
        roughness: perhaps(fc.record({ journal: perhaps(sized(1e-6, 0.01)), bush: perhaps(sized(1e-6, 0.01)) })),
      },
      { requiredKeys: ['speed', 'oil', 'stand'] },
    )
    .map(({ stand, ...rest }) => ({ ...rest, ...stand }));

const spreadOf = (all: readonly Seat[], most: number) => {
  const doubt = {
    sigma: fc.oneof(sized(1e-9, 0.1), fc.constant(0)),
    shape: perhaps(fc.constantFrom('normal', 'rectangular')),
  };
  const ofSurface = fc.record(
    {
      seat: fc.constantFrom(...all.map(({ name }) => name)),
      part: fc.constantFrom('journal', 'bush'),
      of: fc.constantFrom('halfAngle', 'diameter', 'station', 'from', 'to', 'lobeAmplitude'),
      ...doubt,
    },
    { requiredKeys: ['seat', 'part', 'of', 'sigma'] },
  );
  const ofRun = fc.record(
    { of: fc.constantFrom('temperature', 'speed', 'position'), ...doubt },
    { requiredKeys: ['of', 'sigma'] },
  );
  return fc.array(fc.oneof({ weight: 8, arbitrary: ofSurface }, ofRun), { maxLength: most });
};

/** One time in eight. */
const seldom = <T>(of: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 7, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: of });

const oddsOf = (all: readonly Seat[]) =>
  fc.record(
    {
      // Left out they are 20 000, which takes seconds where lines are bent.
      draws: fc.oneof({ weight: 15, arbitrary: fc.integer({ min: 100, max: 1_000 }) }, fc.constant(undefined)),
      // Of the fineness that is allowed only what is soon drawn.
      accuracy: fc.oneof(
        { weight: 5, arbitrary: fc.constant(undefined) },
        fc.double({ min: 0.02, max: 0.1, noNaN: true }),
      ),
      seed: perhaps(fc.integer({ min: 0, max: 4_294_967_295 })),
      spread: spreadOf(all, 6),
      processes: seldom(
        fc.uniqueArray(fc.record({ name: fc.constantFrom('here', 'there', '日本'), spread: spreadOf(all, 3) }), {
          selector: ({ name }) => name,
          maxLength: 2,
        }),
      ),
      // It takes hundreds of looks at thousands of pairs.
      wanted: seldom(fc.constantFrom(0.5, 0.9, 0.95, 0.999)),
    },
    { requiredKeys: ['spread'] },
  );

const priorsOf = (all: readonly Seat[]) =>
  fc.array(
    fc.record({
      seat: fc.constantFrom(...all.map(({ name }) => name)),
      part: fc.constantFrom('journal', 'bush'),
      of: fc.constantFrom('halfAngle', 'diameter'),
      sigma: sized(1e-9, 100),
    }),
    { maxLength: 4 },
  );

/** Without the keys that are not there. */
const bare = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const designOf = (all: readonly Seat[], running: number) =>
  fc.record({
    conepair: fc.constant(1),
    seats: fc.constant(all),
    title: perhaps(fc.constantFrom('A', '', '日本語 🚲', '</script>', '=cmd')),
    notes: perhaps(fc.string()),
    position: perhaps(
      fc.oneof({ weight: 4, arbitrary: between(-0.05, 0.1) }, between(-5, 5), between(-1_000, 1_000)),
      4,
    ),
    adjuster: perhaps(fc.record({ pitch: fc.constantFrom(0.5, 0.75, 1.27) })),
    play: perhaps(
      fc.record({
        indicator: perhaps(between(-200, 200)),
        free: perhaps(fc.subarray(['x', 'y', 'z', 'tiltX', 'tiltY'])),
      }),
    ),
    print: perhaps(fc.record({ thickness: fc.oneof(between(0, 0.005), fc.constant(0), sized(1e-9, 1)) })),
    friction: perhaps(between(0, 2)),
    run: fc
      .integer({ min: 0, max: 999 })
      .chain((dice): fc.Arbitrary<unknown> => (dice < running * 1000 ? runOf(all) : fc.constant(undefined))),
    readings: perhaps(readingsOf(all), 2),
    record: perhaps(record),
    shop: perhaps(shop),
    priors: perhaps(priorsOf(all)),
    cut: perhaps(cutOf(all), 2),
    odds: perhaps(oddsOf(all)),
    assumed: perhaps(
      fc.subarray(
        all.flatMap((_, i) => ['journal.diameter', 'bush.from', 'bush.halfAngle'].map((at) => `seats[${i}].${at}`)),
      ),
    ),
  });

/** `running`: the share of designs that have a running bearing, whose work is a hundred times that of all else. */
export const validDesign = (running: number): fc.Arbitrary<Design> =>
  seats
    .chain((all) => designOf(all, running))
    .map((raw) => validateDesign(bare(raw)))
    .filter((result) => result.ok)
    .map((result) => (result as { design: Design }).design);
