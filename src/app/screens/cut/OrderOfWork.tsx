/** The usual order of work for this plan, ticked and reordered by the person; both are kept in the design. */
import { useStore } from 'zustand';
import type { CutReport } from '../../../report/cut/definition.ts';
import type { Work } from '../../state/store.ts';
import { withMoved, withTick, withUsualOrder } from './entries.ts';

export function OrderOfWork({ work, cut }: { work: Work; cut: CutReport }) {
  const kept = useStore(work.store, (state) => state.design.cut?.work);
  if (cut.work.length === 0) return null;
  const ids = cut.work.map(({ id }) => id);
  const done = new Set(kept?.done ?? []);
  const count = ids.filter((id) => done.has(id)).length;
  const move = (id: string, by: 1 | -1) => work.change((d) => withMoved(d, ids, id, by));
  return (
    <section aria-label="Order of work">
      <p className="fine">
        Common practice, no source: the machine’s own manual, the shop’s rules and whoever is licensed to run it come
        first. {count} of {ids.length} done.
      </p>
      <ol className="order">
        {cut.work.map(({ id, text, cautions }, i) => (
          <li key={id} className={done.has(id) ? 'done' : ''}>
            <label>
              <input
                type="checkbox"
                checked={done.has(id)}
                onChange={(event) => work.change((d) => withTick(d, id, event.target.checked))}
              />{' '}
              <span>{text}</span>
            </label>
            <span className="buttons">
              <button type="button" disabled={i === 0} onClick={() => move(id, -1)} aria-label={`Earlier: ${text}`}>
                ↑
              </button>
              <button
                type="button"
                disabled={i === ids.length - 1}
                onClick={() => move(id, 1)}
                aria-label={`Later: ${text}`}
              >
                ↓
              </button>
            </span>
            {cautions.length > 0 && <p className="caution">{cautions.join(' ')}</p>}
          </li>
        ))}
      </ol>
      {kept?.order && (
        <p className="buttons">
          <button type="button" onClick={() => work.change(withUsualOrder)}>
            Back to the usual order
          </button>
        </p>
      )}
    </section>
  );
}
