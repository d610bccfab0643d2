/**
 * Which window may write a job: one holds it, the others wait their turn. By the browser's own locks; where it has
 * none, the windows ask each other.
 */

export interface Claim {
  /** Lets it go, or waits for it no longer. */
  release(): void;
  /** Takes it from the window that has it, which is told that it is lost. */
  seize(): void;
}

export interface Hears {
  /** It is this window's, now or after the one that had it let go. */
  granted(): void;
  /** Another window took it. */
  lost(): void;
}

export type Claims = (name: string, hears: Hears) => Claim;

export const lockClaims =
  (locks: LockManager): Claims =>
  (name, hears) => {
    let letGo = () => {};
    let holds = false;
    const waiting = new AbortController();
    const request = (options: LockOptions) =>
      locks
        .request(name, options, () => {
          holds = true;
          hears.granted();
          return new Promise<void>((done) => {
            letGo = done;
          });
        })
        .catch(() => {
          if (!holds) return;
          holds = false;
          hears.lost();
        });
    void request({ signal: waiting.signal });
    return {
      release() {
        holds = false;
        waiting.abort();
        letGo();
      },
      seize() {
        waiting.abort();
        void request({ steal: true });
      },
    };
  };

/** One that there is no other window to share with. */
export const soleClaims: Claims = (_, hears) => {
  queueMicrotask(() => hears.granted());
  return { release() {}, seize() {} };
};

type Said = { claim: string; says: 'mine?' | 'free' | 'seized' } | { claim: string; says: 'mine'; to: string };
type Word = Said & { by: string };

interface Entry {
  state: 'asking' | 'held' | 'waiting';
  timer?: ReturnType<typeof setTimeout>;
  hears: Hears;
}

export interface Channel {
  post(word: unknown): void;
  listen(hear: (word: unknown) => void): void;
}

/** ms that other windows have to answer in */
const PATIENCE = 120;

/** The windows ask each other; of two that ask at once the one with the lower name has it. */
export function askedClaims(channel: Channel, me: string): Claims {
  const held = new Map<string, Entry>();
  const say = (word: Said) => channel.post({ ...word, by: me });
  const ask = (claim: string) => {
    const entry = held.get(claim);
    if (!entry) return;
    clearTimeout(entry.timer);
    entry.state = 'asking';
    say({ claim, says: 'mine?' });
    entry.timer = setTimeout(() => {
      if (held.get(claim) !== entry || entry.state !== 'asking') return;
      entry.state = 'held';
      entry.hears.granted();
    }, PATIENCE);
  };
  const asked = (entry: Entry, claim: string, by: string) => {
    if (entry.state === 'held' || (entry.state === 'asking' && me < by)) say({ claim, says: 'mine', to: by });
    else entry.state = 'waiting';
  };
  channel.listen((heard) => {
    const word = heard as Word;
    const entry = held.get(word.claim);
    if (!entry) return;
    if (word.says === 'mine?') asked(entry, word.claim, word.by);
    if (word.says === 'mine' && word.to === me && entry.state === 'asking') entry.state = 'waiting';
    if (word.says === 'free' && entry.state === 'waiting') ask(word.claim);
    if (word.says === 'seized') {
      const was = entry.state;
      entry.state = 'waiting';
      if (was === 'held') entry.hears.lost();
    }
  });
  return (claim, hears) => {
    held.set(claim, { state: 'asking', hears });
    ask(claim);
    return {
      release() {
        const entry = held.get(claim);
        clearTimeout(entry?.timer);
        held.delete(claim);
        if (entry?.state === 'held') say({ claim, says: 'free' });
      },
      seize() {
        const entry = held.get(claim);
        if (!entry) return;
        entry.state = 'held';
        say({ claim, says: 'seized' });
        hears.granted();
      },
    };
  };
}
