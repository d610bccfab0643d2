/**
 * What is to be looked at before metal comes off: one advice, worked out once, by which Cut and Odds go both.
 */
import { fineText, type System } from '../../design/units.ts';
import { beforeTrial } from './beforeTrial.ts';
import type { CutReport } from './definition.ts';
import { isLeft, isUnproven, wayBeforeLeft } from './leave.ts';
import { isUnsure, leftOf } from './left.ts';
import { listed, NOTHING } from './listed.ts';
import { isReached, nothingToCut } from './verdict.ts';
import { isUnsettled } from './withheld.ts';
import { surerWays, type Way } from './worthText.ts';

export interface Look {
  /** before anything is cut, or after what is safe to take */
  when: 'first' | 'then';
  /** as a thing that is done: try it again */
  doing: string;
  /** what tells most, where that was worked out; null: a trial as it is */
  way: Way | null;
}

/** Where nothing that the program knows of would tell more. */
export const OTHERWISE = 'have the parts gauged in another way';

/** Where nothing more is most likely to come off, and yet it is not known to work. */
export const TRY_IT = 'assemble it for a trial';

/** Of sizes that nobody has read or drawn. */
export const UNGAUGED =
  'Assemble it for a trial: stand-off, blue and shake tell how the cones stand to each other without a gauge.';

/** Of what is most likely left. */
const SLIVER = 0.2;

/** Null where nothing need be looked at, where nothing is to be cut, and where what was read is to be settled first. */
export function lookBefore(cut: CutReport, system: System): Look | null {
  if (cut.notAsRead || isUnsettled(cut)) return null;
  if (cut.guess) return { when: 'first', doing: TRY_IT, way: null };
  if (isLeft(cut)) return lookWhereLeft(cut, system);
  return cut.remaining ? lookAfter(cut, cut.remaining, system) : lookAtFirst(cut, system);
}

function lookWhereLeft(cut: CutReport, system: System): Look | null {
  const way = wayBeforeLeft(cut, system);
  if (!way) return null;
  return { when: 'first', doing: way.reading === null && !cut.remaining ? 'assemble for a trial' : way.doing, way };
}

export function lookAfter(
  { worth, works }: Pick<CutReport, 'worth' | 'works'>,
  remaining: NonNullable<CutReport['remaining']>,
  system: System,
): Look | null {
  const left = leftOf(remaining, system);
  if (left.length === 0) return isUnproven({ works }) ? { when: 'first', doing: TRY_IT, way: null } : null;
  const [best = null] = worth ? surerWays(worth, system) : [];
  // Where it was worked out that neither a trial nor a reading tells much more, neither is asked for.
  const way = { doing: best?.doing ?? (worth ? OTHERWISE : 'try it again'), way: best };
  if (left.every(({ taken }) => taken < NOTHING)) return { when: 'first', ...way };
  // A sliver is not worth a set-up of its own: taken and tried again it would leave as little safe, round and round.
  if (worth && left.every(({ share }) => share < SLIVER)) return { when: 'first', ...way };
  return left.some(isUnsure) ? { when: 'then', doing: 'try it again', way: null } : null;
}

function lookAtFirst(cut: CutReport, system: System): Look | null {
  if (cut.status !== 'planned' && cut.status !== 'infeasible') return null;
  if ((!isReached(cut) && !cut.inTolerance) || nothingToCut(cut) || cut.asTheyAre) return null;
  const before = beforeTrial(cut);
  if (before === 'all') return null;
  // Where the shake tells more than stand-off and blue the trial is one with its shake.
  const [best = null] = cut.worth ? surerWays(cut.worth, system) : [];
  const shaken = best?.reading?.reading.kind === 'shake' ? best : null;
  return {
    when: before === 'nothing' ? 'first' : 'then',
    doing: `assemble for a trial${shaken ? ` and ${shaken.doing}` : ''}`,
    way: shaken,
  };
}

/** The same in a sentence, for whoever reads it elsewhere than on Cut. */
export function lookSentence(cut: CutReport, system: System): string {
  const look = lookBefore(cut, system);
  if (isLeft(cut) && !cut.guess && !cut.notAsRead && !isUnsettled(cut))
    return `No cut makes it likelier to work than it is as it stands: ${look ? `first ${look.doing}, so Cut says` : 'leave it'}.`;
  if (!look) return '';
  if (cut.guess) return UNGAUGED;
  if (look.doing === TRY_IT) return `Cut asks for no more metal; to know whether it is right, ${TRY_IT}.`;
  if (look.doing === OTHERWISE)
    return `Cut calls next to nothing of it safe, as any less metal there spoils the films just as they are wanted; the odds here ask only that they be within their tolerances. To be surer, ${OTHERWISE}.`;
  const safe = safeNow(cut, system);
  if (look.when === 'first')
    return safe.length === 0
      ? `Before anything is cut, ${look.doing}: so Cut says.`
      : `First ${look.doing}, so Cut says; safe now: ${listed(safe)}.`;
  return `Take only what is safe, ${listed(safe)}, then ${look.doing}.`;
}

/** What of it is safe now: after trials what they leave, before them of the plan. */
function safeNow({ steps, remaining }: CutReport, system: System): string[] {
  if (remaining) return leftOf(remaining, system).flatMap(({ safe, taken }) => (taken < NOTHING ? [] : [safe]));
  return steps.flatMap(({ seat, part, normal, safe = normal }) =>
    safe < NOTHING ? [] : [`${fineText(Math.min(safe, normal), system)} off the ${seat} ${part}`],
  );
}
