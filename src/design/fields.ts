/** What the definition of the design file is made of: numbers that know what they measure, places, names, texts. */
import * as z from 'zod/mini';
import type { Degrees, Millimetres, Radians } from './dimension.ts';

/** What a number measures; decides how a screen shows it and what units may be typed. */
export type Quantity =
  | 'length'
  | 'fine'
  | 'angle'
  | 'tilt'
  | 'phase'
  | 'ratio'
  | 'share'
  | 'count'
  | 'force'
  | 'pressure'
  | 'speed'
  | 'temperature'
  | 'warmer'
  | 'viscosity'
  | 'kinematicViscosity'
  | 'density'
  | 'mass'
  | 'specificHeat'
  | 'area'
  | 'cooling'
  | 'expansion'
  | 'wear'
  | 'time';

export interface QuantityMeta {
  title: string;
  description: string;
  quantity: Quantity;
  unit: string;
  /** what holds where it is left out, in the unit of the file; and of what that is */
  default?: number;
  defaultOf?: string;
}

/**
 * What holds where a number is left out: it stands here, with its field, and everything else asks for it (place.ts,
 * defaultAt).
 */
interface LeftOut {
  otherwise: number;
  of?: string;
}

const UNIT: Record<Quantity, string> = {
  length: 'mm',
  fine: 'mm',
  angle: 'deg',
  tilt: 'rad',
  phase: 'deg',
  ratio: '1',
  share: '1',
  force: 'N',
  pressure: 'MPa',
  speed: 'rev/min',
  temperature: 'degC',
  warmer: 'K',
  count: '1',
  viscosity: 'Pa.s',
  kinematicViscosity: 'mm2/s',
  density: 'g/cm3',
  mass: 'kg',
  specificHeat: 'J/(kg.K)',
  area: 'mm2',
  cooling: 'W/(m2.K)',
  expansion: '1/K',
  wear: 'mm3/(N.m)',
  time: 's',
};

export interface Bounds {
  min?: number;
  max?: number;
  above?: number;
  below?: number;
}

function bounded(bounds: Bounds) {
  const checks = [];
  if (bounds.min !== undefined) checks.push(z.gte(bounds.min));
  if (bounds.max !== undefined) checks.push(z.lte(bounds.max));
  if (bounds.above !== undefined) checks.push(z.gt(bounds.above));
  if (bounds.below !== undefined) checks.push(z.lt(bounds.below));
  return checks;
}

type NumberOf<Q extends Quantity> = Q extends 'length' | 'fine'
  ? Millimetres
  : Q extends 'angle' | 'phase'
    ? Degrees
    : Q extends 'tilt'
      ? Radians
      : number;

export function number<Q extends Quantity>(
  quantity: Q,
  title: string,
  description: string,
  bounds: Bounds,
  leftOut?: LeftOut,
) {
  const meta: QuantityMeta = {
    title,
    description,
    quantity,
    unit: UNIT[quantity],
    ...(leftOut && { default: leftOut.otherwise, ...(leftOut.of !== undefined && { defaultOf: leftOut.of }) }),
  };
  return z.number().check(...bounded(bounds), z.meta({ ...meta })) as unknown as z.ZodMiniType<
    NumberOf<Q>,
    NumberOf<Q>
  >;
}

/** Bounds that no small spindle reaches; they keep a slip of the keyboard from being taken for a part. */
export const STATION = { min: -10_000, max: 10_000 };
export const SIZE = { above: 0, max: 5_000 };
export const DEVIATION = { min: -1, max: 1 };
export const MOVE = { min: -1_000, max: 1_000 };

export const station = (title: string, description: string, leftOut?: LeftOut) =>
  number('length', title, description, STATION, leftOut);
export const text = (max: number, description: string) => z.string().check(z.maxLength(max), z.meta({ description }));
export const name = z
  .string()
  .check(
    z.minLength(1),
    z.maxLength(40),
    z.regex(/\S/),
    z.meta({ description: 'Name of the seat, unique in the design' }),
  );

export const part = z.enum(['journal', 'bush']);
export const sigma = number('fine', 'Uncertainty', 'Standard uncertainty of what was read', { above: 0, max: 100 });

/** The set-up of a shake, as a reading and as part of a trial assembly alike. */
export const pulled = {
  indicator: station('Indicator', 'Where the indicator stands'),
  position: number('fine', 'Position', 'Of the journal during the reading', MOVE),
  direction: number('phase', 'Direction', 'Of the pull, from x toward y', { min: -360, max: 360 }),
};
