/**
 * The values that a formula of a lesson can name at its place, in words: those of the lesson's own numbers, of the
 * report before and after, of the design, and the sines and tangents of its half angles.
 */
import type { Design } from '../design/definition.ts';
import { asking } from './asked.ts';
import { dealOnce, designOf, drawnNumbers } from './deal.ts';
import type { Lesson, ToldAs } from './definition.ts';
import { worked } from './formula.ts';
import { triedBy } from './tried.ts';

export type Side = 'before' | 'after';

export interface Offered {
  /** as it stands in a formula */
  name: string;
  words: string;
  as: ToldAs;
  /** null: with these numbers it is not worked out yet */
  value: number | string | boolean | null;
}
export interface OfferedGroup {
  group: string;
  values: Offered[];
}

type Line = readonly [key: string, words: string, as: ToldAs];

/** The most used first. */
const OF_SEAT: readonly Line[] = [
  ['leastFilm', 'least film', 'fine'],
  ['greatestFilm', 'greatest film', 'fine'],
  ['seatPosition', 'place where it touches', 'sided'],
  ['positionForTarget', 'place for the film wanted', 'sided'],
  ['shiftToTarget', 'move to the film wanted', 'fine'],
  ['turnsToTarget', 'turns to the film wanted', 'number'],
  ['sensitivity', 'film gained by travel (the sine)', 'number'],
  ['leastFilmStation', 'station of the least film', 'length'],
  ['contact.end', 'end at which it touches', 'number'],
];
const OF_FIT: readonly Line[] = [
  ['position', 'where the spindle stands', 'sided'],
  ['firstPosition', 'where it is stopped', 'sided'],
  ['first', 'which cone stops it', 'number'],
  ['endPlay', 'end play', 'fine'],
  ['relation.error', 'how far the two cones stand from their relation', 'fine'],
];
const OF_LINE: readonly Line[] = [
  ['halfAngle', 'half angle', 'angle'],
  ['diameter', 'diameter', 'length'],
  ['station', 'station', 'length'],
  ['from', 'rear end', 'length'],
  ['to', 'front end', 'length'],
];
const OF_DESIGN: readonly Line[] = [
  ['position', 'where the spindle stands', 'sided'],
  ['adjuster.pitch', 'travel of the adjuster in one turn', 'length'],
];
const TURNED: readonly (readonly ['sin' | 'tan' | 'cos', string])[] = [
  ['sin', 'sine'],
  ['tan', 'tangent'],
  ['cos', 'cosine'],
];

/** What is known at a place of the lesson. */
function knownAt(path: string): { sides: Side[]; right: boolean } {
  if (path.startsWith('where')) return { sides: [], right: false };
  if (path.startsWith('keep') || path.endsWith('answer.right')) return { sides: ['before', 'after'], right: false };
  if (/^questions\[\d+\]\.(release|set)\b/.test(path)) return { sides: ['before'], right: false };
  // Told, or carried out, once an answer is given.
  return { sides: ['before', 'after'], right: true };
}

/** Where the answer that was given is known, and where what it makes is. */
const OF_ANSWER = /\.(try\b|cost$|says$)/;
const OF_COST = /\.cost$/;

const PLAIN = /^[A-Za-z_][A-Za-z0-9_]*$/;
const keyOf = (name: string, at: number) => (PLAIN.test(name) ? `.${name}` : `[${at}]`);

