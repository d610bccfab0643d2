/** Figures of a running spindle in words. */
import { inUnit, measureText, unitOf } from '../../design/measures.ts';
import type { System } from '../../design/units.ts';

export const rounded = (value: number) => Number(value.toPrecision(2));
export const digits = (value: number) => (Math.abs(value) >= 99.5 ? value.toFixed(0) : value.toPrecision(2));
export const newtons = (value: number, system: System) =>
  `${digits(Math.abs(inUnit('force', value, system)))} ${unitOf('force', system).name}`;
export const celsius = (value: number, system: System) => measureText('temperature', value, system);
export const watts = (value: number) => `${digits(value)} W`;
export const minutes = (seconds: number) =>
  seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} minutes`;
