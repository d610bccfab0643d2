/** The `odds` section of the report: how likely the pair works, of many pairs drawn as they may be. */
import * as z from 'zod/mini';
import { notAsRead } from '../belief/notAsRead.ts';
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
  planned: z.optional(
    z
      .strictObject({ ...state, ...matters })
      .check(z.meta({ description: 'After the plan of `cut`, off every pair drawn, with the doubt of the dial' })),
  ),
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
export type SourceReport = z.infer<typeof source>;
