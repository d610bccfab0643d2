/** The plan in a machinist's words: one headline and a few sentences, made from the report alone. */
import type { Design } from '../../design/definition.ts';
import { angleText, fineText, type System, turnText } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { CutReport, CutStepReport, LimitReport } from './definition.ts';

/** Less than this (mm) nobody can take off, or see. */
const NOTHING = 1e-4;

export function cutVerdict(design: Design, cut: CutReport, system: System): Verdict {
  const rest = [moveSentence(cut, system), angleSentence(cut, system), budgetSentence(cut, system), trialSentence(cut, system), lapSentence(cut, system)].filter((s) => s !== '');
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
            sentences: [...limitSentences(cut, system), ...rest],
          }
        : { tone: 'stop', headline: `Within these limits the films cannot be had: the nearest is ${filmsText(design, cut, system)}.`, sentences: [...limitSentences(cut, system), ...rest] };
    case 'planned':
      return nothingToCut(cut)
        ? { tone: 'good', headline: 'Nothing need be cut: every seat has its film at one position already.', sentences: [moveSentence(cut, system)].filter((s) => s !== '') }
        : { tone: cut.inReach && setUpHolds(design, cut) ? 'good' : 'mend', headline: `${workHeadline(cut, system)} ${cutsOf(cut) > 1 ? 'give' : 'gives'} every seat its film at one position.`, sentences: [...orderSentence(cut), ...rest] };
  }
}

/** Whether the errors of the set-up likely stay within what every film may be off. */
const setUpHolds = (design: Design, { budget }: CutReport) => budget.seats.every(({ seat, likely }) => likely <= (design.seats.find(({ name }) => name === seat)?.film?.tolerance ?? Number.POSITIVE_INFINITY));

const nothingToCut = (cut: CutReport) => cut.steps.every((s) => s.deepest < NOTHING) && cut.faces.every((f) => Math.abs(f.off) < NOTHING);

const cutsOf = (cut: CutReport) => cut.steps.filter((s) => s.deepest >= NOTHING).length + cut.faces.filter((f) => Math.abs(f.off) >= NOTHING).length;

