/**
 * How each kind of number is shown in a field and read from what was typed, in the units a person likes. Viscosities
 * and densities of oil are those of its data sheet, mm²/s (cSt), Pa·s and g/cm³, in either shop.
 */
import type { Quantity } from './definition.ts';
import { expansionText, typedExpansion } from './expansion.ts';
import { fromUnit, inUnit, type Measure, unitOf } from './measures.ts';
import type { QuantityAt } from './place.ts';
import {
  type AngleWay,
  angleExact,
  angleIn,
  fineExact,
  fineUnit,
  lengthExact,
  lengthUnit,
  plainTyped,
  type System,
  type Typed,
  trimmed,
  typedAngleIn,
  typedHalfAngle,
  typedLength,
} from './units.ts';

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
  share: {
    text: (value) => `${Number((100 * value).toPrecision(12))} %`,
    typed: (text, system) => plain('').typed(shareTyped(text), system),
  },
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
  specificHeat: measured('specificHeat'),
  area: measured('area'),
  cooling: measured('cooling'),
  expansion: { text: expansionText, typed: typedExpansion },
  wear: measured('wear'),
  time: plain('s'),
};

/** A share or chance as a number: `1 %`, `1 in 100`, `1/100`. */
const shareTyped = (text: string) =>
  text.replace(/^([\d.]+) ?(?:%|(?:in|\/) ?(\d+))$/, (_, times, out = 100) => `${times / out}`);

/** `way`: how the person says angles. */
export const quantityText = (quantity: Quantity, value: number, system: System, way: AngleWay = 'half') =>
  quantity === 'angle' ? angleIn(value, way) : WRITTEN[quantity].text(value, system);

/** Decimals of a figure at rest, in its unit: of lengths the finest that a gauge tells. */
const DECIMALS: Partial<Record<Quantity, Record<System, number>>> = {
  length: { metric: 4, inch: 5 },
  fine: { metric: 2, inch: 2 },
  angle: { metric: 4, inch: 4 },
};
/** Figures that are kept whatever the decimals. */
const KEPT = { sized: 3, other: 4 };

/**
 * The same in a field that nobody is typing in: no more digits than mean something. Whoever types there sees them all,
 * so that nothing is lost by taking it as it stands.
 */
export function restingText(quantity: Quantity, value: number, system: System, way: AngleWay = 'half'): string {
  const exact = quantityText(quantity, value, system, way);
  return exact.replace(
    /^([−-]?(?:1:)?)(\d+)\.(\d+)(?=$|[ °])/,
    (all, sign: string, whole: string, decimals: string) => {
      const size = Number(`${whole}.${decimals}`);
      if (size === 0) return all;
      const least = DECIMALS[quantity]?.[system];
      const figures = (least === undefined ? KEPT.other : KEPT.sized) - 1 - Math.floor(Math.log10(size));
      const most = Math.min(100, Math.max(least ?? 0, figures));
      if (decimals.length <= most) return all;
      const rounded = trimmed(size.toFixed(most), 0);
      if (least === undefined) return `${sign}${rounded}`;
      const [shown, left = ''] = rounded.split('.');
      return `${sign}${shown}.${left.padEnd(LEAST_DECIMALS[quantity as 'length'], '0')}`;
    },
  );
}

/** As many decimals are written of a size at least. */
const LEAST_DECIMALS = { length: 3, fine: 2, angle: 1 } as const;

/** A number that is only told: to three figures. */
export const toldText = (quantity: Quantity, value: number, system: System): string =>
  quantityText(quantity, value, system).replace(
    /^(−?)([\d.]+(?:e-?\d+)?)/,
    (_, sign: string, number: string) => `${sign}${Number(Number(number).toPrecision(3))}`,
  );

/** What a field is, in words: from the definition, with what holds where it is left empty, in the person's units. */
export function hintText(
  at: Pick<QuantityAt, 'description' | 'quantity' | 'default' | 'defaultOf'>,
  system: System,
  otherwise = at.default,
): string {
  const what = inSystem(at.description, system);
  if (otherwise === undefined) return what;
  return `${what}; ${toldText(at.quantity, otherwise, system)}${at.defaultOf === undefined ? '' : `, ${at.defaultOf},`} when left out`;
}

/** The units of the file that a sentence of ours may hold, each with what it measures; of mm its size decides. */
const FILE_UNITS = {
  mm: 'fine',
  N: 'force',
  MPa: 'pressure',
  '°C': 'temperature',
  kg: 'mass',
  'mm²': 'area',
  'J/(kg·K)': 'specificHeat',
  'W/(m²·K)': 'cooling',
  '1/K': 'expansion',
  'mm³/(N·m)': 'wear',
} as const satisfies Record<string, Quantity>;
type FileUnit = keyof typeof FILE_UNITS;
/** The longest first, so that none is taken for the beginning of another. */
const ANY_FILE_UNIT = Object.keys(FILE_UNITS)
  .sort((a, b) => b.length - a.length)
  .map((unit) => unit.replace(/[()/]/g, '\\$&'))
  .join('|');
const IN_FILE_UNITS = new RegExp(`(-?\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?) (${ANY_FILE_UNIT})(?![\\w²³/·])`, 'g');

/**
 * The unit in which a file holds what is measured so, after a space; nothing where it has none that a person's system
 * changes.
 */
export function fileUnit(quantity: Quantity): string {
  const kind = quantity === 'length' ? 'fine' : quantity;
  const unit = (Object.keys(FILE_UNITS) as FileUnit[]).find((name) => FILE_UNITS[name] === kind);
  return unit === undefined ? '' : ` ${unit}`;
}

