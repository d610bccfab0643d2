/** Says, above every verdict, which numbers are typed and not taken; until then a verdict is of what was taken last. */
import { useStore } from 'zustand';
import { quantityIfAt } from '../../design/place.ts';
import { listed } from '../../report/listed.ts';
import { placeName } from '../../report/placeName.ts';
import { useAngles } from '../state/angles.ts';
import { draftsOf, draftText, leave } from '../state/draft.ts';
import type { Work } from '../state/store.ts';

export function DraftLine({ work }: { work: Work }) {
  const drafts = useStore(work.store, draftsOf);
  const design = useStore(work.store, (state) => (Object.keys(draftsOf(state)).length > 0 ? state.design : null));
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const paths = Object.keys(drafts);
  if (!design || paths.length === 0) return null;
  const names = paths.map((path) => {
    const text = draftText(drafts[path]!, path, design, { system, way }).replaceAll('\n', ' ');
    return `${placeName(design, path)} (${text === '' ? 'empty' : text.length > 24 ? `${text.slice(0, 23)}…` : text})`;
  });
  return (
    <section className="drafts" aria-label="Not taken yet">
      <p role="status">
        <strong>{countText(paths)} not taken yet:</strong> {listed(names)}. What stands below is of what was taken last.
      </p>
      <button type="button" onClick={() => leave(work)}>
        {paths.length === 1 ? 'Put it back' : 'Put them back'}
      </button>
    </section>
  );
}

/** Names and notes among them are no numbers. */
function countText(paths: readonly string[]): string {
  const one = paths.every((path) => quantityIfAt(path) !== null || /\.(profile|lobes)$/.test(path))
    ? 'number'
    : 'entry';
  if (paths.length === 1) return `1 ${one} is`;
  return `${paths.length} ${one === 'entry' ? 'entries' : 'numbers'} are`;
}
