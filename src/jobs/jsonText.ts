/**
 * The text JSON.stringify makes of a value. Long lists stay the same objects from one state of a design to the next, as
 * nothing writes into them: each is put into words once, which is most of what a save costs.
 */
const texts = new WeakMap<object, string>();
/** Entries up to which a list is gone through: long lists stand in seats, of which there are no more. */
const FEW = 8;

export const jsonText = (value: unknown): string => textOf(value) ?? 'null';

/** undefined for what JSON leaves out. */
function textOf(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (!Array.isArray(value)) return groupText(value);
  if (value.length <= FEW) return `[${Array.from(value, jsonText).join()}]`;
  const known = texts.get(value) ?? JSON.stringify(value);
  texts.set(value, known);
  return known;
}

const groupText = (group: object) =>
  `{${Object.entries(group)
    .flatMap(([key, inner]) => {
      const text = textOf(inner);
      return text === undefined ? [] : [`${JSON.stringify(key)}:${text}`];
    })
    .join()}}`;
