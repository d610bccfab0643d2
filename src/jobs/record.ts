/** One piece of work as it is kept on the device: the text that is written, and what such a text is read back as. */
import type { Design } from '../design/definition.ts';
import type { System } from '../design/units.ts';
import { validateDesign } from '../design/validate.ts';

/** What is kept of a piece of work. */
export interface Kept {
  design: Design;
  system: System;
  /** how many times gaps are drawn larger */
  factor: number;
}

export interface Found extends Kept {
  /** when it was last worked on, ms since 1970; null where that is not known */
  changed: number | null;
}

/** Why a text that was kept cannot be opened, and all of it as a file for the person to save. */
export interface Unreadable {
  why: string;
  file: { name: string; text: string };
}

export type Read = { ok: true; found: Found } | ({ ok: false } & Unreadable);

/** Of the record, not of the design in it, which has its own. The first had no number, nor the time. */
const VERSION = 2;

export const LEAST_FACTOR = 1;
export const MOST_FACTOR = 5000;
export const USUAL_FACTOR = 400;

export const recordText = (kept: Kept, changed: number): string =>
  JSON.stringify({ version: VERSION, changed, ...kept });

export function readRecord(text: string): Read {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return { ok: false, why: 'it is damaged', file: { name: 'kept-work.txt', text } };
  }
  const { version = 1, changed, design, system, factor } = (raw ?? {}) as Record<string, unknown>;
  // What is no design of this program is saved with all that stood beside it.
  const file = isGroup(design)
    ? { name: 'kept-work.conepair.json', text: fileText(design) }
    : { name: 'kept-work.txt', text };
  if (typeof version !== 'number' || version > VERSION)
    return { ok: false, why: 'it was kept by another version of the program', file };
  const result = validateDesign(design);
  if (!result.ok) return { ok: false, why: isGroup(design) ? whyNot(result.errors[0]!) : 'it is damaged', file };
  const known = typeof factor === 'number' && factor >= LEAST_FACTOR && factor <= MOST_FACTOR;
  return {
    ok: true,
    found: {
      design: result.design,
      system: system === 'inch' ? 'inch' : 'metric',
      factor: known ? factor : USUAL_FACTOR,
      changed: typeof changed === 'number' ? changed : null,
    },
  };
}

/** A design as the text of its file. */
export const fileText = (design: object): string => `${JSON.stringify(design, null, 2)}\n`;

const isGroup = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const whyNot = ({ path, message }: { path: string; message: string }) =>
  `this version of the program does not take it (${path === '' ? '' : `${path}: `}${message})`;
