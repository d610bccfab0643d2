/**
 * Figures as they stand on paper: in the person's units, with as many decimals as count.
 *   Inch dimensions have no nought before the point, and as many decimals as their tolerance; metric ones need not
 *   (ASME Y14.5, from memory).
 */
import type { Millimetres } from '../../../design/dimension.ts';
import { lengthUnit, readingText, type System } from '../../../design/units.ts';

/** Decimals of what is read on a gauge, of a gauged diameter, and of where a surface ends. */
const READ: Record<System, number> = { metric: 4, inch: 5 };
const ENDS: Record<System, number> = { metric: 2, inch: 3 };
/** Decimals of an exact place, whose last are dropped where they are noughts. */
const EXACT: Record<System, number> = { metric: 4, inch: 6 };
/** No figure has more. */
const MOST = 6;
/** The most (as a part of it) that a tolerance may lose by being rounded down. */
const LOST = 0.1;

const minus = (text: string) => (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
const trimmed = (text: string) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);
/** Inch dimensions on a drawing have no nought before the point. */
const dimension = (text: string, system: System) => (system === 'inch' ? text.replace(/^(−?)0\./, '$1.') : text);
const inUnit = (mm: Millimetres, system: System) => mm / lengthUnit(system).size;

/** Where a surface ends, or a gauge stands: nothing hangs on more. */
export const endText = (mm: Millimetres, system: System) =>
  dimension(minus(trimmed(inUnit(mm, system).toFixed(ENDS[system]))), system);

/** A place that is exact. */
export const exactText = (mm: Millimetres, system: System) =>
  dimension(minus(trimmed(inUnit(mm, system).toFixed(EXACT[system]))), system);

/**
 * A tolerance rounded down to no more decimals than it needs, and never to less than nine tenths of it where six
 * decimals can tell it.
 */
function tolerated(tolerance: number, system: System): { text: string; decimals: number } {
  const size = inUnit(tolerance, system);
  for (let decimals = READ[system]; ; decimals++) {
    const least = Math.floor(size * 10 ** decimals + 1e-6) / 10 ** decimals;
    if (least >= (1 - LOST) * size || decimals >= MOST)
      return { text: dimension(least.toFixed(decimals), system), decimals };
  }
}

/** The width of a zone. */
export const zoneText = (width: number, system: System) => tolerated(width, system).text;

/** A diameter, and its tolerance where it has one, as many decimals to both. */
export function diameterLines(mm: Millimetres, tolerance: number | null, system: System): string[] {
  const end = tolerance === null ? null : tolerated(tolerance, system);
  const size = `⌀${dimension(minus(inUnit(mm, system).toFixed(end?.decimals ?? READ[system])), system)}`;
  return end ? [size, `±${end.text}`] : [size];
}
/** A stop reading with as many decimals as its tolerance, where it has one. */
export const stopText = (mm: Millimetres, tolerance: number | null, system: System) =>
  tolerance === null
    ? readingText(mm, system)
    : `${minus(inUnit(mm, system).toFixed(tolerated(tolerance, system).decimals))} ${lengthUnit(system).name}`;

export const diameterText = (mm: Millimetres, tolerance: number | null, system: System) =>
  diameterLines(mm, tolerance, system).join(' ');
