/** From text to a lesson, or to everything that is wrong with it, each with its place. */
import { quantityIfAt } from '../design/place.ts';
import { type Designs, deal, designOf, hasNumberAt } from './deal.ts';
import { lesson as definition, type Lesson } from './definition.ts';
import { formulaOf } from './formula.ts';
import { faultsOfText } from './template.ts';

export interface LessonError {
  path: string;
  message: string;
}
export type LessonRead = { ok: true; lesson: Lesson } | { ok: false; errors: LessonError[] };

/** Characters: a lesson with a whole design in it. */
const LONGEST = 400_000;
const MOST_ERRORS = 60;

/** `dealt`: whether it is tried that its first numbers go together, which takes as long as a round of it. */
export function parseLesson(text: string, designs: Designs, dealt = true): LessonRead {
  if (text.length > LONGEST) return refused(`the file has ${text.length} characters; at most ${LONGEST} are read`);
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused(`not JSON: ${(error as Error).message.slice(0, 160)}`);
  }
  return validateLesson(raw, designs, dealt);
}

const refused = (message: string): LessonRead => ({ ok: false, errors: [{ path: '', message }] });

export function validateLesson(raw: unknown, designs: Designs, dealt = true): LessonRead {
  const read = definition.safeParse(raw);
  if (!read.success)
    return {
      ok: false,
      errors: (read.error.issues as unknown as Issue[]).slice(0, MOST_ERRORS).map((issue) => ({
        path: pathText(issue.path),
        message: issueText(issue),
      })),
    };
  const lesson = read.data;
  const errors = [
    ...wordErrors(lesson),
    ...formulaErrors(lesson),
    ...nameErrors(lesson),
    ...placeErrors(lesson, designs),
  ];
  if (errors.length === 0 && dealt) {
    const first = deal(lesson, 1, designs);
    if (!first.ok) errors.push({ path: 'questions', message: first.message });
  }
  return errors.length === 0 ? { ok: true, lesson } : { ok: false, errors: errors.slice(0, MOST_ERRORS) };
}

/** The part of a validation issue that the words below need. */
interface Issue {
  code: string;
  /** of what kind that is which is too small or too great */
  origin?: string;
  path: PropertyKey[];
  expected?: string;
  minimum?: number;
  /** whether the least itself is taken */
  inclusive?: boolean;
  maximum?: number;
  keys?: string[];
  values?: unknown[];
}

function issueText({ code, origin, expected, minimum, inclusive, maximum, keys = [], values = [] }: Issue): string {
  switch (code) {
    case 'unrecognized_keys':
      return `unknown key ${keys.map((key) => `“${key.slice(0, 40)}”`).join(', ')}`;
    case 'invalid_type':
      return `missing, or of another kind; it must be ${expected === 'array' ? 'a list' : `a ${expected}`}`;
    case 'too_small':
      return origin === 'string' && minimum === 1
        ? 'nothing stands here; it cannot stay empty'
        : inclusive === false
          ? `too small; it must be more than ${minimum}`
          : `too small or too short; at least ${minimum}`;
    case 'too_big':
      return `too great or too long; at most ${maximum}`;
    case 'invalid_value':
      return `it must be ${values.map((value) => JSON.stringify(value)).join(' or ')}`;
    case 'invalid_union':
      return 'it must be of kind "number", "move" or "choice"';
    default:
      return 'not as it must be: a name begins with a small letter and has letters and digits alone';
  }
}

const pathText = (path: readonly PropertyKey[]): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${String(key)}`)).join('');

/** Every text and formula of a lesson with its place: `is` of what is told in words, and of what is worked out. */
function* entries(
  of: unknown,
  at: readonly PropertyKey[] = [],
): Generator<{ path: readonly PropertyKey[]; text: string }> {
  if (typeof of === 'string') yield { path: at, text: of };
  else if (typeof of === 'object' && of !== null)
    for (const [key, inner] of Object.entries(of))
      yield* entries(inner, [...at, Array.isArray(of) ? Number(key) : key]);
}

const FORMULAS = new Set([
  'is',
  'when',
  'right',
  'within',
  'from',
  'to',
  'at',
  'up',
  'times',
  'angle',
  'travel',
  'sd',
  'was',
]);
const isFormula = (path: readonly PropertyKey[]) =>
  path[0] === 'keep' || (FORMULAS.has(String(path.at(-1))) && path[0] !== 'numbers');
const isPlain = (path: readonly PropertyKey[]) =>
  ['path', 'key', 'kind', 'as', 'name', '$schema'].includes(String(path.at(-1)));
const ownEntries = ({ design: _, ...rest }: Lesson) => [...entries(rest)];

const formulaErrors = (lesson: Lesson): LessonError[] =>
  ownEntries(lesson)
    .filter(({ path }) => isFormula(path))
    .flatMap(({ path, text }) => {
      const read = formulaOf(text);
      return read.ok ? [] : [{ path: pathText(path), message: read.message }];
    });

const wordErrors = (lesson: Lesson): LessonError[] =>
  ownEntries(lesson)
    .filter(({ path }) => !isFormula(path) && !isPlain(path))
    .flatMap(({ path, text }) => faultsOfText(text).map((message) => ({ path: pathText(path), message })));

function nameErrors({ numbers, questions }: Lesson): LessonError[] {
  const taken = new Set(['before', 'after', 'now', 'right', 'answer', 'design', 'tried']);
  const twice = (names: readonly string[], path: string) =>
    names.filter((name, i) => names.indexOf(name) !== i).map((name) => ({ path, message: `“${name}” stands twice` }));
  return [
    ...twice(
      numbers.map(({ name }) => name),
      'numbers',
    ),
    ...numbers.flatMap(({ name, from, to }, i) => [
      ...(taken.has(name) ? [{ path: `numbers[${i}].name`, message: `“${name}” has a meaning of its own` }] : []),
      ...(to < from ? [{ path: `numbers[${i}].to`, message: `found ${to}; it must be at least ${from}` }] : []),
    ]),
    ...questions.flatMap(({ mistakes, answer }, i) => [
      ...twice(
        mistakes.map(({ name }) => name),
        `questions[${i}].mistakes`,
      ),
      ...(answer.kind === 'choice'
        ? twice(
            answer.options.map(({ key }) => key),
            `questions[${i}].answer.options`,
          )
        : []),
    ]),
  ];
}

function placeErrors(lesson: Lesson, designs: Designs): LessonError[] {
  const design = designOf(lesson, designs);
  if (!design.ok) return [{ path: 'design', message: design.message }];
  const places = [
    ...lesson.where.map(({ path }, i) => ({ at: `where[${i}].path`, path })),
    ...lesson.questions.flatMap(({ set = [], release, try: tries = [], answer }, i) => [
      ...set.map(({ path }, k) => ({ at: `questions[${i}].set[${k}].path`, path })),
      ...release.map(({ path }, k) => ({ at: `questions[${i}].release[${k}].path`, path })),
      ...tries.map(({ path }, k) => ({ at: `questions[${i}].try[${k}].path`, path })),
      ...(answer.kind === 'number' && answer.chart
        ? [{ at: `questions[${i}].answer.chart.path`, path: answer.chart.path }]
        : []),
    ]),
  ];
  return places.flatMap(({ at, path }) =>
    quantityIfAt(path, design.value) === null && !hasNumberAt(design.value, path)
      ? [{ path: at, message: `a design has no number at “${path}”` }]
      : [],
  );
}
