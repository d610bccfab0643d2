/**
 * A lesson left half way, as one text with its checksums: which numbers, which round and question, what was answered.
 * Of another form of the lesson, or damaged, it is not gone on with: its questions may be others.
 */
import * as z from 'zod/mini';
import type { Lesson } from './definition.ts';
import { type Course, SURE } from './runner.ts';

const count = z.int().check(z.gte(0), z.lte(1000));
const found = z.union([
  z.strictObject({ kind: z.enum(['right', 'other']) }),
  z.strictObject({ kind: z.literal('mistake'), index: count }),
]);
const given = {
  answer: z.union([z.number(), z.string().check(z.maxLength(120))]),
  sure: z.enum(SURE),
  found,
};
const course = z.strictObject({
  help: z.array(count).check(z.minLength(1), z.maxLength(12)),
  round: count,
  question: count,
  stage: z.enum(['ask', 'released', 'told']),
  given: z.nullable(z.strictObject({ ...given, seen: z.nullable(count) })),
  log: z
    .array(z.strictObject({ ...given, seen: z.nullable(count), round: count, question: count, sawRight: z.boolean() }))
    .check(z.maxLength(200)),
  done: z.literal(false),
});
const right = z.strictObject({
  as: z.string(),
  right: z.number(),
  within: z.number(),
  chosen: z.optional(z.string()),
});
const kept = z.strictObject({
  version: z.literal(1),
  /** the checksum of the lesson it is of */
  of: z.int(),
  seed: z.int().check(z.gte(1)),
  /** what was right in the rounds that are over */
  gone: z.array(right).check(z.maxLength(200)),
  course,
});

export interface Left extends Omit<z.infer<typeof kept>, 'version' | 'of' | 'course'> {
  course: Course;
}

type Sum = (text: string) => number;

export function courseText(lesson: Lesson, { seed, gone, course }: Left, sum: Sum): string {
  const text = JSON.stringify({ version: 1, of: sum(JSON.stringify(lesson)), seed, gone, course });
  return `${sum(text)} ${text}`;
}

/** null: none was left, or it is none of this lesson. */
export function courseOf(lesson: Lesson, text: string | null, sum: Sum): Left | null {
  const cut = text?.indexOf(' ') ?? -1;
  if (text === null || cut < 0 || Number(text.slice(0, cut)) !== sum(text.slice(cut + 1))) return null;
  const read = kept.safeParse(parsed(text.slice(cut + 1)));
  if (!read.success || read.data.of !== sum(JSON.stringify(lesson))) return null;
  const { seed, gone, course: left } = read.data;
  return fits(left, lesson) ? { seed, gone, course: left } : null;
}

/** Whether the place is one of the lesson's, and what was answered stands with its stage. */
const fits = ({ round, question, help, stage, given: one }: Course, { questions }: Lesson): boolean =>
  round < help.length &&
  question < questions.length &&
  (stage === 'ask') === (one === null) &&
  (stage !== 'told' || one!.seen !== null);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
