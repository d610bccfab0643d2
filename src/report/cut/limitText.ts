/** A limit that stands in the way, and what would do instead, in words. */
import { fineText, type System } from '../../design/units.ts';
import type { LimitReport } from './definition.ts';

const ownerOf = ({ seat, part, face }: LimitReport) => face ?? `the ${seat} ${part}`;

export function limitText(limit: LimitReport, system: System): string {
  const amount = fineText(limit.limit, system);
  switch (limit.what) {
    case 'forbidden':
      return `${ownerOf(limit)} may not be cut`;
    case 'limit':
      return `${ownerOf(limit)} may lose at most ${amount}`;
    case 'cleanup':
      return `${ownerOf(limit)} must lose at least ${amount}`;
    case 'add':
      return limit.limit === 0
        ? `${ownerOf(limit)} may not be made thicker`
        : `${ownerOf(limit)} may be at most ${amount} thicker`;
    case 'reachFrom':
      return `the journal may go no further rearward than ${amount}`;
    case 'reachTo':
      return `the journal may go no further noseward than ${amount}`;
  }
}

export function wayOutText(limit: LimitReport, system: System): string {
  const needed = fineText(limit.needed!, system);
  switch (limit.what) {
    case 'forbidden':
    case 'limit':
      return `${needed} off ${ownerOf(limit)}`;
    case 'cleanup':
      return `a cleanup of ${ownerOf(limit)} of no more than ${needed}`;
    case 'add':
      return `${ownerOf(limit)} ${needed} thicker`;
    case 'reachFrom':
    case 'reachTo':
      return `the journal at ${needed}`;
  }
}
