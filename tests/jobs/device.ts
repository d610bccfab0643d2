/** One device and its windows, for the tests of what is kept: a store, locks and a channel that all windows share. */
import type { Claims, Hears } from '../../src/jobs/claims.ts';
import type { Device, Lasting } from '../../src/jobs/device.ts';
import { type Change, memoryTables, type Tables } from '../../src/jobs/tables.ts';

type Held = { window: number; hears: Hears };

export function device() {
  const tables = memoryTables();
  const old = new Map<string, string>();
  const locks = new Map<string, Held[]>();
  const listeners: { window: number; hear(word: unknown): void }[] = [];
  const closed = new Set<number>();
  let fault: Error | null = null;
  let clock = Date.UTC(2026, 0, 5, 8);
  let named = 0;
  let windows = 0;
  let persisted = 0;
  const writes: (readonly Change[])[] = [];
  const shared: Tables = {
    ...tables,
    write: async (changes) => {
      if (fault) throw fault;
      writes.push(changes);
      await tables.write(changes);
    },
  };
  const grant = (name: string) => locks.get(name)?.[0]?.hears.granted();
  const leave = (name: string, held: Held) => {
    const queue = locks.get(name) ?? [];
    const had = queue[0] === held;
    locks.set(
      name,
      queue.filter((one) => one !== held),
    );
    if (had) queueMicrotask(() => grant(name));
  };
  const claimsOf =
    (window: number): Claims =>
    (name, hears) => {
      const held = { window, hears };
      const queue = [...(locks.get(name) ?? []), held];
      locks.set(name, queue);
      if (queue[0] === held) queueMicrotask(() => locks.get(name)?.[0] === held && hears.granted());
      return {
        release: () => leave(name, held),
        seize: () => {
          const [first, ...rest] = locks.get(name)!;
          locks.set(name, [held, ...rest.filter((one) => one !== held)]);
          first!.hears.lost();
          hears.granted();
        },
      };
    };
  return {
    tables: shared,
    old,
    writes,
    /** From now on every write fails so; null: none does. */
    fail: (error: Error | null) => {
      fault = error;
    },
    setClock: (time: number) => {
      clock = time;
    },
    persisted: () => persisted,
    /** Another window, or one loaded anew where its session is handed in. */
    window(session = new Map<string, string>(), lasting: Lasting = 'device') {
      const window = windows++;
      const given: Device = {
        tables: async () => ({ tables: lasting === 'device' ? shared : memoryTables(), lasting }),
        old: {
          get length() {
            return old.size;
          },
          key: (i) => [...old.keys()][i] ?? null,
          getItem: (key) => old.get(key) ?? null,
          removeItem: (key) => void old.delete(key),
        },
        session: {
          getItem: (key) => session.get(key) ?? null,
          setItem: (key, text) => void session.set(key, text),
        },
        claims: claimsOf(window),
        channel: {
          post: (word) => {
            for (const one of listeners) if (one.window !== window && !closed.has(one.window)) one.hear(word);
          },
          listen: (hear) => void listeners.push({ window, hear }),
        },
        now: () => {
          clock += 1_000;
          return clock;
        },
        // Slower than anyone types one number again.
        elapsed: () => {
          clock += 2_000;
          return clock;
        },
        newName: () => `n${++named}`,
        persist: async () => {
          persisted++;
          return true;
        },
      };
      return {
        device: given,
        session,
        /** Gone at once, with all it holds. */
        kill: () => {
          closed.add(window);
          for (const [name, queue] of locks) {
            const [first] = queue;
            locks.set(
              name,
              queue.filter((one) => one.window !== window),
            );
            if (first?.window === window) queueMicrotask(() => grant(name));
          }
        },
      };
    },
  };
}
