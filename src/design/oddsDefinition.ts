/** What the design file says of the odds: about what is drawn, how often, and what else is in doubt. */
import * as z from 'zod/mini';
import { name, part, text } from './fields.ts';

const whole = (title: string, description: string, min: number, max: number, otherwise: number) =>
  z
    .int()
    .check(z.gte(min), z.lte(max), z.meta({ title, description, quantity: 'count', unit: '1', default: otherwise }));

const shape = z.optional(z.enum(['normal', 'rectangular']));
const doubt = {
  sigma: z
    .number()
    .check(z.gte(0), z.lte(100), z.meta({ description: 'Standard deviation, in the unit of the quantity' })),
  shape,
};

export const spread = z
  .array(
    z.discriminatedUnion('of', [
      z.strictObject({
        seat: name,
        part,
        of: z.enum(['halfAngle', 'diameter', 'station', 'from', 'to', 'lobeAmplitude']).check(
          z.meta({
            description:
              'A number of the surface; lobeAmplitude: of the first of its lobes, in the odds of the run alone',
          }),
        ),
        ...doubt,
      }),
      z.strictObject({
        of: z.enum(['temperature', 'speed', 'position']).check(
          z.meta({
            description:
              'Of the room (°C), of the spindle (rev/min), or where the journal is set (mm): in the odds of the run alone',
          }),
        ),
        sigma: z
          .number()
          .check(z.gte(0), z.lte(10_000), z.meta({ description: 'Standard deviation, in the unit of the quantity' })),
        shape,
      }),
    ]),
  )
  .check(z.maxLength(160), z.meta({ description: 'Doubts beside what is believed' }));

export const odds = z.strictObject({
  from: z.optional(
    z.enum(['belief', 'drawing']).check(
      z.meta({
        description:
          'About what is drawn: all that was read and tried (belief), or the parts as drawn (drawing); belief when left out, where anything was read',
      }),
    ),
  ),
  draws: z.optional(whole('Pairs drawn', 'How many pairs are drawn', 100, 10_000_000, 20_000)),
  accuracy: z.optional(
    z.number().check(
      z.gte(0.0005),
      z.lte(0.1),
      z.meta({
        title: 'Chances told to ±',
        description: 'How far off, 19 times in 20, such as 1 %; sets how many pairs are drawn',
        quantity: 'share',
        unit: '1',
      }),
    ),
  ),
  seed: z.optional(whole('Seed', 'Seed of the draw: the same draws for the same number', 0, 4_294_967_295, 1)),
  spread: z.optional(spread),
  processes: z.optional(
    z
      .array(
        z.strictObject({
          name: text(40, 'What this way of making the parts is called').check(z.minLength(1), z.regex(/\S/)),
          spread,
        }),
      )
      .check(z.maxLength(8), z.meta({ description: 'Ways to make the parts, each with its own spreads' })),
  ),
  wanted: z.optional(
    z.number().check(
      z.gte(0.5),
      z.lte(0.999),
      z.meta({
        title: 'Chance wanted',
        description: 'How often the pair is to work',
        quantity: 'share',
        unit: '1',
        default: 0.95,
      }),
    ),
  ),
  running: z.optional(
    z
      .strictObject({
        draws: z.optional(
          whole('Spindles run', 'How many of the pairs drawn are run, from cold to warm', 16, 20_000, 500),
        ),
        at: z.optional(
          z.enum(['best', 'set']).check(
            z.meta({
              description:
                'Where the journal of each is set: where its films suit best (best, when left out), or where the design, or its plan, has it (set)',
            }),
          ),
        ),
      })
      .check(z.meta({ description: 'The odds of the run are told too; it takes minutes' })),
  ),
});

export type Spread = z.infer<typeof spread>[number];

type OfSurface = Extract<Spread, { seat: string }>;
/** Those of the parts, which count however the pair stands; the others count while it runs alone. */
type PartSpread = OfSurface & { of: Exclude<OfSurface['of'], 'lobeAmplitude'> };
export const isOfParts = (one: Spread): one is PartSpread => 'seat' in one && one.of !== 'lobeAmplitude';
