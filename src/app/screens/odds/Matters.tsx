/** What the doubt comes from, and what to buy: each known twice as well, in turn. */
import type { MattersReport } from '../../../report/odds/definition.ts';
import { hundredthText, mattersText, methodText, readSentence } from '../../../report/odds/words.ts';
import { type MatterRow, matterRows } from './matterRows.ts';

export function Matters({ matters, working }: { matters: MattersReport; working: boolean }) {
  const rows = matterRows(matters);
  if (rows.length === 0) return working ? null : <p className="fine">{mattersText(matters)}</p>;
  const most = Math.max(...rows.map(({ share }) => Math.max(share?.share ?? 0, share?.high ?? 0)), 1e-9);
  const first = readSentence(matters);
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
            {rows.map((row) => (
              <tr key={`${row.by} ${row.name}`}>
                <th scope="row">
                  {row.name} <small>{row.by === 'cutting' ? 'as cut' : 'as known'}</small>
                </th>
                <td>{row.share && <Bar {...row.share} most={most} />}</td>
                <td>{row.gain && gained(row.gain)}</td>
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
const hundredths = (share: number) => `${Math.round(100 * share)} %`.replace('-', '−');

function Bar({ share, low, high, most }: NonNullable<MatterRow['share']> & { most: number }) {
  const at = (value: number) => `${Math.min(100, Math.max(0, (100 * value) / most))}%`;
  return (
    <span className="share">
      <span className="bar-track" aria-hidden="true">
        <span className="bar-film" style={{ width: at(share) }} />
        {high > low && <span className="bar-limits" style={{ left: at(low), right: `calc(100% - ${at(high)})` }} />}
      </span>
      <span className="bar-text">{hundredths(share)}</span>
    </span>
  );
}

/** A gain within its own doubt is none. */
function gained({ share, gain, uncertainty }: NonNullable<MatterRow['gain']>): string {
  const more = Math.round(100 * gain);
  if (more < 1 || gain <= uncertainty) return 'as often as now';
  return `${hundredthText(share)} (+${more})`;
}
