/**
 * The steps of a job that can be undone and done again. Each is numbered for good and is what changed, so that keeping
 * another one writes one. A number or word that is set again and again within a second is one step.
 */
import { backward, forward, onlyPlace, type Patch, patchBetween } from './patch.ts';

export interface Step {
  patch: Patch;
  /** the patch as it is kept */
  text: string;
}

export interface Steps {
  /** number of the first one */
  first: number;
  steps: readonly Step[];
  /** number of the first one that is undone, or would be the next */
  at: number;
}

/** What is to be written: steps as they are now, and, where some were let go, that there are none before or after. */
interface Unwritten {
  put: { n: number; text: string }[];
  noneBefore: number | null;
  noneFrom: number | null;
}

const MOST_STEPS = 500;
/** Characters of all steps together, beyond which the oldest are let go. */
const MOST_TEXT = 8_000_000;
/** ms */
const SAME_FIELD = 1000;

export const asStep = (patch: Patch): Step => ({ patch, text: JSON.stringify(patch) });

export function createHistory(kept: Steps = { first: 0, steps: [], at: 0 }) {
  let { first, at } = kept;
  let steps = [...kept.steps];
  /** lowest number that stands otherwise than it was written */
  let unwritten = Number.POSITIVE_INFINITY;
  /** whether steps may stand in the store that are none any more */
  let stale = { before: true, after: true };
  let field: { place: string; time: number } | null = null;

  function letGo() {
    let text = steps.reduce((sum, step) => sum + step.text.length, 0);
    while (at > first + 1 && (steps.length > MOST_STEPS || text > MOST_TEXT)) {
      text -= steps.shift()!.text.length;
      first++;
      stale = { ...stale, before: true };
    }
  }

  return {
    /** @param time ms, of any clock that only goes on; left out: a step of its own, as a drag is */
    push(before: unknown, after: unknown, time?: number) {
      const patch = patchBetween(before, after);
      if (patch.length === 0) return;
      const place = time === undefined ? null : onlyPlace(patch);
      const last = steps[at - 1 - first];
      const goesOn = place !== null && field?.place === place && time! - field.time <= SAME_FIELD && last !== undefined;
      if (goesOn) at--;
      if (at - first < steps.length) stale = { ...stale, after: true };
      steps = steps.slice(0, at - first);
      unwritten = Math.min(unwritten, at);
      field = place === null ? null : { place, time: time! };
      const whole = goesOn ? patchBetween(backward(before, last.patch), after) : patch;
      if (whole.length === 0) return;
      steps.push(asStep(whole));
      at++;
      letGo();
    },
    /** The state before the last step; the same where there is none. */
    undo<T>(now: T): T {
      field = null;
      if (at === first) return now;
      at--;
      return backward(now, steps[at - first]!.patch);
    },
    redo<T>(now: T): T {
      field = null;
      const next = steps[at - first];
      if (!next) return now;
      at++;
      return forward(now, next.patch);
    },
    /** What was not written yet; from here on it counts as written, unless `failed` is told. */
    write(): Unwritten & { failed(): void } {
      const from = unwritten;
      const { before, after } = stale;
      unwritten = Number.POSITIVE_INFINITY;
      stale = { before: false, after: false };
      return {
        put: steps.flatMap(({ text }, i) => (first + i >= from ? [{ n: first + i, text }] : [])),
        noneBefore: before ? first : null,
        noneFrom: after ? first + steps.length : null,
        failed: () => {
          unwritten = Math.min(unwritten, from);
          stale = { before: stale.before || before, after: stale.after || after };
        },
      };
    },
    /** The newest steps, done and undone, with how many of them are done. */
    last(most: number): { at: number; steps: Patch[] } {
      const from = Math.max(0, Math.min(steps.length - most, at - first));
      return { at: at - first - from, steps: steps.slice(from).map(({ patch }) => patch) };
    },
    /** What undo would take back; null: nothing. */
    get done(): Patch | null {
      return steps[at - 1 - first]?.patch ?? null;
    },
    /** All of it is to be written anew. */
    writeAll() {
      unwritten = first;
    },
    get first() {
      return first;
    },
    get at() {
      return at;
    },
    get end() {
      return first + steps.length;
    },
  };
}

export type History = ReturnType<typeof createHistory>;
