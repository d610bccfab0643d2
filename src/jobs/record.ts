/**
 * One job as it is kept on the device: the text that is written, and what such a text is read back as. A text of an
 * earlier program is brought forward a version at a time.
 */
import type { Design } from '../design/definition.ts';
import type { System } from '../design/units.ts';
import { validateDesign } from '../design/validate.ts';

/** What of a job changes as it is worked on. */
export interface Kept {
  design: Design;
  system: System;
  /** how many times gaps are drawn larger */
  factor: number;
  /** what stands in forms that are not taken yet, by the name of the form */
  unfinished: Readonly<Record<string, unknown>>;
}

export interface OpenedJob extends Kept {
  /** ms since 1970; null where that is not known */
  made: number | null;
  /** when it was last worked on */
  worked: number | null;
  /** numbers of its first step, and of the one that would be the next */
  first: number;
  at: number;
}

/** Why a text that was kept cannot be opened, and all of it as a file for the person to save. */
export interface Unreadable {
  why: string;
  file: { name: string; text: string };
}

/** What such a file is called until the title of its job is known. */
const NAMELESS = 'kept-job';
/** The same, its file called after the job. */
export const named = <U extends Unreadable>(unreadable: U, title: string): U => {
  const { name, text } = unreadable.file;
  return { ...unreadable, file: { name: name.replace(NAMELESS, nameOf(title)), text } };
};

export type Read = { ok: true; found: OpenedJob } | ({ ok: false } & Unreadable);

/** Of the record, not of the design in it, which has its own. The first had no number. */
export const VERSION = 3;

type Raw = Readonly<Record<string, unknown>>;

/** From each version to the next. */
const MIGRATIONS: Readonly<Record<number, (raw: Raw) => Raw>> = {
  // It gained the time of the last change.
  1: (raw) => ({ ...raw, changed: null }),
  // It became a job: with the time it was made, its forms, and its place in a history.
  2: ({ changed, ...raw }) => ({ ...raw, made: changed, worked: changed, unfinished: {}, first: 0, at: 0 }),
};

const LEAST_FACTOR = 1;
export const MOST_FACTOR = 5000;
export const USUAL_FACTOR = 400;

export const recordText = (kept: OpenedJob): string => JSON.stringify({ version: VERSION, ...kept });

export function readRecord(text: string): Read {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return { ok: false, why: 'it is damaged', file: { name: `${NAMELESS}.txt`, text } };
  }
  const { version = 1, design } = (raw ?? {}) as Raw;
  // What is no design of this program is saved with all that stood beside it.
  const file = isGroup(design)
    ? { name: `${NAMELESS}.conepair.json`, text: fileText(design) }
    : { name: `${NAMELESS}.txt`, text };
  if (typeof version !== 'number' || version > VERSION)
    return { ok: false, why: 'it was kept by a newer version of the program', file };
  const result = validateDesign(design);
  if (!result.ok) return { ok: false, why: isGroup(design) ? whyNot(result.errors[0]!) : 'it is damaged', file };
  return { ok: true, found: { ...besides(broughtForward(raw as Raw, version)), design: result.design } };
}

function broughtForward(raw: Raw, from: number): Raw {
  let now = raw;
  for (let version = from; version < VERSION; version++) now = MIGRATIONS[version]?.(now) ?? now;
  return now;
}

const besides = ({ system, factor, unfinished, made, worked, first, at }: Raw): Omit<OpenedJob, 'design'> => ({
  system: system === 'inch' ? 'inch' : 'metric',
  factor: isNumber(factor) && factor >= LEAST_FACTOR && factor <= MOST_FACTOR ? factor : USUAL_FACTOR,
  unfinished: isGroup(unfinished) ? { ...unfinished } : {},
  made: isNumber(made) ? made : null,
  worked: isNumber(worked) ? worked : null,
  first: isNumber(first) ? first : 0,
  at: isNumber(at) ? at : 0,
});

/** A title as a file's name. */
export const nameOf = (title: string) =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'design';

/** A design as the text of its file. */
export const fileText = (design: object): string => `${JSON.stringify(design, null, 2)}\n`;

/** Whether a text is a file of several jobs (many.ts); looked at without reading it whole. */
export const isFileOfJobs = (text: string): boolean => /^\uFEFF?\s*\{\s*"conepairJobs"\s*:/.test(text.slice(0, 200));

const isGroup = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** Characters of what is told of an error. */
const LONGEST_TOLD = 160;

function whyNot({ path, message }: { path: string; message: string }): string {
  const told = `${path === '' ? '' : `${path}: `}${message}`;
  const clipped = told.length > LONGEST_TOLD ? `${told.slice(0, LONGEST_TOLD)}…` : told;
  return `this version of the program does not take it (${clipped})`;
}