const listed = (words: readonly string[]) => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`);

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

const filmsText = (design: Design, { films }: CutReport, system: System) =>
  listed(
    design.seats
      .filter(({ film }) => film)
      .map(({ name }) => {
        const film = films[name];
        return `${name} ${film == null ? 'apart' : film < 0 ? `${fineText(-film, system)} pressed in` : fineText(film, system)}`;
      }),
  );

function orderSentence({ steps }: CutReport): string[] {
  if (steps.length < 2) return [];
  return [`In this order: ${listed(steps.map((s) => `${s.seat} ${s.part}`))}.`];
}

function limitSentences({ limits, feasible }: CutReport, system: System): string[] {
  if (feasible) return [];
  if (limits.length === 0) return ['A film is greater than wanted already, and metal cannot be put back.'];
  const sentence = limits.length === 1 ? `What stands in the way is ${limitText(limits[0]!, system)}` : `What cannot all hold: ${listed(limits.map((l) => limitText(l, system)))}`;
  const ways = limits.filter((l) => l.needed !== null).map((l) => wayOutText(l, system));
  return [`${sentence}.`, ...(ways.length > 0 ? [`Any one of these would do: ${ways.join('; ')}.`] : [])];
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

function moveSentence({ shift, turns, inReach, status }: CutReport, system: System): string {
  if (status !== 'planned' && status !== 'infeasible') return '';
  if (Math.abs(shift) < NOTHING) return 'The journal runs where it stands now.';
  const way = shift < 0 ? 'rearward' : 'noseward';
  const turn = turns === null ? '' : `, ${turnText(turns)} of the adjuster`;
  return `The journal then runs ${fineText(Math.abs(shift), system)} further ${way}${turn}: nose and shoulders move as much${inReach ? '' : ', further than adjuster and shoulders allow'}.`;
}

const WAYS = {
  sineBar: 'a sine bar',
  alongSlide: 'an indicator along the slide',
  alongAxis: 'an indicator along the cone',
  table: 'an indicator at the table',
  scale: 'the scale of the table',
  tailstock: 'setting over the tailstock',
} as const;

/** The narrowest angle, and which ways of setting will do for it. */
function angleSentence({ settings }: CutReport, system: System): string {
  const narrow = settings.filter((s) => s.stands !== null).sort((a, b) => a.stands! - b.stands!)[0];
  if (!narrow) return '';
  const good = narrow.ways.filter(({ enough }) => enough).map(({ way }) => WAYS[way]);
  const least = narrow.ways.reduce((a, b) => (b.film < a.film ? b : a));
  const stands = `The ${narrow.seat} ${narrow.part} is the touchiest to set: it stands ${angleText(narrow.stands!)} of error`;
  return good.length > 0 ? `${stands}; ${listed(good)} will do.` : `${stands}; none of these ways is fine enough, the best being ${WAYS[least.way]}, which costs ${fineText(least.film, system)} of film.`;
}

const CAUSES = {
  toolHeight: 'the height of the tool',
  angle: 'the setting of the angle',
  dial: 'the cross-feed dial',
  stop: 'the lean of the indicator at the stop',
  sine: 'the lean of the indicator as the angle is set',
  growth: 'the warmth of the work',
} as const;

function budgetSentence({ budget }: CutReport, system: System): string {
  const [largest] = budget.contributions;
  if (!largest || largest.film < NOTHING) return '';
  return `The largest error to fear is ${CAUSES[largest.cause]}: ${fineText(largest.film, system)} of film on the ${largest.seat} ${largest.part}.`;
}

function trialSentence({ trials, remaining }: CutReport, system: System): string {
  const last = trials?.[trials.length - 1];
  if (!last) return '';
  if (last.status === 'contradiction') return 'The last trial cannot have come from these parts: look for grit, a burr, or a slip of the pen.';
  if (last.status === 'noModel') return 'The shake of the last trial cannot be reckoned for these parts.';
  if (!remaining) return '';
  const surfaces = remaining.steps.filter((s) => s.normal >= NOTHING).map((s) => `${fineText(s.normal, system)} off the ${s.seat} ${s.part}`);
  const faces = remaining.faces.filter((f) => Math.abs(f.off) >= NOTHING).map((f) => `${fineText(Math.abs(f.off), system)} ${f.off > 0 ? 'off' : 'to be put on'} ${f.name}`);
  const left = [...surfaces, ...faces];
  if (left.length === 0) return remaining.feasible ? 'After the last trial nothing is left to cut.' : 'After the last trial too much is off already for the films wanted.';
  return `After the last trial there is left ${listed(left)}${remaining.feasible ? '' : ', which is as near as can be'}.`;
}

function lapSentence({ lap }: CutReport, system: System): string {
  if (lap === undefined) return '';
  if (lap === null) return 'Nothing stops this journal going rearward, so it cannot be lapped home.';
  const { at, why } = lap.stop;
  const state = lap.states[at]!;
  const advance = fineText(lap.states[0]!.position - state.position, system);
  const wrong = state.relationError === null ? '' : `; the cones then stand ${fineText(Math.abs(state.relationError), system)} wrong to each other`;
  switch (why) {
    case 'bearing':
      return `Lapped together, the seats all bear after ${advance} of travel: stop there${wrong}.`;
    case 'relation':
      return `Lapped together, stop after ${advance} of travel: beyond it the cones no longer stand to each other as the films allow.`;
    case 'limit':
      return `Lapped together, stop after ${advance} of travel: a surface has then lost all it may${wrong}.`;
    case 'notYet':
      return `Lapped together for ${advance} of travel, not every seat bears yet${wrong}.`;
  }
}
