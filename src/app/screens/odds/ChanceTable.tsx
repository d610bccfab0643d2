/** Every chance with its limits, for who would see how sure the draws are. */

import type { OddsReport, StateReport } from '../../../report/odds/definition.ts';
import { accuracyOf } from '../../../report/odds/drawCount.ts';
import { NamedRows } from './NamedRows.tsx';

export function ChanceTable({ report }: { report: OddsReport }) {
  const rows = [
    ...rowsOf(report, report.planned ? 'as they are: ' : ''),
    ...(report.planned ? rowsOf(report.planned, 'as planned: ') : []),
    ...(report.trialFirst ? [{ what: 'a trial first, then cut: it works', ...report.trialFirst }] : []),
  ];
  const { draws, seed, effective, planned, noShape } = report;
  const lost = noShape + (planned?.noShape ?? 0);
  return (
    <>
      <NamedRows
        name="chances"
        head={['What', 'Chance', 'Limits']}
        rows={rows.map(({ what, share, low, high }) => [what, percent(share), `${percent(low)} to ${percent(high)}`])}
      />
      <p className="fine">
        {draws} pairs drawn, seed {seed}
        {effective !== undefined &&
          `; the trials leave as much as ${Math.round(effective)} pairs tell, so that a chance of one half is known to ± ${reachedText(effective)} and no better, however many are drawn`}
        {lost > 0 && `; ${lost} were no pair at all and are not counted`}. The limits hold each chance 19 times in 20;
        they are those of the draws alone, not of what is assumed of the parts. The journal is taken as centred and
        round.
        {report.trialFirst && ` A trial first: ${report.trialFirst.trials} simulated, stand-off and blue.`}
      </p>
    </>
  );
}

interface Row {
  what: string;
  share: number;
  low: number;
  high: number;
}

function rowsOf({ first, inBand, best, selfHolding, limits }: StateReport, state: string): Row[] {
  const each = (
    shares: Record<string, number>,
    of: Record<string, { low: number; high: number }>,
    word: (name: string) => string,
  ): Row[] => Object.entries(shares).map(([name, share]) => ({ what: `${state}${word(name)}`, share, ...of[name]! }));
  const films = (name: string) => (name === 'all' ? 'every film' : `the ${name} film`);
  return [
    ...each(best.inBand, limits.best, (name) => `${films(name)} in tolerance, at the best position`),
    ...each(inBand, limits.inBand, (name) => `${films(name)} in tolerance, where it is left`),
    ...each(first, limits.first, (name) => `the ${name} seat touches first`),
    { what: `${state}it sticks once pressed home`, share: selfHolding, ...limits.selfHolding },
  ];
}

const reachedText = (effective: number) => `${Math.round(100 * accuracyOf(effective))} in 100`;

/** To a tenth of a hundredth. */
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
