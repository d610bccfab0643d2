/**
 * Keeps the pieces of work on the device, one record each, so that another piece never overwrites them: the one at
 * work, and the last ten besides. What cannot be read is left as it is. A tab that finds its record in another tab's
 * hands, open or changed, goes on under a name of its own.
 */
import type { Design } from '../design/definition.ts';
import { type Found, type Kept, readRecord, recordText, type Unreadable } from './record.ts';

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** What the browser gives; null where it gives none. */
export interface Device {
  storage: Store | null;
  /** lasts as long as this one tab */
  session: Store | null;
  /** word to all other tabs, and from them */
  tabs: { post(word: Word): void; listen(hear: (word: Word) => void): void } | null;
  /** what other tabs write; null: taken away */
  written(hear: (key: string | null, text: string | null) => void): void;
  now(): number;
  newName(): string;
}

/** One tab asks who has a piece of work open; another has it. */
export type Word = { ask: string } | { held: string };

export interface Piece {
  name: string;
  /** of a record that can be opened */
  found: Found | null;
  unreadable: Unreadable | null;
}

export type Outcome = 'kept' | 'full' | 'nowhere';

const PREFIX = 'conepair.work.';
const HERE = 'conepair.here';
/** Pieces of work that are kept besides the one at work. */
const MOST = 10;

export function createKeeper(device: Device, isOwn: (design: Design) => boolean) {
  const { storage, session, tabs } = device;
  /** what this tab last read or wrote under a name */
  const seen = new Map<string, string>();
  /** names that were left to another tab, with the name this one goes on under */
  const left = new Map<string, string>();
  let here = { name: '', own: false };
  let asked = '';
  let elsewhere = false;
  let hearElsewhere = () => {};

  const keyOf = (name: string) => PREFIX + name;
  const nameOf = (piece: string): string => (left.has(piece) ? nameOf(left.get(piece)!) : piece);
  const goOnAs = (name: string, own: boolean) => {
    here = { name, own };
    quietly(() => session?.setItem(HERE, name));
  };
  /** Goes on under another name, since this one is in another tab's hands. */
  const leave = (name: string, own: boolean): string => {
    const other = device.newName();
    left.set(name, other);
    goOnAs(other, own);
    if (own) {
      elsewhere = true;
      hearElsewhere();
    }
    return other;
  };
  const ask = (name: string) => {
    asked = name;
    quietly(() => tabs?.post({ ask: name }));
  };
  tabs?.listen((word) => {
    if ('ask' in word && word.ask === here.name) tabs.post({ held: here.name });
    if ('held' in word && word.held === asked && word.held === here.name) leave(here.name, here.own);
  });
  device.written((key, text) => {
    if (key === keyOf(here.name) && text !== null && text !== seen.get(here.name)) leave(here.name, here.own);
  });

  const names = () =>
    (storage ? Array.from({ length: storage.length }, (_, i) => storage.key(i)) : []).flatMap((key) =>
      key?.startsWith(PREFIX) ? [key.slice(PREFIX.length)] : [],
    );
  /** Everything that is kept, what was worked on last first, what cannot be read at the end. */
  const all = (): Piece[] =>
    names()
      .flatMap((name): Piece[] => {
        const text = storage!.getItem(keyOf(name));
        if (text === null) return [];
        const read = readRecord(text);
        return [
          read.ok
            ? { name, found: read.found, unreadable: null }
            : { name, found: null, unreadable: { why: read.why, file: read.file } },
        ];
      })
      .sort((a, b) => (b.found?.changed ?? 0) - (a.found?.changed ?? 0));

  /** Beyond the last ten the oldest goes; demos that were only looked at go first, what cannot be read stays. */
  function makeRoom() {
    const others = all().filter(({ name, found }) => found !== null && name !== here.name);
    const ownFirst = [
      ...others.filter(({ found }) => isOwn(found!.design)),
      ...others.filter(({ found }) => !isOwn(found!.design)),
    ];
    for (const { name } of ownFirst.slice(MOST)) storage!.removeItem(keyOf(name));
  }

  /** A demo that was only looked at is not kept once another piece is taken up. */
  function putAway() {
    const { name, own } = here;
    if (!own && name !== '' && storage!.getItem(keyOf(name)) === seen.get(name)) storage!.removeItem(keyOf(name));
  }

  function write(piece: string, kept: Kept) {
    const own = isOwn(kept.design);
    let name = nameOf(piece);
    if (name !== here.name) putAway();
    goOnAs(name, own);
    const there = storage!.getItem(keyOf(name));
    if (there !== null && there !== seen.get(name)) name = leave(name, own);
    const text = recordText(kept, device.now());
    const isNew = !seen.has(name);
    storage!.setItem(keyOf(name), text);
    seen.set(name, text);
    if (isNew) makeRoom();
  }

  return {
    isOwn,
    newPiece: () => device.newName(),
    /** What this tab was at, or what was worked on last; and all that cannot be read. */
    start(): { piece: string; found: Found | null; unreadable: Piece[] } {
      const pieces = quietly(all) ?? [];
      const last = quietly(() => session?.getItem(HERE));
      const readable = pieces.filter(({ found }) => found !== null);
      const { name, found } = readable.find((piece) => piece.name === last) ??
        readable[0] ?? { name: device.newName(), found: null };
      if (found) this.takeUp(name);
      return { piece: name, found, unreadable: pieces.filter(({ unreadable }) => unreadable !== null) };
    },
    /** Keeps a piece of work as it is now. */
    keep(piece: string, kept: Kept): Outcome {
      if (!storage) return 'nowhere';
      try {
        write(piece, kept);
        return 'kept';
      } catch {
        return 'full';
      }
    },
    /** A piece of work that is to be gone on with; null where it is no more, or cannot be read. */
    takeUp(piece: string): Found | null {
      const name = nameOf(piece);
      const text = quietly(() => storage?.getItem(keyOf(name))) ?? null;
      const read = text === null ? null : readRecord(text);
      if (!read?.ok) return null;
      seen.set(name, text!);
      if (here.name !== name) quietly(putAway);
      goOnAs(name, isOwn(read.found.design));
      ask(name);
      return read.found;
    },
    /** The person's own work besides what is at work here. */
    earlier: (): Piece[] =>
      (quietly(all) ?? []).filter(({ name, found }) => name !== here.name && (found === null || isOwn(found.design))),
    drop(name: string) {
      quietly(() => storage?.removeItem(keyOf(name)));
    },
    /** Called when the work at hand turns out to be in another tab's hands too, or where it did already. */
    onElsewhere(hear: () => void) {
      hearElsewhere = hear;
      if (elsewhere) hear();
    },
    /** Whether the browser keeps anything at all. */
    keeps: storage !== null,
  };
}

export type Keeper = ReturnType<typeof createKeeper>;

/** What a browser refuses here is done without. */
function quietly<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
