/** The `odds` section of the report: how likely the pair works, of many pairs drawn as they may be. */
import * as z from 'zod/mini';
import { notAsRead } from '../belief/definition.ts';
import { mm } from '../quantities.ts';

const part = z.enum(['journal', 'bush']);
const share = z.number().check(z.gte(0), z.lte(1));
const number = (description: string) => z.number().check(z.meta({ description }));

/** 19 times in 20 the chance is between these, for so many draws. */
const limits = z.strictObject({ low: share, high: share });
const chance = z.strictObject({ share, ...limits.shape });
const shares = z.record(z.string(), share);
const shareLimits = z.record(z.string(), limits);

const spread = z.strictObject({
  mean: mm('Mean'),
  sd: mm('Standard deviation'),
  p05: mm('1 time in 20 it is less'),
  p95: mm('1 time in 20 it is more'),
});
/** Null where hardly a pair has it. */
const films = z.record(z.string(), z.nullable(spread));

/** What is drawn: a number of a surface, or a cut of the plan. */
const source = z.strictObject({
  seat: z.string(),
  part,
  of: z.enum(['halfAngle', 'diameter', 'station', 'from', 'to', 'stock', 'face']),
  face: z.optional(z.string()),
});

const sensitivity = z.strictObject({
  ...source.shape,
  share: number('Of the variance; alone, where it does not follow evenly'),
  low: number('19 times in 20 the share is between this'),
  high: number('and this'),
  total: number('With all that it takes part in; the same where it follows evenly'),
  together: z.optional(z.array(source)),
});

const read = z.strictObject({
  surfaces: z.array(
    z.strictObject({
      seat: z.string(),
      part,
      line: z
        .boolean()
        .check(z.meta({ description: 'Whether its half angle is unread too, so that two diameters tell it' })),
    }),
  ),
  ...chance.shape,
  gain: number('Over the chance as it is'),
  uncertainty: number('Of the gain, 19 times in 20'),
});

const matters = {
  sensitivity: z
    .array(sensitivity)
    .check(
      z.meta({ description: 'Where the doubt of `of` comes from; empty where a measured line is itself in doubt' }),
    ),
  of: z.nullable(
    z.discriminatedUnion('quantity', [
      z.strictObject({ quantity: z.literal('relation'), between: z.tuple([z.string(), z.string()]) }),
      z.strictObject({ quantity: z.literal('film'), seat: z.string() }),
    ]),
  ),
  method: z.nullable(
    z
      .enum(['linear', 'indices'])
      .check(z.meta({ description: 'Exact shares of what follows evenly, or Sobol’ indices where it does not' })),
  ),
  /** with the doubt of one surface, or one cut, halved: the chance at the best position */
  gains: z.array(
    z.strictObject({
      seat: z.string(),
      part,
      by: z.enum(['measuring', 'cutting']),
      face: z.optional(z.string()),
      ...chance.shape,
      gain: number('Over the chance as it is'),
      uncertainty: number('Of the gain, 19 times in 20'),
    }),
  ),
  /** with surfaces read that nobody has read: each alone, and last all of them */
  reads: z.optional(z.array(read)),
};

const state = {
  position: mm('Position of the journal at which films and bands are told'),
  first: shares,
  inBand: shares.check(z.meta({ description: 'Film within its tolerance there; `all`: every film' })),
  films,
  selfHolding: share.check(z.meta({ description: 'The seat that touches first sticks once pressed home' })),
  best: z.strictObject({
    position: z.nullable(spread),
    inBand: shares.check(z.meta({ description: 'The same with every pair at the position that suits it best' })),
    films,
  }),
  limits: z.strictObject({ first: shareLimits, inBand: shareLimits, best: shareLimits, selfHolding: limits }),
  noShape: z.int().check(z.meta({ description: 'Draws that are no pair at all; not counted' })),
};

const told = (description: string) => z.meta({ description });
const drawnSpread = z.strictObject({
  mean: z.number(),
  sd: z.number(),
  p05: number('1 time in 20 it is less'),
  p50: number('as often less as more'),
  p95: number('1 time in 20 it is more'),
});

