/** Leads from a screen that is withheld by a trial to that trial. */
import type { Withheld } from '../../report/cut/withheld.ts';

export function SettleOnCut({ why }: { why: Withheld }) {
  if (why === 'working') return null;
  return (
    <p className="advice">
      <a href="#cut/trials">{why === 'metal' ? 'To the trial on Cut' : 'Settle it at the trial on Cut'}</a>
    </p>
  );
}
