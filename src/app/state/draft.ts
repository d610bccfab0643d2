/**
 * Numbers that were typed and are not taken: they stand in their fields until all of them go together. Every later
 * edit is tried together with them, and what is whole is taken as one step. Kept with what is unfinished, so that they
 * outlive a change of screen.
 */
import { useStore } from 'zustand';
import { assumedAfter } from '../../design/assumed.ts';
import type { Design } from '../../design/definition.ts';
import { pathAfter } from '../../design/follow.ts';
import { withFollowing } from '../../design/following.ts';
import { quantityIfAt, without, withValue } from '../../design/place.ts';
import { inSystem, quantityText } from '../../design/quantity.ts';
import type { DesignError } from '../../design/rules.ts';
import { withSeatsRenamed } from '../../design/seatNames.ts';
import type { AngleWay, System } from '../../design/units.ts';
import { type Validation, validateDesign } from '../../design/validate.ts';
import { useAngles } from './angles.ts';
import type { State, Work } from './store.ts';

export interface Draft {
  /** as it was typed */
  text: string;
  /** what it means; absent where it means nothing yet, undefined where the field was emptied */
  put?: { value: unknown };
  /** why it means nothing */
  why?: string;
  /** typed in this window while another had the job */
  here?: boolean;
}
export type Drafts = Readonly<Record<string, Draft>>;

const NAME = 'drafts';
const NONE: Drafts = {};

type Held = Pick<State, 'piece' | 'unfinished'>;

/** What is not taken of the piece of work that is open, by its place in the design. */
export function draftsOf({ piece, unfinished }: Held): Drafts {
  const held = unfinished[NAME];
  return held?.piece === piece ? (held.written as Drafts) : NONE;
}

/** The unfinished with other drafts. */
export function withDrafts({ piece, unfinished }: Held, drafts: Drafts): State['unfinished'] {
  const { [NAME]: before, ...others } = unfinished;
  if (Object.keys(drafts).length > 0) return { ...others, [NAME]: { piece, written: drafts } };
  return before === undefined ? unfinished : others;
}

/** The seat whose name stands at a path; null where another thing does. */
const seatNamedAt = (path: string): number | null => {
  const [, seat] = /^seats\[(\d+)\]\.name$/.exec(path) ?? [];
  return seat === undefined ? null : Number(seat);
};

/** The design with a value at a place, or with nothing there. */
const withPut = (design: Design, path: string, value: unknown): Design =>
  value === undefined ? without(design, path) : withValue(design, path, value);

/** Drafts that bear on each other: those of one seat, of the run, of the cut; and the names of all seats. */
const groupOf = (path: string) => (seatNamedAt(path) === null ? /^[^.]*/.exec(path)![0] : 'names');
const ofGroup = (drafts: Drafts, group: string): Drafts =>
  Object.fromEntries(Object.entries(drafts).filter(([path]) => groupOf(path) === group));

/** Names all at once, as two may be exchanged; whatever names a seat follows it. */
function withAll(design: Design, drafts: Drafts): Design {
  const names = new Map<number, string>();
  const others = Object.entries(drafts).reduce((d, [path, { put }]) => {
    const seat = seatNamedAt(path);
    if (!put || seat === null) return put ? withPut(d, path, put.value) : d;
    names.set(seat, `${put.value ?? ''}`);
    return d;
  }, design);
  return withSeatsRenamed(others, names);
}

const meaningless = (drafts: Drafts): Drafts =>
  Object.fromEntries(Object.entries(drafts).filter(([, { put }]) => !put));

export type EditResult = { ok: true; design: Design; drafts: Drafts } | { ok: false; errors: DesignError[] };

/** What an edit is taken with: whether what is assumed stays so (see assumedAfter), and the person's units. */
export interface Taking {
  kept: boolean;
  system: System;
}

/**
 * An edit with as many of the drafts as go with it: all of them, or those of a seat or section that are whole together.
 */
export function takenTogether(before: Design, edited: Design, standing: Drafts, taking: Taking): EditResult {
  const drafts = followed(before, edited, standing);
  const tried = (with_: Drafts) => whole(before, withAll(edited, with_), taking);
  const all = tried(drafts);
  if (all.ok) return { ok: true, design: all.design, drafts: meaningless(drafts) };
  let taken = Object.keys(drafts).length === 0 ? all : tried(NONE);
  let left = drafts;
  let with_: Drafts = NONE;
  for (const group of new Set(Object.keys(drafts).map(groupOf))) {
    const more = { ...with_, ...ofGroup(drafts, group) };
    const result = tried(more);
    if (!result.ok) continue;
    [taken, with_] = [result, more];
    left = Object.fromEntries(Object.entries(left).filter(([path, { put }]) => !put || groupOf(path) !== group));
  }
  return taken.ok ? { ok: true, design: taken.design, drafts: left } : { ok: false, errors: taken.errors };
}

/** What is assumed follows, unless that would stand in the way. */
function whole(before: Design, edited: Design, { kept, system }: Taking): Validation {
  const plain = assumedAfter(before, edited, kept);
  const following = kept ? plain : withFollowing(before, plain, system);
  const result = validateDesign(following);
  return result.ok || following === plain ? result : validateDesign(plain);
}

