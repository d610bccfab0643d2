/**
 * The readings that are being asked for: one stands open, the others wait as far as they are written, whatever else is
 * pressed or looked at meanwhile.
 */
import type { Design } from '../../../design/definition.ts';
import { offered } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import { readNow } from './entries.ts';
import type { Reading } from './kinds.ts';

export interface HalfEntry {
  /** the set-up */
  reading: Reading;
  /** what was read, as typed */
  text: string;
  /** which way it goes; null: as the parts as drawn would have it */
  side: 1 | -1 | null;
}

interface Written {
  open: string | null;
  entries: Readonly<Record<string, HalfEntry>>;
}

export interface Asked {
  /** its own name, and what stands in it */
  name: string | null;
  entry: HalfEntry | null;
  /** names of those that hold something typed */
  begun: readonly string[];
  /** Opens one; where it holds something typed already, that is gone on with. */
  ask(name: string, reading: Reading): void;
  edit(entry: HalfEntry): void;
  /** Written down, or given up. */
  close(): void;
}

const NONE: Written = { open: null, entries: {} };

export function useAsked(work: Work, design: Design): Asked {
  const [written, set] = useUnfinished<Written>(work, 'reading');
  const { open, entries } = written ?? NONE;
  const entry = open === null ? undefined : entries[open];
  const stands = entry && isOf(design, entry) ? entry : null;
  const change = (to: (now: Written) => Written) => set((now) => to(now ?? NONE));
  return {
    name: stands ? open : null,
    entry: stands,
    begun: Object.keys(entries).filter((name) => entries[name]!.text.trim() !== ''),
    ask: (name, reading) =>
      change((now) => {
        const before = now.entries[name];
        const typed = before?.text.trim() ? before.text : '';
        // What was typed of a seat that is no more is kept, for one that is.
        const entry =
          before && typed !== '' && isOf(design, before)
            ? before
            : { reading: { ...readNow(design, reading), ...offered(design) }, text: typed, side: null };
        return { open: name, entries: { ...now.entries, [name]: entry } };
      }),
    edit: (to) => change((now) => (now.open === null ? now : { ...now, entries: { ...now.entries, [now.open]: to } })),
    close: () =>
      change((now) => {
        const { [now.open ?? '']: _, ...others } = now.entries;
        return { open: null, entries: others };
      }),
  };
}

/** Whether the seat it is of is there still. */
const isOf = ({ seats }: Design, { reading }: HalfEntry): boolean =>
  !('seat' in reading) || seats.some(({ name }) => name === reading.seat);
