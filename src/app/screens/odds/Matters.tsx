/** What the doubt comes from, and what to buy: each known twice as well, in turn. */
import type { MattersReport } from '../../../report/odds/definition.ts';
import { hundredthText, mattersText, methodText, readSentence } from '../../../report/odds/words.ts';
import { type MatterRow, matterRows } from './matterRows.ts';

/** `chance`: the one the verdict tells, which gains add to. */
export function Matters({
  matters,
  chance,
  planned,
  working,
}: {
  matters: MattersReport;
  chance: number;
  planned: boolean;
  working: boolean;
}) {
  const rows = matterRows(matters);
  if (rows.length === 0) return working ? null : <p className="fine">{mattersText(matters)}</p>;
  const most = Math.max(...rows.map(({ share }) => Math.max(share?.share ?? 0, share?.high ?? 0)), 1e-9);
  const first = readSentence(matters, planned, chance);
  // Where they are all of it, they are told to add up to a hundred.
  const whole = matters.method === 'linear' ? hundredthsOf(rows.map(({ share }) => share?.share ?? 0)) : null;
  return (
    <section aria-label="What matters, and what to buy">
      {first !== '' && <p>{first}</p>}
      <div className="table">
        <table className="matters">
          <thead>
            <tr>
              <th scope="col">Doubt of</th>
              <th scope="col">Share of the doubt</th>
              <th scope="col">Twice as close, it works</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              <tr key={`${row.by} ${row.name}`}>
                <th scope="row">
                  {row.name} <small>{row.by === 'cutting' ? 'as cut' : 'as known'}</small>
                </th>
                <td>{row.share && <Bar {...row.share} most={most} told={whole?.[i]} />}</td>
                <td>{row.gain && gained(row.gain, chance)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="fine">
        {mattersText(matters)}{' '}
        {rows.some(({ gain }) => gain) && 'Twice as close: its doubt halved, all others as they are.'}
      </p>
      {matters.method !== null && (
        <details className="fine">
          <summary>For experts: how that is reckoned</summary>
          <p>{methodText(matters)}</p>
        </details>
      )}
    </section>
  );
}

/** In hundredths; below 0 where it goes against the others. */
const hundredths = (share: number, told = Math.round(100 * share)) => `${told} %`.replace('-', '−');

/** Shares to a hundredth each, all of which add up to the hundredths of their sum: the largest rests are rounded up. */
export function hundredthsOf(shares: readonly number[]): number[] {
  const down = shares.map((share) => Math.floor(100 * share));
  const left = Math.round(100 * shares.reduce((a, b) => a + b, 0)) - down.reduce((a, b) => a + b, 0);
  const byRest = shares
    .map((share, i) => ({ i, rest: 100 * share - down[i]! }))
    .sort((a, b) => b.rest - a.rest)
    .slice(0, left);
  return down.map((at, i) => (byRest.some((one) => one.i === i) ? at + 1 : at));
}

function Bar({
  share,
  low,
  high,
  most,
  told,
}: NonNullable<MatterRow['share']> & { most: number; told: number | undefined }) {
  const at = (value: number) => `${Math.min(100, Math.max(0, (100 * value) / most))}%`;
  return (
    <span className="share">
      <span className="bar-track" aria-hidden="true">
        <span className="bar-film" style={{ width: at(share) }} />
        {high > low && <span className="bar-limits" style={{ left: at(low), right: `calc(100% - ${at(high)})` }} />}
      </span>
      <span className="bar-text">{hundredths(share, told)}</span>
    </span>
  );
}

/** A gain within its own doubt is none. */
function gained({ gain, uncertainty }: NonNullable<MatterRow['gain']>, chance: number): string {
  const more = Math.round(100 * gain);
  if (more < 1 || gain <= uncertainty) return 'as often as now';
  return `${hundredthText(Math.min(1, chance + gain))} (+${more})`;
}
