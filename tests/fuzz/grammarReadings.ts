/** Notebooks at random: every kind, mostly near what the parts as drawn would read, some far from it. */
import fc from 'fast-check';
import type { Seat } from '../../src/design/definition.ts';
import { between, perhaps, sized } from './arbitrary.ts';
import { entered } from './grammarRecord.ts';

const SIGMA = fc.oneof(
  { weight: 4, arbitrary: sized(1e-4, 0.01) },
  fc.constantFrom(1e-12, 1e-9, 100),
  sized(1e-12, 100),
);
const slopeOf = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

/** A value near one, or anything. */
const near = (value: number, min: number, max: number) =>
  fc.oneof(
    { weight: 5, arbitrary: between(-0.01, 0.01).map((off) => value + off) },
    between(min, max),
    fc.constantFrom(min, max),
  );

const onSurface = (seat: Seat, part: 'journal' | 'bush', share: number, length: number, sigma: number) => {
  const on = { seat: seat.name, part, sigma };
  const { from, to, halfAngle, diameter, station } = seat[part];
  const at = from + share * (to - from);
  const cosine = Math.cos((halfAngle * Math.PI) / 180);
  const wide = diameter + 2 * (at - station) * slopeOf(halfAngle);
  const place = fc.oneof({ weight: 6, arbitrary: fc.constant(at) }, fc.constantFrom(-10_000, 10_000));
  const roll = Math.min(5_000, Math.max(1e-3, length));
  return fc.oneof(
    fc
      .record({ kind: fc.constant('diameter'), value: near(wide, 1e-9, 5_000), station: place })
      .map((r) => ({ ...r, ...on })),
    fc
      .record({
        kind: fc.constant('overRolls'),
        value: near(wide + roll * (1 + 1 / cosine), 1e-9, 5_000),
        roll: fc.constant(roll),
        station: place,
      })
      .map((r) => ({ ...r, ...on })),
    fc
      .record({
        kind: fc.constant('ballDepth'),
        value: near(to - at - roll, -1e5, 1e5),
        ball: near(wide * cosine, 1e-9, 5_000),
        face: fc.constant(to),
      })
      .map((r) => ({ ...r, ...on })),
    fc.constantFrom(100, 127).chain((bar) => {
      const travel = Math.max(1e-3, share * (to - from));
      return fc
        .record({
          kind: fc.constant('sineRise'),
          value: near(0, -1e5, 1e5),
          bar: fc.constant(bar),
          stack: near(bar * Math.sin((halfAngle * Math.PI) / 180), -5_000, 5_000),
          travel: fc.constant(travel),
        })
        .map((r) => ({ ...r, ...on }));
    }),
    fc
      .record({
        kind: fc.constant('straightness'),
        value: fc.oneof(between(-0.002, 0.002), fc.constantFrom(-1e5, 1e5)),
        station: place,
      })
      .map((r) => ({ ...r, ...on })),
  );
};

const ofPair = (sigma: number) =>
  fc.oneof(
    fc.record({ kind: fc.constant('standOff'), sigma: fc.constant(sigma), value: near(0, -1e5, 1e5) }),
    fc.record({
      kind: fc.constant('shake'),
      sigma: fc.constant(sigma),
      value: fc.oneof(between(0, 0.05), fc.constantFrom(-1, 1e5)),
      indicator: between(-200, 200),
      position: between(-0.05, 0.1),
      direction: between(-360, 360),
    }),
  );

export const readingsOf = (all: readonly Seat[]) =>
  fc.array(
    fc
      .tuple(
        fc.constantFrom(...all),
        fc.constantFrom('journal' as const, 'bush' as const),
        between(0, 1),
        sized(0.1, 60),
        SIGMA,
        perhaps(fc.constant(true)),
      )
      .chain(
        ([seat, part, share, length, sigma, pair]): fc.Arbitrary<object> =>
          fc
            .tuple(pair ? ofPair(sigma) : onSurface(seat, part, share, length, sigma), perhaps(entered))
            .map(([reading, told]) => ({ ...told, ...reading })),
      ),
    { minLength: 1, maxLength: 16 },
  );
