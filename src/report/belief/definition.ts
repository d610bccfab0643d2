/** The `belief` section of the report: everything known about both parts, as one estimate with its doubt. */
import * as z from 'zod/mini';
import { surface } from '../../design/definition.ts';
import { mm } from '../quantities.ts';
import type { NotAsRead } from './notAsRead.ts';

const part = z.enum(['journal', 'bush']);
const number = (description: string) => z.number().check(z.meta({ description }));
const share = z.number().check(z.gte(0), z.lte(1));

export const notAsRead = z.enum(['contradict', 'trials', 'other'] satisfies NotAsRead[]).check(
  z.meta({
    description:
      'Readings contradict each other, what was read at a trial does not go with the rest, or both tell of other parts than are drawn',
  }),
);

const known = {
  mean: mm('Mean'),
  sd: mm('Standard deviation'),
  low: mm('19 times in 20 it lies between this'),
  high: mm('and this'),
};
const quantity = z.strictObject(known);
const film = z.strictObject({
  ...known,
  likely: z.optional(mm('Most likely, by which Cut plans; told where it is no mean of normal numbers')),
  off: z.optional(mm('How far it may be off that: standard deviation about it')),
});

export const beliefReport = z.strictObject({
  position: mm('Position of the journal at which the films are told'),
  surfaces: z.array(
    z.strictObject({
      seat: z.string(),
      part,
      halfAngle: z.strictObject({ mean: number('degrees'), sd: number('degrees') }),
      diameter: z.strictObject({ mean: mm('Mean'), sd: mm('Standard deviation') }),
      correlation: z.nullable(number('Between the two; null where one of them is in no doubt')),
    }),
  ),
  assumed: z
    .array(z.strictObject({ seat: z.string(), part, of: z.enum(['halfAngle', 'diameter']), sd: number('mm, degrees') }))
    .check(z.meta({ description: 'Numbers that nobody has read: taken as drawn, and how surely' })),
  disagreeing: z
    .array(z.int())
    .check(z.meta({ description: 'Places in the list of readings: those that do not go with the others' })),
  notAsRead: z.optional(notAsRead),
  first: z.nullable(
    z
      .record(z.string(), share)
      .check(z.meta({ description: 'How likely each seat is the first to touch; null where none closes rearward' })),
  ),
  firstPosition: z.nullable(quantity),
  relation: z.nullable(quantity),
  films: z.record(z.string(), z.nullable(film)),
  method: z
    .enum(['linear', 'draws'])
    .check(z.meta({ description: 'How the shapes are carried: as a normal estimate, or as pairs drawn and weighed' })),
  stands: z.optional(
    z.array(z.strictObject({ seat: z.string(), journal: surface, bush: surface })).check(
      z.meta({
        description:
          'Once trials told of the parts: as they most likely stand now, less all that came off, every bush wider by what its film is believed to be greater (trials tell films, not which of the two surfaces)',
      }),
    ),
  ),
  effective: z.optional(number('How many of the pairs drawn count')),
});

export type BeliefReport = z.infer<typeof beliefReport>;
export type BelievedQuantity = z.infer<typeof quantity>;
export type BelievedFilm = z.infer<typeof film>;
