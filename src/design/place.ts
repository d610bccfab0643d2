/**
 * A place in the design by its path in the file (`seats[0].journal.from`): what stands there, what the
 * definition says of it, and the design with another value there. Every control is made from these.
 */
import * as z from 'zod/mini';
import { type Design, design, type QuantityMeta } from './definition.ts';

/** What the definition says of a number. */
export interface QuantityAt extends QuantityMeta {
  bounds: Bound[];
  /** Whether the file may go without it. */
  optional: boolean;
}

export interface Bound {
  /** which way it limits */
  side: 'least' | 'greatest';
  /** in the unit of the file */
  value: number;
  /** whether the value itself is allowed */
  inclusive: boolean;
}

export type Step = string | number;
type Node = Readonly<Record<Step, unknown>>;

/** The keys and places in lists that a path goes through. */
export const stepsOf = (path: string): Step[] =>
  path
    .split(/[.[\]]+/)
    .filter((step) => step !== '')
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));

export const pathOf = (steps: readonly Step[]): string =>
  steps.map((step, i) => (typeof step === 'number' ? `[${step}]` : `${i > 0 ? '.' : ''}${step}`)).join('');

export const into = (node: unknown, step: Step): unknown =>
  typeof node === 'object' && node !== null ? (node as Node)[step] : undefined;

/** What stands at a path; undefined where the design has nothing there. */
export const valueAt = (of: Design, path: string): unknown => stepsOf(path).reduce<unknown>(into, of);

/** The design with a value at a path; sections on the way that are not there yet are made. */
export const withValue = (of: Design, path: string, value: unknown): Design => put(of, stepsOf(path), value) as Design;

function put(node: unknown, [step, ...rest]: Step[], value: unknown): unknown {
  if (step === undefined) return value;
  const inner = put(into(node, step), rest, value);
  return Array.isArray(node)
    ? node.map((entry, i) => (i === step ? inner : entry))
    : { ...(node as Node | undefined), [step]: inner };
}

/** The design without what stands at a path; a section that cannot do without it goes with it. */
export function without(of: Design, path: string): Design {
  const steps = stepsOf(path);
  let depth = steps.length;
  while (depth > 1 && !isOptional(schemaAt(steps.slice(0, depth)))) depth--;
  return drop(of, steps.slice(0, depth)) as Design;
}

function drop(node: unknown, [step, ...rest]: Step[]): unknown {
  if (typeof node !== 'object' || node === null || step === undefined) return node;
  if (Array.isArray(node)) return node.map((entry, i) => (i === step ? drop(entry, rest) : entry));
  if (rest.length > 0) return { ...node, [step]: drop((node as Node)[step], rest) };
  return Object.fromEntries(Object.entries(node).filter(([key]) => key !== step));
}

/**
 * What the definition says of the number at a path. Throws for a path it does not know: a slip of ours.
 * `of` is needed within the readings, whose numbers depend on their kind.
 */
export function quantityAt(path: string, of?: Design): QuantityAt {
  const found = quantityIfAt(path, of);
  if (!found) throw new Error(`the definition has no quantity at ${path}`);
  return found;
}

/** The same; null where no quantity stands there. */
export function quantityIfAt(path: string, of?: Design): QuantityAt | null {
  const schema = schemaAt(stepsOf(path), of);
  const bare = schema && bareOf(schema);
  const meta = bare && (z.globalRegistry.get(bare) as QuantityMeta | undefined);
  if (!schema || !bare || !meta?.quantity) return null;
  return { ...meta, bounds: boundsOf(bare), optional: isOptional(schema) };
}

const defaults = new Map<string, number>();

/**
 * What holds where the number at a path is left out, in the unit of the file. Throws where the definition states none:
 * a slip of ours.
 */
export function defaultAt(path: string): number {
  const known = defaults.get(path) ?? quantityAt(path).default;
  if (known === undefined) throw new Error(`the definition states no default at ${path}`);
  defaults.set(path, known);
  return known;
}

// The definition as a tree: zod's own description of objects, lists and what may be left out.
type Schema = z.core.$ZodType & {
  _zod: {
    values?: ReadonlySet<unknown>;
    def: {
      type: string;
      shape?: Record<string, Schema>;
      element?: Schema;
      items?: Schema[];
      options?: Schema[];
      discriminator?: string;
      innerType?: Schema;
      checks?: { _zod: { def: object } }[];
    };
  };
};

const isOptional = (schema: Schema | undefined): boolean => schema?._zod.def.type === 'optional';
const bareOf = (schema: Schema): Schema => (isOptional(schema) ? bareOf(schema._zod.def.innerType!) : schema);

function schemaAt(steps: readonly Step[], of?: Design): Schema | undefined {
  let schema: Schema | undefined = design as unknown as Schema;
  let node: unknown = of;
  for (const step of steps) {
    const def: Partial<Schema['_zod']['def']> = schema ? ofItsKind(bareOf(schema), node)._zod.def : {};
    schema = typeof step === 'number' ? (def.items?.[step] ?? def.element) : ownOf(def.shape, step);
    node = into(node, step);
  }
  return schema;
}

/** A key of a group, but not what every object has. */
const ownOf = (shape: Record<string, Schema> | undefined, key: string): Schema | undefined =>
  shape && Object.hasOwn(shape, key) ? shape[key] : undefined;

/** Of a choice between kinds, the one that an entry names. */
function ofItsKind(schema: Schema, entry: unknown): Schema {
  const { options, discriminator } = schema._zod.def;
  if (!options || discriminator === undefined) return schema;
  const kind = into(entry, discriminator);
  return options.find((option) => option._zod.def.shape?.[discriminator]?._zod.values?.has(kind)) ?? schema;
}

function boundsOf(schema: Schema): Bound[] {
  return (schema._zod.def.checks ?? []).flatMap((check): Bound[] => {
    const {
      check: kind,
      value,
      inclusive,
    } = check._zod.def as { check?: string; value?: unknown; inclusive?: boolean };
    if (typeof value !== 'number' || (kind !== 'greater_than' && kind !== 'less_than')) return [];
    return [{ side: kind === 'greater_than' ? 'least' : 'greatest', value, inclusive: inclusive === true }];
  });
}
