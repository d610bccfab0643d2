/**
 * The formulas of a lesson: a small language of numbers, words and conditions over named values, read by jsep and
 * worked out here. Angles of sin, cos, tan and their inverses are degrees, as in a design file.
 *
 * A formula reaches what it is handed and nothing else: a name or a key is looked for among the own keys of plain
 * groups, an entry of a list by its place or by its `name` (`after.fit.seats.steep.leastFilm`). Its length and its
 * size are bounded, so that a lesson from elsewhere can neither run code nor keep the page busy.
 */
import jsep from 'jsep';
import { degrees, radians } from '../report/convert.ts';

export type Value = number | string | boolean;
export type Scope = Readonly<Record<string, unknown>>;
/** `at`: where in the lesson the formula stands, where that is known. */
export type Worked<T> = { ok: true; value: T } | { ok: false; message: string; at?: string };

export const LONGEST_FORMULA = 400;
/** Parts of a formula: numbers, names, signs, calls. */
const MOST_PARTS = 200;

const FUNCTIONS: Readonly<Record<string, (...numbers: number[]) => number>> = {
  sin: (a) => Math.sin(radians(a!)),
  cos: (a) => Math.cos(radians(a!)),
  tan: (a) => Math.tan(radians(a!)),
  asin: (x) => degrees(Math.asin(x!)),
  acos: (x) => degrees(Math.acos(x!)),
  atan: (x) => degrees(Math.atan(x!)),
  abs: Math.abs,
  sqrt: Math.sqrt,
  min: Math.min,
  max: Math.max,
  round: Math.round,
};

const OF_NUMBERS: Readonly<Record<string, (a: number, b: number) => number | boolean>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
};

/** What is wrong with a formula; never leaves this file. */
class FormulaFault extends Error {}
const fault = (message: string): never => {
  throw new FormulaFault(message);
};

/** A formula that was read: what it names, and its value in a scope. */
export interface Formula {
  /** every name it begins from, with the keys that follow it: `after.fit.seats` */
  names: readonly string[];
  value(scope: Scope): Worked<Value>;
}

export function formulaOf(text: string): Worked<Formula> {
  return caught(() => {
    const tree = parsed(text);
    const names: string[] = [];
    let parts = 0;
    const look = (node: jsep.Expression) => {
      parts++;
      if (parts > MOST_PARTS) fault(`it has more than ${MOST_PARTS} parts`);
      checked(node, names).forEach(look);
    };
    look(tree);
    return { names, value: (scope) => caught(() => solved(tree, scope)) };
  });
}

/** The value of a formula in a scope, or why there is none. */
export function worked(text: string, scope: Scope): Worked<Value> {
  const formula = formulaOf(text);
  return formula.ok ? formula.value.value(scope) : formula;
}

/** The same where only a number will do. */
export function workedNumber(text: string, scope: Scope): Worked<number> {
  const found = worked(text, scope);
  if (!found.ok) return found;
  return typeof found.value === 'number'
    ? { ok: true, value: found.value }
    : { ok: false, message: `“${text}” is ${show(found.value)}; it must be a number` };
}

function caught<T>(work: () => T): Worked<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (error instanceof FormulaFault) return { ok: false, message: error.message };
    throw error;
  }
}

/** What the reader of formulas says, in words for who writes one. */
function plain(message: string): string {
  const [, at = ''] = /at character (\d+)$/.exec(message) ?? [];
  const place = at === '' ? '' : `, at sign ${Number(at) + 1}`;
  const missing = /^Expected ([^a-z]{1,2}) at/.exec(message)?.[1];
  if (missing) return `a ${missing} is missing${place}`;
  if (/^Expected expression/.test(message)) return `a value is missing after a sign${place}`;
  if (/^Unclosed quote/.test(message)) return `a closing quote is missing${place}`;
  if (/^Unclosed|^Missing/.test(message)) return `a closing bracket is missing${place}`;
  const odd = /^Unexpected (?:token )?"?(.+?)"? at/.exec(message)?.[1];
  return odd ? `${odd} does not belong there${place}` : message;
}

function parsed(text: string): jsep.Expression {
  if (text.length > LONGEST_FORMULA) fault(`it has ${text.length} characters; at most ${LONGEST_FORMULA} are read`);
  try {
    return jsep(text);
  } catch (error) {
    return fault(`“${text}” is no formula: ${plain((error as Error).message)}`);
  }
}

