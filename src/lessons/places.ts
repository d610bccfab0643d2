/** The places of a design at which a number stands, each in words: no path of a file is read by who makes a lesson. */
import type { Design } from '../design/definition.ts';
import { quantityIfAt, stepsOf } from '../design/place.ts';
import { numbersIn } from './named.ts';

/** What is called otherwise in a lesson than over a field. */
const OWN: Record<string, string> = {
  position: 'where the spindle stands',
  'adjuster.pitch': 'travel of the adjuster in one turn',
  'odds.seed': 'odds: which draw it is',
  'odds.draws': 'odds: pairs drawn',
};
/** One of a list. */
const ONE: Record<string, string> = {
  readings: 'reading',
  supply: 'groove',
  loads: 'load',
  allow: 'allowance',
  spread: 'spread',
  profile: 'point',
  lobes: 'lobe',
  cuts: 'cut',
  trials: 'trial',
};
/** The number of the format is no number of the design. */
const NOT_OFFERED = new Set(['conepair']);

const small = (text: string) => (/^[A-Z][A-Z]/.test(text) ? text : `${text.charAt(0).toLowerCase()}${text.slice(1)}`);
/** expansionOfBush: “expansion of bush”. */
const spaced = (key: string) =>
  key.replaceAll(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

/** A place in words: of which seat and part, what of it. */
export function placeWords(design: Design, path: string): string {
  const own = OWN[path];
  if (own) return own;
  const steps = stepsOf(path);
  const last = steps.at(-1)!;
  const title = quantityIfAt(path, design)?.title;
  const words: string[] = [];
  steps.forEach((step, i) => {
    const before = steps[i - 1];
    if (typeof step === 'number') {
      if (before === 'seats') words.push(design.seats[step]?.name ?? `seat ${step + 1}`);
      else if (typeof before === 'string') words.push(`${ONE[before] ?? spaced(before)} ${step + 1}`);
    } else if (i < steps.length - 1 && typeof steps[i + 1] !== 'number') words.push(spaced(step));
  });
  const what = title
    ? small(title.replace(/^At /, ''))
    : typeof last === 'string'
      ? spaced(last)
      : last === 0
        ? 'station'
        : 'deviation';
  return words.length === 0 ? what : `${words.join(' ')}: ${what}`;
}

/** What is moved mostly stands first: the place of the spindle, then the seats. */
const rank = (path: string) =>
  path === 'position' ? 0 : path.startsWith('seats') ? 1 : path.startsWith('adjuster') ? 2 : 3;

/** Every place that a lesson can put a number at, and its words, no two of them alike. */
export function placesOf(design: Design): [path: string, words: string][] {
  const found = numbersIn(design)
    .filter((path) => !NOT_OFFERED.has(path))
    .sort((a, b) => rank(a) - rank(b))
    .map((path): [string, string] => [path, placeWords(design, path)]);
  const times = new Map<string, number>();
  return found.map(([path, words]) => {
    const before = times.get(words) ?? 0;
    times.set(words, before + 1);
    return [path, before === 0 ? words : `${words} (${before + 1})`];
  });
}
