/**
 * A lesson file, defined once: from here come the types, the validation (validate.ts) and the published JSON Schema
 * (assets/lesson.schema.json). A lesson only asks: every value it is right by is a formula over the report that the
 * program makes of its design, before and after what the question lets go.
 */
import * as z from 'zod/mini';
import { LONGEST_FORMULA } from './formula.ts';

const text = (max: number, description: string) =>
  z.string().check(z.minLength(1), z.maxLength(max), z.meta({ description }));
/** Text of a lesson. `{formula|as}` in it is worked out and told in the person's units (template.ts). */
const words = (description: string) => text(900, `${description}. {formula|as} in it is worked out`);
const formula = (description: string) => text(LONGEST_FORMULA, `${description}. A formula`);
const path = (description: string) => text(120, description);
const key = z.string().check(z.regex(/^[a-z][A-Za-z0-9]{0,23}$/), z.meta({ description: 'A name for formulas' }));

/** How a figure is told within a text, and what an answer is typed as. */
export const TOLD_AS = [
  'fine',
  'reckoned',
  'tenths',
  'micrometres',
  'length',
  'sided',
  'angle',
  'turn',
  'count',
  'number',
  'ratio',
  'share',
  'force',
  'speed',
  'temperature',
  'warmer',
] as const;
const toldAs = z.enum(TOLD_AS).check(
  z.meta({
    description:
      'fine: µm or tenths · reckoned: the same to five figures, to go on with by hand · tenths, micrometres: in these whatever the units · length: mm or in · sided: a place along the axis, toward the nose or the rear · angle: half angle in degrees, told the person’s way · turn: parts of a turn, told in degrees · count: whole · number: three figures · ratio: five figures, as of a sine · share: of 1, told in a hundred',
  }),
);

const drawn = z.strictObject({
  name: key,
  from: z.number(),
  to: z.number(),
  step: z.number().check(z.gt(0), z.meta({ description: 'The number is from + a whole number of steps' })),
  as: toldAs,
});

const put = z.strictObject({
  path: path('A place of the design, such as seats[0].bush.diameter'),
  is: formula('What stands there, in the unit of the design file'),
});

const layer = z
  .strictObject({
    title: text(60, 'What is drawn as a layer of oil, with no unit'),
    from: formula('How thick it is (mm) before the answer'),
    to: formula('How thick it is (mm) once it is let go'),
    both: z.optional(
      z.literal(true).check(z.meta({ description: 'Drawn right across: the bush on both sides of the journal' })),
    ),
    answer: z.optional(
      z.enum(['film', 'growth', 'across']).check(
        z.meta({
          description: 'What the answer is of it, so that it is marked: the film, what it grew by, twice the film',
        }),
      ),
    ),
  })
  .check(z.meta({ description: 'One film drawn as a layer between bush and journal: it grows or shrinks' }));

const triangle = z
  .strictObject({
    of: text(60, 'Which cone it is of'),
    angle: formula('Its half angle, in degrees'),
    travel: formula('The gap along the axis (mm)'),
  })
  .check(z.meta({ description: 'Drawn with why: one gap told along the axis, square to it, and square to the side' }));

const spread = z
  .strictObject({
    title: text(80, 'What is drawn, with no unit'),
    parts: z
      .array(
        z.strictObject({
          of: text(60, 'What varies'),
          sd: formula('Its standard deviation (mm), counted as the answer is'),
        }),
      )
      .check(z.minLength(1), z.maxLength(4)),
    together: text(60, 'What comes of all of them'),
    sd: formula('Its standard deviation (mm), drawn once it is let go'),
    was: z.optional(
      formula('Its standard deviation (mm) before, where that is known: drawn as it is asked, and marked after'),
    ),
  })
  .check(z.meta({ description: 'How wide each part varies, drawn one above the other: 19 in 20 lie within the bar' }));

const note = z
  .strictObject({
    seat: z.int().check(z.gte(0), z.lte(7), z.meta({ description: 'Which seat of the design, from 0' })),
    text: text(160, 'What is known there. {formula|as} in it is worked out'),
    after: z.optional(
      text(160, 'What stands there once it is let go, where that is no longer so. {formula|as} in it is worked out'),
    ),
  })
  .check(z.meta({ description: 'A given figure, written in the picture at the seat that it is of' }));

const view = z.strictObject({
  section: z.boolean().check(z.meta({ description: 'The section of the pair' })),
  lenses: z.boolean().check(z.meta({ description: 'Every seat magnified' })),
  setUps: z.optional(
    z
      .array(z.int().check(z.gte(0), z.lte(200)))
      .check(
        z.minLength(1),
        z.maxLength(3),
        z.meta({ description: 'How these readings of the design are taken, drawn: their places in its list' }),
      ),
  ),
  layer: z.optional(layer),
  triangles: z.optional(z.array(triangle).check(z.minLength(1), z.maxLength(2))),
  print: z.optional(
    z.literal(true).check(z.meta({ description: 'Once it is let go: where marking blue prints on the bush' })),
  ),
  figures: z.optional(
    z.literal([false, 'never']).check(
      z.meta({
        description:
          'false: before the answer the picture tells no film in figures · never: nor after it, where the next question asks for one',
      }),
    ),
  ),
  spread: z.optional(spread),
  trueFirst: z.optional(
    z
      .literal(true)
      .check(
        z.meta({ description: 'Before the answer the section is drawn as it is: gaps are enlarged once it is let go' }),
      ),
  ),
  notes: z.optional(z.array(note).check(z.minLength(1), z.maxLength(4))),
});