/** Drafts where the entries of the lists have gone to; without those whose place is gone. */
const followed = (before: Design, after: Design, drafts: Drafts): Drafts =>
  Object.fromEntries(
    Object.entries(drafts).flatMap(([path, draft]) => {
      const to = pathAfter(path, before, after);
      return to === null ? [] : [[to, draft] as const];
    }),
  );

/** What was typed into the field of a place: taken, or kept there as a draft. */
export function typeAt(work: Work, path: string, draft: Draft): void {
  leave(work, path);
  const { put } = draft;
  if (put && (exchanged(work, path, draft) || work.change((design) => withAll(design, { [path]: draft })).length === 0))
    return;
  const state = work.store.getState();
  const held = state.elsewhere ? { ...draft, here: true } : draft;
  work.store.setState({ unfinished: withDrafts(state, { ...draftsOf(state), [path]: held }) });
}

/** A seat's name taken with those that wait, as two may be exchanged: each is refused alone. False: they cannot be. */
function exchanged(work: Work, path: string, draft: Draft): boolean {
  const before = draftsOf(work.store.getState());
  const names = namesIn(before);
  if (seatNamedAt(path) === null || Object.keys(names).length === 0) return false;
  for (const other of Object.keys(names)) leave(work, other);
  if (work.change((design) => withAll(design, { ...names, [path]: draft })).length === 0) return true;
  work.store.setState({ unfinished: withDrafts(work.store.getState(), before) });
  return false;
}

const namesIn = (drafts: Drafts): Drafts =>
  Object.fromEntries(Object.entries(drafts).filter(([path, { put }]) => put && seatNamedAt(path) !== null));

/**
 * What another window left unfinished, with the numbers that were typed here while it had the job: they stay in their
 * fields until they can be taken.
 */
export function withTypedHere(theirs: State['unfinished'], before: Held): State['unfinished'] {
  const here = Object.entries(draftsOf(before)).filter(([, draft]) => draft.here);
  if (here.length === 0) return theirs;
  const held = { piece: before.piece, unfinished: theirs };
  return withDrafts(held, { ...draftsOf(held), ...Object.fromEntries(here) });
}

/** The unfinished, now that this window has the job: what was typed here is as any other. */
export function asOwn({ piece, unfinished }: Held): State['unfinished'] {
  const held = { piece, unfinished };
  const drafts = draftsOf(held);
  if (!Object.values(drafts).some(({ here }) => here)) return unfinished;
  return withDrafts(
    held,
    Object.fromEntries(Object.entries(drafts).map(([path, { here: _, ...draft }]) => [path, draft])),
  );
}

/** Puts fields back to what was taken last; all of them where none is named. */
export function leave(work: Work, path?: string): void {
  const state = work.store.getState();
  const drafts = draftsOf(state);
  if (path !== undefined && !(path in drafts)) return;
  const left = Object.fromEntries(Object.entries(drafts).filter(([other]) => path !== undefined && other !== path));
  work.store.setState({ unfinished: withDrafts(state, left) });
}

export interface HeldText {
  text: string;
  why: string;
}

/** What stands in a field and is not taken, with what it does not go with. */
export function useHeldText(work: Work, path: string): HeldText | undefined {
  const drafts = useStore(work.store, draftsOf);
  const design = useStore(work.store, (state) => (path in draftsOf(state) ? state.design : null));
  const system = useStore(work.store, (state) => state.system);
  const elsewhere = useStore(work.store, (state) => state.elsewhere);
  const way = useAngles();
  const draft = drafts[path];
  if (!draft || !design) return undefined;
  return {
    text: draftText(draft, path, design, { system, way }),
    why: whyHeld(design, drafts, path, { system, elsewhere }),
  };
}

/** A number that was understood keeps its size when the units change. */
export function draftText(
  { text, put }: Draft,
  path: string,
  design: Design,
  { system, way = 'half' }: { system: System; way?: AngleWay },
): string {
  const at = quantityIfAt(path, design);
  return at && typeof put?.value === 'number' ? quantityText(at.quantity, put.value, system, way) : text;
}

/** What a draft does not go with, in the person's units. */
export function whyHeld(
  design: Design,
  drafts: Drafts,
  path: string,
  { system, elsewhere = false }: { system: System; elsewhere?: boolean },
): string {
  const { why, put } = drafts[path]!;
  if (!put) return why ?? '';
  const result = validateDesign(assumedAfter(design, withAll(design, ofGroup(drafts, groupOf(path)))));
  if (result.ok)
    return elsewhere
      ? 'another window has this job: take it over here, then Enter takes it'
      : 'it goes with the rest now: Enter takes it';
  const { errors } = result;
  const near = path.replace(/\.[^.]*$/, '');
  const error = errors.find((e) => e.path === path) ?? errors.find((e) => e.path.startsWith(near)) ?? errors[0]!;
  const at = quantityIfAt(error.path, design);
  const message = inSystem(error.message, system, at?.quantity ?? 'length');
  return error.path === path || !at ? message : `${at.title}: ${message}`;
}
