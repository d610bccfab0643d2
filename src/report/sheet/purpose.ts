/** What a sheet is for, and what it says at its top: a work order only where the plan gives the films. */
import type { Design } from '../../design/definition.ts';
import type { AngleWay, System } from '../../design/units.ts';
import { asAssumed, isGuess, measuredFirst } from '../assumed.ts';
import { behindReadings, type NotAsRead } from '../belief/notAsRead.ts';
import { lookBefore } from '../cut/advice.ts';
import { beforeTrial } from '../cut/beforeTrial.ts';
import { withCase } from '../cut/caseWords.ts';
import type { CutReport } from '../cut/definition.ts';
import { behindLeave, isLeft } from '../cut/leave.ts';
import { leftOf } from '../cut/left.ts';
import { leftVerdict } from '../cut/leftVerdict.ts';
import { NOTHING } from '../cut/listed.ts';
import { offNow } from '../cut/now.ts';
import { cutVerdict, isReached, limitSentences } from '../cut/verdict.ts';
import { behindTrial, type Withheld } from '../cut/withheld.ts';
import { fitSection } from '../fit/section.ts';
import { fitVerdict, type Verdict } from '../fit/verdict.ts';

export interface Purpose extends Verdict {
  /**
   * work: steps to be carried out; left: what the trials leave of them; parts: nothing is cut; refused: no plan gives
   * the films, a trial cannot be taken in, or nobody has measured what they lean on, so there is nothing to carry out
   */
  kind: 'work' | 'left' | 'parts' | 'refused';
}

interface Against {
  notAsRead?: NotAsRead | undefined;
  withheld?: Withheld | null;
  /** what most likely is wrong then */
  slip?: string;
}

/** With more cuts than this the steps say by themselves what comes off. */
const NAMED = 3;

/** What the steps say by themselves, and what is another job than this. */
const LEFT_OUT =
  /^(In this order|By the doubt of the (measurements|parts)|What is to come off|Lapped together|Nothing stops this journal)/;

/**
 * A hard case that would be cut through stands first on it; what is to be done stays what it is. `way`: how the person
 * says angles; `notAsRead`: of a design of which nothing is cut, what the belief tells; `withheld`: by a trial that is
 * being written.
 */
export function purposeOf(
  design: Design,
  cut: CutReport | null,
  system: System,
  way: AngleWay = 'half',
  { notAsRead: why = cut?.notAsRead, withheld = null, slip = '' }: Against = {},
): Purpose {
  const purpose = leftPurpose(measuredPurpose(design, cut, system, way), cut, system);
  const cuts = purpose.kind === 'work' || purpose.kind === 'left';
  const refused: Purpose = (why || withheld) && cuts ? { ...purpose, kind: 'refused' } : purpose;
  return behindTrial(behindReadings(refused, why), withheld, false, slip);
}

/** Of a pair that is best left there is nothing to carry out. */
function leftPurpose(purpose: Purpose, cut: CutReport | null, system: System): Purpose {
  const cuts = purpose.kind === 'work' || purpose.kind === 'left';
  if (!cut || !isLeft(cut) || !cuts) return purpose;
  const left = cut.remaining ? purpose : behindLeave(purpose, cut, lookBefore(cut, system)?.doing ?? null, system);
  return { ...left, kind: 'parts' };
}

function measuredPurpose(design: Design, cut: CutReport | null, system: System, way: AngleWay): Purpose {
  const purpose = asAssumed(plainPurpose(design, cut, system, way), design, ['seats', 'cut']);
  if (cut === null) return measuredFirst(purpose, design, 'mend');
  const cuts = purpose.kind === 'work' || purpose.kind === 'left';
  // By what is a guess nothing is carried out, nor said to need nothing.
  const refused = isGuess(design);
  const told = refused ? { ...purpose, kind: 'refused' as const } : purpose;
  return withCase(measuredFirst(told, design, cuts || refused ? 'stop' : 'mend'), cut, system);
}

function plainPurpose(design: Design, cut: CutReport | null, system: System, way: AngleWay): Purpose {
  if (cut === null) return { kind: 'parts', ...fitVerdict(design, fitSection(design), system, way) };
  const after = afterTrials(design, cut, system);
  if (after) return after;
  const verdict = cutVerdict(design, cut, system, way);
  if (verdict.tone === 'stop')
    return { kind: 'refused', tone: 'stop', headline: verdict.headline, sentences: limitSentences(cut, system) };
  const cuts =
    cut.steps.filter(({ deepest }) => deepest >= NOTHING).length +
    cut.faces.filter(({ off }) => Math.abs(off) >= NOTHING).length;
  if (cuts === 0) return { kind: 'parts', ...verdict };
  const headline =
    cuts <= NAMED
      ? verdict.headline
      : `${cuts} cuts, as the steps say, ${isReached(cut) ? 'give every seat its film' : 'bring every film within its tolerance'} at one position.`;
  const sentences = verdict.sentences.filter((sentence) => !LEFT_OUT.test(sentence));
  const before = beforeTrial(cut);
  if (before !== 'all') {
    const [first, then] = before === 'nothing' ? [TRY_FIRST, 'Then most likely'] : [offNow(cut, system), 'All of it'];
    return {
      kind: 'work',
      ...verdict,
      tone: 'mend',
      headline: first,
      sentences: [`${then}: ${headline}`, ...sentences],
    };
  }
  return { kind: 'work', ...verdict, headline, sentences };
}

const TRY_FIRST = 'A trial assembly first: nothing of what stands here is safe to take before it.';

/** Once a trial told something it is the trials that say what there is to do, and no longer the plan. */
function afterTrials(design: Design, cut: CutReport, system: System): Purpose | null {
  const verdict = leftVerdict(design, cut, system);
  if (!verdict) return null;
  const { remaining } = cut;
  const good = remaining !== undefined && (remaining.feasible || remaining.inTolerance) && verdict.tone !== 'stop';
  if (!good) return { ...verdict, kind: 'refused', tone: 'stop' };
  if (leftOf(remaining, system).length === 0) return { ...verdict, kind: 'parts' };
  return { ...verdict, kind: 'left', tone: 'mend' };
}