const chart = z.strictObject({
  path: path('What goes from its value to another along the chart'),
  from: formula('Where the chart begins'),
  to: formula('Where it ends'),
  at: formula('Where the answer is asked for'),
  as: toldAs,
  times: z.optional(
    formula(
      'What its figures are multiplied by, where they tell another length than the place itself: the sine, a film',
    ),
  ),
  title: text(60, 'What goes along, with no unit'),
  up: formula('What goes up, over the report there (now)'),
  upTitle: text(60, 'What goes up, with no unit'),
  points: z.int().check(z.gte(3), z.lte(60), z.meta({ description: 'At how many places the engine is asked' })),
});

const number = z.strictObject({
  kind: z.literal('number'),
  label: text(80, 'What is typed'),
  as: toldAs,
  right: formula('What is right'),
  within: formula('How far off an answer may be and still be right'),
  chart: z.optional(chart),
});

const move = z.strictObject({
  kind: z.literal('move'),
  label: text(80, 'What is moved'),
  right: formula('The position (mm) that is right'),
  within: formula('How far off (mm) it may be and still be right'),
});

const choice = z.strictObject({
  kind: z.literal('choice'),
  label: text(80, 'What is chosen'),
  options: z.array(z.strictObject({ key, text: words('What can be chosen') })).check(z.minLength(2), z.maxLength(6)),
  right: formula('The key of the right one, as a word'),
});

/** Of one question. */
export const MOST_MISTAKES = 16;

const mistake = z.strictObject({
  name: text(60, 'What it is called: sine for tangent'),
  is: formula('The answer that this mistake gives; right is the right one'),
  to: z.optional(formula('Where it may give more than one: the other end, and every number between is this mistake')),
  when: z.optional(formula('Whether it can be made with these numbers; always where left out')),
  says: words('What was done, by the learner’s own answer, and why it is not so'),
  cost: words('What it would have cost in metal'),
});

const seen = {
  ask: words('What did you see?'),
  options: z
    .array(z.strictObject({ text: words('What may have been seen'), is: formula('Whether it was so') }))
    .check(z.minLength(2), z.maxLength(5)),
};

const question = z.strictObject({
  ask: words('The question'),
  set: z.optional(
    z.array(put).check(
      z.minLength(1),
      z.maxLength(8),
      z.meta({
        description: 'What is so as it is asked, where that is not what the question before left; before is of that',
      }),
    ),
  ),
  view,
  answer: z.discriminatedUnion('kind', [number, move, choice]),
  onPaper: z.optional(
    words(
      'The same on a work sheet, where what is told with it would answer the question before; as asked if left out',
    ),
  ),
  release: z
    .array(put)
    .check(z.minLength(1), z.maxLength(8), z.meta({ description: 'What is let go: the design after it' })),
  try: z.optional(
    z.array(put).check(
      z.minLength(1),
      z.maxLength(8),
      z.meta({
        description:
          'What the answer given makes of the design (answer), carried out before what is right; a place that is asked for is gone to without it',
      }),
    ),
  ),
  cost: z.optional(
    words(
      'What an answer that is not right would have cost, by its own number (answer) and by what the engine makes of it (tried)',
    ),
  ),
  saw: z.strictObject({
    ...seen,
    other: z.optional(
      z.array(z.strictObject(seen)).check(
        z.minLength(1),
        z.maxLength(3),
        z.meta({
          description: 'What else may be asked of it: each round asks another, so that no answer is learnt by heart',
        }),
      ),
    ),
  }),
  because: words('Why it is so'),
  mistakes: z.array(mistake).check(z.minLength(1), z.maxLength(MOST_MISTAKES)),
  help: z
    .array(words('A step of the way'))
    .check(z.minLength(1), z.maxLength(6), z.meta({ description: 'In their order; the last goes first' })),
});

export const lesson = z.strictObject({
  $schema: z.optional(z.string()),
  lesson: z.literal(1),
  title: text(80, 'What the lesson is called'),
  about: text(160, 'What is learnt, in one line'),
  by: z.optional(text(60, 'Who made it, where that is to be told')),
  day: z.optional(
    z.string().check(z.regex(/^\d{4}-\d\d-\d\d$/), z.meta({ description: 'When it was given out: 2026-03-31' })),
  ),
  story: z.array(words('What is so, before any question')).check(z.minLength(1), z.maxLength(6)),
  design: z
    .unknown()
    .check(z.meta({ description: 'The file name of an example, or a whole design as in design.schema.json' })),
  numbers: z.array(drawn).check(z.minLength(1), z.maxLength(12)),
  where: z.array(put).check(z.maxLength(24), z.meta({ description: 'What the numbers make of the design' })),
  keep: z.array(formula('Whether these numbers are given')).check(
    z.maxLength(8),
    z.meta({
      description: 'All must be so before and after the first question; other numbers are drawn where one is not',
    }),
  ),
  questions: z.array(question).check(z.minLength(1), z.maxLength(4)),
  carry: words('What to carry away'),
  caution: z.optional(text(400, 'Where the work can hurt someone')),
});

export type Lesson = z.infer<typeof lesson>;
export type Question = z.infer<typeof question>;
export type Answer = Question['answer'];
export type Saw = Question['saw'];
export type Mistake = z.infer<typeof mistake>;
export type ToldAs = (typeof TOLD_AS)[number];
export type Put = z.infer<typeof put>;
export type Chart = z.infer<typeof chart>;
