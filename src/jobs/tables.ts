/**
 * What a keeper of jobs asks of a store: rows of a few tables, each under the name of its job and a number, written
 * together or not at all. Here is one that lasts as long as the page, for browsers that keep nothing.
 */

/**
 * heads: one a job, for the list · slots: two a job, its state · steps: its history · versions: those that were named ·
 * aside: what could not be read · notes: of the program itself · photographs: under names of their own
 */
export const TABLES = ['heads', 'slots', 'steps', 'versions', 'aside', 'notes', 'photographs'] as const;
export type Table = (typeof TABLES)[number];

export interface Row {
  job: string;
  n: number;
}

/** Rows `from` to `to`, both included, all of the job where not said. */
export interface Range {
  job: string;
  from?: number;
  to?: number;
}

export type Change = { table: Table; put: Row } | { table: Table; drop: Range };

export interface Tables {
  get(table: Table, job: string, n?: number): Promise<unknown>;
  /** Of one job, or of all, in the order of their keys. */
  all(table: Table, job?: string): Promise<unknown[]>;
  /** All of it or nothing; kept for good once it is done. */
  write(changes: readonly Change[]): Promise<void>;
}

export function memoryTables(): Tables {
  const tables = Object.fromEntries(TABLES.map((table) => [table, new Map<string, Map<number, Row>>()])) as Record<
    Table,
    Map<string, Map<number, Row>>
  >;
  const sorted = <T>(map: ReadonlyMap<string | number, T>): T[] =>
    [...map].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, value]) => value);
  const apply = (change: Change) => {
    const of = tables[change.table];
    if ('put' in change) {
      const { job, n } = change.put;
      of.set(job, (of.get(job) ?? new Map()).set(n, change.put));
      return;
    }
    const { job, from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY } = change.drop;
    const rows = of.get(job);
    for (const n of [...(rows?.keys() ?? [])]) if (n >= from && n <= to) rows!.delete(n);
  };
  return {
    get: async (table, job, n = 0) => tables[table].get(job)?.get(n),
    all: async (table, job) =>
      job === undefined
        ? sorted(tables[table]).flatMap((rows) => sorted(rows))
        : sorted(tables[table].get(job) ?? new Map()),
    // Copied first: what cannot be copied fails before anything is changed.
    write: async (changes) => structuredClone(changes).forEach(apply),
  };
}
