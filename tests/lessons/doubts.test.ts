/** A lesson that goes and contradicts itself is doubted at its field; one that does not is left alone. */
import { describe, expect, test } from 'vitest';
import { dealOnce, designOf } from '../../src/lessons/deal.ts';
import type { Lesson, Question } from '../../src/lessons/definition.ts';
import { doubtsOf } from '../../src/lessons/doubts.ts';
import { newLesson } from '../../src/lessons/draft.ts';
import { directionOf, saysFirst, seatIn } from '../../src/lessons/plainWords.ts';
import { triedLesson } from '../../src/lessons/tries.ts';
import { LONG } from '../long.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

const RUNS = /(before|after)\.(run|film|odds)\b/;

test.each(LESSON_FILES)('%s contradicts itself nowhere', (file) => {
  const lesson = lessonOf(file);
  const design = designOf(lesson, exampleDesign);
  if (!design.ok) throw new Error(design.message);
  const count = RUNS.test(JSON.stringify(lesson)) && LONG === 1 ? 3 : /\.cut\b/.test(JSON.stringify(lesson)) ? 12 : 60;
  const rounds = Array.from({ length: count }, (_, i) => dealOnce(lesson, design.value, i + 1)).flatMap((found) =>
    found.ok ? [found.value] : [],
  );
  expect(rounds.length).toBeGreaterThan(0);
  expect(doubtsOf(lesson, rounds).filter(({ path }) => rounds.length > 10 || !path.endsWith('.when'))).toEqual([]);
});

test('a new lesson contradicts itself nowhere, over any example', () => {
  for (const file of ['correct', 'steep-first', 'shallow-first'])
    for (const design of [exampleDesign(`${file}.conepair.json`)].filter((one) => one !== undefined))
      expect(triedLesson(newLesson(design), 6).doubts).toEqual([]);
});

const made = () => newLesson(exampleDesign('correct.conepair.json')!);
const film = (seat: string, side = 'after') => `${side}.fit.seats.${seat}.leastFilm`;
const first = (lesson: Lesson) => lesson.questions[0]!;
const choice = (ask: string, options: [key: string, text: string][], right: string, slip: string) =>
  ({
    ask,
    try: undefined,
    cost: undefined,
    answer: { kind: 'choice', label: 'It is', options: options.map(([key, text]) => ({ key, text })), right },
    mistakes: [{ name: 'a slip', is: slip, says: 'No.', cost: 'It is scrap.' }],
  }) satisfies Partial<Record<keyof Question, unknown>>;
const chart = (at: string, up: string) => ({
  ...{ path: 'position', from: 'design.position', to: 'design.position + 0.03', at, as: 'fine', points: 7 },
  ...{ title: 'travel', up, upTitle: 'film gained' },
});
const CONES: [string, string][] = [
  ['shallow', 'the shallow cone'],
  ['steep', 'the steep cone'],
];
const grown = `now.fit.seats.shallow.leastFilm - ${film('shallow', 'before')}`;

