/**
 * Photographs of the jobs. Each stands under a name of its own, which the record of the design holds, so that a copy of
 * a job, or its file opened on the same device, has them too; what no job, history or version names is swept away.
 */
import type { Row, Tables } from './tables.ts';

export interface Photograph {
  blob: Blob;
  /** in picture elements */
  width: number;
  height: number;
  /** ms since 1970 */
  made: number;
}

/** ms: one that was just taken may not be in the text of its job yet. */
const YOUNG = 24 * 3_600_000;

export function photographsOf(tables: Tables) {
  return {
    put: (name: string, photograph: Photograph) =>
      tables.write([{ table: 'photographs', put: { job: name, n: 0, ...photograph } as Row }]),
    async get(name: string): Promise<Photograph | null> {
      const row = (await tables.get('photographs', name)) as (Row & Partial<Photograph>) | undefined;
      return row?.blob instanceof Blob ? (row as Row & Photograph) : null;
    },
    /** Drops those that nothing on the device names any more. */
    async sweep(now: number): Promise<void> {
      const rows = (await tables.all('photographs')) as (Row & Partial<Photograph>)[];
      const old = rows.filter(({ made = 0 }) => now - made > YOUNG);
      if (old.length === 0) return;
      const kept = await Promise.all(
        (['slots', 'steps', 'versions', 'aside'] as const).map((table) => tables.all(table)),
      );
      const text = JSON.stringify(kept);
      const unnamed = old.filter(({ job }) => !text.includes(job));
      await tables.write(unnamed.map(({ job }) => ({ table: 'photographs', drop: { job } }) as const));
    },
  };
}
