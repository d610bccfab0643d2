/** Why a file was not opened: every error with its place. */
import { useStore } from 'zustand';
import { inSystem } from '../../design/quantity.ts';
import type { Work } from '../state/store.ts';

const MOST = 50;

export default function Refused({ work }: { work: Work }) {
  const refused = useStore(work.store, (state) => state.refused);
  const system = useStore(work.store, (state) => state.system);
  if (!refused) return null;
  const { file, errors, others } = refused;
  return (
    <div role="alert" className="refused">
      <h2>
        {others
          ? `${errors.length} of the ${errors.length + others} jobs of ${file} could not be taken in; the rest is here.`
          : `${file} was not opened: ${errors.length} ${errors.length === 1 ? 'error' : 'errors'}. What was on the screen is unchanged.`}
      </h2>
      <ul>
        {errors.slice(0, MOST).map(({ path, message }) => (
          <li key={path + message}>
            {path && <strong>{placeInWords(path)}</strong>} {inSystem(message, system)}
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

/** A path of the file as a person counts: `seats[0].journal.from` is seat 1, journal, from. */
const placeInWords = (path: string) =>
  `${path
    .replace(/(\w)s\[(\d+)\]/g, (_, name: string, index: string) => `${name} ${Number(index) + 1}`)
    .replace(/\[(\d+)\]/g, (_, index: string) => ` ${Number(index) + 1}`)
    .replaceAll('.', ', ')}:`;
