/** Once there is work of one's own: the browser is asked not to throw it away, and the person told of a file. */
import type { Device, Lasting } from './device.ts';
import type { History } from './history.ts';
import type { Shelf } from './shelf.ts';

/** ms */
const DAY = 86_400_000;
/** Steps from which on work is worth a file. */
const WORTH = 20;

export function createReminder(device: Pick<Device, 'now' | 'persist'>, remind: () => void) {
  let persisting = false;
  let looked = false;
  return {
    /** Called as a job is kept; says something once in a window at most, and once a day. */
    async kept(shelf: Shelf, { history, made }: { history: History; made: number }, lasting: Lasting): Promise<void> {
      if (!persisting) {
        persisting = true;
        await device.persist().catch(() => false);
      }
      const worth = history.at >= WORTH || Math.abs(device.now() - made) > DAY;
      if (looked || !worth || lasting !== 'device') return;
      looked = true;
      const [saved, told] = await Promise.all([shelf.note('file saved'), shelf.note('file told')]);
      if (saved !== undefined || (typeof told === 'number' && Math.abs(device.now() - told) < DAY)) return;
      await shelf.setNote('file told', device.now());
      remind();
    },
    fileSaved: (shelf: Shelf): Promise<void> => shelf.setNote('file saved', device.now()),
  };
}
