/**
 * The `cut` section at random: surfaces and faces that may be cut, limits, the machine, trials, lapping, the order of
 * work.
 */
import fc from 'fast-check';
import type { Seat } from '../../src/design/definition.ts';
import { between, perhaps, sized } from './arbitrary.ts';
import { entered } from './grammarRecord.ts';

const SMALL = fc.oneof(between(0, 0.1), fc.constant(0), between(0, 10));
const FACES = ['spacer', 'shoulder', 'shim'];

const room = (entry: { cleanup: number | undefined; limit: number | undefined }) =>
  entry.cleanup !== undefined && entry.limit !== undefined && entry.cleanup > entry.limit
    ? { ...entry, cleanup: entry.limit }
    : entry;

const allow = (all: readonly Seat[]) =>
  fc
    .subarray(all.flatMap(({ name }) => (['journal', 'bush'] as const).map((part) => ({ seat: name, part }))))
    .chain((surfaces) =>
      fc.tuple(
        ...surfaces.map((on) =>
          fc
            .record({
              cleanup: perhaps(between(0, 0.01)),
              limit: perhaps(SMALL),
              renew: perhaps(fc.boolean()),
              lean: perhaps(between(-1, 1)),
            })
            .map(({ lean, ...entry }) => {
              const seat = all.find(({ name }) => name === on.seat)!;
              return {
                ...on,
                ...room(entry),
                ...(entry.renew &&
                  lean !== undefined && { halfAngle: Math.max(-88, Math.min(88, seat[on.part].halfAngle + lean)) }),
              };
            }),
        ),
      ),
    );

const faces = (all: readonly Seat[]) =>
  fc.subarray(FACES).chain((names) =>
    fc.tuple(
      ...names.map((name) =>
        fc
          .record({
            part: fc.constantFrom('journal', 'bush'),
            seats: fc.subarray(
              all.map((seat) => seat.name),
              { minLength: 1 },
            ),
            moves: fc.constantFrom('rearward', 'noseward'),
            limit: perhaps(SMALL),
            add: perhaps(SMALL),
          })
          .map((face) => ({ name, ...face })),
      ),
    ),
  );

const machine = fc.record({
  dial: perhaps(fc.constantFrom('radius', 'diameter')),
  division: perhaps(sized(1e-6, 1)),
  axialDivision: perhaps(sized(1e-6, 1)),
  pass: perhaps(sized(1e-6, 1)),
  slide: perhaps(between(-180, 180)),
  bar: perhaps(fc.constantFrom(100, 127, 200, 5_000)),
  travel: perhaps(sized(0.1, 300)),
  indicator: perhaps(sized(1e-6, 0.1)),
  scaleRadius: perhaps(sized(1, 1_000)),
  centres: perhaps(sized(1, 5_000)),
  setBy: perhaps(fc.constantFrom('sineBar', 'alongBar', 'alongSlide', 'alongAxis', 'table', 'scale', 'tailstock')),
  toolHeight: perhaps(between(-10, 10)),
  lean: perhaps(between(-80, 80)),
  warm: perhaps(between(-100, 100)),
  anchor: perhaps(between(-200, 200)),
});

const trial = (all: readonly Seat[]) =>
  fc.record({
    note: perhaps(fc.string()),
    taken: perhaps(
      fc.array(
        fc.record(
          {
            seat: fc.constantFrom(...all.map(({ name }) => name)),
            part: fc.constantFrom('journal', 'bush'),
            normal: between(0, 0.02),
            sigma: perhaps(between(0, 0.01)),
          },
          { requiredKeys: ['seat', 'part', 'normal'] },
        ),
        {
          maxLength: 3,
        },
      ),
    ),
    standOff: perhaps(
      fc.record({ value: fc.oneof(between(-0.1, 0.1), between(-1_000, 1_000)), sigma: sized(1e-9, 1) }),
    ),
    shake: perhaps(
      fc.record({
        value: between(0, 0.05),
        sigma: sized(1e-6, 0.1),
        indicator: between(-100, 100),
        position: between(-0.05, 0.1),
        direction: between(-360, 360),
      }),
    ),
    blue: perhaps(
      fc.array(fc.record({ seat: fc.constantFrom(...all.map(({ name }) => name)), prints: fc.boolean() }), {
        maxLength: 3,
      }),
    ),
  });

/** Few steps: each is a fit and more of its own, and 500 of them take half a minute. */
const MOST_LAP_STEPS = 20;
const lap = fc
  .record(
    {
      force: sized(0.01, 1_000),
      journal: perhaps(sized(1e-6, 10)),
      bush: perhaps(sized(1e-6, 10)),
      step: fc.constantFrom(0.0002, 0.001),
      steps: fc.integer({ min: 1, max: MOST_LAP_STEPS }),
      bearing: perhaps(between(0.1, 1)),
      limit: perhaps(between(0.001, 0.1)),
    },
    { requiredKeys: ['force', 'step', 'steps'] },
  )
  .map(({ steps, ...rest }) => ({ ...rest, advance: steps * rest.step }));

export const cutOf = (all: readonly Seat[]) =>
  fc.record(
    {
      allow: allow(all),
      faces: perhaps(faces(all)),
      reach: perhaps(fc.tuple(between(-1, 1), between(0, 1)).map(([from, by]) => ({ from, to: from + by }))),
      prefer: perhaps(
        fc.record({
          spare: perhaps(fc.constantFrom('journal', 'bush')),
          oneSetUp: perhaps(fc.boolean()),
          keepPosition: perhaps(fc.boolean()),
        }),
      ),
      machine: perhaps(machine),
      doubt: perhaps(sized(1e-6, 1)),
      trials: perhaps(
        fc.array(
          fc.tuple(trial(all), perhaps(entered)).map(([cuts, told]) => ({ ...told, ...cuts })),
          { maxLength: 3 },
        ),
      ),
      lap: perhaps(lap),
    },
    { requiredKeys: ['allow'] },
  );
