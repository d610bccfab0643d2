/** What each named mistake gives with the numbers dealt, and whether two of them can be told apart. */
import type { Mistake, Question } from './definition.ts';
import { type Scope, type Worked, worked, workedNumber } from './formula.ts';

/** What one mistake gives with the numbers dealt. */
export interface Slip {
  /** its place among the mistakes of the question */
  index: number;
  value: number | string;
  /** the other end, where every number between is this mistake */
  to?: number;
  /** how near an answer must be to count as it; 0 of a choice */
  within: number;
}

/** What each mistake gives; it is as far off the right answer as it is great, or as small. */
export function slipsOf(
  mistakes: readonly Mistake[],
  scope: Scope,
  right: number | string,
  within: number,
  choices: readonly string[] | null = null,
): Worked<Slip[]> {
  const slips: Slip[] = [];
  for (const [index, { is, to, when, name }] of mistakes.entries()) {
    const can = when === undefined ? ({ ok: true, value: true } as const) : worked(when, scope);
    if (!can.ok) return { ok: false, message: `${name}: ${can.message}`, at: `mistakes[${index}].when` };
    if (can.value !== true) continue;
    const found = worked(is, scope);
    if (!found.ok) return { ok: false, message: `${name}: ${found.message}`, at: `mistakes[${index}].is` };
    if (typeof found.value !== typeof right)
      return { ok: false, message: `${name}: ${found.value} is no such answer`, at: `mistakes[${index}].is` };
    if (choices && !choices.includes(String(found.value)))
      return { ok: false, message: `${name}: “${found.value}” is none of the choices`, at: `mistakes[${index}].is` };
    const far = to === undefined ? null : workedNumber(to, scope);
    if (far && !far.ok) return { ok: false, message: `${name}: ${far.message}`, at: `mistakes[${index}].to` };
    if (far && typeof found.value !== 'number')
      return { ok: false, message: `${name}: only numbers have others between them`, at: `mistakes[${index}].to` };
    const share = typeof right === 'number' && right !== 0 ? within / Math.abs(right) : 0;
    const value = found.value as number | string;
    slips.push({
      index,
      value,
      // Both ends are told.
      ...(far ? { to: far.value, within: 0 } : { within: reachOf(value, within, share) }),
    });
  }
  return { ok: true, value: slips };
}

const reachOf = (value: number | string, within: number, share: number): number =>
  typeof value === 'number' ? Math.max(within * NEAR, share * Math.abs(value)) : 0;

/** A mistake much smaller than what is right is known by less than what is right is: it may not reach into it. */
const NEAR = 0.2;

/** Two that an answer could be both of; null where there are none. */
export function confused(all: readonly Slip[], { mistakes }: Question): { message: string; at: string } | null {
  for (const [i, a] of all.entries())
    for (const b of all.slice(i + 1))
      if (meet(a, b))
        return {
          message: `${mistakes[a.index]?.name ?? 'the right answer'} and ${mistakes[b.index]!.name} cannot be told apart: give the numbers another range, or let less count as right`,
          at: `mistakes[${b.index}].is`,
        };
  return null;
}

/** From where to where answers count as it. */
export function endsOf({ value, to, within }: Pick<Slip, 'value' | 'to' | 'within'>): [low: number, high: number] {
  const [a, b] = [Number(value), to ?? Number(value)];
  return [Math.min(a, b) - within, Math.max(a, b) + within];
}

function meet(a: Slip, b: Slip): boolean {
  if (typeof a.value !== 'number' || typeof b.value !== 'number') return a.value === b.value;
  const [[low, high], [from, to]] = [endsOf(a), endsOf(b)];
  return low <= to && from <= high;
}
