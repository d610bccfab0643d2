/** A lesson from a file: at an address of its own, so that the way back to the list is the one from every lesson. */
import { useEffect, useState } from 'react';
import type { Lesson } from '../../../lessons/definition.ts';
import { onDemand } from '../../frame/onDemand.tsx';
import type { Work } from '../../state/store.ts';
import { drawnSeed, keepHere, leftHere } from './drawn.ts';
import { KeepLesson } from './KeepLesson.tsx';
import { LessonView } from './LessonView.tsx';
import { heldOpened } from './ownLessons.ts';

/** Behind `#learn/`. */
export const HELD = 'opened';
export const LessonEditor = onDemand(() => import('./edit/LessonEditor.tsx'), { what: 'The editor' });

interface Props {
  /** null: the page was loaded anew; what is not kept is had back as long as it is open */
  opened: Lesson | null;
  work: Work;
  leave(): void;
}

export function HeldLesson({ opened, work, leave }: Props) {
  const [lesson] = useState(() => opened ?? heldOpened());
  const [edits, setEdits] = useState(false);
  const [seed] = useState(drawnSeed);
  const gone = lesson === null;
  useEffect(() => {
    if (gone) window.location.replace('#learn');
  }, [gone]);
  if (gone) return null;
  if (edits) return <LessonEditor work={work} from={lesson} leave={() => setEdits(false)} />;
  return (
    <>
      <KeepLesson lesson={lesson} />
      <LessonView
        lesson={lesson}
        work={work}
        visit="first"
        seed={seed}
        left={leftHere(lesson)}
        keep={(left) => keepHere(lesson, left)}
        finished={() => {}}
        leave={leave}
      />
      <p>
        <button type="button" onClick={() => setEdits(true)}>
          Change it
        </button>
      </p>
    </>
  );
}
