/**
 * What is asked of what was seen. One demonstration in five is seen wrongly, so it is asked before why; asked the same
 * in every round it would be answered by heart: each round asks another of the lesson's, in another order.
 * @source MillerLasry (seen wrongly)
 */
import type { Question, Saw } from './definition.ts';
import { type Scope, type Worked, worked } from './formula.ts';
import { placed } from './pictured.ts';

export type Look = Pick<Saw, 'ask' | 'options'>;

export const looksOf = (saw: Saw): Look[] => [saw, ...(saw.other ?? [])];

interface Seen {
  look: { ask: string; options: string[] };
  saw: number;
}

/** `turn`: of the round and the question; from one round to the next it goes by an odd number. */
export function seenOf({ saw }: Pick<Question, 'saw'>, scope: Scope, turn: number): Worked<Seen> {
  const looks = looksOf(saw);
  const found: Seen[] = [];
  for (const [k, { ask, options }] of looks.entries()) {
    const at = k === 0 ? 'saw' : `saw.other[${k - 1}]`;
    const so = onlyTrue(options, scope, at);
    if (!so.ok) return so;
    const first = turn % options.length;
    const order = options.map((_, i) => (i + first) % options.length);
    found.push({ look: { ask, options: order.map((i) => options[i]!.text) }, saw: order.indexOf(so.value) });
  }
  return { ok: true, value: found[turn % looks.length]! };
}

function onlyTrue(options: Look['options'], scope: Scope, at: string): Worked<number> {
  const so: number[] = [];
  for (const [i, { is }] of options.entries()) {
    const found = worked(is, scope);
    if (!found.ok) return placed(found, `${at}.options[${i}].is`);
    if (found.value === true) so.push(i);
  }
  return so.length === 1
    ? { ok: true, value: so[0]! }
    : { ok: false, message: `of what may have been seen ${so.length} are so; it must be one`, at };
}
