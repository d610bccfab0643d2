/**
 * A lesson with its numbers: drawn by a seed, put into its design, and solved before and after what each question lets
 * go. What is right, and what each named mistake would give, are read off those reports; numbers by which two of them
 * cannot be told apart are not given, others are drawn in their place.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { mersenne } from 'pure-rand/generator/mersenne';
import type { Design } from '../design/definition.ts';
import { valueAt, withValue } from '../design/place.ts';
import { validateDesign } from '../design/validate.ts';
import { allApart, type Right, rightsOf } from './apart.ts';
import { ASKED_NAMES, type AskedName, type Asking, asking } from './asked.ts';
import type { Chart, Lesson, Put, Question } from './definition.ts';
import { type Formula, formulaOf, type Scope, type Value, type Worked, worked, workedNumber } from './formula.ts';
import { type Around, formulasOf, reckonedIn } from './formulas.ts';
import { type Pictured, pictured, placed } from './pictured.ts';
import { seenOf } from './seen.ts';
import { confused, type Slip, slipsOf } from './slips.ts';

export interface DealtQuestion extends Pictured {
  from: Design;
  to: Design;
  /** names for the formulas of its texts: numbers, before, after, right */
  scope: Scope;
  right: number | string;
  within: number;
  slips: Slip[];
  /** what is asked of what was seen in this round, and which of it was so */
  look: { ask: string; options: string[] };
  saw: number;
  /** mm: lengths of the round that are reckoned on with, and not asked for */
  reckoned: readonly number[];
  /** what the engine has along the chart, and where the answer is asked for */
  curve: Curve | null;
}

export interface Curve {
  points: [across: number, up: number][];
  at: number;
  /** it begins with what is so as it is asked */
  known: boolean;
}

export interface Dealt {
  /** the seed these numbers came of: the one asked for, or one after it */
  seed: number;
  numbers: Record<string, number>;
  questions: DealtQuestion[];
}

/** Seeds looked at for numbers that go together. */
const MOST_TRIED = 200;

/** Which designs the examples are, by file name. */
export type Designs = (file: string) => Design | undefined;

/** Numbers with one answer alike that are passed over; a lesson that has no others gives them. Choices are few. */
const MOST_ALIKE = 12;

/**
 * The numbers of a seed, or of the first one after it that gives any; or why none does. `before`: what was right in
 * the rounds before, from which its answers are told apart.
 */
export function deal(lesson: Lesson, seed: number, designs: Designs, before: readonly Right[] = []): Worked<Dealt> {
  const design = designOf(lesson, designs);
  if (!design.ok) return design;
  let last = '';
  let [alike, first]: [number, Worked<Dealt> | null] = [0, null];
  const most = lesson.questions.some(({ answer }) => answer.kind === 'choice') ? MOST_TRIED : MOST_ALIKE;
  for (let tried = seed; tried < seed + MOST_TRIED && alike < most; tried++) {
    const found = dealOnce(lesson, design.value, tried, seed);
    if (found.ok) {
      if (allApart(rightsOf(lesson, found.value), before)) return found;
      first ??= found;
      alike++;
      continue;
    }
    // Of numbers that are not to be given at all nothing is learnt.
    if (last === '' || !found.at?.startsWith('keep')) last = found.message;
  }
  return first ?? { ok: false, message: `no numbers from seed ${seed} on go together; the last: ${last}` };
}

/** Of itself: what was solved and what is worked out by hand are one length. */
const SAME = 1e-6;

