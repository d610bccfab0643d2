/** A lesson kept on this device, saved as a file, shared by a link. */
import { useState } from 'react';
import type { Lesson } from '../../../../lessons/definition.ts';
import { nameOf, offer } from '../../../state/files.ts';
import { isOwnDevice, LONGEST_LINK, pageOf } from '../../../takeAlong/link.ts';
import { LinkCode } from '../LinkCode.tsx';
import { LinkToCopy } from '../LinkToCopy.tsx';
import { idOf, keepLesson, lessonLink } from '../ownLessons.ts';

/** When it was given out, for whoever keeps it: of the clock on the wall. */
function dated(lesson: Lesson): Lesson {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return { ...lesson, day: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` };
}

export function TakeOut({ lesson, ready, doubts }: { lesson: Lesson; ready: boolean; doubts: number }) {
  const [said, setSaid] = useState('');
  const [link, setLink] = useState<{ of: Lesson; text: string | null } | null>(null);
  const shown = link?.of === lesson ? link : null;
  const keep = () => {
    const id = keepLesson(lesson);
    setSaid(id ? 'Kept among your lessons on this device.' : 'This browser keeps nothing. Save a file.');
  };
  const save = () =>
    offer(`${nameOf(lesson.title)}.lesson.json`, `${JSON.stringify(dated(lesson), null, 2)}\n`, 'application/json');
  const share = () => setLink({ of: lesson, text: lessonLink(dated(lesson), pageOf(window.location)) });
  return (
    <div className="take-out">
      <p className="buttons">
        <button type="button" className="main" disabled={!ready} onClick={keep}>
          Keep on this device
        </button>
        <button type="button" disabled={!ready} onClick={save}>
          Save as a file
        </button>
        <button type="button" disabled={!ready} onClick={share}>
          Link
        </button>
        {said !== '' && ready && <a href={`#learn/${idOf(lesson)}`}>Open it as a learner</a>}
      </p>
      {!ready && (
        <p className="fine">
          These wait until nothing is in the way: a lesson that does not go is refused where it is opened. The draft is
          kept as you go.
        </p>
      )}
      {ready && doubts > 0 && (
        <p className="doubt">
          <strong>Before you share it:</strong> it contradicts itself, as told above and at its fields.
        </p>
      )}
      <p role="status">{said}</p>
      {shown && shown.text === null && (
        <p role="alert">
          Too long for a link: {LONGEST_LINK.toLocaleString('en')} characters are the most. Save a file.
        </p>
      )}
      {shown?.text && (
        <div className="lesson-link">
          <p>Whoever opens it has the lesson. Nothing of it goes to a server.</p>
          {isOwnDevice(shown.text) && (
            <p>
              This page comes from this device itself, so the link opens here only. For others save a file, or open the
              page from a server that they reach and make the link there.
            </p>
          )}
          <LinkToCopy link={shown.text} />
          <LinkCode link={shown.text} label="Code for a camera: opens this lesson" />
        </div>
      )}
    </div>
  );
}
