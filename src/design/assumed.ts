/**
 * What of a design is assumed: numbers that keep a proportion taken from the rest, until a person types them or takes
 * them from readings. The design names their places (`assumed`).
 */
import type { Design } from './definition.ts';
import { pathAfter } from './follow.ts';
import { quantityIfAt, valueAt } from './place.ts';

export const isAssumed = (design: Design, path: string): boolean => design.assumed?.includes(path) ?? false;

/** The design with these places, and no others, named as assumed; only where a number stands. */
function naming(design: Design, paths: readonly string[]): Design {
  const { assumed: _, ...rest } = design;
  const standing = [...new Set(paths)].filter((path) => typeof valueAt(design, path) === 'number');
  return standing.length > 0 ? { ...rest, assumed: standing } : rest;
}

export const withAssumed = (design: Design, paths: readonly string[]): Design =>
  naming(design, [...(design.assumed ?? []), ...paths]);

/** A person says that it is so. */
export const withKnown = (design: Design, path: string): Design =>
  naming(
    design,
    (design.assumed ?? []).filter((other) => other !== path),
  );

/**
 * What is assumed after a change: it follows its entry through the lists, and ends where another value stands. `kept`:
 * the change works metal or moves things about, and tells nothing of what they are.
 */
export function assumedAfter(before: Design, after: Design, kept = false): Design {
  const was = before.assumed ?? [];
  const is = after.assumed ?? [];
  if (was.length === 0 && is.length === 0) return after;
  const left = was.flatMap((path) => {
    const to = is.includes(path) ? pathAfter(path, before, after) : null;
    return to !== null && (kept || valueAt(after, to) === valueAt(before, path)) ? [to] : [];
  });
  const added = is.filter((path) => !was.includes(path));
  return naming(after, [...left, ...added]);
}

/** Every number that stands below a path. */
export function numbersUnder(design: Design, path: string): string[] {
  const value = valueAt(design, path);
  if (typeof value === 'number') return quantityIfAt(path, design) ? [path] : [];
  if (Array.isArray(value)) return value.flatMap((_, i) => numbersUnder(design, `${path}[${i}]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.keys(value).flatMap((key) => numbersUnder(design, `${path}.${key}`));
}
