/** The values that a formula can name, with what they are now: of a report, and the numbers of a design. */
export interface Named {
  name: string;
  value: number | string | boolean;
}

const MOST = 400;
const DEEPEST = 6;
const PLAIN = /^[A-Za-z_][A-Za-z0-9_]*$/;

/** Every number, word and condition within a group; an entry of a list by its name where it has one. */
export function namedIn(of: unknown, within: string, depth = 0): Named[] {
  if (typeof of === 'number' || typeof of === 'string' || typeof of === 'boolean') return [{ name: within, value: of }];
  if (typeof of !== 'object' || of === null || depth > DEEPEST) return [];
  const found = Array.isArray(of)
    ? of.slice(0, 20).flatMap((entry, i) => namedIn(entry, `${within}${keyOf(entry, i)}`, depth + 1))
    : Object.entries(of).flatMap(([key, entry]) =>
        namedIn(entry, PLAIN.test(key) ? `${within}.${key}` : `${within}['${key}']`, depth + 1),
      );
  return found.slice(0, MOST);
}

function keyOf(entry: unknown, at: number): string {
  const name = (entry as { name?: unknown } | null)?.name;
  return typeof name === 'string' && PLAIN.test(name) ? `.${name}` : `[${at}]`;
}

/** The places of a design at which a number stands: seats[0].bush.diameter. */
export const numbersIn = (of: unknown, within = ''): string[] =>
  typeof of === 'number'
    ? [within]
    : typeof of === 'object' && of !== null
      ? Object.entries(of).flatMap(([key, entry]) =>
          numbersIn(entry, Array.isArray(of) ? `${within}[${key}]` : within === '' ? key : `${within}.${key}`),
        )
      : [];