/** All that may stand at a place, with what it is by the first numbers. */
export function offeredAt(lesson: Lesson, path: string): OfferedGroup[] {
  const base = designOf(lesson, () => undefined);
  if (!base.ok) return [];
  const question = Number(/^questions\[(\d+)\]/.exec(path)?.[1] ?? 0);
  const dealt = firstDealt(lesson, base.value)?.questions[question];
  const design = dealt?.from ?? base.value;
  const { sides, right } = knownAt(path);
  const numbers = drawn(lesson);
  const ask = asking();
  const scope: Record<string, unknown> = { ...numbers, design, right: dealt?.right };
  for (const side of sides)
    scope[side] = side === 'before' ? ask(design, ['fit']) : dealt ? ask(dealt.to, ['fit']) : undefined;
  // As with the first slip: what is put in later is worked out of whatever was answered.
  const answer = dealt?.slips[0]?.value;
  const asked = lesson.questions[question];
  const tried =
    asked && dealt && answer !== undefined && OF_COST.test(path) ? triedBy(asked, dealt, answer, ['fit']) : null;
  Object.assign(scope, { answer, tried: tried?.report });
  const groups: OfferedGroup[] = [
    {
      group: 'Of this lesson',
      values: [
        ...lesson.numbers.map(({ name, as }) => ({ name, words: 'a number of this lesson', as, value: null })),
        ...(right ? [rightOf(lesson, question)] : []),
        ...(OF_ANSWER.test(path) ? [{ ...rightOf(lesson, question), name: 'answer', words: 'what was answered' }] : []),
      ],
    },
    ...sides.map((side) => ({
      group: side === 'before' ? 'As it is asked (before)' : 'Once it is let go (after)',
      values: ofFit(design, side),
    })),
    ...(tried ? [{ group: 'With the answer carried out (tried)', values: ofFit(design, 'tried') }] : []),
    { group: 'Of the design, as it is asked', values: ofDesign(design) },
  ];
  return groups.map(({ group, values }) => ({
    group,
    values: values.flatMap((one) => {
      const found = worked(one.name, scope);
      // What the report has not, with these numbers, is offered only where nothing is worked out yet.
      if (!found.ok)
        return one.name.startsWith('after') && !dealt ? [one] : one.name === 'right' && !dealt ? [one] : [];
      return [{ ...one, value: found.value }];
    }),
  }));
}

const rightOf = ({ questions }: Lesson, at: number): Offered => {
  const answer = questions[at]?.answer;
  const as = answer?.kind === 'number' ? answer.as : answer?.kind === 'move' ? 'sided' : 'number';
  return { name: 'right', words: 'what is right', as, value: null };
};

function ofFit({ seats }: Design, side: Side | 'tried'): Offered[] {
  const at = (key: string) => `${side}.fit.${key}`;
  return [
    ...seats.flatMap(({ name }, i) =>
      OF_SEAT.slice(0, 2).map(([key, words, as]) =>
        offered(at(`seats${keyOf(name, i)}.${key}`), `${name}: ${words}`, as),
      ),
    ),
    ...OF_FIT.map(([key, words, as]) => offered(at(key), words, as)),
    ...seats.flatMap(({ name }, i) =>
      OF_SEAT.slice(2).map(([key, words, as]) => offered(at(`seats${keyOf(name, i)}.${key}`), `${name}: ${words}`, as)),
    ),
  ];
}

function ofDesign({ seats }: Design): Offered[] {
  const parts = seats.flatMap(({ name }, i) =>
    (['journal', 'bush'] as const).map((part) => ({
      said: `${name} ${part}`,
      at: `design.seats${keyOf(name, i)}.${part}`,
    })),
  );
  return [
    ...parts.flatMap(({ said, at }) =>
      TURNED.map(([call, words]) =>
        offered(`${call}(${at}.halfAngle)`, `${said}: ${words} of the half angle`, 'number'),
      ),
    ),
    ...OF_LINE.flatMap(([key, words, as]) =>
      parts.map(({ said, at }) => offered(`${at}.${key}`, `${said}: ${words}`, as)),
    ),
    ...seats.map(({ name }, i) => offered(`design.seats${keyOf(name, i)}.film.target`, `${name}: film wanted`, 'fine')),
    ...OF_DESIGN.map(([key, words, as]) => offered(`design.${key}`, words, as)),
  ];
}

const offered = (name: string, words: string, as: ToldAs): Offered => ({ name, words, as, value: null });

/** A lesson in the making may have numbers that no draw can be made of; its fields say so. */
function drawn(lesson: Lesson): Record<string, number> {
  try {
    return drawnNumbers(lesson, 1);
  } catch {
    return {};
  }
}

/** Those that plan or run take seconds: they are not dealt for a list. */
const SLOW = /(before|after)\.(cut|run|film|odds)\b/;

function firstDealt(lesson: Lesson, design: Design) {
  if (SLOW.test(JSON.stringify(lesson.questions))) return null;
  try {
    const found = dealOnce(lesson, design, 1);
    return found.ok ? found.value : null;
  } catch {
    return null;
  }
}
