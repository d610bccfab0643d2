/** The lessons that this device keeps: one's own, and those kept from others. */
import { useState } from 'react';
import { FROM, forgetLesson, OWN, ownLessons } from './ownLessons.ts';

interface Props {
  /** whether it is new, begun, or when it comes back */
  standingOf(id: string): string;
}

export function OwnPath({ standingOf }: Props) {
  return (
    <>
      <Kept of={OWN} head="Your own" standingOf={standingOf} />
      <Kept of={FROM} head="From others" standingOf={standingOf} />
    </>
  );
}

function Kept({ of, head, standingOf }: Props & { of: typeof OWN | typeof FROM; head: string }) {
  const [all, setAll] = useState(() => ownLessons(of));
  const [asked, setAsked] = useState<string | null>(null);
  if (all.length === 0) return null;
  return (
    <section className="own-path">
      <h3>{head}</h3>
      <ul className="plain">
        {all.map(({ id, title, about, by, damaged }) => (
          <li key={id}>
            <span className="which">
              <a href={`#learn/${id}`}>{title}</a>{' '}
              <span className="fine">
                {damaged ? 'It could not be read; it lies aside.' : about}
                {by !== '' && ` (${by})`}
                {!damaged && ` · ${standingOf(id)}`}
              </span>
            </span>
            <a href={`#learn/edit/${id}`} aria-label={`${title}: change ${of === OWN ? 'it' : 'a copy'}`}>
              {of === OWN ? 'Change' : 'Change a copy'}
            </a>
            <a href={`#learn/${id}/sheet`} aria-label={`${title}: work sheet and answers`}>
              Work sheet
            </a>
            <a href={`#learn/${id}/class`} aria-label={`${title}: before a class`}>
              Class
            </a>
            <button
              type="button"
              aria-label={asked === id ? `${title}: take it away for good` : `${title}: take it away`}
              onClick={() => {
                if (asked !== id) return setAsked(id);
                forgetLesson(id);
                setAll(ownLessons(of));
              }}
            >
              {asked === id ? 'For good?' : 'Take away'}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