export const runningOdds = z.strictObject({
  of: z.enum(['planned', 'now']).check(told('Which pairs are run: those of the plan, or as they are now')),
  at: z.enum(['best', 'set']).check(told('Where each is set: where its films suit it best, or as the design has it')),
  draws: z.int().check(told('Spindles run, that count')),
  unsettled: z.int().check(told('Whose run was not found; not counted')),
  noShape: z.int().check(told('Draws that are no pair at all; not counted')),
  needed: mm('Film that parts the surfaces: three times their roughness'),
  runs: chance,
  shut: z.strictObject(chance.shape).check(told('No film carries it from the start, or a seat is shut')),
  seizes: z.strictObject(chance.shape).check(told('The films close as it warms')),
  standing: z.strictObject(chance.shape).check(told('It does not turn')),
  parted: z
    .record(z.string(), chance)
    .check(told('The film that is needed is there from cold to warm, by seat; `all`: in every seat')),
  cool: z.strictObject(chance.shape).check(told('It runs, and no hotter than oil lasts')),
  calm: z.strictObject(chance.shape).check(told('It runs, and does not whirl warm')),
  well: z.strictObject(chance.shape).check(told('All three')),
  films: z
    .record(z.string(), z.nullable(drawnSpread))
    .check(told('Least film from cold to warm, mm, of those that run; null where none does')),
  hottest: z.nullable(drawnSpread).check(told('Of journal, bush and oil, warm, °C')),
  power: z.nullable(drawnSpread).check(told('Lost to friction warm, W')),
  stop: z.nullable(drawnSpread).check(told('What a stop pushes the journal with along z, warm, N')),
  grid: z
    .strictObject({
      rows: z.int(),
      columns: z.int(),
      checked: z.int().check(told('Draws that ran on the grid of the run itself too')),
      otherwise: z.int().check(told('Of those looked at twice: that end otherwise there')),
      film: mm('19 films in 20 are this near to those of the finer grid'),
      hottest: number('And temperatures, K'),
    })
    .check(told('Cells of a seat along and around, fewer than of one run, and what that costs')),
  notCarried: z.optional(
    z.array(z.int()).check(told('Places in `odds.spread` of what the design has nothing of: they count for nothing')),
  ),
});
export type RunningReport = z.infer<typeof runningOdds>;

const process = z.strictObject({
  name: z.string(),
  ...chance.shape,
  set: z.strictObject(chance.shape).check(told('The same where the journal is set')),
  films: films.check(told('At the position that suits each pair best')),
  setFilms: films.check(told('Where the journal is set')),
});

const hold = z.strictObject({
  wanted: share,
  ...chance.shape,
  inputs: z.array(
    z.strictObject({
      seat: z.string(),
      part,
      by: z.enum(['measuring', 'cutting']),
      face: z.optional(z.string()),
      multiplier: number('Of its spread as it is'),
      numbers: z.array(
        z.strictObject({
          of: source.shape.of,
          now: number('Standard deviation as it is, mm or degrees'),
          hold: number('and as it is to be'),
          shape: z.enum(['normal', 'rectangular']),
        }),
      ),
    }),
  ),
});
export type HoldReport = z.infer<typeof hold>;
export type ProcessReport = z.infer<typeof process>;

export const oddsReport = z.strictObject({
  from: z.enum(['belief', 'drawing']),
  draws: z.int(),
  seed: z.int(),
  effective: z.optional(number('As how many independent draws they count, where trials left a list of pairs')),
  notAsRead: z.optional(notAsRead),
  assumed: z
    .array(z.strictObject({ seat: z.string(), part, of: z.enum(['halfAngle', 'diameter']), sd: number('mm, degrees') }))
    .check(z.meta({ description: 'Numbers that nobody has read: taken as drawn, and how surely' })),
  ...state,
  ...matters,
  setBy: z.optional(
    z
      .enum(['plan'])
      .check(
        z.meta({ description: 'Nothing is left to cut: the position is that of the plan, as `cut.remaining` has it' }),
      ),
  ),
  planned: z.optional(
    z
      .strictObject({ ...state, ...matters })
      .check(z.meta({ description: 'After the plan of `cut`, off every pair drawn, with the doubt of the dial' })),
  ),
  processes: z.optional(
    z
      .array(process)
      .check(told('Ways to make the parts side by side: how often every film is in tolerance at the best position')),
  ),
  hold: z.optional(
    z
      .nullable(hold)
      .check(
        told(
          'Spreads at least difficulty for the chance wanted, at the best position; null where none is small enough, or where a measured line is itself in doubt. Told where `odds.wanted` is given, and on the screen',
        ),
      ),
  ),
  running: z.optional(runningOdds.check(told('The odds of the run, where `odds.running` asks for them'))),
  trialFirst: z.optional(
    z
      .strictObject({
        ...chance.shape,
        trials: z.int().check(z.meta({ description: 'How many were simulated' })),
        sigma: mm('Standard uncertainty of the stand-off read'),
      })
      .check(
        z.meta({
          description:
            'A trial assembly first (stand-off and blue, simulated) and a plan by it, at the best position: told on the screen alone',
        }),
      ),
  ),
});

export type OddsReport = z.infer<typeof oddsReport>;
export type StateReport = Omit<NonNullable<OddsReport['planned']>, keyof MattersReport>;
export type MattersReport = Pick<OddsReport, keyof typeof matters>;
export type ReadsReport = NonNullable<MattersReport['reads']>;
export type SourceReport = z.infer<typeof source>;