/** The numbers of one seed, or why it is not given. `turn`: by what it goes what is asked of what was seen. */
export function dealOnce(lesson: Lesson, base: Design, seed: number, turn = seed): Worked<Dealt> {
  const numbers = drawnNumbers(lesson, seed);
  const start = putInto(asNamed(lesson, base), lesson.where, numbers, 'where');
  if (!start.ok) return start;
  const ask = asking();
  const questions: DealtQuestion[] = [];
  let from = start.value;
  for (const [i, question] of lesson.questions.entries()) {
    // The story and the conditions are of what is so before any question.
    const whole = i === 0 ? lesson : { ...lesson, keep: [], story: [], carry: '' };
    const found = dealQuestion(whole, question, from, numbers, ask, turn + i);
    if (!found.ok) {
      const at = found.at?.startsWith('keep') ? found.at : `questions[${i}]${found.at ? `.${found.at}` : ''}`;
      return { ok: false, message: `question ${i + 1}: ${found.message}`, at };
    }
    questions.push(found.value);
    from = found.value.to;
  }
  const asked = questions.map(({ right }) => Math.abs(Number(right)));
  const reckoned = lesson.questions
    .flatMap((question, i) => reckonedIn(i === 0 ? lesson.story : [], question, questions[i]!))
    .filter((length) => !asked.some((right) => Math.abs(right - length) <= SAME * right));
  return { ok: true, value: { seed, numbers, questions: questions.map((one) => ({ ...one, reckoned })) } };
}

/** What calls a film wanted, or asks for what hangs on one. */
const WANTED =
  /wanted|film\.t(arget|olerance)|(For|To)Target|relation|\b(before|after|now|tried)\.(cut|run|film|odds)\b/;

/** An example may want films of which the lesson says nothing: none is then called too thin, or as wanted. */
function asNamed({ design: _, ...said }: Lesson, base: Design): Design {
  if (WANTED.test(JSON.stringify(said))) return base;
  return { ...base, seats: base.seats.map(({ film: __, ...seat }) => seat) };
}

export function designOf({ design }: Lesson, designs: Designs): Worked<Design> {
  if (typeof design === 'string') {
    const found = designs(design);
    return found ? { ok: true, value: found } : { ok: false, message: `there is no example ${design}` };
  }
  const read = validateDesign(design);
  return read.ok
    ? { ok: true, value: read.design }
    : { ok: false, message: `the design is not whole: ${read.errors[0]!.path} ${read.errors[0]!.message}` };
}

/** Of each its own draw, so that a number more at the end changes none before it. */
export function drawnNumbers({ numbers }: Pick<Lesson, 'numbers'>, seed: number): Record<string, number> {
  const random = mersenne(seed);
  return Object.fromEntries(
    numbers.map(({ name, from, to, step }) => {
      const steps = Math.floor((to - from) / step + 1e-9);
      return [name, Number((from + step * uniformInt(random, 0, steps)).toPrecision(12))];
    }),
  );
}

/** `within`: what the list is called in the lesson. */
export function putInto(design: Design, puts: readonly Put[], scope: Scope, within: string): Worked<Design> {
  let made = design;
  for (const [i, { path, is }] of puts.entries()) {
    const found = workedNumber(is, { ...scope, design: made });
    if (!found.ok) return { ok: false, message: `${path}: ${found.message}`, at: `${within}[${i}].is` };
    made = withValue(made, path, found.value);
  }
  const read = validateDesign(made);
  return read.ok
    ? { ok: true, value: read.design }
    : {
        ok: false,
        message: `the design it makes is none: ${read.errors[0]!.path} ${read.errors[0]!.message}`,
        at: within,
      };
}

function dealQuestion(
  lesson: Around,
  question: Question,
  left: Design,
  numbers: Scope,
  ask: Asking,
  turn: number,
): Worked<DealtQuestion> {
  const formulas = formulasOf(lesson, question);
  const put = (design: Design, puts: readonly Put[], within: string) =>
    putInto(design, puts, { ...numbers, before: ask(design, sectionsIn(formulas, 'before')) }, within);
  const set = put(left, question.set ?? [], 'set');
  if (!set.ok) return set;
  const from = set.value;
  const to = put(from, question.release, 'release');
  if (!to.ok) return to;
  const [before, after] = [ask(from, sectionsIn(formulas, 'before')), ask(to.value, sectionsIn(formulas, 'after'))];
  const scope: Scope = { ...numbers, design: from, before, after };
  for (const [i, condition] of lesson.keep.entries()) {
    const found = worked(condition, scope);
    if (!found.ok) return placed(found, `keep[${i}]`);
    if (found.value !== true) return { ok: false, message: `“${condition}” is not so`, at: `keep[${i}]` };
  }
  const given = answersOf(question, scope);
  if (!given.ok) return given;
  const { right, within, slips } = given.value;
  const inScope: Scope = { ...scope, right };
  const saw = seenOf(question, inScope, turn);
  if (!saw.ok) return saw;
  const { answer } = question;
  const curve =
    answer.kind === 'number' && answer.chart ? curveOf(question, answer.chart, [from, to.value], inScope, ask) : null;
  if (curve && !curve.ok) return placed(curve, 'answer.chart');
  const drawn = pictured(question, inScope, to.value);
  if (!drawn.ok) return drawn;
  return {
    ok: true,
    value: {
      from,
      to: to.value,
      scope: inScope,
      right,
      within,
      slips,
      ...saw.value,
      reckoned: [],
      curve: curve?.ok ? curve.value : null,
      ...drawn.value,
    },
  };
}

