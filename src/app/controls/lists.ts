/** A profile and lobes as lines of text, one entry a line, and back; what cannot be read names its line. */
import type { Surface } from '../../design/definition.ts';
import { quantityAt } from '../../design/place.ts';
import { quantityText, typedQuantity } from '../../design/quantity.ts';
import type { System } from '../../design/units.ts';

type Profile = NonNullable<Surface['profile']>;
type Lobes = NonNullable<Surface['lobes']>;
export type Read<T> = { ok: true; value: T } | { ok: false; message: string };

const STATION = quantityAt('seats[0].journal.station');
const AMPLITUDE = quantityAt('seats[0].journal.lobes[0].amplitude');
const PHASE = quantityAt('seats[0].journal.lobes[0].phase');
const COUNT = quantityAt('seats[0].journal.lobes[0].count');
/** A deviation: what a lobe's amplitude is, of either sign. */
const DEVIATION = {
  ...AMPLITUDE,
  bounds: [
    { side: 'least', value: -1, inclusive: true } as const,
    { side: 'greatest', value: 1, inclusive: true } as const,
  ],
};

export const profileText = (profile: Profile, system: System) =>
  profile
    .map(
      ([station, deviation]) =>
        `${quantityText('length', station, system)}; ${quantityText('fine', deviation, system)}`,
    )
    .join('\n');

export const lobesText = (lobes: Lobes, system: System) =>
  lobes
    .map(
      ({ count, amplitude, phase }) =>
        `${count}; ${quantityText('fine', amplitude, system)}; ${quantityText('phase', phase ?? 0, system)}`,
    )
    .join('\n');

/** `station; deviation` on each line. */
export const readProfile = (text: string, system: System): Read<Profile> =>
  readLines(
    text,
    2,
    'a station and a deviation, parted by a semicolon',
    ([station, deviation]): Read<Profile[number]> => {
      const z = typedQuantity(STATION, station!, system);
      const d = typedQuantity(DEVIATION, deviation!, system);
      return z.ok ? (d.ok ? { ok: true, value: [z.value, d.value] } : d) : z;
    },
  );

/** `count; amplitude; angle of a crest` on each line. */
export const readLobes = (text: string, system: System): Read<Lobes> =>
  readLines(
    text,
    3,
    'how many lobes, their amplitude and the angle of a crest, parted by semicolons',
    ([lobes, height, angle]): Read<Lobes[number]> => {
      const count = typedQuantity(COUNT, lobes!, system);
      const amplitude = typedQuantity(AMPLITUDE, height!, system);
      const phase = typedQuantity(PHASE, angle!, system);
      if (!count.ok) return count;
      if (!amplitude.ok) return amplitude;
      return phase.ok
        ? { ok: true, value: { count: count.value, amplitude: amplitude.value, phase: phase.value } }
        : phase;
    },
  );

/** Characters of a list: more than the longest one has. What is more is not looked into. */
const LONGEST_LIST = 1_000_000;
const clipped = (text: string) => (text.length > LONGEST_TOLD ? `${text.slice(0, LONGEST_TOLD)}…` : text);
const LONGEST_TOLD = 40;

function readLines<T>(text: string, parts: number, wanted: string, read: (cells: string[]) => Read<T>): Read<T[]> {
  if (text.length > LONGEST_LIST)
    return { ok: false, message: `the list has ${text.length} characters; at most ${LONGEST_LIST} are read` };
  const entries: T[] = [];
  for (const [i, line] of text.split('\n').entries()) {
    // The head of a table that was pasted holds no figure.
    if (line.trim() === '' || (i === 0 && line.includes('\t') && !/\d/.test(line))) continue;
    const cells = line.split(/[;\t]/).map((cell) => cell.trim());
    const entry =
      cells.length === parts
        ? read(cells)
        : ({ ok: false, message: `found "${clipped(line.trim())}"; write ${wanted}` } as const);
    if (!entry.ok) return { ok: false, message: `line ${i + 1}: ${entry.message}` };
    entries.push(entry.value);
  }
  return { ok: true, value: entries };
}
