/** A browser's store and its tabs, for the tests of what is kept. */
import type { Device, Word } from '../../src/jobs/keeper.ts';

export function browser() {
  const texts = new Map<string, string>();
  const tabs: {
    hear: (word: Word) => void;
    written: (key: string | null, text: string | null) => void;
    open: boolean;
  }[] = [];
  let room = Number.POSITIVE_INFINITY;
  let clock = 1_000;
  let named = 0;
  const others = (mine: (typeof tabs)[number]) => tabs.filter((tab) => tab !== mine && tab.open);

  /** A store of its own, or the one all tabs share. */
  const storeOf = (map: Map<string, string>, wrote: (key: string, text: string | null) => void) => ({
    get length() {
      return map.size;
    },
    key: (i: number) => [...map.keys()][i] ?? null,
    getItem: (key: string) => map.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (text.length > room) throw new Error('QuotaExceededError');
      map.set(key, text);
      wrote(key, text);
    },
    removeItem: (key: string) => {
      if (map.delete(key)) wrote(key, null);
    },
  });

  return {
    texts,
    /** Records longer than this find no room. */
    leaveRoom: (characters: number) => {
      room = characters;
    },
    /** Another tab, or this one loaded anew where its session is handed in. `deaf`: it hears nothing of the others. */
    tab(session = new Map<string, string>(), deaf = false) {
      const mine = { hear: (_: Word) => {}, written: (_: string | null, __: string | null) => {}, open: true };
      tabs.push(mine);
      const device: Device = {
        storage: storeOf(texts, (key, text) => {
          if (!deaf) for (const tab of others(mine)) tab.written(key, text);
        }),
        session: storeOf(session, () => {}),
        tabs: deaf
          ? null
          : {
              post: (word) => {
                for (const tab of others(mine)) tab.hear(word);
              },
              listen: (hear) => {
                mine.hear = hear;
              },
            },
        written: (hear) => {
          mine.written = deaf ? mine.written : hear;
        },
        now: () => {
          clock += 1_000;
          return clock;
        },
        newName: () => {
          named += 1;
          return `n${named}`;
        },
      };
      return {
        device,
        session,
        shut: () => {
          mine.open = false;
        },
      };
    },
  };
}
