/** What the trials say is left to cut, in a machinist's words: the most likely, its doubt, and what is safe to take now. */
import type { Design } from '../../design/definition.ts';
import { fineText, plusMinusText, type System } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { CutReport } from './definition.ts';
import { listed, NOTHING } from './listed.ts';
import { openTrials } from './openTrials.ts';

type Remaining = NonNullable<CutReport['remaining']>;

interface Left {
  text: string;
  /** what may be taken now */
  safe: string;
  taken: number;
  share: number;
  doubted: string;
}

export function leftOf({ steps, faces }: Remaining, system: System): Left[] {
  const surfaces = steps
    .filter((s) => s.normal >= NOTHING)
    .map(
      ({ seat, part, normal, sigma, safe, doubted }): Left => ({
        text: `${plusMinusText(normal, sigma, system)} off the ${seat} ${part}`,
        safe: `${fineText(safe, system)} off the ${seat} ${part}`,
        taken: safe,
        share: safe / normal,
        doubted,
      }),
    );
  const moved = faces
    .filter((f) => Math.abs(f.off) >= NOTHING)
    .map(({ name, off, sigma, safe, doubted }): Left => {
      const on = off > 0 ? `off ${name}` : `to be put on ${name}`;
      return { text: `${plusMinusText(Math.abs(off), sigma, system)} ${on}`, safe: `${fineText(Math.abs(safe), system)} ${on}`, taken: Math.abs(safe), share: safe / off, doubted };
    });
  return [...surfaces, ...moved];
}

/** The one sentence of what is left. */
export function leftSentence(remaining: Remaining, system: System): string {
  const left = leftOf(remaining, system);
  if (left.length === 0) return remaining.feasible ? 'After the last trial nothing is left to cut.' : 'After the last trial too much is off already for the films wanted.';
  return `After the last trial there is left ${listed(left.map(({ text }) => text))}${remaining.feasible ? '' : ', which is as near as can be'}.`;
}

/** What may be taken now, and what would make it surer. */
export function safeSentences({ cut: wanted }: Design, remaining: Remaining, system: System): string[] {
  const left = leftOf(remaining, system);
  if (left.length === 0) return [];
  const safe = left.filter(({ taken }) => taken >= NOTHING);
  const told = safe.length === 0 ? 'Nothing of it is safe to take yet.' : `Safe to take now: ${listed(safe.map((l) => l.safe))}; in 95 of 100 such cases at least that much is left, and metal cannot be put back.`;
  const unsure = left.filter(({ share }) => share < SURE).sort((a, b) => a.share - b.share)[0];
  const trials = wanted ? openTrials(wanted) : [];
  const ways = [...(trials.some(({ shake }) => shake) ? [] : ['read the shake']), ...(trials.some(({ blue }) => blue?.some(({ seat }) => seat === unsure?.doubted)) ? [] : ['look at the blue there'])];
  const surer = ways.length > 0 ? `${ways.join(' or ')} to be surer` : 'read it again to be surer, or take the safe part and try again';
  return [told, ...(unsure ? [`Most of the doubt is in the film of the ${unsure.doubted} seat: ${surer}.`] : [])];
}

/** From this share on the safe amount is most of what is left. */
const SURE = 0.8;

const MEND_IT = 'Correct it or strike it out; until then nothing more is said of what is left.';
const CONTRADICTION = 'The last trial cannot have come from these parts: look for grit, a burr, or a slip of the pen.';
const NO_MODEL = 'The shake of the last trial cannot be reckoned for these parts.';

type Clash = NonNullable<NonNullable<CutReport['trials']>[number]['clashes']>[number];

/** A reading that was taken in though it does not go with the others. */
export function clashSentence({ trial, what, read, expected, deviations }: Clash, system: System): string {
  const [name, would] = what === 'shake' ? ['shake', 'shake by'] : ['stand-off', 'touch first at'];
  return `The ${name} of trial ${trial} does not go with the rest: ${fineText(read, system)} was read, and parts as the rest tells would ${would} ${fineText(expected, system)}, ${Math.round(deviations)} times its own doubt apart; read it again, or look at the blue again, before anything is cut.`;
}

export function trialSentences(design: Design, { trials, remaining }: CutReport, system: System): string[] {
  const last = trials?.[trials.length - 1];
  if (!last) return [];
  if (last.status === 'contradiction') return [CONTRADICTION, MEND_IT];
  if (last.status === 'noModel') return [NO_MODEL, MEND_IT];
  const clashes = (last.clashes ?? []).map((clash) => clashSentence(clash, system));
  return remaining ? [...clashes, leftSentence(remaining, system), ...safeSentences(design, remaining, system)] : [];
}

/** What the Cut screen says first once there are trials; null before. */
export function leftVerdict(design: Design, cut: CutReport, system: System): Verdict | null {
  const last = cut.trials?.[cut.trials.length - 1];
  if (!last) return null;
  const [headline, ...sentences] = trialSentences(design, cut, system);
  if (headline === undefined) return null;
  const films = cut.remaining && design.seats.filter(({ film }) => film).map(({ name }) => `${name} ${cut.remaining!.films[name] == null ? 'apart' : fineText(cut.remaining!.films[name]!, system)}`);
  const tone = last.status !== 'updated' || (last.clashes ?? []).length > 0 ? 'stop' : cut.remaining?.feasible ? (leftOf(cut.remaining, system).length === 0 ? 'good' : 'mend') : 'stop';
  return { tone, headline, sentences: [...sentences, ...(films ? [`The films are then most likely ${listed(films)}, the journal at ${fineText(cut.remaining!.position, system)}.`] : [])] };
}
