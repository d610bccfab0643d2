/** Top of the sheet: the design, who does the work, and what it is about; a sheet that is no work order says so before anything else. */
import type { Purpose } from '../../report/sheet/purpose.ts';

export function SheetHead({ title, purpose: { kind, tone, headline, sentences } }: { title: string; purpose: Purpose }) {
  return (
    <div className="sheet-head">
      <div className="title-block">
        <h3>{title}</h3>
        {kind !== 'refused' && ['Date', 'By', 'Machine'].map((name) => <span key={name}>{name}</span>)}
      </div>
      {kind === 'refused' ? (
        <div className="refused">
          <p className="headline">Not a work order: do not cut to this sheet.</p>
          <p>
            <strong>{headline}</strong> {sentences.join(' ')}
          </p>
        </div>
      ) : (
        <>
          <p className="headline">{headline}</p>
          {sentences.length > 0 && (
            <p className={tone === 'mend' && kind === 'work' ? 'first-read' : 'more'}>
              {tone === 'mend' && kind === 'work' && <strong>Read this first: </strong>}
              {sentences.join(' ')}
            </p>
          )}
        </>
      )}
    </div>
  );
}
