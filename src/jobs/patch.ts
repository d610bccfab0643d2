/**
 * What differs between two states of a design, in a form that goes both ways and is about as small as the change:
 * values by their place, and of a list that grew or shrank the stretch that is another one.
 */

export type Place = readonly (string | number)[];

/** `was` or `is` not there: nothing stood, or stands, there. */
interface Swap {
  at: Place;
  was?: unknown;
  is?: unknown;
}

/** In a list, from an entry on: those taken out, and those put in. */
export interface Stretch {
  at: Place;
  from: number;
  out: readonly unknown[];
  put: readonly unknown[];
}

export type Patch = readonly (Swap | Stretch)[];

type Group = Readonly<Record<string, unknown>>;

const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Keys that hold something: one that is undefined is as one that is not there. */
const keysOf = (group: Group) => Object.keys(group).filter((key) => group[key] !== undefined);

/** Whether two values say the same, in whatever order their keys stand. */
export function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((entry, i) => same(entry, b[i]));
  if (!isGroup(a) || !isGroup(b)) return false;
  const keys = keysOf(a);
  return keys.length === keysOf(b).length && keys.every((key) => b[key] !== undefined && same(a[key], b[key]));
}

export function patchBetween(was: unknown, is: unknown, at: Place = []): Patch {
  if (was === is) return [];
  if (isGroup(was) && isGroup(is))
    return [...new Set([...keysOf(was), ...keysOf(is)])].flatMap((key) => {
      const place = [...at, key];
      if (was[key] === undefined) return [{ at: place, is: is[key] }];
      if (is[key] === undefined) return [{ at: place, was: was[key] }];
      return patchBetween(was[key], is[key], place);
    });
  if (Array.isArray(was) && Array.isArray(is))
    return was.length === is.length
      ? was.flatMap((entry, i) => patchBetween(entry, is[i], [...at, i]))
      : [stretchBetween(was, is, at)];
  return [{ at, was, is }];
}

function stretchBetween(was: readonly unknown[], is: readonly unknown[], at: Place): Stretch {
  const least = Math.min(was.length, is.length);
  let from = 0;
  while (from < least && same(was[from], is[from])) from++;
  let after = 0;
  while (after < least - from && same(was[was.length - 1 - after], is[is.length - 1 - after])) after++;
  return { at, from, out: was.slice(from, was.length - after), put: is.slice(from, is.length - after) };
}

/** The state after the change from the one before it; what it does not touch is the same object. */
export const forward = <T>(value: T, patch: Patch): T =>
  patch.reduce<unknown>((whole, one) => changed(whole, one.at, (at) => step(at, one)), value) as T;

/** The state before the change from the one after it. */
export const backward = <T>(value: T, patch: Patch): T => forward(value, patch.map(turned).reverse());

const turned = (one: Swap | Stretch): Swap | Stretch =>
  'out' in one
    ? { at: one.at, from: one.from, out: one.put, put: one.out }
    : { at: one.at, ...('is' in one && { was: one.is }), ...('was' in one && { is: one.was }) };

function step(value: unknown, one: Swap | Stretch): unknown {
  if (!('out' in one)) return one.is;
  const list = Array.isArray(value) ? value : [];
  return [...list.slice(0, one.from), ...one.put, ...list.slice(one.from + one.out.length)];
}

function changed(value: unknown, [key, ...rest]: Place, to: (at: unknown) => unknown): unknown {
  if (key === undefined) return to(value);
  if (Array.isArray(value)) return value.map((entry, i) => (i === key ? changed(entry, rest, to) : entry));
  const group = isGroup(value) ? value : {};
  const inner = changed(group[key], rest, to);
  if (inner !== undefined) return { ...group, [key]: inner };
  return Object.fromEntries(Object.entries(group).filter(([name]) => name !== key));
}

/** The place, where all that a patch does is to set one number or word. */
export function onlyPlace(patch: Patch): string | null {
  const [one] = patch;
  if (patch.length !== 1 || 'out' in one! || typeof one!.is === 'object' || typeof one!.was === 'object') return null;
  return JSON.stringify(one!.at);
}
