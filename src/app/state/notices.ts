/** What is to be said of what is kept, and what is not. */
import type { Started } from '../../jobs/keeper.ts';
import type { Unreadable } from '../../jobs/record.ts';

/**
 * `nowhere`: the browser keeps nothing · `newer`: what it keeps belongs to a newer program · `full`: no room ·
 * `failed`: refused otherwise · `evicted`: thrown away by the browser · `elsewhere`: open in another window too ·
 * `older`: the newest state could not be read · `file`: no file of it as it is now · `photographs`: a file went without
 * them · `aside`: left by opening another · `taken`: jobs of a file are on this device now.
 */
export type Notice =
  | { what: 'nowhere' | 'newer' | 'full' | 'failed' | 'evicted' | 'older' }
  /** `saved`: when, in ms, its newest file was; null: never */
  | { what: 'file'; saved: number | null }
  | { what: 'photographs'; count: number }
  | { what: 'taken'; count: number; away: number }
  | { what: 'elsewhere'; refused: number }
  | { what: 'unreadable'; name: string; unreadable: Unreadable }
  | { what: 'aside'; piece: string; title: string };

/** What is said as the page opens. */
export const firstNotices = ({ lasting, unreadable, aside, job, held }: Started): Notice[] => [
  ...(lasting === 'device' ? [] : [{ what: lasting }]),
  ...(held ? [] : [{ what: 'elsewhere', refused: 0 } as const]),
  ...(job?.older ? [{ what: 'older' } as const] : []),
  ...(unreadable ? [unread(unreadable.id, unreadable)] : []),
  ...aside.map((one) => unread(one.name, one)),
];

export const unread = (name: string, { why, file }: Unreadable): Notice => ({
  what: 'unreadable',
  name,
  unreadable: { why, file },
});
