/**
 * From text or a parsed value to a design, or to every error at once, in words a machinist can act on.
 * Nothing is half-loaded: the answer is a whole design or the list of what is wrong.
 */
import type { Design } from './definition.ts';
import { design as definition } from './definition.ts';
import { quantityIfAt } from './place.ts';
import { fileUnit } from './quantity.ts';
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
}

/** Validates the text of a design file. */
export function parseDesign(text: string): Validation {
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return { ok: false, errors: [{ path: '', message: notJson(text, error as SyntaxError) }] };
  }
  return validateDesign(raw);
}

/** Validates a value, as read from JSON. */
export function validateDesign(raw: unknown): Validation {
  const result = definition.safeParse(raw, { reportInput: true });
  const errors = result.success ? [] : (result.error.issues as unknown as Issue[]).flatMap((issue) => explain(issue, raw));
  errors.push(...ruleErrors(raw));
  return errors.length === 0 && result.success ? { ok: true, design: result.data } : { ok: false, errors };
}

function notJson(text: string, error: SyntaxError): string {
  if (text.trim() === '') return 'the file is empty; a design file is JSON and starts with {"conepair": 1, …}';
  const at = placeOfError(text, error.message);
  if (at === null) return `not JSON (${error.message})`;
  const before = text.slice(0, at).split('\n');
  const line = before.length;
  const column = before[line - 1]!.length + 1;
  const found = text.slice(at).split('\n')[0]!.slice(0, 24);
  return `not JSON: line ${line}, column ${column}: found ${found === '' ? 'the end of the line' : `"${found}"`}; look for a missing comma, quote or bracket just before it`;
}

/**
 * Where the text stops being JSON. Engines word it differently: an offset; a line and a column; or only the
 * unexpected token, whose place is then sought.
 */
function placeOfError(text: string, message: string): number | null {
  const offset = /position (\d+)/.exec(message);
  if (offset) return Number(offset[1]);
  const lineAndColumn = /line (\d+) column (\d+)/.exec(message);
  if (lineAndColumn)
    return (
      text
        .split('\n')
        .slice(0, Number(lineAndColumn[1]) - 1)
        .reduce((sum, line) => sum + line.length + 1, 0) +
      Number(lineAndColumn[2]) -
      1
    );
  // The place is the first such token up to which the text is not even the beginning of JSON.
  const token = /Unexpected token '(.)'/u.exec(message)?.[1];
  if (token === undefined) return null;
  for (let at = text.indexOf(token); at >= 0; at = text.indexOf(token, at + 1)) {
    if (!continues(text.slice(0, at + token.length))) return at;
  }
  return null;
}

/** Whether a text could be the beginning of JSON: its only fault is that it ends. */
function continues(beginning: string): boolean {
  try {
    JSON.parse(beginning);
    return true;
  } catch (error) {
    const { message } = error as SyntaxError;
    return /end of JSON|end of data|Unterminated string/i.test(message) || message.includes(`position ${beginning.length}`);
  }
}

function explain(issue: Issue, raw: unknown): DesignError[] {
  const path = pathText(issue.path);
  const found = issue.input;
  switch (issue.code) {
    case 'unrecognized_keys':
      return (issue.keys ?? []).map((key) => ({ path: pathText([...issue.path, key]), message: unknownKey(key, knownKeys(issue.path, raw)) }));
    case 'invalid_type':
      return [{ path, message: found === undefined ? `missing; ${kindOf(issue.expected)} is required` : `found ${show(found)}; it must be ${kindOf(issue.expected)}` }];
    case 'too_small':
      return [{ path, message: `found ${sizeOf(found)}${unitAt(issue, raw)}; it must be ${issue.inclusive === false ? 'above' : 'at least'} ${issue.minimum}${unitOf(issue)}${unitAt(issue, raw)}` }];
    case 'too_big':
      return [{ path, message: `found ${sizeOf(found)}${unitAt(issue, raw)}; it must be ${issue.inclusive === false ? 'below' : 'at most'} ${issue.maximum}${unitOf(issue)}${unitAt(issue, raw)}` }];
    case 'invalid_value':
      return [{ path, message: found === undefined ? `missing; it must be ${oneOf(issue.values)}` : `found ${show(found)}; it must be ${oneOf(issue.values)}` }];
    case 'invalid_union':
      return [{ path, message: `found ${show((found as Record<string, unknown> | undefined)?.kind)}; it must be ${oneOf(issue.options)}` }];
    case 'invalid_format':
      return [{ path, message: `found ${show(found)}; it must hold something other than spaces` }];
    default:
      return [{ path, message: `found ${show(found)}, which is not allowed here` }];
  }
}

/** `seats[0].journal.from` */
function pathText(path: PropertyKey[]): string {
  return path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${String(key)}`)).join('');
}

function kindOf(expected: string | undefined): string {
  const words: Record<string, string> = { number: 'a finite number', int: 'a whole number', string: 'text in quotes', array: 'a list in [ ]', tuple: 'a pair [station, deviation]', object: 'a group in { }' };
  return words[expected ?? ''] ?? `a ${expected}`;
}

function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

const sizeOf = (value: unknown) => (Array.isArray(value) ? `${value.length} entries` : typeof value === 'string' ? `${value.length} characters` : show(value));
const unitOf = (issue: Issue) => (issue.origin === 'array' ? ' entries' : issue.origin === 'string' ? ' characters' : '');
/** The unit of a number that is out of its bounds, as the file has it. */
function unitAt({ origin, path }: Issue, raw: unknown): string {
  const at = origin === 'number' ? quantityIfAt(pathText(path), raw as Design) : null;
  return at ? fileUnit(at.quantity) : '';
}

const oneOf = (values: unknown[] | undefined) => (values ?? []).map(show).join(values?.length === 2 ? ' or ' : ', ');

function unknownKey(key: string, known: string[]): string {
  const nearest = known.map((name) => ({ name, off: editDistance(key.toLowerCase(), name.toLowerCase()) })).sort((a, b) => a.off - b.off)[0];
  const hint = nearest && nearest.off <= Math.max(2, key.length / 3) ? `did you mean "${nearest.name}"?` : `allowed here: ${known.join(', ')}`;
  return `unknown key "${key}"; ${hint}`;
}

interface Node {
  def: { type: string; innerType?: Node; shape?: Record<string, Node>; element?: Node; items?: Node[]; options?: Node[]; values?: unknown[] };
}

/** The keys the definition allows at a path. */
function knownKeys(path: PropertyKey[], raw: unknown): string[] {
  let node: Node | undefined = definition as unknown as Node;
  let value: unknown = raw;
  for (const key of [...path, undefined]) {
    while (node?.def.type === 'optional') node = node.def.innerType;
    if (node?.def.type === 'union') {
      const kind: unknown = (value as { kind?: unknown } | undefined)?.kind;
      node = node.def.options?.find((option) => option.def.shape?.kind?.def.values?.includes(kind));
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
    for (let j = 1; j <= b.length; j++) next[j] = Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length]!;
}
