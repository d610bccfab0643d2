/** Once there is work of one's own: the browser is asked not to throw it away, and the person told of a file. */
import type { Device, Lasting } from './device.ts';
import type { Shelf } from './shelf.ts';

/** ms */
const DAY = 86_400_000;
/** ms that changes may go without a file of them. */
const WEEK = 7 * DAY;
/** Steps from which on work is worth a file. */
const WORTH = 20;

interface Work {
  id: string;
  history: { at: number };
  made: number;
}

/** Of all jobs, and of one. */
const SAVED = 'file saved';
export const savedNote = (id: string) => `${SAVED} ${id}`;

export function createReminder(device: Pick<Device, 'now' | 'persist'>, remind: (saved: number | null) => void) {
  let persisting = false;
  /** when each job was looked at last */
  const looked = new Map<string, number>();
  const isPast = (since: number, time: number) => Math.abs(device.now() - since) > time;
  /** Says something once a day at most. `worked`: when it was changed last. */
  async function look(shelf: Shelf, { id, history, made }: Work, lasting: Lasting, worked: number) {
    if (lasting !== 'device' || !isPast(looked.get(id) ?? Number.NEGATIVE_INFINITY, DAY)) return;
    const [all, own, told] = await Promise.all([SAVED, savedNote(id), 'file told'].map(shelf.note));
    const times = [all, own].filter((time) => typeof time === 'number');
    const saved = times.length > 0 ? Math.max(...times) : null;
    const due = saved === null ? history.at >= WORTH || isPast(made, DAY) : worked > saved && isPast(saved, WEEK);
    if (!due) return;
    looked.set(id, device.now());
    if (typeof told === 'number' && !isPast(told, DAY)) return;
    await shelf.setNote('file told', device.now());
    remind(saved);
  }
  return {
    /** Called as a job is kept. */
    async kept(shelf: Shelf, job: Work, lasting: Lasting): Promise<void> {
      if (!persisting) {
        persisting = true;
        await device.persist().catch(() => false);
      }
      await look(shelf, job, lasting, device.now());
    },
    /** Called as one is opened: what was changed weeks ago may still stand here alone. */
    opened: look,
    /** Of one job, or of all of them (null). */
    fileSaved: (shelf: Shelf, id: string | null): Promise<void> =>
      shelf.setNote(id === null ? SAVED : savedNote(id), device.now()),
  };
}
