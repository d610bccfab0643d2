/**
 * The record of a job: when an entry was made, by whom, at what stage of the work; notes and photographs beside
 * readings and cuts; the tools of the shop. Registered in definition.ts.
 */
import * as z from 'zod/mini';
import { SIZE, text } from './fields.ts';

/** Stages that have a name of their own, in their order; any other words will do. */
export const STAGES = ['received', 'pressed', 'ground', 'lapped'] as const;

/** One day, and the time of it if one likes. */
const ISO = /^\d{4}-\d\d-\d\d(T\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)?)?$/;
/** What a text of a pattern must be, by its key. */
export const MEANT: Readonly<Record<string, string>> = {
  date: 'be a date such as 2026-03-31, or with the time, 2026-03-31T14:30',
  photograph: 'be a name of letters, figures and hyphens, 64 at most',
};
const WORDS = /\S/;

/** Most characters of a note. */
export const LONGEST_NOTE = 2_000;

const words = (max: number, description: string) =>
  z.string().check(z.maxLength(max), z.regex(WORDS), z.meta({ description }));

/** What any entry of the job may say of itself. */
export const entered = {
  date: z.optional(
    z
      .string()
      .check(z.regex(ISO), z.meta({ description: 'Day it was made (ISO 8601), with the time of day if one likes' })),
  ),
  by: z.optional(words(60, 'Who made it')),
  stage: z.optional(
    words(40, `How far the work was: ${STAGES.join(', ')}, or words of one’s own; as drawn when left out`),
  ),
};

const note = z.optional(text(LONGEST_NOTE, 'Anything worth remembering'));

/** The same of a reading, which has a note besides. */
export const enteredWithNote = { ...entered, note };

export const after = z.optional(
  z.int().check(
    z.gte(0),
    z.lte(100),
    z.meta({
      title: 'After trial',
      description: 'How many entries of the history of cuts were done before it was read',
      quantity: 'count',
      unit: '1',
      default: 0,
      defaultOf: 'before any cut',
    }),
  ),
);

/** A note, or a photograph with or without one. */
export const recorded = z.strictObject({
  ...enteredWithNote,
  after,
  photograph: z.optional(
    z
      .string()
      .check(
        z.regex(/^[A-Za-z0-9-]{1,64}$/),
        z.meta({ description: 'Name of a photograph that is kept on the device, not in the file' }),
      ),
  ),
});

const sizesOf = (what: string) =>
  z.optional(
    z
      .array(z.number().check(z.gt(SIZE.above), z.lte(SIZE.max), z.meta({ description: 'Diameter, mm' })))
      .check(z.minLength(1), z.maxLength(200), z.meta({ description: `Diameters of the ${what} there are, mm` })),
  );

export const shop = z
  .strictObject({
    tools: z.optional(
      z
        .enum(['metric', 'inch'])
        .check(z.meta({ description: 'The system of blocks, bars, balls and rolls; as the units when left out' })),
    ),
    balls: sizesOf('balls'),
    rolls: sizesOf('rolls'),
  })
  .check(z.meta({ description: 'The tools of the shop that does this job' }));
