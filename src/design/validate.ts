/**
 * From a parsed value to a design, or to every error at once, in words a machinist can act on.
 * Nothing is half-loaded: the answer is a whole design or the list of what is wrong.
 */
import { type Design, design as definition } from './definition.ts';
import { quantityIfAt } from './place.ts';
import { fileUnit } from './quantity.ts';
import { MEANT } from './recordDefinition.ts';
import { type DesignError, ruleErrors } from './rules.ts';

export type { DesignError } from './rules.ts';
export type Validation = { ok: true; design: Design } | { ok: false; errors: DesignError[] };

/** The part of a validation issue that the explanations below need. */
interface Issue {
  code: string;
  path: PropertyKey[];
  input?: unknown;
  expected?: string;
  origin?: string;
  minimum?: number | bigint;
  maximum?: number | bigint;
  inclusive?: boolean;
  keys?: string[];
  values?: unknown[];
  options?: unknown[];
  discriminator?: string;
}

/** Errors that are listed; more help nobody. */
const MOST_ERRORS = 500;
/** Characters of a message and of a path. */
const LONGEST_WORDS = 300;
const LONGEST_KEY = 60;

/** Validates a value, as read from JSON. */
export function validateDesign(raw: unknown): Validation {
  const newer = newerVersion(raw);
  if (newer !== null) return { ok: false, errors: [{ path: 'conepair', message: newer }] };
  const result = definition.safeParse(raw, { reportInput: true });
  const issues = result.success ? [] : (result.error.issues as unknown as Issue[]);
  // All else is judged with the key that was meant, so that a slip of one letter is one error.
  const { meant, slips } = withKeysMeant(raw, issues);
  if (slips.length > 0) {
    const others = validateDesign(meant);
    return { ok: false, errors: [...slips, ...(others.ok ? [] : others.errors)].slice(0, MOST_ERRORS + 1) };
  }
  const errors = issues.flatMap((issue) => explain(issue, raw));
  for (const error of ruleErrors(raw)) errors.push(error);
  if (errors.length === 0 && result.success) return { ok: true, design: result.data };
  const listed = errors
    .slice(0, MOST_ERRORS)
    .map(({ path, message }) => ({ path: clipped(path, LONGEST_WORDS), message: clipped(message, LONGEST_WORDS) }));
  if (errors.length > MOST_ERRORS) listed.push({ path: '', message: `and ${errors.length - MOST_ERRORS} errors more` });
  return { ok: false, errors: listed };
}

/** What a file of a later format may hold is not known here: nothing else is said of it. */
function newerVersion(raw: unknown): string | null {
  const version: unknown =
    typeof raw === 'object' && raw !== null ? (raw as { conepair?: unknown }).conepair : undefined;
  return typeof version === 'number' && Number.isInteger(version) && version > 1
    ? `found ${version}: a newer program made this file; this one reads version 1`
    : null;
}

const clipped = (text: string, most: number) => (text.length > most ? `${text.slice(0, most - 1)}…` : text);

/** Over 60 lines and left whole: a case a code of the validator, each a sentence. */
function explain(issue: Issue, raw: unknown): DesignError[] {
  const path = pathText(issue.path);
  const found = issue.input;
  switch (issue.code) {
    case 'unrecognized_keys':
      return (issue.keys ?? []).map((key) => ({
        path: pathText([...issue.path, clipped(key, LONGEST_KEY)]),
        message: unknownKey(key, knownKeys(issue.path, raw)),
      }));
    case 'invalid_type':
      return [
        {
          path,
          message:
            found === undefined
              ? `missing; ${kindOf(issue.expected)} is required`
              : `found ${show(found)}; it must be ${kindOf(issue.expected)}`,
        },
      ];
    case 'too_small':
      return [
        {
          path,
          message: `found ${sizeOf(found)}${unitAt(issue, raw)}; it must be ${issue.inclusive === false ? 'above' : 'at least'} ${issue.minimum}${unitOf(issue)}${unitAt(issue, raw)}`,
        },
      ];
    case 'too_big':
      return [
        {
          path,
          message: `found ${sizeOf(found)}${unitAt(issue, raw)}; it must be ${issue.inclusive === false ? 'below' : 'at most'} ${issue.maximum}${unitOf(issue)}${unitAt(issue, raw)}`,
        },
      ];
    case 'invalid_value':
      return [
        {
          path,
          message:
            found === undefined
              ? `missing; it must be ${oneOf(issue.values)}`
              : `found ${show(found)}; it must be ${oneOf(issue.values)}`,
        },
      ];
    case 'invalid_union':
      return [
        {
          path,
          message: `found ${show((found as Record<string, unknown> | undefined)?.[issue.discriminator ?? 'kind'])}; it must be ${oneOf(issue.options)}`,
        },
      ];
    case 'invalid_format':
      return [
        {
          path,
          message: `found ${show(found)}; it must ${MEANT[String(issue.path.at(-1))] ?? 'hold something other than spaces'}`,
        },
      ];
    default:
      return [{ path, message: `found ${show(found)}, which is not allowed here` }];
  }
}

