/**
 * Which colour and dash each seat has, as style sheets take them: by what it is, cones from the shallowest to the
 * steepest and straight seats last, of equals the one nearer the rear, and not by where it stands in the list. Of more
 * seats than there are colours each keeps that of its place. While a job is worked on a seat keeps the colour it has,
 * also when the page is loaded again.
 */
import type { CSSProperties } from 'react';
import type { Design } from '../../design/definition.ts';

const COLOURS = 4;

/** The colour of every seat, in the order of the design. */
export function seatColours(seats: Design['seats']): number[] {
  const places = seats.map((_, i) => i);
  if (seats.length > COLOURS) return places.map((i) => i % COLOURS);
  const steepness = (i: number) => Math.abs(seats[i]!.bush.halfAngle) || 90;
  const station = (i: number) => seats[i]!.bush.station;
  const inOrder = places.toSorted(
    (a, b) => steepness(a) - steepness(b) || station(a) - station(b) || (seats[a]!.name < seats[b]!.name ? -1 : 1),
  );
  return places.map((i) => inOrder.indexOf(i));
}

/** Of a job at work: what each of its seats has. */
export interface Coloured {
  piece: string;
  names: readonly string[];
  colours: readonly number[];
}

/**
 * The same as seats come, go and change: those that were there keep theirs, also under another name, and what comes
 * takes a free one. Of another job, and of more seats than colours, as above. The same object where nothing is new.
 */
export function colouredNow(before: Coloured | null, piece: string, seats: Design['seats']): Coloured {
  const names = seats.map(({ name }) => name);
  if (before?.piece === piece && before.names.join('\n') === names.join('\n')) return before;
  const canonical = seatColours(seats);
  if (before?.piece !== piece || Math.max(seats.length, before.names.length) > COLOURS)
    return { piece, names, colours: canonical };
  const gone = before.names.filter((name) => !names.includes(name));
  const fresh = names.filter((name) => !before.names.includes(name));
  // As many that went as came: called otherwise now.
  const renamed = gone.length === fresh.length;
  const had = names.map((name) => {
    const place = before.names.indexOf(renamed && fresh.includes(name) ? gone[fresh.indexOf(name)]! : name);
    return place < 0 ? null : before.colours[place]!;
  });
  const free = [0, 1, 2, 3].filter((colour) => !had.includes(colour));
  return { piece, names, colours: had.map((colour) => colour ?? free.shift()!) };
}

const KEY = 'conepair colours';

/** Of the job that was worked on last, after the page is loaded again; null: nothing, or nothing that can be so. */
export function readColoured(text: string | null): Coloured | null {
  try {
    const kept: Coloured = JSON.parse(text!);
    const isOne = kept.names.every((name, i) => typeof name === 'string' && kept.colours[i]! in [0, 1, 2, 3]);
    return isOne && kept.colours.length === kept.names.length ? kept : null;
  } catch {
    return null;
  }
}

/** As this job was left on this device. */
export function keptColours(piece: string, seats: Design['seats']): Coloured | null {
  try {
    const kept = readColoured(localStorage.getItem(KEY));
    const isThis = kept?.piece === piece && kept.names.join('\n') === seats.map(({ name }) => name).join('\n');
    return isThis ? kept : null;
  } catch {
    return null;
  }
}

export function keepColours(coloured: Coloured): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(coloured));
  } catch {
    // Nothing may be kept here: after a reload each seat has the colour of what it is.
  }
}

/** For the element that all pictures stand in. */
export const seatColoursStyle = (colours: readonly number[]): CSSProperties =>
  Object.fromEntries(
    colours.slice(0, COLOURS).flatMap((colour, i) => [
      [`--of-${i}`, `var(--seat-${colour})`],
      [`--dash-of-${i}`, `var(--dash-${colour})`],
    ]),
  );
