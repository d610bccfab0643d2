/** A lesson from a file or a link that was left and is not kept: one press, and it is there again. */
import { useState } from 'react';
import type { Lesson } from '../../../lessons/definition.ts';
import { FROM, heldOpened, holdOpened, keepLesson } from './ownLessons.ts';

interface Props {
  open(lesson: Lesson): void;
  kept(): void;
}

export function LeftLesson({ open, kept }: Props) {
  const [left, setLeft] = useState(heldOpened);
  const [refused, setRefused] = useState(false);
  if (!left) return null;
  const done = () => {
    holdOpened(null);
    setLeft(null);
  };
  const keep = () => {
    if (keepLesson(left, FROM) === null) return setRefused(true);
    done();
    kept();
  };
  return (
    <div className="keep-lesson">
      <p role="status">
        {refused
          ? 'This browser keeps nothing. Keep the link or the file.'
          : `“${left.title}” is not kept: it is gone once this page is closed.`}
      </p>
      <p className="buttons">
        <button type="button" onClick={() => open(left)}>
          Open it again
        </button>
        <button type="button" onClick={keep}>
          Keep it in the list
        </button>
        <button type="button" onClick={done}>
          Let it go
        </button>
      </p>
    </div>
  );
}
