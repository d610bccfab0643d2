/** How each kind of number is shown in a field and read from what was typed, in the units a person likes. */
import type { Quantity } from './definition.ts';
import { expansionText, typedExpansion } from './expansion.ts';
import { fromUnit, inUnit, type Measure, unitOf } from './measures.ts';
import type { QuantityAt } from './place.ts';
import { angleExact, fineExact, fineUnit, lengthExact, lengthUnit, plainTyped, type System, type Typed, typedHalfAngle, typedLength } from './units.ts';

interface Written {
  /** Every digit that counts, with the unit. */
  text(value: number, system: System): string;
  typed(text: string, system: System): Typed;
}

const WRITTEN: Record<Quantity, Written> = {
  length: { text: lengthExact, typed: (text, system) => typedLength(text, lengthUnit(system).size) },
  fine: { text: fineExact, typed: (text, system) => typedLength(text, fineUnit(system).size) },
  angle: { text: angleExact, typed: typedHalfAngle },
  phase: plain('°', ['deg', 'd']),
  tilt: measured('tilt', { rad: 1, mrad: 1e-3, µrad: 1e-6 }),
  ratio: plain(''),
  count: plain(''),
  force: measured('force'),
  pressure: measured('pressure'),
  speed: plain('rev/min', ['rpm', '1/min']),
  temperature: measured('temperature'),
  warmer: measured('warmer'),
  viscosity: plain('Pa·s', ['Pa.s', 'Pa s']),
  kinematicViscosity: plain('mm²/s', ['mm2/s', 'cSt']),
  density: plain('g/cm³', ['g/cm3']),
  mass: measured('mass'),
  specificHeat: plain('J/(kg·K)', ['J/kg.K', 'J/(kg.K)']),
  area: measured('area'),
  cooling: plain('W/(m²·K)', ['W/m2.K', 'W/(m2.K)']),
  expansion: { text: expansionText, typed: typedExpansion },
  wear: plain('mm³/(N·m)', ['mm3/(N.m)', 'mm3/N.m']),
  time: plain('s'),
};

export const quantityText = (quantity: Quantity, value: number, system: System) => WRITTEN[quantity].text(value, system);

/** The number in the unit of the file from what was typed, or why not: out of its bounds is told in the person's own unit. */
export function typedQuantity(at: QuantityAt, text: string, system: System): Typed {
  const plain = plainTyped(text);
  if (!plain.ok) return plain;
  const typed = WRITTEN[at.quantity].typed(plain.text.replaceAll('−', '-'), system);
  if (!typed.ok) return typed;
  if (!Number.isFinite(typed.value)) return { ok: false, message: `found "${text}"; type a number that a file can hold` };
  const broken = at.bounds.find(({ side, value, inclusive }) => (side === 'least' ? typed.value < value : typed.value > value) || (!inclusive && typed.value === value));
  if (!broken) return typed;
  const told = (value: number) => quantityText(at.quantity, value, system);
  const rule = broken.inclusive ? (broken.side === 'least' ? 'at least' : 'at most') : broken.side === 'least' ? 'more than' : 'less than';
  return { ok: false, message: `found ${told(typed.value)}; it must be ${rule} ${told(broken.value)}` };
}

const NUMBER = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?) ?(.*)$/i;
const same = (name: string, typed: string) => name.toLowerCase() === typed.toLowerCase();
const shownText = (value: number, digits: number, unit: string) => `${`${+value.toPrecision(digits)}`.replace('-', '−')}${unit === '' || unit === '°' ? unit : ` ${unit}`}`;

/** A number with one unit, or none. */
function plain(unit: string, also: readonly string[] = []): Written {
  return {
    text: (value) => shownText(value, 12, unit),
    typed(text) {
      const [, number, after] = NUMBER.exec(text) ?? [];
      if (number === undefined) return { ok: false, message: `found "${text}"; type a number${unit === '' ? '' : ` in ${unit}`}` };
      if (after !== '' && ![unit, ...also].some((name) => same(name, after!))) return { ok: false, message: `unit "${after}" is not known here; ${unit === '' ? 'type a number alone' : `use ${unit}`}` };
      return { ok: true, value: Number(number.replace(',', '.')) };
    },
  };
}

/** A number in the unit of the person's system; the other one's, or one of `others` (sizes in the file's unit), may be typed after it. In inch, digits enough to type it back. */
function measured(measure: Measure, others: Readonly<Record<string, number>> = {}): Written {
  const [metric, inch] = [unitOf(measure, 'metric'), unitOf(measure, 'inch')];
  return {
    text: (value, system) => shownText(inUnit(measure, value, system), system === 'metric' ? 12 : 8, unitOf(measure, system).name),
    typed(text, system) {
      const [, number, after] = NUMBER.exec(text) ?? [];
      if (number === undefined) return { ok: false, message: `found "${text}"; type a number in ${metric.name} or ${inch.name}` };
      const named = (['metric', 'inch'] as const).find((one) => [unitOf(measure, one).name, ...(unitOf(measure, one).also ?? [])].some((name) => same(name, after!)));
      const other = Object.keys(others).find((name) => same(name, after!));
      if (other !== undefined) return { ok: true, value: Number(number.replace(',', '.')) * others[other]! };
      if (after !== '' && named === undefined) return { ok: false, message: `unit "${after}" is not known here; use ${metric.name} or ${inch.name}` };
      return { ok: true, value: fromUnit(measure, Number(number.replace(',', '.')), named ?? system) };
    },
  };
}
