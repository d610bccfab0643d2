/** The plan in a machinist's words: one headline and a few sentences, made from the report alone. */
import type { Design } from '../../design/definition.ts';
import { fineText, plusMinusText, type System, turnText } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { CutReport, CutStepReport, LimitReport } from './definition.ts';
import { trialSentences } from './leftVerdict.ts';
import { listed, NOTHING } from './listed.ts';
import { setUpSentences } from './setUpSentences.ts';
import { unevenAfter } from './uneven.ts';

export function cutVerdict(design: Design, cut: CutReport, system: System): Verdict {
  const rest = [moveSentence(design, cut, system), ...(cut.feasible || cut.inTolerance ? setUpSentences(design, cut, system) : []), ...trialSentences(design, cut, system), lapSentence(cut, system)].filter((s) => s !== '');
  switch (cut.status) {
    case 'nothingWanted':
      return { tone: 'mend', headline: 'No seat says which film it should have, so there is nothing to cut toward.', sentences: [] };
    case 'apart':
      return { tone: 'stop', headline: `The ${listed(cut.apart)} journal does not reach its bush where the others have their film; no cut can mend that.`, sentences: [] };
    case 'stalled':
      return { tone: 'stop', headline: 'No plan was found: the lines are too far from straight to reckon with.', sentences: [] };
    case 'infeasible':
      return cut.inTolerance
        ? {
            tone: 'good',
            headline: `${nothingToCut(cut) ? 'Nothing need be cut' : `${workHeadline(cut, system)} ${cutsOf(cut) > 1 ? 'are' : 'is'} as near as can be`}: every film is then within its tolerance, though not just what is wanted.`,
            sentences: [...limitSentences(design, cut, system), ...rest],
          }
        : {
            tone: 'stop',
            headline: `Within these limits the films cannot be had: ${nearestText(design, cut, system)}.`,
            sentences: [...nearestSentence(cut, system), ...limitSentences(design, cut, system), ...touchingSentence(design, cut), ...rest],
          };
    case 'planned':
      return nothingToCut(cut) ? nothingVerdict(design, cut, system) : workVerdict(design, cut, rest, system);
  }
}

/** What the doubt of the measurements leaves unsure of the steps, before any trial. */
function doubtSentence({ steps }: CutReport, system: System): string {
  const unsure = steps.filter((s) => s.sigma !== undefined && s.normal >= NOTHING && s.sigma >= NOTHING);
  if (unsure.length === 0) return '';
  return `By the doubt of the measurements that is ${listed(unsure.map(({ seat, part, normal, sigma }) => `${plusMinusText(normal, sigma!, system)} off the ${seat} ${part}`))}: cut short of it, and a trial assembly makes it surer.`;
}

function nothingVerdict(design: Design, cut: CutReport, system: System): Verdict {
  const uneven = unevenAfter(design, cut, system);
  const sentences = [...uneven, moveSentence(design, cut, system)].filter((s) => s !== '');
  return uneven.length > 0
    ? { tone: 'mend', headline: 'Every least film is right, but not every film is even along its seat.', sentences }
    : { tone: 'good', headline: 'Nothing need be cut: every seat has its film at one position already.', sentences };
}

function workVerdict(design: Design, cut: CutReport, rest: readonly string[], system: System): Verdict {
  const uneven = unevenAfter(design, cut, system);
  const gives = `${cutsOf(cut) > 1 ? 'give' : 'gives'} every seat its ${uneven.length > 0 ? 'least film at one position, but not every film is even along its seat' : 'film at one position'}`;
  return {
    tone: cut.inReach && uneven.length === 0 && setUpHolds(design, cut) ? 'good' : 'mend',
    headline: `${workHeadline(cut, system)} ${gives}.`,
    sentences: [...orderSentence(cut), doubtSentence(cut, system), ...uneven, ...rest].filter((s) => s !== ''),
  };
}

/** Whether the errors of the set-up likely stay within what every film may be off. */
const setUpHolds = (design: Design, { budget }: CutReport) => budget.seats.every(({ seat, likely }) => likely <= (design.seats.find(({ name }) => name === seat)?.film?.tolerance ?? Number.POSITIVE_INFINITY));

/** Whether nothing that anybody could take off is to come off. */
export const nothingToCut = (cut: CutReport) => cut.steps.every((s) => s.deepest < NOTHING) && cut.faces.every((f) => Math.abs(f.off) < NOTHING);

