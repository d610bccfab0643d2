/**
 * Sizes of tools as they are engraved or sold: a block, a bar, a ball or a roll keeps the name its maker gave it,
 * whatever units the screen shows. Metric ones go by hundredths of a millimetre, inch ones by thousandths or by
 * sixty-fourths. @source practice
 */
import { fineText, INCH, lengthText, lengthUnit, type System, THOU } from './units.ts';

/** mm */
const MADE: Record<System, readonly number[]> = { metric: [0.01], inch: [THOU, INCH / 64] };

const isWhole = (mm: number, step: number) => Math.abs(mm / step - Math.round(mm / step)) < 1e-6;
const isMade = (mm: number, system: System) => MADE[system].some((step) => isWhole(mm, step));

/** Inches as a fraction of the trade, 1 1/16, where it is one down to sixty-fourths; null elsewhere. */
export function inchFraction(mm: number): string | null {
  const parts = Math.round((mm / INCH) * 64);
  if (!isWhole(mm, INCH / 64) || parts <= 0) return null;
  let [over, under] = [parts % 64, 64];
  while (over !== 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const whole = Math.floor(parts / 64);
  return over === 0 ? `${whole}` : `${whole === 0 ? '' : `${whole} `}${over}/${under}`;
}

/** The system a tool of this size (mm) is made in; of both or neither, that of the person. */
export function madeIn(mm: number, system: System): System {
  const other: System = system === 'inch' ? 'metric' : 'inch';
  return !isMade(mm, system) && isMade(mm, other) ? other : system;
}

/** The size of a tool (mm) by its own name; what is made in neither system, in that of the person. */
export const toolText = (mm: number, system: System): string => namedIn(mm, madeIn(mm, system));

function namedIn(mm: number, system: System): string {
  const fraction = system === 'inch' ? inchFraction(mm) : null;
  return fraction === null
    ? `${withoutNoughts(lengthText(mm, system).replace(/ .*$/, ''))} ${lengthUnit(system).name}`
    : `${fraction} in`;
}

const withoutNoughts = (text: string) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/** The blocks of a stack (mm) as they are engraved, `set` the system their set is made in: 1.005 + 1.04 + 50 mm. */
export const blocksText = (blocks: readonly number[], set: System): string =>
  `${blocks.map((block) => engraved(block, set)).join(' + ')} ${lengthUnit(set).name}`;

/** Metric blocks bear no more digits than they need; inch ones three or four decimals. */
function engraved(mm: number, set: System): string {
  if (set === 'metric') return withoutNoughts(mm.toFixed(4));
  const text = (mm / INCH).toFixed(4);
  return text.endsWith('0') ? text.slice(0, -1) : text;
}

/** A height of blocks (mm) in the system of their set, and in the person's where that is the other. */
export function stackText(mm: number, set: System, system: System): string {
  const own = lengthText(mm, set);
  return set === system ? own : `${own} (${lengthText(mm, system)})`;
}

/** Divisions that dials have (mm): half a micrometre, half a tenth. */
const GRADED: Record<System, number> = { metric: 0.0005, inch: 0.00127 };
const isGraded = (mm: number, system: System) => Math.abs(mm / GRADED[system] - Math.round(mm / GRADED[system])) < 1e-6;

/** A division of a dial: in the system the dial is made in. */
export function divisionText(mm: number, system: System): string {
  const other: System = system === 'inch' ? 'metric' : 'inch';
  return fineText(mm, !isGraded(mm, system) && isGraded(mm, other) ? other : system);
}
