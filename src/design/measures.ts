/**
 * Forces, torques, pressures, temperatures and the like, in the units of a metric or an inch shop. Files hold the
 * metric ones.
 *
 * 1 lb = 0.45359237 kg and 1 in = 25.4 mm exactly; a pound-force under standard gravity, 9.80665 m/s²;
 * °F = 9/5 °C + 32; 1 Btu (IT) = 1055.05585262 J.
 * @source YardAndPound; NIST-SP811 appendix B.8
 */
import { metres } from './dimension.ts';
import { INCH, type System } from './units.ts';

interface Unit {
  name: string;
  /** of the file's unit */
  size: number;
  /** what the file says where this unit says 0 */
  zero?: number;
  /** other ways to type it */
  also?: readonly string[];
}

const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;
/** mm */
const FOOT = 12 * INCH;
/** J */
const BTU = 1055.05585262;
/** K */
const FAHRENHEIT = 5 / 9;

const UNITS = {
  force: { metric: { name: 'N', size: 1 }, inch: { name: 'lbf', size: POUND_FORCE, also: ['lb'] } },
  torque: { metric: { name: 'N·mm', size: 1 }, inch: { name: 'lbf·in', size: POUND_FORCE * INCH } },
  pressure: { metric: { name: 'MPa', size: 1 }, inch: { name: 'psi', size: POUND_FORCE / INCH ** 2 } },
  temperature: {
    metric: { name: '°C', size: 1, also: ['C'] },
    inch: { name: '°F', size: 5 / 9, zero: -160 / 9, also: ['F'] },
  },
  /** a difference of temperatures */
  warmer: { metric: { name: '°C', size: 1, also: ['C', 'K'] }, inch: { name: '°F', size: 5 / 9, also: ['F'] } },
  /** mm³/s */
  flow: { metric: { name: 'mm³/s', size: 1 }, inch: { name: 'in³/min', size: INCH ** 3 / 60 } },
  mass: { metric: { name: 'kg', size: 1 }, inch: { name: 'lb', size: POUND } },
  area: {
    metric: { name: 'mm²', size: 1, also: ['mm2'] },
    inch: { name: 'in²', size: INCH ** 2, also: ['in2', 'sq in'] },
  },
  /** J/(kg·K) */
  specificHeat: {
    metric: { name: 'J/(kg·K)', size: 1, also: ['J/kg.K', 'J/(kg.K)'] },
    inch: { name: 'Btu/(lb·°F)', size: BTU / POUND / FAHRENHEIT, also: ['Btu/(lb.F)', 'Btu/lb.F'] },
  },
  /** W/(m²·K) */
  cooling: {
    metric: { name: 'W/(m²·K)', size: 1, also: ['W/m2.K', 'W/(m2.K)'] },
    inch: {
      name: 'Btu/(h·ft²·°F)',
      size: BTU / 3600 / metres(FOOT) ** 2 / FAHRENHEIT,
      also: ['Btu/(h.ft2.F)', 'Btu/h.ft2.F'],
    },
  },
  /** mm³/(N·m) */
  wear: {
    metric: { name: 'mm³/(N·m)', size: 1, also: ['mm3/(N.m)', 'mm3/N.m'] },
    inch: {
      name: 'thou³/(lbf·ft)',
      size: metres(INCH) ** 3 / (POUND_FORCE * metres(FOOT)),
      also: ['thou3/(lbf.ft)'],
    },
  },
  /** rad, small: what an indicator says of it */
  tilt: {
    metric: { name: 'µm/100 mm', size: 1e-5, also: ['um/100mm', 'µm/100mm', 'um/100 mm'] },
    inch: { name: 'tenths/in', size: 1e-4, also: ['tenths/inch'] },
  },
  /** N/mm */
  stiffness: { metric: { name: 'N/µm', size: 1000 }, inch: { name: 'lbf/tenth', size: POUND_FORCE / (INCH / 10_000) } },
} as const satisfies Record<string, Record<System, Unit>>;

export type Measure = keyof typeof UNITS;

export const unitOf = (measure: Measure, system: System): Unit => UNITS[measure][system];

/** The number a scale in this unit shows. */
export const inUnit = (measure: Measure, value: number, system: System): number => {
  const { size, zero = 0 } = unitOf(measure, system);
  return (value - zero) / size;
};

/** The file's number from one in this unit. */
export const fromUnit = (measure: Measure, shown: number, system: System): number => {
  const { size, zero = 0 } = unitOf(measure, system);
  return zero + shown * size;
};

/** To three figures, with the unit; a temperature to a whole degree. */
export function measureText(measure: Measure, value: number, system: System): string {
  const shown = inUnit(measure, value, system);
  const number = measure === 'temperature' ? `${Math.round(shown)}`.replace('-', '−') : figures(shown);
  return `${number} ${unitOf(measure, system).name}`;
}

/** A number to three figures. */
export const figures = (value: number): string =>
  value === 0 ? '0' : `${Number(value.toPrecision(3))}`.replace('-', '−');
