/**
 * Which way of setting an angle goes on the sheet: the one the report recommends, being fine enough; then the others
 * that are.
 */
import type { CutReport } from '../cut/definition.ts';

type Setting = CutReport['settings'][number];
export type Way = Setting['ways'][number];

interface WaysToSet {
  /** the way to set it; where none is fine enough, the finest that can be read */
  by: Way;
  /** further ones that are fine enough */
  also: Way[];
  /** those that are not */
  coarse: Way[];
}

const BY_INDICATOR: readonly Way['way'][] = ['alongSlide', 'alongAxis', 'table'];
/** mm: further no dial indicator reads. @source practice */
const TRAVEL = 30;

const withinReach = ({ way, reading }: Way) => !BY_INDICATOR.includes(way) || reading <= TRAVEL;

export function waysToSet({ ways, recommended }: Pick<Setting, 'ways' | 'recommended'>): WaysToSet {
  const usable = ways.some(withinReach) ? ways.filter(withinReach) : ways;
  const finest = usable.reduce((a, b) => (b.film < a.film ? b : a));
  const by = ways.find(({ way }) => way === recommended) ?? finest;
  const others = usable.filter((way) => way !== by);
  return {
    by,
    also: others.filter(({ enough }) => enough !== false),
    coarse: others.filter(({ enough }) => enough === false),
  };
}
