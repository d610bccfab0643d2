/** What a few plain words of a lesson's text say: which seat, whether it grows or shrinks, which touches first. */

const HOLE = /\{[^{}]*\}/g;
/** An adjective after these: “stayed open” is no change. */
const STANDS = /\b(stay|stays|stayed|stand|stands|stood|is|are|was|were|left|leaves) (wide )?(open|shut|closed)\b/gi;
const GROWS =
  /\b(grow|grows|grew|grown|growth|open|opens|opened|widen|widens|widened|increase[sd]?|(get|gets|got|become|becomes|became) (more|wider|thicker))\b/i;
const SHRINKS =
  /\b(shrink|shrinks|shrank|shrunk|shut|shuts|close|closes|closed|decrease[sd]?|(get|gets|got|become|becomes|became) (a little )?(less|narrower|thinner))\b/i;
const DENIED = /\b(not|never|no|nothing|neither|hardly|both|stay|stays|stayed)\b/i;

/** 1: grows, −1: shrinks, 0: neither is said, or both are. */
export function directionOf(text: string): 1 | -1 | 0 {
  const words = text.replaceAll(HOLE, ' ').replaceAll(STANDS, ' ');
  if (DENIED.test(words)) return 0;
  const [grows, shrinks] = [GROWS.test(words), SHRINKS.test(words)];
  return grows === shrinks ? 0 : grows ? 1 : -1;
}

/** The last sentence that asks: what goes before it is what is so. */
export const lastAsked = (text: string): string =>
  sentences(text)
    .filter((one) => one.endsWith('?'))
    .at(-1) ?? text;

const sentences = (text: string): string[] => text.replaceAll(HOLE, ' # ').split(/(?<=[.?!:;])\s+/);
const word = (name: string) => new RegExp(`(?<![\\w-])${name.replaceAll(/[^\w\s]/g, '\\$&')}(?![\\w-])`, 'i');

/** The one seat that is named, or the only one there is; null: none, or several. */
export function seatIn(text: string, seats: readonly string[]): number | null {
  if (seats.length === 1) return 0;
  const named = seats.flatMap((name, i) => (word(name).test(text) ? [i] : []));
  return named.length === 1 ? named[0]! : null;
}

const FIRST = /\b(touches|touched) (at )?first\b/i;
/** What is supposed, asked or denied is no statement. */
const SUPPOSED = /\b(if|when|where|which|until|unless|whether|never|not|would|must|may|might)\b/i;

/** Seats of which a text says outright that they touch first. */
export const saysFirst = (text: string, seats: readonly string[]): string[] =>
  sentences(text)
    .filter((one) => FIRST.test(one) && !one.endsWith('?') && !SUPPOSED.test(one))
    .flatMap((one) => {
      const seat = seats.length > 1 ? seatIn(one.slice(0, one.search(FIRST)), seats) : null;
      return seat === null ? [] : [seats[seat]!];
    });
