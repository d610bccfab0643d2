/** A lesson of somebody else, opened from a link or a file: it is gone with the page unless it is kept in the list. */
import { useEffect, useState } from 'react';
import type { Lesson } from '../../../lessons/definition.ts';
import { byText, FROM, forgetLesson, holdOpened, keepLesson, othersId, ownLesson } from './ownLessons.ts';

export function KeepLesson({ lesson }: { lesson: Lesson }) {
  const id = othersId(lesson);
  const [kept, setKept] = useState(() => ownLesson(id).lesson !== null);
  const [refused, setRefused] = useState(false);
  const by = byText(lesson);
  // Left by a press it is there still, as long as it is not kept.
  useEffect(() => holdOpened(kept ? null : lesson), [lesson, kept]);
  const keep = () => {
    const done = keepLesson(lesson, FROM) !== null;
    setKept(done);
    setRefused(!done);
  };
  return (
    <div className="keep-lesson">
      <p>
        {by !== '' && `${by.charAt(0).toUpperCase()}${by.slice(1)}. `}
        <span role="status">
          {refused
            ? 'This browser keeps nothing. Keep the link or the file.'
            : kept
              ? 'It is in your list, under “From others”.'
              : 'It came from somebody else, and is gone once this page is closed, unless you keep it.'}
        </span>
      </p>
      <p className="buttons">
        {kept ? (
          <>
            <a className="button" href={`#learn/${id}`}>
              Open it from the list
            </a>
            <button
              type="button"
              onClick={() => {
                forgetLesson(id);
                setKept(false);
              }}
            >
              Take it out again
            </button>
          </>
        ) : (
          <button type="button" onClick={keep}>
            Keep it in the list
          </button>
        )}
      </p>
    </div>
  );
}
