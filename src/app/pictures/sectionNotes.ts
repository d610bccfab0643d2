/**
 * The notes above the section: one a seat, its film and its taper, with a leader that no label stands in the way of.
 */

import { NOTE, type Placing } from './sectionLayout.ts';
import { shortNames } from './shortNames.ts';
import { spread } from './spread.ts';
import { fitted } from './textWidth.ts';
import type { Size } from './useSize.ts';

export interface Note {
  name: string;
  film: string;
  taper: string;
  /** what is known of the film, where the drawing has another: it stands in place of the taper */
  said?: string;
  /** on the screen: what the leader points at */
  at: { x: number; y: number };
}

export interface PlacedNote extends Note {
  x: number;
  /** the second smaller */
  lines: [string, string];
}

const EDGE = 6;
const SPACE = 14;
export const SECOND = 12;

/**
 * In the order of what they name; where the room is short without the taper, then cut. Seats out of sight have none.
 */
export function placedNotes(
  notes: readonly Note[],
  { level }: Placing,
  { width: across }: Size,
  width: (text: string, size: number) => number,
): PlacedNote[] {
  const seen = notes.filter(({ at }) => at.x >= 0 && at.x <= across).sort((a, b) => a.at.x - b.at.x);
  const room = (across - 2 * EDGE - SPACE * (seen.length - 1)) / seen.length;
  const one = level === 'none';
  const full = ({ name, film, taper, said = one ? '' : taper }: Note): [string, string] => [`${name} ${film}`, said];
  const short = ({ name, film, said = '' }: Note): [string, string] =>
    one || said !== '' ? [`${name} ${film}`, said] : [name, film];
  // Where only one line has its place the film goes below the name before a figure is cut.
  const stacked = ({ name, film }: Note): [string, string] => [name, film];
  // Cut so that no two look alike.
  const own = shortNames(
    seen.map(({ name }) => name),
    room,
    (text) => width(text, NOTE),
  );
  const cut = (note: Note): [string, string] => {
    const named = { ...note, name: own[seen.indexOf(note)]! };
    const [first, second] = short(named);
    return [fitted(first, NOTE, room, width), fitted(second, SECOND, room, width)];
  };
  for (const linesOf of [full, short, stacked, cut]) {
    const labels = seen.map((note) => {
      const lines = linesOf(note);
      const size = Math.max(width(lines[0], NOTE), width(lines[1], SECOND));
      return { ...note, lines, size: linesOf === cut ? Math.min(room, size) : size };
    });
    const middles = spread(
      labels.map(({ at, size }) => ({ at: at.x, size })),
      EDGE,
      across - EDGE,
      SPACE * 0.99,
    );
    if (middles) return labels.map(({ size: _, ...label }, i) => ({ ...label, x: middles[i]! }));
  }
  return [];
}