/** What is right, how near counts, and what each slip gives. */
function answersOf(
  question: Question,
  scope: Scope,
): Worked<{ right: number | string; within: number; slips: Slip[] }> {
  const { answer } = question;
  const right = worked(answer.right, scope);
  if (!right.ok) return placed(right, 'answer.right');
  if (typeof right.value === 'boolean' || (typeof right.value === 'string') !== (answer.kind === 'choice'))
    return { ok: false, message: `what is right, ${right.value}, is no answer of this kind`, at: 'answer.right' };
  const choices = answer.kind === 'choice' ? answer.options.map(({ key }) => key) : null;
  if (choices && !choices.includes(String(right.value)))
    return { ok: false, message: `what is right, “${right.value}”, is none of the choices`, at: 'answer.right' };
  const inScope: Scope = { ...scope, right: right.value };
  const within = answer.kind === 'choice' ? ({ ok: true, value: 0 } as const) : workedNumber(answer.within, inScope);
  if (!within.ok) return placed(within, 'answer.within');
  const near = within.value;
  if (!choices && !(near > 0))
    return { ok: false, message: `so near, ${near}, no answer is right: it must be above 0`, at: 'answer.within' };
  const slips = slipsOf(question.mistakes, inScope, right.value, near, choices);
  if (!slips.ok) return slips;
  const alike = confused([{ index: -1, value: right.value, within: near }, ...slips.value], question);
  if (alike !== null) return { ok: false, ...alike };
  return { ok: true, value: { right: right.value, within: near, slips: slips.value } };
}

function curveOf(
  { release }: Question,
  chart: Chart,
  [begins, design]: readonly [Design, Design],
  scope: Scope,
  ask: Asking,
): Worked<Curve> {
  const ends = [chart.from, chart.to, chart.at, chart.times ?? '1'].map((formula) => workedNumber(formula, scope));
  const bad = ends.find((end) => !end.ok);
  if (bad && !bad.ok) return bad;
  const [from, to, at, times] = ends.map((end) => (end.ok ? end.value : 0)) as [number, number, number, number];
  if (!(times > 0))
    return { ok: false, message: `the figures along the chart are multiplied by ${times}`, at: 'times' };
  const up = formulaOf(chart.up);
  if (!up.ok) return up;
  const needed = sectionsIn([up.value], 'now');
  const points: [number, number][] = [];
  for (let i = 0; i < chart.points; i++) {
    const across = from + ((to - from) * i) / (chart.points - 1);
    const now = ask(withValue(design, chart.path, across), needed);
    const value = up.value.value({ ...scope, now });
    if (!value.ok) return value;
    if (typeof value.value !== 'number') return { ok: false, message: `“${chart.up}” is no number` };
    points.push([times * across, value.value]);
  }
  const known =
    from !== at &&
    Math.abs(from - (valueAt(begins, chart.path) as number)) <= SAME &&
    release.every(({ path }) => path === chart.path);
  return { ok: true, value: { points, at: times * at, known } };
}

export const sectionsIn = (formulas: readonly Formula[], side: 'before' | 'after' | 'now' | 'tried'): AskedName[] =>
  ASKED_NAMES.filter((section) =>
    formulas.some(({ names }) =>
      names.some((name) => name === `${side}.${section}` || name.startsWith(`${side}.${section}.`)),
    ),
  );

/** Whether a design has a number at a place, so that something can be put there or moved. */
export const hasNumberAt = (design: Design, path: string): boolean => typeof valueAt(design, path) === 'number';

export type { Value };
