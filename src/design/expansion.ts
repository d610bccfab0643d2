/**
 * Expansion coefficients as tables of the trade print them: millionths a degree. Files hold 1/K.
 *   1 µm/(m·K) = 1e-6/K        1 µin/(in·°F) = 1.8e-6/K, since a kelvin is 1.8 °F
 */
import { plainTyped, type System, type Typed } from './units.ts';

/** 1/K */
const UNITS: Record<System, { name: string; size: number; also: readonly string[] }> = {
  metric: { name: 'µm/(m·K)', size: 1e-6, also: ['um/(m.K)', 'µm/m·K', 'um/m.K', 'ppm/K', 'ppm/°C'] },
  inch: { name: 'µin/(in·°F)', size: 1.8e-6, also: ['uin/(in.F)', 'µin/in·°F', 'uin/in.F', 'ppm/°F', 'ppm/F'] },
};
const PER_KELVIN = ['1/K', '/K'];

/** Nothing solid expands so little: a bare number below this is meant per kelvin, and is asked about. */
const LEAST = 1e-3;

const same = (name: string, typed: string) => name.toLowerCase() === typed.toLowerCase();
/** What a rounded decimal has lost is put back. */
const decimal = (value: number) => Number(value.toPrecision(12));

/** To three figures, where the unit stands beside it. */
export const expansionFigures = (perKelvin: number, system: System): string =>
  `${Number((perKelvin / UNITS[system].size).toPrecision(3))}`;

/** 11.3 µm/(m·K); 6.278 µin/(in·°F). */
export const expansionText = (perKelvin: number, system: System): string =>
  `${Number((perKelvin / UNITS[system].size).toPrecision(system === 'metric' ? 9 : 5))} ${UNITS[system].name}`;

/** 1/K from what was typed, with either unit or per kelvin. */
export function typedExpansion(text: string, system: System): Typed {
  const plain = plainTyped(text);
  if (!plain.ok) return plain;
  const [, number, unit] = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?) ?(.*)$/i.exec(plain.text) ?? [];
  const { name } = UNITS[system];
  if (number === undefined) return { ok: false, message: `found "${text}"; type a number in ${name}` };
  const value = Number(number.replace(',', '.'));
  if (PER_KELVIN.some((per) => same(per, unit!))) return { ok: true, value };
  const named =
    unit === ''
      ? UNITS[system]
      : Object.values(UNITS).find((one) => [one.name, ...one.also].some((also) => same(also, unit!)));
  if (!named)
    return {
      ok: false,
      message: `unit "${unit}" is not known here; use ${UNITS.metric.name}, ${UNITS.inch.name} or 1/K`,
    };
  if (unit === '' && value !== 0 && Math.abs(value) < LEAST)
    return {
      ok: false,
      message: `found "${text}", which is next to nothing in ${name}; write ${text} 1/K if that is meant`,
    };
  return { ok: true, value: decimal(value * named.size) };
}
