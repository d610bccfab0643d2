/** The lesson in the making as a learner has it, beside its fields; on a narrow page one press away, and back. */
import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Lesson } from '../../../../lessons/definition.ts';
import type { Work } from '../../../state/store.ts';
import { LessonView } from '../LessonView.tsx';
import { NextFault } from './Standing.tsx';
import type { LessonFaults } from './useFaults.ts';

/** The real lesson, begun anew whenever it changes and goes. */
export function Preview({ lesson, found, work }: { lesson: Lesson; found: LessonFaults; work: Work }) {
  const goes = found.errors.length === 0 && found.tried !== null;
  const [shown, setShown] = useState<Lesson | null>(null);
  if (goes && shown !== lesson) setShown(lesson);
  const [turn, setTurn] = useState(0);
  const box = useRef<HTMLElement>(null);
  return (
    <section className="edit-preview" aria-label="As it is seen" ref={box}>
      <ToPreview box={box} />
      <NextFault found={found} />
      <p className="buttons">
        <strong>As it is seen</strong>
        {shown && (
          <button type="button" onClick={() => setTurn(turn + 1)}>
            From the beginning
          </button>
        )}
      </p>
      {shown && shown !== lesson && (
        <p role="status" className="fine">
          {found.errors.length > 0
            ? 'Not yet with your last change: something is in the way. This is the lesson before it.'
            : 'Your last change is being tried. This is the lesson before it.'}
        </p>
      )}
      {shown ? (
        <LessonView
          key={`${turn} ${JSON.stringify(shown)}`}
          lesson={shown}
          work={work}
          visit="first"
          seed={1 + turn}
          finished={() => {}}
          leave={() => setTurn(turn + 1)}
        />
      ) : (
        <p className="loading">It is shown here as soon as it goes.</p>
      )}
    </section>
  );
}

/** Where the page is too narrow for both: to the lesson as it is seen, and back to the field that was typed in. */
function ToPreview({ box }: { box: RefObject<HTMLElement | null> }) {
  const [seen, setSeen] = useState(false);
  const field = useRef<Element | null>(null);
  useEffect(() => {
    const node = box.current;
    if (!node) return;
    const observer = new IntersectionObserver(([entry]) => setSeen(entry!.isIntersecting));
    observer.observe(node);
    return () => observer.disconnect();
  }, [box]);
  useEffect(() => {
    const typedIn = ({ target }: FocusEvent) => {
      if (!(target instanceof Element && target.closest('.edit-form'))) return;
      field.current = target;
      // Out from under what lies over the foot of a narrow page (edit.css: its margin).
      if (target.matches('input, textarea, select')) target.scrollIntoView({ block: 'nearest' });
    };
    document.addEventListener('focusin', typedIn);
    return () => document.removeEventListener('focusin', typedIn);
  }, []);
  const go = () => {
    if (!seen) return box.current?.scrollIntoView({ block: 'start' });
    const back = field.current?.isConnected ? field.current : document.querySelector('.edit-form');
    back?.scrollIntoView({ block: 'center' });
    if (back instanceof HTMLElement) back.focus({ preventScroll: true });
  };
  return (
    <button type="button" className="to-preview" onClick={go}>
      {seen ? 'Back to the fields' : 'As it is seen'}
    </button>
  );
}
