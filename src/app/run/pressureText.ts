/** Pressures as a screen shows them. One psi is a pound-force to the square inch: 0.45359237 kg · 9.80665 m/s² / (25.4 mm)². */
import type { System } from '../../design/units.ts';

/** MPa to one unit. */
export const pressureUnit = (system: System) => (system === 'metric' ? { size: 1, name: 'MPa' } : { size: (0.45359237 * 9.80665) / 25.4 ** 2, name: 'psi' });

/** To three figures. */
export function pressureText(megapascal: number, system: System): string {
  const unit = pressureUnit(system);
  return `${figures(megapascal / unit.size)} ${unit.name}`;
}

/** A number to three figures. */
export const figures = (value: number): string => (value === 0 ? '0' : `${Number(value.toPrecision(3))}`.replace('-', '−'));
