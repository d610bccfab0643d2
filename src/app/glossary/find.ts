/** The words of the glossary within a sentence: each where it stands first, the longest that fits. */
import { type Entry, GLOSSARY } from './entries.ts';

export interface Occurrence {
  text: string;
  entry: Entry;
}

const BY_FORM = new Map(
  GLOSSARY.flatMap(({ entries }) =>
    entries.flatMap((entry) =>
      [entry.word, ...(entry.forms ?? [])].map((form) => [form.toLowerCase(), entry] as const),
    ),
  ),
);

/** The longest first; a word within another, or joined to one by a hyphen, is none of ours. */
const ANY = new RegExp(
  `(?<![\\p{L}\\d-])(?:${[...BY_FORM.keys()].sort((a, b) => b.length - a.length).join('|')})(?![\\p{L}-])`,
  'giu',
);

export function entryOf(form: string): Entry | undefined {
  return BY_FORM.get(form.toLowerCase());
}

/** The sentence in pieces, in order: text as it is, and words that are explained. */
export function piecesOf(sentence: string, told: ReadonlySet<Entry> = new Set()): (string | Occurrence)[] {
  const pieces: (string | Occurrence)[] = [];
  const met = new Set(told);
  let from = 0;
  for (const { 0: text, index } of sentence.matchAll(ANY)) {
    const entry = entryOf(text)!;
    if (met.has(entry)) continue;
    met.add(entry);
    if (index > from) pieces.push(sentence.slice(from, index));
    pieces.push({ text, entry });
    from = index + text.length;
  }
  if (from < sentence.length) pieces.push(sentence.slice(from));
  return pieces;
}
