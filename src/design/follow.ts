/** Where a place of the design has gone to after a change: entries of its lists come, go and change their order. */
import type { Design } from './definition.ts';
import { into, pathOf, type Step, stepsOf } from './place.ts';

/** The path of the same place after a change; null where it is gone. */
export function pathAfter(path: string, before: Design, after: Design): string | null {
  const steps: Step[] = [];
  let [was, is]: [unknown, unknown] = [before, after];
  for (const step of stepsOf(path)) {
    const to = typeof step === 'number' && Array.isArray(was) && Array.isArray(is) ? entryAfter(was, is, step) : step;
    if (to === null) return null;
    steps.push(to);
    [was, is] = [into(was, step), into(is, to)];
  }
  return pathOf(steps);
}

/**
 * An entry is the same one untouched; of a list as long as before, the one changed in its place, whatever it is called
 * now; else the one of its name.
 */
function entryAfter(was: readonly unknown[], is: readonly unknown[], at: number): number | null {
  const entry = was[at];
  if (typeof entry === 'object' && entry !== null) {
    const same = is.indexOf(entry);
    if (same >= 0) return same;
    if (was.length === is.length && !was.includes(is[at])) return at;
    const name = into(entry, 'name');
    const named = name === undefined ? -1 : is.findIndex((other) => into(other, 'name') === name);
    if (named >= 0) return named;
  }
  return was.length === is.length ? at : null;
}