test.each<[string, (lesson: Lesson) => void, string, RegExp]>([
  [
    'the sign turned round: it grows, and what is right says it shrinks',
    (l) => {
      first(l).answer.right = `${film('shallow', 'before')} - ${film('shallow')}`;
    },
    'questions[0].answer.right',
    /other way|other sign/,
  ],
  [
    'the same, where no answer is carried out',
    (l) => {
      Object.assign(first(l), { try: undefined, cost: undefined });
      first(l).answer.right = `${film('shallow', 'before')} - ${film('shallow')}`;
    },
    'questions[0].answer.right',
    /grows: what is right has the other sign/,
  ],
  [
    'a choice that says the film shrinks where it grows',
    (l) => {
      const ways: [string, string][] = [
        ['more', 'It grows.'],
        ['less', 'It shrinks.'],
      ];
      Object.assign(first(l), choice('What does the shallow film do?', ways, "'less'", "'more'"));
    },
    'questions[0].answer.right',
    /says another way/,
  ],
  [
    'which touches first, and the other one is right',
    (l) => {
      const { firstPosition } = { firstPosition: 'before.fit.firstPosition' };
      const right = "after.fit.first == 'steep' ? 'shallow' : 'steep'";
      Object.assign(first(l), choice('Which cone touches first?', CONES, right, 'after.fit.first'));
      first(l).release = [{ path: 'position', is: firstPosition }];
      first(l).saw.options = [
        { text: 'One touched.', is: 'true' },
        { text: 'None did.', is: 'false' },
      ];
    },
    'questions[0].answer.right',
    /which touches first: that is (steep|shallow), not/,
  ],
  [
    'what was seen says the opposite of what the film does',
    (l) => {
      const [one, two] = first(l).saw.options;
      [one!.is, two!.is] = [two!.is, one!.is];
      one!.text = 'The film grew.';
      two!.text = 'The film shrank.';
    },
    'questions[0].saw.options[1].is',
    /says the opposite/,
  ],
  [
    'a story in which a cone touches first that never does',
    (l) => l.story.push('Pushed home, the shallow cone touches first.'),
    'story[1]',
    /“shallow” never touches first/,
  ],
  [
    'a seat that the design has not',
    (l) => {
      first(l).saw.options[1]!.is = `${first(l).saw.options[1]!.is} || after.fit.first == 'middle'`;
    },
    'questions[0].saw.options[1].is',
    /no seat is called “middle”/,
  ],
  [
    'nobody can type so near',
    (l) => Object.assign(first(l).answer, { within: '0.0000001' }),
    'questions[0].answer.within',
    /nobody can type it so near/,
  ],
  [
    'a range of one number',
    (l) => Object.assign(first(l).mistakes[0]!, { to: first(l).mistakes[0]!.is }),
    'questions[0].mistakes[0].to',
    /both ends are the same/,
  ],
  [
    'so much counts as right that every answer does',
    (l) => {
      Object.assign(first(l).answer, { within: '2 * abs(right)' });
      Object.assign(first(l).mistakes[0]!, { is: '40 * right', to: '60 * right' });
    },
    'questions[0].answer.within',
    /so much counts as right that 0 does/,
  ],
  [
    'a range narrower than anybody types',
    (l) => Object.assign(first(l).mistakes[0]!, { to: `${first(l).mistakes[0]!.is} + 0.000001` }),
    'questions[0].mistakes[0].to',
    /nobody can type a number between/,
  ],
  [
    'a range where no learner comes',
    (l) => Object.assign(first(l).mistakes[0]!, { is: '200 * right', to: '900 * right' }),
    'questions[0].mistakes[0].to',
    /no learner comes there/,
  ],
  [
    'the same, on the other side',
    (l) => Object.assign(first(l).mistakes[0]!, { is: '-900 * right', to: '-200 * right' }),
    'questions[0].mistakes[0].to',
    /no learner comes there/,
  ],
  [
    'a range in which every answer is that is too much',
    (l) => Object.assign(first(l).mistakes[0]!, { is: '1.5 * right', to: '1000 * right' }),
    'questions[0].mistakes[0].to',
    /every answer that is too much/,
  ],
  [
    'a range in which every answer is that is too little',
    (l) => Object.assign(first(l).mistakes[0]!, { is: '-0.2 * right', to: '0.7 * right' }),
    'questions[0].mistakes[0].to',
    /every answer that is too little/,
  ],
  [
    'a number to be drawn that is always the same',
    (l) => Object.assign(l.numbers[0]!, { step: 10 * (l.numbers[0]!.to - l.numbers[0]!.from) }),
    'numbers[0].step',
    /no step fits/,
  ],
  [
    'a range of which nothing can be carried out',
    (l) => {
      first(l).try = [{ path: 'seats[0].bush.halfAngle', is: '3 + 1000 * abs(answer - right)' }];
      Object.assign(first(l).mistakes[0]!, { is: '10', to: '20' });
    },
    'questions[0].mistakes[0].to',
    /no answer of “all of the travel” can be carried out/,
  ],
  [
    'a slip that is made with no numbers',
    (l) => {
      const slip = first(l).mistakes[0]!;
      first(l).mistakes.push({ ...slip, name: 'never', is: '3 * by', when: 'by > 1' });
    },
    'questions[0].mistakes[1].when',
    /none of the numbers/,
  ],
  [
    'a mark past the end of its chart',
    (l) => Object.assign(first(l).answer, { chart: chart('design.position + 0.2', grown) }),
    'questions[0].answer.chart.at',
    /outside the chart/,
  ],
  [
    'a chart of something else than what is asked for',
    (l) => Object.assign(first(l).answer, { chart: chart('design.position + by', `5 * (${grown})`) }),
    'questions[0].answer.chart.up',
    /not at what is right/,
  ],
  [
    'a note at a seat that is not there',
    (l) => Object.assign(first(l).view, { notes: [{ seat: 5, text: 'Here.' }] }),
    'questions[0].view.notes[0].seat',
    /has no seat 5/,
  ],
  [
    'nothing is drawn',
    (l) => Object.assign(first(l).view, { section: false, lenses: false }),
    'questions[0].view',
    /nothing is drawn/,
  ],
  [
    'a place that is let go elsewhere',
    (l) =>
      Object.assign(first(l), {
        try: undefined,
        answer: { kind: 'move', label: 'It stands', right: 'design.position - by', within: '0.001' },
      }),
    'questions[0].answer.right',
    /let go to another place/,
  ],
])('%s', (_, edit, path, message) => {
  const lesson = made();
  edit(lesson);
  const { seeds, doubts } = triedLesson(lesson, 6);
  expect(
    seeds.filter(({ fault }) => fault === null).length,
    `it goes: ${JSON.stringify(seeds[0]!.fault)}`,
  ).toBeGreaterThan(0);
  expect(doubts.find((doubt) => doubt.path === path)?.message, JSON.stringify(doubts)).toMatch(message);
});

describe('plain words', () => {
  test.each([
    ['By how much does the film grow?', 1],
    ['It shut by {by|fine}.', -1],
    ['One shut, and the other stayed open.', -1],
    ['It stayed open.', 0],
    ['It did not open.', 0],
    ['The steep one opened while the other shut.', 0],
    ['How far off does it stand?', 0],
  ])('%s', (text, way) => expect(directionOf(text)).toBe(way));

  test('a seat is named, or it is the only one', () => {
    expect(seatIn('the steep cone', ['shallow', 'steep'])).toBe(1);
    expect(seatIn('steep and shallow', ['shallow', 'steep'])).toBeNull();
    expect(seatIn('the film', ['cone'])).toBe(0);
  });

  test('what is said to touch first is told from what is asked or supposed', () => {
    const seats = ['shallow', 'steep'];
    expect(saysFirst('The steep cone touches first.', seats)).toEqual(['steep']);
    for (const text of ['Which touches first, the steep cone?', 'The steep cone must never have touched first.'])
      expect(saysFirst(text, seats)).toEqual([]);
  });
});
