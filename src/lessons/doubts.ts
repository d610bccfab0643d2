/**
 * What contradicts itself in a lesson that goes: its formulas are worked out and its rounds dealt, and yet what is
 * asked, what is right, what is let go and what is drawn do not say one thing. Each with its field. It is doubt, not
 * fault: texts are read by a few words of theirs, and who wrote the lesson decides.
 */
import type { Design } from '../design/definition.ts';
import { valueAt } from '../design/place.ts';
import { fitOf } from '../report/fit/fitOf.ts';
import type { Dealt, DealtQuestion } from './deal.ts';
import type { Lesson, Question } from './definition.ts';
import { chartDoubts, pictureDoubts } from './doubtsOfPictures.ts';
import { LENGTHS, rangeDoubts } from './doubtsOfRanges.ts';
import { directionOf, lastAsked, saysFirst, seatIn } from './plainWords.ts';
import { looksOf } from './seen.ts';
import { triedBy } from './tried.ts';

export interface Doubt {
  /** the field */
  path: string;
  message: string;
}

/** mm: a film that changes by less does not change */
export const SAME = 1e-6;

/** Of all that was dealt; each field once, by the first numbers that show it. */
export function doubtsOf(lesson: Lesson, rounds: readonly Dealt[]): (Doubt & { seed: number })[] {
  const found = new Map<string, Doubt & { seed: number }>();
  const add = (seed: number, doubts: readonly Doubt[]) => {
    for (const doubt of doubts) if (!found.has(doubt.path)) found.set(doubt.path, { ...doubt, seed });
  };
  for (const { seed, questions } of rounds)
    for (const [i, dealt] of questions.entries()) {
      const at = `questions[${i}]`;
      const doubts = questionDoubts(lesson.questions[i]!, dealt);
      add(
        seed,
        doubts.map(({ path, message }) => ({ path: `${at}.${path}`, message })),
      );
    }
  if (rounds.length > 0)
    add(rounds[0]!.seed, [...oneNumber(lesson), ...neverSo(lesson, rounds), ...firstTold(lesson, rounds)]);
  return [...found.values()];
}

const questionDoubts = (question: Question, dealt: DealtQuestion): Doubt[] => [
  ...carriedOut(question, dealt),
  ...asksOtherwise(question, dealt),
  ...choiceOtherwise(question, dealt),
  ...seenOtherwise(question, dealt),
  ...rangeDoubts(question, dealt),
  ...chartDoubts(question, dealt),
  ...pictureDoubts(question, dealt),
];

/** What is right, carried out, against what is let go: the same way, and to the same place where one is asked for. */
function carriedOut(question: Question, dealt: DealtQuestion): Doubt[] {
  const { answer, release, try: tries = [] } = question;
  const path = 'answer.right';
  if (answer.kind === 'choice') return [];
  if (answer.kind === 'move' && Math.abs((dealt.to.position ?? 0) - Number(dealt.right)) > dealt.within + SAME)
    return [{ path, message: 'the spindle is let go to another place than the one that is right' }];
  if (tries.length === 0) return [];
  const tried = triedBy(question, dealt, dealt.right);
  if (!tried) return [{ path: 'try', message: 'what is right, carried out, makes no pair' }];
  const other = release.find(({ path: at }) => {
    const [was, is, would] = [dealt.from, dealt.to, tried.design].map((design) => Number(valueAt(design, at) ?? 0));
    return tries.some((put) => put.path === at) && (is! - was!) * (would! - was!) < -SAME * SAME;
  });
  return other ? [{ path, message: 'carried out, it goes the other way than what is let go' }] : [];
}

const change = ({ from, to }: DealtQuestion, seat: number): number => {
  const [was, is] = [from, to].map((design) => fitOf(design).seats[seat]?.leastFilm ?? Number.NaN);
  return is! - was!;
};
const seatsOf = ({ from }: DealtQuestion): string[] => from.seats.map(({ name }) => name);
const OF_FILM = /\b(films?|gaps?)\b/i;
const wayText = (change: number) => (change > 0 ? 'grows' : 'shrinks');

/** By how much a film grows is asked, and what is right has the other sign. */
function asksOtherwise({ ask, answer }: Question, dealt: DealtQuestion): Doubt[] {
  if (answer.kind !== 'number' || !LENGTHS.has(answer.as)) return [];
  const words = `${lastAsked(ask)} ${answer.label}`;
  const seat = seatIn(words, seatsOf(dealt));
  const way = directionOf(words);
  if (seat === null || way === 0 || !OF_FILM.test(words)) return [];
  const grows = change(dealt, seat);
  if (!(Math.abs(grows) > SAME) || way * grows * Number(dealt.right) >= 0) return [];
  const asked = way > 0 ? 'grows' : 'shrinks';
  return [
    {
      path: 'answer.right',
      message: `it is asked by how much the film ${asked}, and it ${wayText(grows)}: what is right has the other sign`,
    },
  ];
}

