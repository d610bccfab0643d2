/**
 * Top of the sheet: the design, who does the work, and what it is about; a sheet that is no work order says so before
 * anything else.
 */
import type { Verdict } from '../../../report/fit/verdict.ts';
import type { Purpose } from '../../../report/sheet/purpose.ts';

/** Sentences of the run that go on the sheet: the ways out, and why. */
const MOST = 2;

interface Props {
  title: string;
  purpose: Purpose;
  /** how the parts run, where that speaks against them */
  runs: Verdict | null;
  /** whether that is still being worked out */
  pending: boolean;
}

export function SheetHead({ title, purpose: { kind, tone, headline, sentences }, runs, pending }: Props) {
  return (
    <div className="sheet-head">
      <div className="title-block">
        <h3>{title}</h3>
        {kind !== 'refused' && ['Date', 'By', 'Machine'].map((name) => <span key={name}>{name}</span>)}
      </div>
      {pending && kind !== 'refused' && (
        <p className="first-read">Whether it runs with these films is not worked out yet: cut nothing by this sheet.</p>
      )}
      {runs?.tone === 'stop' && (
        <div className="refused">
          <p className="headline">{runs.headline}</p>
          <p>{runs.sentences.slice(0, MOST).join(' ')}</p>
        </div>
      )}
      {kind === 'refused' ? (
        <div className="refused">
          <p className="headline">Not a work order: do not cut to this sheet.</p>
          <p>
            <strong>{headline}</strong> {sentences.join(' ')}
          </p>
        </div>
      ) : (
        <>
          {tone === 'stop' ? (
            <div className="refused">
              <p className="headline">{headline}</p>
            </div>
          ) : (
            <p className="headline">{headline}</p>
          )}
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