const cutsOf = (cut: CutReport) => cut.steps.filter((s) => s.deepest >= NOTHING).length + cut.faces.filter((f) => Math.abs(f.off) >= NOTHING).length;

function surfaceText({ seat, part, normal, deepest, diameter, why }: CutStepReport, system: System): string {
  const on = `off the ${seat} ${part}`;
  const even = deepest - normal < NOTHING;
  const across = normal < NOTHING ? '' : ` (${fineText(Math.abs(diameter), system)} ${diameter < 0 ? 'less' : 'more'} in diameter${even ? '' : ' at its station'})`;
  return `${even ? fineText(normal, system) : `up to ${fineText(deepest, system)}`} ${on}${even && why !== 'newLine' ? across : `, to a new line${across}`}`;
}

function workHeadline(cut: CutReport, system: System): string {
  const surfaces = cut.steps.filter((s) => s.deepest >= NOTHING).map((s) => surfaceText(s, system));
  const faces = cut.faces.filter((f) => Math.abs(f.off) >= NOTHING).map((f) => (f.off > 0 ? `${fineText(f.off, system)} off ${f.name}` : `${f.name} ${fineText(-f.off, system)} thicker`));
  const text = listed([...surfaces, ...faces]);
  return text === '' ? 'Nothing off' : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** Films against what is wanted of them. */
export function filmsText(design: Design, films: CutReport['films'], system: System): string {
  const wanted = design.seats.flatMap(({ name, film }) => (film ? [{ name, target: film.target, film: films[name] ?? null }] : []));
  const told = ({ name, film }: (typeof wanted)[number]) => `${name} ${film === null ? 'apart' : film < 0 ? `pressed in by ${fineText(-film, system)}` : fineText(film, system)}`;
  const alike = wanted.every(({ target }) => target === wanted[0]!.target);
  return alike ? `${listed(wanted.map(told))}, wanted ${fineText(wanted[0]?.target ?? 0, system)}` : listed(wanted.map((w) => `${told(w)} (wanted ${fineText(w.target, system)})`));
}

/** Whether the parts press into each other whatever is done. */
export const isPressed = ({ films }: Pick<CutReport, 'films'>) => Object.values(films).some((film) => film !== null && film < 0);

function nearestText(design: Design, cut: CutReport, system: System): string {
  const films = filmsText(design, cut.films, system);
  if (isPressed(cut)) return `the parts press into each other, at best ${films}`;
  if (!cut.inReach) return `the journal would have to stand at ${fineText(cut.position, system)}, beyond its adjuster and shoulders`;
  if (nothingToCut(cut)) return `leave it; uncut the nearest is ${films}`;
  if (cut.uncut && !cut.uncut.cutHelps) return `leave it; cutting brings it no nearer than ${filmsText(design, cut.uncut.films, system)}`;
  return `the nearest is ${films}`;
}

/** What brings the films to the nearest there is. */
function nearestSentence(cut: CutReport, system: System): string[] {
  if (nothingToCut(cut) || isPressed(cut) || !cut.inReach || (cut.uncut && !cut.uncut.cutHelps)) return [];
  return [`${workHeadline(cut, system)} ${cutsOf(cut) > 1 ? 'bring' : 'brings'} them there.`];
}

/** A seat without film. */
function touchingSentence({ seats }: Design, { films }: CutReport): string[] {
  const touching = seats.filter(({ name, film }) => film && films[name] != null && Math.abs(films[name]!) < NOTHING).map(({ name }) => name);
  return touching.length === 0 ? [] : [`There the ${listed(touching)} ${touching.length > 1 ? 'seats have' : 'seat has'} no film at all and would touch: it must not be run so.`];
}

function orderSentence({ steps }: CutReport): string[] {
  if (steps.length < 2) return [];
  return [`In this order: ${steps.map((s) => `${s.seat} ${s.part}`).join(', then ')}.`];
}

export function limitSentences(design: Design, cut: CutReport, system: System): string[] {
  const { limits, feasible } = cut;
  if (feasible) return [];
  if (limits.length === 0) return [beyondMending(design, cut, system)];
  const sentence = limits.length === 1 ? `What stands in the way is ${limitText(limits[0]!, system)}` : `What cannot all hold: ${listed(limits.map((l) => limitText(l, system)))}`;
  const ways = limits.filter((l) => l.needed !== null).map((l) => wayOutText(l, system));
  const [only] = ways;
  return [`${sentence}.`, ...(ways.length > 1 ? [`Any one of these would do: ${ways.join('; ')}.`] : only === undefined ? [] : [`This would do: ${only}.`])];
}

/** Where no limit is in the way: the seats whose films are too great for metal that only comes off. */
function beyondMending({ seats }: Design, { films }: CutReport, system: System): string {
  const free = seats.flatMap(({ name, film }) => (film && films[name] != null && films[name]! - film.target >= NOTHING ? [{ name, more: films[name]! - film.target }] : []));
  if (free.length === 0) return 'No limit stands in the way: no cut at all brings these lines nearer.';
  const told = free.map(({ name, more }) => `the ${name} seat, ${fineText(more, system)} more than wanted`);
  return `What stands in the way is the film of ${listed(told)}: it is greater than wanted already, no cut makes it less, and metal cannot be put back.`;
}

const ownerOf = ({ seat, part, face }: LimitReport) => face ?? `the ${seat} ${part}`;

function limitText(limit: LimitReport, system: System): string {
  const amount = fineText(limit.limit, system);
  switch (limit.what) {
    case 'forbidden':
      return `${ownerOf(limit)} may not be cut`;
    case 'limit':
      return `${ownerOf(limit)} may lose at most ${amount}`;
    case 'cleanup':
      return `${ownerOf(limit)} must lose at least ${amount}`;
    case 'add':
      return limit.limit === 0 ? `${ownerOf(limit)} may not be made thicker` : `${ownerOf(limit)} may be at most ${amount} thicker`;
    case 'reachFrom':
      return `the journal may go no further rearward than ${amount}`;
    case 'reachTo':
      return `the journal may go no further noseward than ${amount}`;
  }
}

function wayOutText(limit: LimitReport, system: System): string {
  const needed = fineText(limit.needed!, system);
  switch (limit.what) {
    case 'forbidden':
    case 'limit':
      return `${needed} off ${ownerOf(limit)}`;
    case 'cleanup':
      return `a cleanup of ${ownerOf(limit)} of no more than ${needed}`;
    case 'add':
      return `${ownerOf(limit)} ${needed} thicker`;
    case 'reachFrom':
    case 'reachTo':
      return `the journal at ${needed}`;
  }
}

function moveSentence({ cut: wanted }: Design, { shift, turns, inReach, status }: CutReport, system: System): string {
  if (status !== 'planned' && status !== 'infeasible') return '';
  const runs = status === 'planned' ? 'then runs' : 'would then stand';
  if (Math.abs(shift) < NOTHING) return status === 'planned' ? 'The journal runs where it stands now.' : 'The journal would stand where it stands now.';
  const way = shift < 0 ? 'rearward' : 'noseward';
  const turn = turns === null ? '' : `, ${turnText(turns)} of the adjuster`;
  const kept = wanted?.prefer?.keepPosition ? ' The nose cannot stay where it is, as was wished: this is the least it moves for these films.' : '';
  return `The journal ${runs} ${fineText(Math.abs(shift), system)} further ${way}${turn}: nose and shoulders move as much${inReach ? '' : ', further than adjuster and shoulders allow'}.${kept}`;
}

/** Lapping is no step of the plan. */
const ANOTHER_WAY = 'That is another way than the steps, and by itself does not give the films wanted.';

function lapSentence({ lap }: CutReport, system: System): string {
  if (lap === undefined) return '';
  if (lap === null) return 'Nothing stops this journal going rearward, so it cannot be lapped home.';
  const { at, why } = lap.stop;
  const state = lap.states[at]!;
  const advance = fineText(lap.states[0]!.position - state.position, system);
  const wrong = state.relationError === null ? '' : `; the cones then stand ${fineText(Math.abs(state.relationError), system)} wrong to each other`;
  switch (why) {
    case 'bearing':
      return `Lapped together, the seats all bear after ${advance} of travel: stop there${wrong}. ${ANOTHER_WAY}`;
    case 'relation':
      return `Lapped together, stop after ${advance} of travel: beyond it the cones no longer stand to each other as the films allow. ${ANOTHER_WAY}`;
    case 'limit':
      return `Lapped together, stop after ${advance} of travel: a surface has then lost all it may${wrong}. ${ANOTHER_WAY}`;
    case 'notYet':
      return `Lapped together for ${advance} of travel, not every seat bears yet${wrong}.`;
  }
}
