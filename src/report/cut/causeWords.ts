/** What may be behind trials that do not go together, in words: what would make all agree, with its odds. */
import { fineText, type System } from '../../design/units.ts';
import type { CauseReport } from './causes.ts';

/** Told one by one; of more only the first. */
const FEW = 3;
const READ = { standOff: 'stand-off', shake: 'shake', blue: 'blue' } as const;

type Of = Pick<CauseReport, 'seat' | 'part' | 'face'>;

/** The fields of a trial that tell metal off, and how well it is known, as the form has them. */
const offTitle = ({ seat, part, face }: Of) => `Off ${face ?? `the ${seat} ${part}`}`;
export const knownToTitle = (of: Of) => `${offTitle(of)}, known to`;

/** The field that a cause is mended at; null of the parts, and of blue, which is looked at again. */
export function mendedAt(cause: CauseReport): string | null {
  switch (cause.what) {
    case 'taken':
    case 'faces':
      return offTitle(cause);
    case 'standOff':
      return 'Stand-off';
    case 'shake':
      return 'Shake';
    default:
      return null;
  }
}

/** Whether some slip more likely than not is behind it. */
export const isExplained = (causes: readonly CauseReport[] | undefined) =>
  (causes ?? []).reduce((sum, { chance }) => sum + chance, 0) > MOST_LIKELY;

const oddsText = (chance: number) => `${Math.min(99, Math.max(1, Math.round(100 * chance)))} in 100`;

/** Of a number, where `told` stands for what was meant. */
function slipOfText(slip: CauseReport['slip'], times: number, system: System): string {
  switch (slip) {
    case 'inch':
      return times > 1 ? 'was typed in inches for millimetres' : 'was typed in millimetres for inches';
    case 'diameter':
      return times < 1
        ? 'was read off the diameter, not square to the surface'
        : 'was halved, though it was square to the surface already';
    case 'sign':
      return 'has the other sign';
    default:
      if (system === 'metric') return 'is a slip of ten';
      return times > 1 ? 'was typed in tenths for thous' : 'was typed in thous for tenths';
  }
}

function causeText(cause: CauseReport, system: System): string {
  const { what, trial, seat, part, face, told, likely, slip, times } = cause;
  const fine = (mm: number) => fineText(Math.abs(mm), system);
  if (what === 'taken' || what === 'faces') {
    const off = face ?? `the ${seat} ${part}`;
    if (times !== undefined && told !== undefined)
      return `the ${fine(told)} off ${off} before trial ${trial} ${slipOfText(slip, times, system)}, ${fine(times * told)} being meant`;
    if (likely == null || told === undefined) return `other metal came off ${off} before trial ${trial} than typed`;
    const less = Math.abs(likely) < Math.abs(told) || likely * told < 0;
    const how = likely * told <= 0 ? 'nothing of it' : fine(likely);
    return `${less ? 'less' : 'more'} came off ${off} before trial ${trial} than typed, ${how} in place of ${fine(told)}`;
  }
  if (what === 'parts') return 'the parts were further from the design than was thought';
  if (what === 'blue')
    return slip === 'seat'
      ? `it was the ${seat} seat that printed at trial ${trial}, not the one that is written down`
      : `the blue of trial ${trial} was misread`;
  if (times !== undefined && likely != null)
    return `the ${READ[what]} of trial ${trial} ${slipOfText(slip, times, system)}, ${fineText(likely, system)} being meant`;
  const instead = likely == null ? '' : `, which should be ${fineText(likely, system)}`;
  return `the ${READ[what]} of trial ${trial} is a slip${instead}`;
}

/** More likely than all else together. */
const MOST_LIKELY = 0.5;

/** What leads where the reading that stands out is most likely not what is wrong; null where it may well be. */
export function likelierText(
  causes: readonly CauseReport[] | undefined,
  reading: { what: string; trial: number },
  system: System,
): string | null {
  const [first] = causes ?? [];
  if (!first || first.chance <= MOST_LIKELY || (first.what === reading.what && first.trial === reading.trial))
    return null;
  return `Most likely ${causeText(first, system)} (${oddsText(first.chance)}): see to that first.`;
}

/** What most likely is wrong, in one sentence, for every screen that is withheld by it; empty where nothing told is. */
export function slipText(causes: readonly CauseReport[] | undefined, system: System): string {
  const [first] = causes ?? [];
  if (!first) return '';
  const likely = first.chance > MOST_LIKELY ? 'Most likely' : 'Perhaps';
  return `${likely} ${causeText(first, system)} (${oddsText(first.chance)}).`;
}

/** Empty where nothing that was told would explain it. */
export function causeSentences(causes: readonly CauseReport[] | undefined, system: System): string[] {
  const [first, ...others] = (causes ?? []).slice(0, FEW);
  if (!first) return [];
  const isMetal = first.what === 'taken' || first.what === 'faces';
  const enough =
    first.enough === null
      ? ''
      : isMetal
        ? ` Known to ${fineText(first.enough, system)} only (“${knownToTitle(first)}”), it would be taken.`
        : ` Their films known to ${fineText(first.enough, system)} only (“Doubt” of what may be cut), it would be taken.`;
  const rest = others.map((cause) => `${causeText(cause, system)} (${oddsText(cause.chance)})`);
  return [
    `If ${causeText(first, system)}, all agree: ${oddsText(first.chance)} it is that.${enough}`,
    ...(rest.length === 0 ? [] : [`Or ${rest.join(', or ')}.`]),
  ];
}
