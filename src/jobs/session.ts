/** Where a window is: kept as long as it is open, so that it goes on there when it is loaded anew. */
import type { Device } from './device.ts';
import type { Shelf } from './shelf.ts';

const HERE = 'conepair.here';
const POSITION = 'conepair.position';

export type Session = ReturnType<typeof createSession>;

export function createSession({ session }: Pick<Device, 'session'>) {
  const set = (key: string, text: string) => void quietly(() => session?.setItem(key, text));
  const get = (key: string) => quietly(() => session?.getItem(key)) ?? '';
  const after = (text: string, word: string) => (text.startsWith(`${word} `) ? text.slice(word.length + 1) : null);
  return {
    atJob: (id: string) => set(HERE, `job ${id}`),
    atExample(name: string) {
      set(HERE, `example ${name}`);
      set(POSITION, '');
    },
    /** Where the journal of the example stands. */
    stand: (position: number) => set(POSITION, `${position}`),
    job: () => after(get(HERE), 'job'),
    example: () => after(get(HERE), 'example'),
    /** Beyond what a design may hold it is none. */
    position(): number | null {
      const text = get(POSITION);
      return text !== '' && Math.abs(Number(text)) <= 1000 ? Number(text) : null;
    },
  };
}

/** The job this window was at, or the last one at all; none that was deleted, and another's only if not put away. */
export async function goingOn(shelf: Shelf, mine: string | null): Promise<string | null> {
  const [heads, last] = await Promise.all([shelf.heads(), shelf.note('last')]);
  const there = heads.filter(({ deleted }) => deleted === null);
  const out = there.filter(({ away }) => !away);
  const byDate = [...out].sort((a, b) => (b.worked ?? 0) - (a.worked ?? 0));
  return there.find(({ id }) => id === mine)?.id ?? out.find(({ id }) => id === last)?.id ?? byDate[0]?.id ?? null;
}

/** What a browser refuses here is done without. */
export function quietly<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
