/** Places of a design in words. */
import type { Design } from '../design/definition.ts';
import { quantityIfAt } from '../design/place.ts';

/** A place of the design as a person calls it: shallow journal, rear end. */
export function placeName(design: Design, path: string): string {
  const last = path.split('.').at(-1)!;
  const title = inSentence(quantityIfAt(path, design)?.title ?? LISTS[last] ?? last);
  const allowed = design.cut?.allow[Number(/^cut\.allow\[(\d+)\]/.exec(path)?.[1] ?? Number.NaN)];
  if (allowed) return `${title} of the ${allowed.seat} ${allowed.part}`;
  const [, index, rest = ''] = /^seats\[(\d+)\]\.(.*)$/.exec(path) ?? [];
  const seat = index === undefined ? undefined : design.seats[Number(index)];
  if (!seat) return title;
  const part = /^(journal|bush)\b/.exec(rest)?.[1];
  return part ? `${seat.name} ${part} ${title}` : `${title} of the ${seat.name} seat`;
}

/** A title within a sentence; ISO and °C stay as they are. */
const inSentence = (title: string) => title.replace(/^[A-Z](?![A-Z])/, (first) => first.toLowerCase());

const LISTS: Record<string, string | undefined> = { profile: 'line as measured', lobes: 'lobes' };
