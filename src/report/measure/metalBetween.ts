/**
 * What came off between each reading and the state that the design's surfaces are in; and readings of a line that is no
 * more.
 */
import type { Design, Part } from '../../design/definition.ts';
import type { On } from '../../engine/belief/unknowns.ts';
import type { CutBetween, Since } from '../../engine/gauging/cutsBetween.ts';
import { metres } from '../convert.ts';
import { FACE_SIGMA, surfaceSigma } from '../cut/metalDoubt.ts';
import type { TrialEntry } from '../cut/openTrials.ts';
import type { Reading } from './kinds.ts';

/** One entry of the history: its amounts, and the surfaces it cut to a new line. */
interface Entry {
  inShapes: boolean;
  cuts: CutBetween[];
  renewed: On[];
}

export interface History {
  entries: Entry[];
  /** readings between which nothing came off share one list */
  lists: Map<string, Since[]>;
}

const seatOf = (design: Design, name: string) => design.seats.findIndex((seat) => seat.name === name);

const histories = new WeakMap<Design, History>();

/** Worked out once for a design: every reading of its notebook asks for it. */
export function historyOf(design: Design): History {
  const known = histories.get(design) ?? {
    entries: (design.cut?.trials ?? []).map((trial, k, all) => entryOf(design, trial, all.slice(0, k))),
    lists: new Map(),
  };
  histories.set(design, known);
  return known;
}

function entryOf(
  design: Design,
  { inShapes = false, taken = [], faces = [] }: TrialEntry,
  earlier: readonly TrialEntry[],
): Entry {
  const surfaces = taken.map(
    ({ seat, part, normal, sigma }): CutBetween => ({
      of: 'surface',
      seat: seatOf(design, seat),
      part,
      normal: metres(normal),
      sigma: metres(sigma ?? surfaceSigma(design, seat, part, normal)),
    }),
  );
  const moved = faces.flatMap(({ name, off, sigma }): CutBetween[] => {
    const face = design.cut?.faces?.find((f) => f.name === name);
    if (!face) return [];
    return [
      {
        of: 'face',
        part: face.part,
        seats: face.seats.map((seat) => seatOf(design, seat)),
        moves: face.moves === 'noseward' ? 1 : -1,
        normal: metres(off),
        sigma: metres(sigma ?? FACE_SIGMA),
      },
    ];
  });
  // What is not in the surfaces yet is cut to a new line where the list of what may be cut says so: by the first cut.
  const isCut = (trial: TrialEntry, seat: string, part: Part) =>
    !trial.inShapes && (trial.taken ?? []).some((t) => t.seat === seat && t.part === part && t.normal > 0);
  const toNewLine = (seat: string, part: Part, normal: number) =>
    !inShapes &&
    normal > 0 &&
    design.cut?.allow.some((a) => a.renew && a.seat === seat && a.part === part) &&
    !earlier.some((trial) => isCut(trial, seat, part));
  const renewed = taken
    .filter((t) => t.renewed || toNewLine(t.seat, t.part, t.normal))
    .map(({ seat, part }): On => ({ seat: seatOf(design, seat), part }));
  return { inShapes, cuts: [...surfaces, ...moved], renewed };
}

/**
 * Entries between a reading and the state sought: those before it that are not in the surfaces, those after it that
 * are.
 */
function between({ entries }: History, after: number): { entry: Entry; sign: 1 | -1 }[] {
  return entries.flatMap((entry, k) => (k < after === entry.inShapes ? [] : [{ entry, sign: k < after ? 1 : -1 }]));
}

/** How many entries of the history are done: what is read now is read after them. */
export const doneSoFar = ({ cut }: Design): number => cut?.trials?.length ?? 0;

/** The list of a reading; of one surface where it was taken on one. Empty where nothing came off. */
export function sinceOf(design: Design, history: History, reading: Reading): Since[] {
  const { after = 0 } = reading;
  const key = 'seat' in reading ? `${after} ${reading.seat} ${reading.part}` : `${after}`;
  const known = history.lists.get(key);
  if (known) return known;
  const on = 'seat' in reading ? { seat: seatOf(design, reading.seat), part: reading.part } : null;
  const concerns = (cut: CutBetween) =>
    !on || (cut.part === on.part && (cut.of === 'face' ? cut.seats.includes(on.seat) : cut.seat === on.seat));
  const list = between(history, after).flatMap(({ entry, sign }) =>
    entry.cuts.filter((cut) => cut.normal !== 0 && concerns(cut)).map((cut): Since => ({ cut, sign })),
  );
  history.lists.set(key, list);
  return list;
}

/**
 * Of these surfaces the ones that were cut to another line between a reading and the state sought: it says nothing of
 * that line.
 */
export function overtakenOn(history: History, { after = 0 }: Reading, surfaces: readonly On[]): On[] {
  const renewed = between(history, after).flatMap(({ entry }) => entry.renewed);
  return renewed.length === 0
    ? []
    : surfaces.filter(({ seat, part }) => renewed.some((on) => on.seat === seat && on.part === part));
}
