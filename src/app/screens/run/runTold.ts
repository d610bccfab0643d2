/** What each part of Run comes to, in the few words of its closed line. */
import { measureText } from '../../../design/measures.ts';
import { fineText, type System } from '../../../design/units.ts';
import type { AimVerdict } from '../../../report/film/aimVerdict.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import { celsius, minutes, watts } from '../../../report/film/figures.ts';
import type { ColdSetting } from '../../../report/film/limits.ts';
import type { Sweep } from './useRunWork.ts';

const TRYING = 'being tried';
/** rev/min as they are told of a limit */
const round = (value: number) => Number(Math.abs(value).toPrecision(2));

export function aimTold(verdict: AimVerdict | undefined, system: System): string {
  if (!verdict) return TRYING;
  const { wanted } = verdict;
  return wanted === null
    ? 'no film works'
    : `aim for ${fineText(wanted.target, system)} ± ${fineText(wanted.tolerance, system)}`;
}

export function clearancesTold({ safe }: Sweep, system: System): string {
  if (safe === undefined) return TRYING;
  if (safe === null) return 'none looked at works, cold and warm';
  const off = (mm: number) => `${fineText(Math.abs(mm), system)} ${mm < 0 ? 'tighter' : 'looser'}`;
  return `works from ${off(safe.from)} to ${off(safe.to)}${safe.openAbove || safe.openBelow ? ', as far as was looked' : ''}`;
}

export function settingsTold(settings: readonly ColdSetting[], system: System): string {
  const found = settings.filter(({ position }) => position !== null);
  if (found.length === 0) return 'no position gives a film wanted once warm';
  return found.map(({ seat, position }) => `${seat} at ${fineText(position!, system)}`).join(', ');
}

export function warmingTold({ steady, warmUp, warmUpEnd }: FilmReport, system: System): string {
  const last = warmUp[warmUp.length - 1];
  if (warmUpEnd === 'contact') return `seizes after ${minutes(last?.time ?? 0)}`;
  return steady
    ? `journal ${celsius(steady.journal, system)}, thinnest film ${fineText(steady.leastFilm, system)}`
    : 'no steady state found';
}

export function speedTold({ safe }: Sweep): string {
  if (safe === undefined) return TRYING;
  if (safe === null) return 'safe at no speed looked at, cold and warm';
  const [slow, fast] = [safe.from, safe.to].map(round).sort((a, b) => a - b);
  return `safe from ${slow} to ${fast} rev/min${safe.openAbove || safe.openBelow ? ', as far as was looked' : ''}`;
}

export function figuresTold({ power, seats, steady }: FilmReport, system: System): string {
  const peak = Math.max(0, ...seats.map(({ peakPressure }) => peakPressure ?? 0));
  const friction = steady?.power ?? power;
  return [
    ...(friction === null ? [] : [`friction ${watts(friction)}${steady ? ' warm' : ''}`]),
    ...(peak > 0 ? [`peak pressure ${measureText('pressure', peak, system)}`] : []),
  ].join(', ');
}
