/** The fields of an entry that say when it was made, by whom and at what stage of the work. */
import { useId, useState } from 'react';
import { LONGEST_NOTE, STAGES } from '../../design/recordDefinition.ts';
import type { Particulars } from '../../report/record/story.ts';
import { TypedField } from '../controls/TypedField.tsx';
import { STAGE_NAMES } from './stages.ts';

interface Props {
  /** where the entry stands in the design, of one that is written down */
  path?: string;
  told: Particulars;
  change(told: Particulars): void;
  /** whether its note is asked for here */
  note: boolean;
}

const OTHER = 'other';
const MOST = { by: 60, stage: 40, note: LONGEST_NOTE };

export function Entered({ path, told, change, note }: Props) {
  const id = useId();
  const [own, setOwn] = useState(false);
  const known = told.stage === undefined || (STAGES as readonly string[]).includes(told.stage);
  const isOther = own || !known;
  const at = (key: string) => (path === undefined ? {} : { 'data-path': `${path}.${key}` });
  const words = (key: 'by' | 'stage' | 'note', title: string, about: string) => (
    <div className="local" {...at(key)}>
      <label htmlFor={`${id} ${key}`}>{title}</label>
      <TypedField
        id={`${id} ${key}`}
        keys="words"
        shown={told[key] ?? ''}
        about={about}
        take={(text) => {
          change({ ...told, [key]: text.trim().slice(0, MOST[key]) });
          return null;
        }}
      />
    </div>
  );
  return (
    <div className="locals entered">
      <div className="local" {...at('date')}>
        <label htmlFor={`${id} date`}>Date</label>
        <input
          id={`${id} date`}
          type="date"
          value={told.date?.slice(0, 10) ?? ''}
          onChange={(event) => change({ ...told, date: event.target.value })}
        />
      </div>
      {words('by', 'By', 'Who did it.')}
      <div className="local" {...at('stage')}>
        <label htmlFor={`${id} stages`}>Stage</label>
        <select
          id={`${id} stages`}
          value={isOther ? OTHER : (told.stage ?? '')}
          onChange={({ target: { value } }) => {
            setOwn(value === OTHER);
            if (value !== OTHER) change({ ...told, stage: value });
          }}
        >
          <option value="">not said</option>
          {STAGES.map((stage) => (
            <option key={stage} value={stage}>
              {STAGE_NAMES[stage]}
            </option>
          ))}
          <option value={OTHER}>other…</option>
        </select>
      </div>
      {isOther && words('stage', 'Stage, in words', 'Forty characters at most.')}
      {note && words('note', 'Note', 'Anything worth remembering.')}
    </div>
  );
}
