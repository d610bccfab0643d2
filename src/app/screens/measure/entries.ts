/** Changes of the notebook: another reading, one less, several from a table. */

import type { Design, Part } from '../../../design/definition.ts';
import { toolExact } from '../../../design/rounded.ts';
import { madeIn } from '../../../design/tools.ts';
import type { System } from '../../../design/units.ts';
import { doneSoFar } from '../../../report/measure/metalBetween.ts';
import { predictedReading } from '../../../report/measure/predictedReading.ts';
import { bare } from '../../record/entered.ts';
import { KINDS, type Kind, type Reading, saidOfAsked, startOf } from './kinds.ts';

/**
 * A set-up of a kind: where and with what the last of its kind was read, else on the first seat it can be taken on,
 * half way along the surface, with tools of the system. Its value is what the parts as drawn would give: to be shown as
 * such, and never to be taken for a reading.
 */
export function newReading(design: Design, kind: Kind, tools: System): Reading {
  const last = design.readings?.findLast((reading) => reading.kind === kind);
  const on = last && 'seat' in last ? last : undefined;
  const seat =
    design.seats.find(({ name }) => name === on?.seat) ??
    design.seats.find(({ bush }) => kind !== 'ballDepth' || bush.halfAngle !== 0) ??
    design.seats[0]!;
  const setUp = startOf(kind, { seat, part: on?.part ?? KINDS[kind].parts[0] ?? 'journal', design, tools });
  return predicted(design, readNow(design, { ...setUp, ...again(last, SAME_SURFACE, tools) } as Reading));
}

/** What is offered again for the next reading of a kind: on the same surface, and on another. */
const SAME_SURFACE = ['sigma', 'roll', 'ball', 'face'];
const ANY_SURFACE = ['sigma', 'roll'];

/** A tool that the shop has no more is not offered. */
const again = (last: Reading | undefined, keys: readonly string[], tools: System): Partial<Reading> =>
  Object.fromEntries(
    Object.entries(last ?? {}).filter(
      ([key, value]) => keys.includes(key) && (!saidOfAsked(key).tool || madeIn(value as number, tools) === tools),
    ),
  );

/** The same kind of set-up on another surface: with the same tools, or those it was read with last. */
export function onSurface(design: Design, reading: Reading, name: string, part: Part, tools: System): Reading {
  const seat = design.seats.find((s) => s.name === name)!;
  const there = design.readings?.findLast(
    (r) => r.kind === reading.kind && 'seat' in r && r.seat === name && r.part === part,
  );
  const setUp = startOf(reading.kind, { seat, part, design, tools });
  const stays = there ? again(there, SAME_SURFACE, tools) : again(reading, ANY_SURFACE, tools);
  return predicted(design, readNow(design, { ...setUp, ...stays, sigma: reading.sigma, ...bare(reading) } as Reading));
}

function predicted(design: Design, reading: Reading): Reading {
  const { value } = predictedReading(design, reading);
  return { ...reading, value: value === null ? 0 : toolExact(value) };
}

/** A set-up as it is read now: after all the trials written down so far. */
export function readNow(design: Design, reading: Reading): Reading {
  const { after: _, ...plain } = reading;
  const done = doneSoFar(design);
  return done > 0 ? { ...plain, after: done } : plain;
}

export const withReadings = (design: Design, readings: readonly Reading[]): Design => ({
  ...design,
  readings: [...(design.readings ?? []), ...readings],
});

export function withoutReading(design: Design, index: number): Design {
  const { readings = [], ...rest } = design;
  const kept = readings.filter((_, i) => i !== index);
  return kept.length > 0 ? { ...rest, readings: kept } : rest;
}