/** A choice that says another way than the film goes, or another seat than the one that touches first. */
function choiceOtherwise({ ask, answer }: Question, dealt: DealtQuestion): Doubt[] {
  if (answer.kind !== 'choice') return [];
  const seats = seatsOf(dealt);
  const [path, asked] = ['answer.right', lastAsked(ask)];
  const right = answer.options.find(({ key }) => key === dealt.right)!;
  const seat = seatIn(asked, seats);
  const way = directionOf(right.text);
  if (seat !== null && OF_FILM.test(`${asked} ${right.text}`) && way * change(dealt, seat) < -SAME)
    return [{ path, message: `the choice that is right says another way than the film goes: it ${wayText(-way)}` }];
  const named = seats.length > 1 ? (seatIn(right.text, seats) ?? seats.indexOf(right.key)) : -1;
  if (!ASKS_FIRST.test(asked) || named < 0) return [];
  const firsts = firstsOf([dealt.from, dealt.to]);
  if (firsts.length === 0 || firsts.includes(seats[named]!)) return [];
  return [{ path, message: `it is asked which touches first: that is ${firsts.join(' or ')}, not ${seats[named]}` }];
}
const ASKS_FIRST = /touch(es|ed)? (at )?first|which (cone|seat|one) (touches|stops)|first touch/i;

const firstsOf = (designs: readonly Design[]): string[] => [
  ...new Set(designs.flatMap((design) => fitOf(design).first ?? [])),
];

/** What counts as seen, by its words, against what the film does. */
function seenOtherwise({ saw }: Question, dealt: DealtQuestion): Doubt[] {
  const looks = looksOf(saw);
  const which = looks.findIndex(({ ask }) => ask === dealt.look.ask);
  const text = dealt.look.options[dealt.saw]!;
  const option = looks[which]!.options.findIndex((one) => one.text === text);
  const words = `${lastAsked(dealt.look.ask)} ${text}`;
  const seat = seatIn(text, seatsOf(dealt)) ?? seatIn(words, seatsOf(dealt));
  if (seat === null || !OF_FILM.test(words) || directionOf(text) * change(dealt, seat) >= -SAME) return [];
  const at = which === 0 ? 'saw' : `saw.other[${which - 1}]`;
  return [
    {
      path: `${at}.options[${option}].is`,
      message: `this is so where it ${wayText(change(dealt, seat))}, and it says the opposite`,
    },
  ];
}

/** A number that is to be drawn, and is always the same. */
const oneNumber = ({ numbers }: Lesson): Doubt[] =>
  numbers.flatMap(({ from, to, step }, i) =>
    to > from && step > to - from
      ? [{ path: `numbers[${i}].step`, message: `no step fits between ${from} and ${to}: it is always ${from}` }]
      : [],
  );

/** A slip that nobody makes, whatever the numbers. */
const neverSo = ({ questions }: Lesson, rounds: readonly Dealt[]): Doubt[] =>
  questions.flatMap(({ mistakes }, i) => {
    const made = new Set(rounds.flatMap(({ questions: all }) => all[i]!.slips.map(({ index }) => index)));
    return mistakes.flatMap((_, k) =>
      made.has(k)
        ? []
        : [{ path: `questions[${i}].mistakes[${k}].when`, message: 'with none of the numbers tried it can be made' }],
    );
  });

/** “The steep cone touches first”, said as if it were so, of a pair that never shows it; a seat that is not there. */
function firstTold({ story, questions, carry }: Lesson, rounds: readonly Dealt[]): Doubt[] {
  const dealt = rounds.flatMap(({ questions: all }) => all);
  const seats = seatsOf(dealt[0]!);
  const texts: [path: string, text: string][] = [
    ...story.map((text, i): [string, string] => [`story[${i}]`, text]),
    ...questions.flatMap(({ ask, because, saw }, i): [string, string][] => [
      [`questions[${i}].ask`, ask],
      [`questions[${i}].because`, because],
      ...looksOf(saw).map(({ ask: one }, k): [string, string] => [
        k === 0 ? `questions[${i}].saw.ask` : `questions[${i}].saw.other[${k - 1}].ask`,
        one,
      ]),
    ]),
    ['carry', carry],
  ];
  const shown = firstsOf(dealt.flatMap(({ from, to }) => [from, to]));
  const told = texts.flatMap(([path, text]) =>
    saysFirst(text, seats)
      .filter((name) => shown.length > 0 && !shown.includes(name))
      .map((name) => ({ path, message: `“${name}” never touches first with the numbers tried: ${shown.join(', ')}` })),
  );
  return [...told, ...unknownNames({ questions }, seats)];
}

const COMPARED = /\.first\s*[!=]=\s*(['"])(.*?)\1|(['"])([^'"]*)\3\s*[!=]=\s*[\w.[\]]*\.first\b/g;

/** `after.fit.first == 'middle'`, of a pair without such a seat. */
function unknownNames({ questions }: Pick<Lesson, 'questions'>, seats: readonly string[]): Doubt[] {
  const formulas = questions.flatMap(({ answer, saw, mistakes }, i): [path: string, formula: string][] => [
    [`questions[${i}].answer.right`, answer.right],
    ...looksOf(saw).flatMap(({ options }, k) =>
      options.map(({ is }, n): [string, string] => [
        `questions[${i}].saw${k === 0 ? '' : `.other[${k - 1}]`}.options[${n}].is`,
        is,
      ]),
    ),
    ...mistakes.map(({ is }, k): [string, string] => [`questions[${i}].mistakes[${k}].is`, is]),
  ]);
  return formulas.flatMap(([path, formula]) =>
    [...formula.matchAll(COMPARED)]
      .map(([, , one, , other]) => one ?? other ?? '')
      .filter((name) => !seats.includes(name))
      .map((name) => ({ path, message: `no seat is called “${name}” here: ${seats.join(', ')}` })),
  );
}
