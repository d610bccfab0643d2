/** The examples: looked at as they are, and a job of one's own once something is changed. */
import index from '../../../../assets/demos.json';
import { DEMOS } from '../../state/demos.ts';
import type { Work } from '../../state/store.ts';
import { PairPicture } from './PairPicture.tsx';

export function Examples({ work, opened }: { work: Work; opened(): void }) {
  return (
    <section aria-labelledby="examples">
      <h3 id="examples">Examples</h3>
      <p className="fine">Opened as a copy: it becomes a job of your own once you change it.</p>
      <ul className="plain examples">
        {DEMOS.map(({ file, design }, i) => (
          <li key={file}>
            <button
              type="button"
              onClick={() => {
                work.open(file, { ok: true, design });
                opened();
              }}
            >
              <PairPicture design={design} />
              <span>
                <strong>{design.title}</strong>
                <span className="fine">{index[i]!.lesson}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
