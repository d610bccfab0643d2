/** Names cut to a room but still told apart: of “bearing front left” and “bearing front right” the ends. */

/** No two alike where the names are not; at worst their number. */
export function shortNames(names: readonly string[], room: number, width: (text: string) => number): string[] {
  const fits = (list: readonly string[]) => list.every((name) => width(name) <= room);
  const apart = (list: readonly string[]) => new Set(list).size === new Set(names).size;
  if (fits(names)) return [...names];
  const own = withoutShared(names);
  if (fits(own) && apart(own)) return own;
  const cut = own.map((name) => middleCut(name, room, width));
  return fits(cut) && apart(cut) ? cut : names.map((_, i) => `${i + 1}`);
}

/** Without the words with which all begin, or all end. */
function withoutShared(names: readonly string[]): string[] {
  if (names.length < 2) return [...names];
  const words = names.map((name) => name.split(/\s+/));
  const least = Math.min(...words.map(({ length }) => length));
  const same = (at: (list: string[]) => string | undefined) => words.every((list) => at(list) === at(words[0]!));
  let [start, end] = [0, 0];
  while (start < least - 1 && same((list) => list[start])) start++;
  while (end < least - 1 - start && same((list) => list.at(-1 - end))) end++;
  return words.map((list) => list.slice(start, list.length - end).join(' '));
}

function middleCut(name: string, room: number, width: (text: string) => number): string {
  if (width(name) <= room) return name;
  for (let kept = name.length - 1; kept > 1; kept--) {
    const text = `${name.slice(0, Math.floor(kept / 2))}…${name.slice(name.length - Math.ceil(kept / 2))}`;
    if (width(text) <= room) return text;
  }
  return '…';
}
