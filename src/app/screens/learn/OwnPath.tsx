/** The lessons of one's own that this device keeps. */
import { useState } from 'react';
import { forgetLesson, ownLessons } from './ownLessons.ts';

export function OwnPath() {
  const [all, setAll] = useState(ownLessons);
  const [asked, setAsked] = useState<string | null>(null);
  if (all.length === 0) return null;
  return (
    <section className="own-path">
      <h3>Your own</h3>
      <ul className="plain">
        {all.map(({ id, title, about, damaged }) => (
          <li key={id}>
            <span className="which">
              <a href={`#learn/${id}`}>{title}</a>{' '}
              <span className="fine">{damaged ? 'It could not be read; it lies aside.' : about}</span>
            </span>
            <a href={`#learn/edit/${id}`} aria-label={`${title}: change it`}>
              Change
            </a>
            <a href={`#learn/${id}/sheet`} aria-label={`${title}: work sheet and answers`}>
              Work sheet
            </a>
            <a href={`#learn/${id}/class/1`} aria-label={`${title}: before a class`}>
              Class
            </a>
            <button
              type="button"
              aria-label={asked === id ? `${title}: take it away for good` : `${title}: take it away`}
              onClick={() => {
                if (asked !== id) return setAsked(id);
                forgetLesson(id);
                setAll(ownLessons());
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
