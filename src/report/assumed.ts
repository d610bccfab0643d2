/** What a verdict says of sizes that nobody has read or drawn: it is no better than they are, and never praise. */
import type { Design } from '../design/definition.ts';
import { quantityIfAt } from '../design/place.ts';
import { listed } from './listed.ts';

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** More than these are counted, not named. */
const NAMED = 4;

/** Sections of the design that a verdict goes by. */
export type Scope = 'seats' | 'run' | 'cut';

/** Places of what is assumed in these sections. */
export const assumedIn = ({ assumed = [] }: Design, scopes: readonly Scope[]): string[] =>
  assumed.filter((path) => scopes.some((scope) => path.startsWith(scope)));

/** The same verdict, with what of it is assumed. */
export function asAssumed<V extends Verdict>(verdict: V, design: Design, scopes: readonly Scope[]): V {
  const places = assumedIn(design, scopes);
  if (places.length === 0) return verdict;
  return {
    ...verdict,
    tone: verdict.tone === 'good' ? 'mend' : verdict.tone,
    sentences: [assumedSentence(design, places), ...verdict.sentences],
  };
}

function assumedSentence(design: Design, places: readonly string[]): string {
  const what =
    places.length <= NAMED ? listed(places.map((path) => placeName(design, path))) : `${places.length} numbers`;
  return `Assumed, never measured: ${what}, marked in the controls; type or measure ${places.length === 1 ? 'it' : 'them'} before you trust this.`;
}

/** A place of the design as a person calls it: shallow journal, rear end. */
export function placeName(design: Design, path: string): string {
  const last = path.split('.').at(-1)!;
  const title = (quantityIfAt(path, design)?.title ?? LISTS[last] ?? last).toLowerCase();
  const [, index, rest = ''] = /^seats\[(\d+)\]\.(.*)$/.exec(path) ?? [];
  const seat = index === undefined ? undefined : design.seats[Number(index)];
  if (!seat) return title;
  const part = /^(journal|bush)\b/.exec(rest)?.[1];
  return part ? `${seat.name} ${part} ${title}` : `${title} of the ${seat.name} seat`;
}

const LISTS: Record<string, string | undefined> = { profile: 'line as measured', lobes: 'lobes' };
