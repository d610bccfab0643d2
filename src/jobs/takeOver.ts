/** What an earlier program kept in the browser's other store, a text a piece of work: each becomes a job, once. */
import type { Design } from '../design/definition.ts';
import { checksum } from './checksum.ts';
import { type OldStore, oldKeys, PREFIX } from './oldWork.ts';
import { type OpenedJob, readRecord } from './record.ts';
import type { Aside, Shelf } from './shelf.ts';

interface Taking {
  isOwn(design: Design): boolean;
  now(): number;
  newName(): string;
  /** whether the shelf outlives the page */
  lasting: boolean;
}

/** @returns names of what could not be read, which is set aside whole */
export async function takeOver(
  old: OldStore | null,
  shelf: Shelf,
  { isOwn, now, newName, lasting }: Taking,
): Promise<Aside[]> {
  if (!old) return [];
  const keys = oldKeys(old);
  const jobs: { id: string; found: OpenedJob }[] = [];
  const aside: Aside[] = [];
  const notes = [];
  for (const key of keys) {
    const text = old.getItem(key) ?? '';
    const name = key.slice(PREFIX.length);
    const note = `taken ${name}`;
    const taken = await shelf.note(note);
    // Taken over before, but the page was killed before it could be removed there.
    if (taken === checksum(text)) continue;
    notes.push(shelf.noting(note, checksum(text)));
    // An older program went on with it since: both are kept.
    const id = taken === undefined ? name : newName();
    const read = readRecord(text);
    if (!read.ok) aside.push({ name: id, why: read.why, file: read.file, since: now() });
    else if (isOwn(read.found.design)) jobs.push({ id, found: read.found });
  }
  if (notes.length > 0) await shelf.add(jobs, aside, notes);
  // What is in a store that goes with the page is still there alone.
  if (lasting) for (const key of keys) old.removeItem(key);
  return aside;
}
