/**
 * Which of two plans to choose, and why: how each would run, and what its films leave for the errors of the cutting.
 */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { CutReport } from './definition.ts';
import { NOTHING } from './listed.ts';
import { toleranceLeft } from './toleranceLeft.ts';

type Aim = CutReport['aims'][number]['aim'];

/**
 * What is known of how each would run: what speaks against it, null where nothing does; left out where it is not known.
 */
export type Runs = Partial<Record<Aim, Verdict | null>>;

interface AimAdvice {
  aim: Aim;
  why: string;
}

const stops = (verdict: Verdict | null | undefined) => verdict?.tone === 'stop';

/** Null where there is nothing to choose, or neither is any good. */
export function aimAdvice(design: Design, cut: CutReport, runs: Runs, system: System): AimAdvice | null {
  const target = cut.aims.find(({ aim }) => aim === 'target');
  const least = cut.aims.find(({ aim }) => aim === 'tolerance');
  if (!target || !least || !isGood(least) || target.total - least.total < NOTHING) return null;
  if (stops(runs.target) && stops(runs.tolerance)) return null;
  if (stops(runs.tolerance)) return { aim: 'target', why: 'with the least metal off it must not run' };
  if (stops(runs.target)) return { aim: 'tolerance', why: 'with the films just as wanted it must not run' };
  if (!isGood(target)) return { aim: 'tolerance', why: 'the films cannot be had just as wanted' };
  const tight = cut.budget.seats
    .map(({ seat, likely }) => ({ seat, likely, left: toleranceLeft(design, least.films, seat) }))
    .filter(({ likely, left }) => left !== undefined && likely > left)
    .sort((a, b) => b.likely - b.left! - (a.likely - a.left!))[0];
  const beyond = tight && tight.likely > (design.seats.find(({ name }) => name === tight.seat)?.film?.tolerance ?? 0);
  if (beyond)
    return {
      aim: 'tolerance',
      why: `the set-up is likely to miss the ${tight.seat} film by ${fineText(tight.likely, system)}, more than its tolerance to either side, whichever is chosen: cut the less, try, and correct`,
    };
  if (tight)
    return {
      aim: 'target',
      why: `the set-up is likely to miss the ${tight.seat} film by ${fineText(tight.likely, system)}, and the least metal leaves only ${fineText(tight.left!, system)} of its tolerance for that`,
    };
  return {
    aim: 'tolerance',
    why: `the likely errors of the set-up fit into what it leaves of every tolerance, and ${fineText(target.total - least.total, system)} of metal are kept for another time`,
  };
}

const isGood = ({ feasible, inTolerance }: CutReport['aims'][number]) => feasible || inTolerance;