/** A sentence whose figures are in the units of the file, in the person's; of a quantity where that is known. */
export const inSystem = (text: string, system: System, quantity?: Quantity): string => {
  // Nought is told as what stands beside it.
  const noughtIs = [...text.matchAll(IN_FILE_UNITS)].some(([, number]) => isLarge(Number(number))) ? 'length' : 'fine';
  return text.replaceAll(IN_FILE_UNITS, (all, typed: string, unit: string) => {
    if (system === 'metric' && quantity === undefined) return all;
    const number = Number(typed);
    const byItself = number === 0 ? noughtIs : isLarge(number) ? 'length' : 'fine';
    const ofLength = quantity === 'length' || quantity === 'fine' ? quantity : byItself;
    return quantityText(unit === 'mm' ? ofLength : FILE_UNITS[unit as FileUnit], number, system);
  });
};

/** mm: from here on told as a length. */
const isLarge = (mm: number) => Math.abs(mm) >= 1;

/** Of the unit of fine lengths: a number alone that is less was meant in another, or its unit is said. */
const LEAST_ALONE = 0.01;

/** The same of a field by itself, where the sizes beside it may be in a larger unit; of a table its columns tell. */
export function typedField(at: QuantityAt, text: string, system: System, way: AngleWay = 'half'): Typed {
  const typed = typedQuantity(at, text, system, way);
  const { name, size } = fineUnit(system);
  const plain = text.trim();
  if (at.quantity !== 'fine' || !typed.ok || typed.value === 0 || /[^\d.,+−-]/.test(plain)) return typed;
  if (Math.abs(typed.value) >= LEAST_ALONE * size) return typed;
  return {
    ok: false,
    message: `found ${plain}, and a number alone is ${name} here: write ${plain} ${lengthUnit(system).name}, or ${plain} ${name}`,
  };
}

/**
 * The number in the unit of the file from what was typed, or why not: out of its bounds is told in the person's own
 * unit.
 */
export function typedQuantity(at: QuantityAt, text: string, system: System, way: AngleWay = 'half'): Typed {
  const plain = plainTyped(text);
  if (!plain.ok) return plain;
  const plainly = plain.text.replaceAll('−', '-');
  const typed = at.quantity === 'angle' ? typedAngleIn(plainly, way) : WRITTEN[at.quantity].typed(plainly, system);
  if (!typed.ok) return typed;
  if (!Number.isFinite(typed.value))
    return { ok: false, message: `found "${text}"; type a number that a file can hold` };
  const broken = at.bounds.find(
    ({ side, value, inclusive }) =>
      (side === 'least' ? typed.value < value : typed.value > value) || (!inclusive && typed.value === value),
  );
  if (!broken) return typed;
  const told = (value: number) => quantityText(at.quantity, value, system, way);
  const rule = broken.inclusive
    ? broken.side === 'least'
      ? 'at least'
      : 'at most'
    : broken.side === 'least'
      ? 'more than'
      : 'less than';
  return { ok: false, message: `found ${told(typed.value)}; it must be ${rule} ${told(broken.value)}` };
}

const NUMBER = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?) ?(.*)$/i;
const same = (name: string, typed: string) => name.toLowerCase() === typed.toLowerCase();
const shownText = (value: number, digits: number, unit: string) =>
  `${`${+value.toPrecision(digits)}`.replace('-', '−')}${unit === '' || unit === '°' ? unit : ` ${unit}`}`;

/** A number with one unit, or none. */
function plain(unit: string, also: readonly string[] = []): Written {
  return {
    text: (value) => shownText(value, 12, unit),
    typed(text) {
      const [, number, after] = NUMBER.exec(text) ?? [];
      if (number === undefined)
        return { ok: false, message: `found "${text}"; type a number${unit === '' ? '' : ` in ${unit}`}` };
      if (after !== '' && ![unit, ...also].some((name) => same(name, after!)))
        return {
          ok: false,
          message: `unit "${after}" is not known here; ${unit === '' ? 'type a number alone' : `use ${unit}`}`,
        };
      return { ok: true, value: Number(number.replace(',', '.')) };
    },
  };
}

/**
 * A number in the unit of the person's system; the other one's, or one of `others` (sizes in the file's unit), may be
 * typed after it. In inch, digits enough to type it back.
 */
function measured(measure: Measure, others: Readonly<Record<string, number>> = {}): Written {
  const [metric, inch] = [unitOf(measure, 'metric'), unitOf(measure, 'inch')];
  return {
    text: (value, system) =>
      shownText(inUnit(measure, value, system), system === 'metric' ? 12 : 8, unitOf(measure, system).name),
    typed(text, system) {
      const [, number, after] = NUMBER.exec(text) ?? [];
      if (number === undefined)
        return { ok: false, message: `found "${text}"; type a number in ${metric.name} or ${inch.name}` };
      const named = (['metric', 'inch'] as const).find((one) =>
        [unitOf(measure, one).name, ...(unitOf(measure, one).also ?? [])].some((name) => same(name, after!)),
      );
      const other = Object.keys(others).find((name) => same(name, after!));
      if (other !== undefined) return { ok: true, value: Number(number.replace(',', '.')) * others[other]! };
      if (after !== '' && named === undefined)
        return { ok: false, message: `unit "${after}" is not known here; use ${metric.name} or ${inch.name}` };
      return { ok: true, value: fromUnit(measure, Number(number.replace(',', '.')), named ?? system) };
    },
  };
}
