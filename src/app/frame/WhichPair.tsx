/** Which pair is drawn and told of, once trials tell of another: one choice for all screens of a job. */
import './whichPair.css';
import type { Work } from '../state/store.ts';

interface Props {
  work: Work;
  /** whether there is another pair than the drawn one */
  isOther: boolean;
  asDrawn: boolean;
}

export function WhichPair({ work, isOther, asDrawn }: Props) {
  if (!isOther) return null;
  const choose = (drawn: boolean) => work.store.setState(({ piece }) => ({ drawnOf: drawn ? piece : null }));
  return (
    <select
      className="which-pair"
      aria-label="Parts drawn"
      value={asDrawn ? 'drawn' : 'believed'}
      onChange={({ target }) => choose(target.value === 'drawn')}
    >
      <option value="believed">As believed</option>
      <option value="drawn">As drawn</option>
    </select>
  );
}
