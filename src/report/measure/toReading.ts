/** Readings between the design file (mm, degrees, names of seats) and the engine (m, rad, places of seats). */
import type { Design } from '../../design/definition.ts';
import type { enteredWithNote } from '../../design/recordDefinition.ts';
import type { Prior as EnginePrior } from '../../engine/gauging/linearise.ts';
import type { Reading as EngineReading } from '../../engine/gauging/reading.ts';
import { degrees, metres, millimetres, radians } from '../convert.ts';
import { freeOf } from '../play/toPlay.ts';
import type { Reading } from './kinds.ts';
import { historyOf, sinceOf } from './metalBetween.ts';

type KeyOf<R> = R extends unknown ? keyof R : never;
/** Numbers of any kind of reading, but the trial it was taken after. */
type NumberKey = Exclude<KeyOf<Reading>, 'kind' | 'seat' | 'part' | 'after' | keyof typeof enteredWithNote>;

/** What every number of every kind is, in the order of a table. */
const NUMBERS = {
  value: 'length',
  sigma: 'length',
  station: 'length',
  roll: 'length',
  ball: 'length',
  face: 'length',
  bar: 'length',
  stack: 'length',
  travel: 'length',
  indicator: 'length',
  position: 'length',
  direction: 'angle',
} as const satisfies Record<NumberKey, 'length' | 'angle'>;

type LengthKey = { [K in NumberKey]: (typeof NUMBERS)[K] extends 'length' ? K : never }[NumberKey];
export const LENGTHS = (Object.keys(NUMBERS) as NumberKey[]).filter(
  (key): key is LengthKey => NUMBERS[key] === 'length',
);

/**
 * m and rad: finer than the rounding of any size, so that to be surer than that is to be as sure as a number can say.
 */
const FINEST = 1e-15;

type Numbers = Record<string, number>;

function converted(reading: object, length: (x: number) => number, angle: (x: number) => number): Numbers {
  const numbers: Numbers = {};
  for (const [key, value] of Object.entries(reading)) {
    if (!Object.hasOwn(NUMBERS, key)) continue;
    numbers[key] = NUMBERS[key as NumberKey] === 'length' ? length(value) : angle(value);
  }
  return numbers;
}

/** The set-up, as it would be read on the surfaces of the design. */
export function toReading(design: Design, reading: Reading): EngineReading {
  const on =
    'seat' in reading ? { seat: design.seats.findIndex((s) => s.name === reading.seat), part: reading.part } : {};
  const free = reading.kind === 'shake' ? { free: freeOf(design) } : {};
  const numbers = converted(reading, metres, radians);
  const kind: EngineReading['kind'] = reading.kind;
  return { kind, ...on, ...free, ...numbers, sigma: Math.max(FINEST, numbers.sigma!) } as EngineReading;
}

/** To 1e-9 mm; less than that is kept as it is: an uncertainty is never nothing. */
const rounded = (m: number) => Number(millimetres(m).toFixed(9)) || millimetres(m);
/** The reading as it was taken: it knows what metal came off between it and the surfaces of the design. */
export function toReadingThen(design: Design, reading: Reading): EngineReading {
  const since = sinceOf(design, historyOf(design), reading);
  return since.length === 0 ? toReading(design, reading) : { ...toReading(design, reading), since };
}

/** Lengths to 1e-9 mm, so that a set-up that is round in metres is round in millimetres. */
export function fromReading(design: Design, reading: EngineReading): Reading {
  const on = 'seat' in reading ? { seat: design.seats[reading.seat]!.name, part: reading.part } : {};
  const kind: Reading['kind'] = reading.kind;
  return { kind, ...on, ...converted(reading, rounded, degrees) } as Reading;
}

export const toReadings = (design: Design): EngineReading[] =>
  (design.readings ?? []).map((reading) => toReading(design, reading));

export const toPriors = (design: Design): EnginePrior[] =>
  (design.priors ?? []).map(({ seat, part, of, sigma }) => ({
    seat: design.seats.findIndex((s) => s.name === seat),
    part,
    ...(of === 'diameter'
      ? { of: 'radius' as const, sigma: Math.max(FINEST, metres(sigma) / 2) }
      : { of, sigma: Math.max(FINEST, radians(sigma)) }),
  }));
