/** What would make the plan surer, in a machinist's words; nothing where nothing would by much. */
import { doubtText, fineText, lengthText, type System } from '../../design/units.ts';
import { kindOf } from '../measure/kinds.ts';
import type { CutReport } from './definition.ts';

/**
 * What leaves more of the doubt than this is not worth the while; where nothing leaves less, more than that tells
 * nothing.
 */
const WORTH_DOING = 0.8;
const TELLS = 0.97;

export function worthSentence({ worth, remaining }: Pick<CutReport, 'worth' | 'remaining'>, system: System): string {
  if (!worth) return '';
  const { seat, part, sigma, cutting, trial } = worth;
  // Where limits tell it, this is how widely it spreads between them.
  const lopsided = remaining?.steps.some((one) => one.seat === seat && one.part === part && one.limits);
  const known = `What is to come off the ${seat} ${part} ${lopsided ? 'spreads by' : 'is known to'} ${doubtText(sigma, system)}`;
  const either = (sd: number) => doubtText(sd, system);
  const [best, next] = surerWays(worth, system);
  const cut = `counted off the dial in one go, spring and wear of the wheel in it, it comes off to ${either(cutting)}`;
  if (!best)
    return `${known}; ${trial === null ? 'no' : 'neither a stand-off with blue nor a'} further reading makes that much surer, and ${cut}.`;
  const to = (way: Way) => bringsText(way, system);
  const then = next ? `, ${next.text} to ${to(next)}` : '';
  return `${known}: ${best.text} would bring that to ${to(best)}${then}; ${cut}.`;
}

/** Where cases differ by more than this share the mean alone would promise what hardly one of them brings. */
const ALIKE = 0.8;

/** What it leaves of the doubt: where it may as well be far less, how often that is. */
function bringsText({ sd, quarter }: Way, system: System): string {
  const mean = `${doubtText(sd, system)} on average`;
  return quarter === undefined || quarter > ALIKE * sd
    ? mean
    : `${mean}, 1 time in 4 below ${doubtText(quarter, system)}`;
}

export interface Way {
  /** mm: what it leaves of the doubt, on average, and at most in one case of four */
  sd: number;
  quarter?: number | undefined;
  /** as a thing that would do so, and as what is to be done */
  text: string;
  doing: string;
  /** null: a trial */
  reading: Advised | null;
  /** a shake instead, where that is of a surface that perhaps cannot be gauged */
  ungauged?: Advised | undefined;
}

/** What makes it surer by much, or where nothing does at least by something; the best first. */
export function surerWays(worth: NonNullable<CutReport['worth']>, system: System): Way[] {
  const ways = waysOf(worth, system).sort((a, b) => a.sd - b.sd);
  const much = ways.filter(({ sd }) => sd < WORTH_DOING * worth.sigma);
  return much.length > 0 ? much : ways.filter(({ sd }) => sd < TELLS * worth.sigma);
}

/** For whoever cannot gauge what is to be read: the shake, or a trial, where either tells anything. */
function orUngauged({ sigma, trial, ungauged }: NonNullable<CutReport['worth']>, system: System): string {
  if (!ungauged) return '';
  const told = Math.min(ungauged.sigma, trial ?? sigma);
  if (told >= TELLS * sigma) return '';
  return `, or without gauging it ${told === ungauged.sigma ? `read ${readingName(ungauged, system)}` : TRY_AGAIN}`;
}

const TRY_AGAIN = 'try it again and look at the blue';

const waysOf = (worth: NonNullable<CutReport['worth']>, system: System): Way[] => {
  const { trial, trialQuarter, reading } = worth;
  return [
    ...(trial === null
      ? []
      : [
          {
            sd: trial,
            quarter: trialQuarter,
            text: 'a trial assembly with its blue looked at',
            doing: TRY_AGAIN,
            reading: null,
          },
        ]),
    ...(reading
      ? [
          {
            sd: reading.sigma,
            quarter: reading.quarter,
            text: readingText(reading, system),
            doing: `read ${readingName(reading, system)}${orUngauged(worth, system)}`,
            reading,
            ungauged: worth.ungauged,
          },
        ]
      : []),
  ];
};

type Advised = NonNullable<NonNullable<CutReport['worth']>['reading']>;

function readingText(advised: Advised, system: System): string {
  const { reading, again } = advised;
  if (reading.kind !== 'shake') return readingName(advised, system);
  return `the shake, read ${whereRead(advised, system)}${again ? ' once more,' : ''} with the journal held at ${fineText(reading.position, system)},`;
}

/** Where its indicator stands, as it is typed where that is not the nose. */
const whereRead = ({ reading, rear }: Advised, system: System): string =>
  rear && reading.kind === 'shake'
    ? `at the rear end (indicator at ${lengthText(reading.indicator, system)})`
    : 'at the nose';

/** A shake read once already is read where it tells more: farther off its touch. */
function readingName(advised: Advised, system: System): string {
  const { reading, again, rear } = advised;
  const on = 'seat' in reading ? ` of the ${reading.seat} ${reading.part}` : '';
  if (reading.kind === 'shake')
    return again || rear
      ? `the shake ${rear ? whereRead(advised, system) : 'once more'}, the journal held at ${fineText(reading.position, system)}`
      : 'the shake at the nose';
  const what = reading.kind === 'diameter' ? 'a diameter' : `the ${kindOf(reading).name} reading`;
  return again ? `${what}${on} once more` : `${what}${on}`;
}