/** `seats[0].journal.from` */
function pathText(path: PropertyKey[]): string {
  return path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${String(key)}`)).join('');
}

function kindOf(expected: string | undefined): string {
  const words: Record<string, string> = {
    number: 'a finite number',
    int: 'a whole number',
    string: 'text in quotes',
    array: 'a list in [ ]',
    tuple: 'a pair [station, deviation]',
    object: 'a group in { }',
  };
  return words[expected ?? ''] ?? `a ${expected}`;
}

/** A value as it stood in the file, or what it is where that would be long. */
function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null)
    return Object.keys(value).length === 0 ? '{}' : `a group with "${clipped(Object.keys(value)[0]!, 20)}"`;
  return clipped(typeof value === 'string' ? JSON.stringify(value.slice(0, LONGEST_KEY)) : String(value), 40);
}

const sizeOf = (value: unknown) =>
  Array.isArray(value)
    ? `${value.length} entries`
    : typeof value === 'string'
      ? `${value.length} characters`
      : show(value);
const unitOf = (issue: Issue) =>
  issue.origin === 'array' ? ' entries' : issue.origin === 'string' ? ' characters' : '';
/** The unit of a number that is out of its bounds, as the file has it. */
function unitAt({ origin, path }: Issue, raw: unknown): string {
  const at = origin === 'number' ? quantityIfAt(pathText(path), raw as Design) : null;
  return at ? fileUnit(at.quantity) : '';
}

const oneOf = (values: unknown[] | undefined) => (values ?? []).map(show).join(values?.length === 2 ? ' or ' : ', ');

/** The one of `known` that a slip of some letters makes this key of. */
function keyMeant(key: string, known: string[]): string | undefined {
  const short = clipped(key, LONGEST_KEY);
  const [nearest] = known
    .map((name) => ({ name, off: editDistance(short.toLowerCase(), name.toLowerCase()) }))
    .sort((a, b) => a.off - b.off);
  return nearest && nearest.off <= Math.max(2, short.length / 3) ? nearest.name : undefined;
}

function unknownKey(key: string, known: string[]): string {
  const meant = keyMeant(key, known);
  const hint = meant === undefined ? `allowed here: ${known.join(', ')}` : `did you mean "${meant}"?`;
  return `unknown key "${clipped(key, LONGEST_KEY)}"; ${hint}`;
}

/** A copy in which unknown keys stand as what they were meant for, where that is missing; and those as errors. */
function withKeysMeant(raw: unknown, issues: Issue[]): { meant: unknown; slips: DesignError[] } {
  let meant = raw;
  const slips = issues.flatMap((issue) =>
    (issue.keys ?? []).flatMap((key) => {
      const to = keyMeant(key, knownKeys(issue.path, raw));
      const group = issue.path.reduce<unknown>((at, step) => (at as Record<PropertyKey, unknown>)[step], meant);
      if (to === undefined || to in (group as object)) return [];
      meant = renamed(meant, issue.path, key, to);
      return explain({ ...issue, keys: [key] }, raw);
    }),
  );
  return { meant, slips };
}

/** The same with one key of the group at a path called otherwise; what stands there is not copied, however deep. */
function renamed(raw: unknown, [step, ...path]: PropertyKey[], key: string, to: string): unknown {
  if (step === undefined) {
    const { [key]: value, ...others } = raw as Record<string, unknown>;
    return { ...others, [to]: value };
  }
  const copy = (Array.isArray(raw) ? [...raw] : { ...(raw as object) }) as Record<PropertyKey, unknown>;
  copy[step] = renamed(copy[step], path, key, to);
  return copy;
}

interface Node {
  def: {
    type: string;
    innerType?: Node;
    shape?: Record<string, Node>;
    element?: Node;
    items?: Node[];
    options?: Node[];
    discriminator?: string;
  };
  _zod: { values?: ReadonlySet<unknown> };
}

/** The keys the definition allows at a path. */
function knownKeys(path: PropertyKey[], raw: unknown): string[] {
  let node: Node | undefined = definition as unknown as Node;
  let value: unknown = raw;
  for (const key of [...path, undefined]) {
    while (node?.def.type === 'optional') node = node.def.innerType;
    if (node?.def.type === 'union') {
      const by: string = node.def.discriminator ?? '';
      const kind: unknown = (value as Record<string, unknown> | undefined)?.[by];
      node = node.def.options?.find((option) => option.def.shape?.[by]?._zod.values?.has(kind));
    }
    if (key === undefined) break;
    value = (value as Record<PropertyKey, unknown> | undefined)?.[key];
    node = node?.def.shape?.[String(key)] ?? node?.def.element ?? node?.def.items?.[Number(key)];
  }
  return Object.keys(node?.def.shape ?? {});
}

/** Levenshtein's distance: the fewest single-letter changes from one word to another. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length]!;
}
