/** Learn: a path of lessons, each of which asks before it shows. The job that is open is left alone. */
import './learn.css';
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { type ClassAnswer, classAnswerOf, withAnswer } from '../../../lessons/classAnswer.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { standing } from '../../../lessons/progress.ts';
import { Fault } from '../../frame/Fault.tsx';
import type { Work } from '../../state/store.ts';
import { faultText } from '../../state/useNewest.ts';
import { AnswerView } from './AnswerView.tsx';
import { ENTRIES, loadLesson } from './builtIn.ts';
import { ClassView } from './ClassView.tsx';
import { answersHere, keepAnswers } from './classStore.ts';
import { LessonView } from './LessonView.tsx';
import { OwnLesson } from './OwnLesson.tsx';
import { type Keeping, useProgress } from './useProgress.ts';
import { WorkSheet } from './WorkSheet.tsx';

const HERE = '#learn';

export default function LearnScreen({ work }: { work: Work }) {
  const keeping = useProgress();
  const behind = useSyncExternalStore(heard, () => window.location.hash.slice(`${HERE}/`.length));
  const taken = useTaken(behind);
  const [own, setOwn] = useState<Lesson | null>(null);
  const [id = '', what = '', seed = ''] = behind.split('/');
  const leave = () => {
    window.location.hash = HERE;
  };
  return (
    <div className="learn">
      {taken && (
        <p role="status" className="taken">
          One answer was counted. <a href={`${HERE}/${taken.lesson}/class/${taken.seed}`}>See the class</a>
        </p>
      )}
      {id === '' && own && (
        <LessonView
          lesson={own}
          work={work}
          visit="first"
          seed={FIRST}
          finished={() => {}}
          leave={() => setOwn(null)}
        />
      )}
      {id === '' && own === null && <Path keeping={keeping} openOwn={setOwn} />}
      {id !== '' && taken === null && (
        <Opened key={behind} {...{ id, what, seed: seedTyped(seed), work, keeping, leave }} />
      )}
    </div>
  );
}

const seedTyped = (text: string) => (/^[1-9]\d{0,8}$/.test(text) ? Number(text) : FIRST);

/** The answer that the address carries, counted once on this device; null where it carries none. */
function useTaken(behind: string): ClassAnswer | null {
  const found = useMemo(() => classAnswerOf(behind), [behind]);
  useEffect(() => {
    if (found) keepAnswers(found.lesson, found.seed, withAnswer(answersHere(found.lesson, found.seed), found));
  }, [found]);
  return found;
}

function heard(changed: () => void) {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}

interface PathProps {
  keeping: Keeping;
  openOwn(lesson: Lesson): void;
}

function Path({ keeping: { progress, today, damaged, lasts }, openOwn }: PathProps) {
  const all = ENTRIES.map((entry) => ({ ...entry, ...standing(progress.lessons[entry.id], today) }));
  const due = all.filter(({ is }) => is === 'due');
  const next = due[0] ?? all.find(({ is }) => is === 'new');
  return (
    <>
      <section className="verdict">
        <h2>{headline(due.length, next)}</h2>
        <p>
          Each lesson asks you first, then shows. Five to ten minutes. Say what you think, see it move, and find out
          why. It comes back after a day, three days and a week, with other numbers.
        </p>
        {damaged && (
          <p role="status">What was kept of your lessons could not be read. It lies aside; you begin anew.</p>
        )}
        {!lasts && <p role="status">This browser keeps nothing: what you learn is forgotten with the page.</p>}
      </section>
      <ol className="path">
        {all.map(({ id, title, about, is, days }) => (
          <li key={id}>
            <a href={`${HERE}/${id}`} className={is}>
              <strong>{title}</strong>
              <span>{about}</span>
              <span className="standing">{standingText(is, days)}</span>
            </a>
          </li>
        ))}
      </ol>
      <Instructors openOwn={openOwn} />
    </>
  );
}

/** What an instructor needs of each lesson, out of the learner's way. */
function Instructors({ openOwn }: Pick<PathProps, 'openOwn'>) {
  return (
    <details className="instructors">
      <summary>For instructors: on paper, and before a class</summary>
      <ul className="plain">
        {ENTRIES.map(({ id, title }) => (
          <li key={id}>
            <span className="which">{title}</span>
            <a href={`${HERE}/${id}/sheet`} aria-label={`${title}: work sheet and answers`}>
              Work sheet
            </a>
            <a href={`${HERE}/${id}/class/${FIRST}`} aria-label={`${title}: before a class`}>
              Class
            </a>
          </li>
        ))}
      </ul>
      <OwnLesson open={openOwn} />
    </details>
  );
}

function headline(due: number, next: { title: string; is: string } | undefined): string {
  if (due > 0) return due === 1 ? `One lesson comes back today: ${next!.title}` : `${due} lessons come back today.`;
  return next ? `Next: ${next.title}` : 'Nothing comes back today.';
}

function standingText(is: string, days: number): string {
  if (is === 'new') return 'new';
  if (is === 'due') return 'comes back today';
  if (is === 'done') return 'learnt';
  return days === 1 ? 'done; back tomorrow' : `done; back in ${days} days`;
}

/** The first numbers of a first visit: the same for a whole class. */
const FIRST = 1;
/** Numbers of later visits: whatever comes. */
const MOST_SEEDS = 1_000_000;

interface OpenedProps {
  id: string;
  /** what of it: nothing, the lesson itself; sheet, class or answer */
  what: string;
  seed: number;
  work: Work;
  keeping: Keeping;
  leave(): void;
}

function Opened({ id, what, seed, work, keeping, leave }: OpenedProps) {
  const [turn, setTurn] = useState(0);
  const [found, setFound] = useState<{ lesson: Lesson | null; fault: string | null }>({ lesson: null, fault: null });
  // As it stood when the lesson was opened: to finish it is no other visit.
  const [visit] = useState<'first' | 'again'>(() => (keeping.progress.lessons[id] ? 'again' : 'first'));
  const [own] = useState(() => (visit === 'first' ? FIRST : 1 + Math.floor(Math.random() * MOST_SEEDS)));
  // biome-ignore lint/correctness/useExhaustiveDependencies: `turn` asks once more
  useEffect(() => {
    let here = true;
    loadLesson(id).then(
      (lesson) => here && setFound({ lesson, fault: null }),
      (error: unknown) => here && setFound({ lesson: null, fault: faultText(error) }),
    );
    return () => {
      here = false;
    };
  }, [id, turn]);
  if (found.fault !== null) return <Fault what="The lesson" fault={found.fault} again={() => setTurn(turn + 1)} />;
  if (!found.lesson) return <p className="loading">The lesson is loading.</p>;
  const { lesson } = found;
  if (what === 'sheet') return <WorkSheet {...{ lesson, work, leave }} />;
  if (what === 'class') return <ClassView {...{ id, lesson, seed, work, leave }} />;
  if (what === 'answer') return <AnswerView {...{ id, lesson, seed, work }} />;
  return (
    <LessonView
      lesson={lesson}
      work={work}
      visit={visit}
      seed={own}
      finished={(last) => keeping.visit(id, last)}
      leave={leave}
      next={ENTRIES[ENTRIES.findIndex((entry) => entry.id === id) + 1] ?? null}
    />
  );
}