/** The parts within a part that may stand in a formula; anything else is refused. */
function checked(node: jsep.Expression, names: string[]): jsep.Expression[] {
  const within = node as unknown as Record<string, jsep.Expression> & { operator: string; raw: string };
  switch (node.type) {
    case 'Literal':
      if (!['number', 'string', 'boolean'].includes(typeof node.value)) fault(`“${within.raw}” is not known here`);
      return [];
    case 'Identifier':
      names.push(node.name as string);
      return [];
    case 'MemberExpression': {
      const path = pathOf(node);
      names.push(path.join('.'));
      return [];
    }
    case 'UnaryExpression':
      if (within.operator !== '-' && within.operator !== '!') fault(`“${within.operator}” is not known here`);
      return [within.argument!];
    case 'BinaryExpression':
      if (!Object.hasOwn(OF_NUMBERS, within.operator) && !['==', '!=', '&&', '||'].includes(within.operator))
        fault(`“${within.operator}” is not known here; use + - * / < <= > >= == != && ||`);
      return [within.left!, within.right!];
    case 'ConditionalExpression':
      return [within.test!, within.consequent!, within.alternate!];
    case 'CallExpression': {
      const name = within.callee?.type === 'Identifier' ? String(within.callee.name) : '';
      if (!Object.hasOwn(FUNCTIONS, name))
        fault(`“${name || 'this call'}” is no function here; use ${Object.keys(FUNCTIONS).join(', ')}`);
      return node.arguments as jsep.Expression[];
    }
    default:
      return fault('it is no single formula');
  }
}

/** `after.fit.seats[1]` as its keys; a key that has to be worked out is refused: of it nothing is known beforehand. */
function pathOf(node: jsep.Expression): string[] {
  if (node.type === 'Identifier') return [String(node.name)];
  if (node.type !== 'MemberExpression') return fault('a key follows something that has none');
  const key = node.property as jsep.Expression;
  if (node.computed && !(key.type === 'Literal' && ['number', 'string'].includes(typeof key.value)))
    fault('a key in [ ] is a number or a word in quotes');
  return [...pathOf(node.object as jsep.Expression), String(node.computed ? key.value : key.name)];
}

function solved(node: jsep.Expression, scope: Scope): Value {
  const within = node as unknown as Record<string, jsep.Expression> & { operator: string };
  const number = (part: jsep.Expression): number => {
    const value = solved(part, scope);
    return typeof value === 'number' ? value : fault(`${show(value)} stands where a number must`);
  };
  const so = (part: jsep.Expression): boolean => {
    const value = solved(part, scope);
    return typeof value === 'boolean' ? value : fault(`${show(value)} stands where a condition must`);
  };
  switch (node.type) {
    case 'Literal':
      return node.value as Value;
    case 'UnaryExpression':
      return within.operator === '!' ? !so(within.argument!) : -number(within.argument!);
    case 'ConditionalExpression':
      return solved(so(within.test!) ? within.consequent! : within.alternate!, scope);
    case 'CallExpression':
      return finite(FUNCTIONS[String(within.callee!.name)]!(...(node.arguments as jsep.Expression[]).map(number)));
    case 'BinaryExpression': {
      const { left, right, operator } = within;
      if (operator === '&&') return so(left!) && so(right!);
      if (operator === '||') return so(left!) || so(right!);
      if (operator === '==') return solved(left!, scope) === solved(right!, scope);
      if (operator === '!=') return solved(left!, scope) !== solved(right!, scope);
      const value = OF_NUMBERS[operator]!(number(left!), number(right!));
      return typeof value === 'number' ? finite(value) : value;
    }
    default: {
      const path = pathOf(node);
      const found = path.reduce<unknown>((of, key) => entryOf(of, key), scope);
      if (typeof found === 'number') return finite(found);
      if (typeof found === 'string' || typeof found === 'boolean') return found;
      return fault(
        found === undefined || found === null ? `there is no ${path.join('.')}` : `${path.join('.')} is a group`,
      );
    }
  }
}

/** Among the own keys of a group; of a list its length, the entry at a place, or the one of that name. */
function entryOf(of: unknown, key: string): unknown {
  if (typeof of !== 'object' || of === null) return undefined;
  if (!Array.isArray(of)) return Object.hasOwn(of, key) ? (of as Record<string, unknown>)[key] : undefined;
  if (/^\d+$/.test(key)) return of[Number(key)];
  if (key === 'length') return of.length;
  return of.find((entry) => typeof entry === 'object' && entry !== null && (entry as { name?: unknown }).name === key);
}

const finite = (value: number): number =>
  Number.isFinite(value) ? value : fault('it has no finite value (something is divided by nothing)');

const show = (value: Value) => (typeof value === 'string' ? `"${value}"` : `${value}`);
