/** Why a file was not opened: every error with its place. */
import { useStore } from 'zustand';
import type { Work } from './store.ts';

const MOST = 50;

export function Refused({ work }: { work: Work }) {
  const refused = useStore(work.store, (state) => state.refused);
  if (!refused) return null;
  const { file, errors } = refused;
  return (
    <div role="alert" className="refused">
      <h2>
        {file} was not opened: {errors.length} {errors.length === 1 ? 'error' : 'errors'}. What was on the screen is unchanged.
      </h2>
      <ul>
        {errors.slice(0, MOST).map(({ path, message }) => (
          <li key={path + message}>
            {path && <code>{path}</code>} {message}
          </li>
        ))}
        {errors.length > MOST && <li>and {errors.length - MOST} more</li>}
      </ul>
      <button type="button" onClick={() => work.store.setState({ refused: null })}>
        Close
      </button>
    </div>
  );
}
