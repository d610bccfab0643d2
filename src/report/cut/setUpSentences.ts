/**
 * How the angles should be set, and what all errors of the set-up together leave of the tolerance: one account, so that
 * neither says what the other denies.
 */
import type { Design } from '../../design/definition.ts';
import { type AngleWay, angleSaid, atLeastText, fineText, type System } from '../../design/units.ts';
import type { CutReport } from './definition.ts';
import { listed, NOTHING } from './listed.ts';
import { toleranceLeft } from './toleranceLeft.ts';
import { WAYS } from './words.ts';

type Setting = CutReport['settings'][number];

export function setUpSentences(design: Design, cut: CutReport, system: System, way: AngleWay = 'half'): string[] {
  return [angleSentence(cut, system), ...impossibleWay(design, cut, way), budgetSentence(design, cut, system)].filter(
    (sentence) => sentence !== '',
  );
}

/** The touchiest angle, and how to set it. */
function angleSentence({ settings }: CutReport, system: System): string {
  const touchiest = settings
    .filter((s): s is Setting & { room: number } => s.room !== null)
    .sort((a, b) => costOf(b) - costOf(a))[0];
  return touchiest ? settingSentence(touchiest, system) : '';
}

/** The way chosen, where it cannot set an angle at all. */
function impossibleWay({ cut: wanted }: Design, { settings }: CutReport, said: AngleWay): string[] {
  const chosen = wanted?.machine?.setBy;
  const beyond = chosen === undefined ? [] : settings.filter(({ ways }) => ways.every(({ way }) => way !== chosen));
  if (chosen === undefined || beyond.length === 0) return [];
  return [
    `${WAYS[chosen].by.replace(/^./, (c) => c.toUpperCase())}, as chosen, cannot set ${listed(beyond.map(({ seat, part, halfAngle }) => `the ${seat} ${part} at ${angleSaid(halfAngle, said)}`))}: another way is reckoned with there.`,
  ];
}

const costOf = ({ ways, room }: Setting) =>
  Math.min(...ways.map(({ film }) => film)) / Math.max(room ?? 0, NOTHING / 100);

export function settingSentence(setting: Setting, system: System): string {
  const { seat, part, ways, room, recommended, used, needed } = setting;
  if (room === null) return '';
  const filmBy = (way: string | null) => fineText(ways.find((w) => w.way === way)?.film ?? 0, system);
  const coarse =
    recommended !== null && used !== recommended
      ? ` ${WAYS[used].by.replace(/^./, (c) => c.toUpperCase())}, as chosen, would cost ${filmBy(used)}.`
      : '';
  if (recommended !== null)
    return `Set the angle of the ${seat} ${part} by ${WAYS[recommended].by}: that costs ${filmBy(recommended)} of film where ${fineText(room, system)} may be lost.${coarse}`;
  const finest = ways.reduce((a, b) => (b.film < a.film ? b : a));
  const known = `No way here sets the angle of the ${seat} ${part} finely enough: ${WAYS[finest.way].by} costs ${fineText(finest.film, system)} of film`;
  if (needed === null || needed.indicator < NOTHING / 100) return `${known}.`;
  return `${known} where ${fineText(room, system)} may be lost; ${neededText(setting, system)} would do.`;
}

/** What is fine enough along a sine bar: a finer indicator, or where the bar is long enough more travel. */
function neededText({ needed, bar }: Setting, system: System): string {
  const finer = `an indicator that tells ${fineText(needed!.indicator, system)} along a sine bar`;
  return needed!.travel <= bar
    ? `${finer}, or the one there is over ${atLeastText(needed!.travel, system)} of it,`
    : finer;
}

const CAUSES: Record<CutReport['budget']['contributions'][number]['cause'], string> = {
  toolHeight: 'the height of the tool',
  angle: 'the setting of the angle',
  dial: 'setting the cross-feed dial to half a division',
  stop: 'the lean of the indicator at the stop',
  sine: 'the lean of the indicator as the angle is set',
  growth: 'the warmth of the work as it is gauged',
};

/** What makes it less. @source practice */
const MENDED: typeof CAUSES = {
  toolHeight: ': bring it to the centre',
  angle: '',
  dial: ': for the last of it go by the gauge, not by the dial',
  stop: ': set the indicator square to what it touches',
  sine: ': set the indicator square to what it touches',
  growth: ': let the work cool before it is gauged',
};

/** The seat whose errors use up most of its tolerance. */
function budgetSentence(design: Design, { budget, films }: CutReport, system: System): string {
  const leftOf = (name: string) => toleranceLeft(design, films, name) ?? 0;
  const share = ({ seat, likely }: CutReport['budget']['seats'][number]) =>
    leftOf(seat) > 0 ? likely / leftOf(seat) : 0;
  const worst = [...budget.seats].sort((a, b) => share(b) - share(a))[0];
  const largest = worst && budget.contributions.find(({ seat }) => seat === worst.seat);
  if (!worst || !largest || largest.film < NOTHING) return '';
  const left = leftOf(worst.seat);
  const tolerance = design.seats.find(({ name }) => name === worst.seat)?.film?.tolerance ?? 0;
  const whose = tolerance - left < NOTHING ? 'its tolerance of' : 'what the plan leaves of its tolerance,';
  const all = `All errors of the set-up together are likely ${fineText(worst.likely, system)} of film on the ${worst.seat} seat`;
  const against =
    left === 0 ? '' : `, ${worst.likely <= left ? 'within' : 'more than'} ${whose} ${fineText(left, system)}`;
  return `${all}${against}; the largest is ${CAUSES[largest.cause]}, ${fineText(largest.film, system)}${worst.likely > left && left > 0 ? MENDED[largest.cause] : ''}.`;
}
