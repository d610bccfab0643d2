/** The store that lasts: IndexedDB. Each write is one transaction that is done once it is on the disk. */
import { type IDBPDatabase, openDB } from 'idb';
import { type Range, TABLES, type Tables } from './tables.ts';

/** The second has photographs. */
const VERSION = 2;

interface Database extends Tables {
  close(): void;
}

/** `lost`: called when the browser takes the store away while the page is open. Throws where it gives none. */
export async function openDatabase(name: string, lost: () => void): Promise<Database> {
  let open: IDBPDatabase | null = null;
  let opening: Promise<IDBPDatabase> | null = null;
  const shut = () => {
    open?.close();
    open = null;
    opening = null;
  };
  const connected = async (): Promise<IDBPDatabase> => {
    opening ??= openDB(name, VERSION, {
      upgrade: (db) => {
        for (const table of TABLES)
          if (!db.objectStoreNames.contains(table)) db.createObjectStore(table, { keyPath: ['job', 'n'] });
      },
      // A newer program in another window waits for this one to let go.
      blocking: shut,
      terminated: () => {
        open = null;
        opening = null;
        lost();
      },
    });
    open = await opening.catch((error) => {
      opening = null;
      throw error;
    });
    return open;
  };
  await connected();
  return {
    get: async (table, job, n = 0) => (await connected()).get(table, [job, n]),
    all: async (table, job) => (await connected()).getAll(table, job === undefined ? null : rangeOf({ job })),
    async write(changes) {
      // As long as the connection stands nothing is waited for, so that it is under way before a page is closed.
      const db = open ?? (await connected());
      const written = db.transaction([...new Set(changes.map(({ table }) => table))], 'readwrite', {
        durability: 'strict',
      });
      const { done } = written;
      // That it has failed is told by whoever waits for the whole.
      done.catch(() => {});
      try {
        for (const change of changes) {
          const store = written.objectStore(change.table);
          const asked: Promise<unknown> = 'put' in change ? store.put(change.put) : store.delete(rangeOf(change.drop));
          asked.catch(() => {});
        }
      } catch (error) {
        written.abort();
        throw error;
      }
      written.commit();
      await done;
    },
    close: shut,
  };
}

const rangeOf = ({ job, from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY }: Range) =>
  IDBKeyRange.bound([job, from], [job, to]);
