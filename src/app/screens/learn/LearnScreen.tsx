/** Learn: a path of lessons, each of which asks before it shows. The job that is open is left alone. */
import './learn.css';
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { type ClassAnswer, classAnswerOf, isAmong, withAnswer } from '../../../lessons/classAnswer.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { standing } from '../../../lessons/progress.ts';
import { parseLesson } from '../../../lessons/validate.ts';
import { Fault } from '../../frame/Fault.tsx';
import type { Work } from '../../state/store.ts';
import { faultText } from '../../state/useNewest.ts';
import { AnswerView } from './AnswerView.tsx';
import { ENTRIES, exampleOf, loadLesson, withItsDesign } from './builtIn.ts';
import { ClassView } from './ClassView.tsx';
import { answersHere, keepAnswers } from './classStore.ts';
import { classSeed, drawnSeed, drawnShort, keepCourse, keepHere, leftCourse, leftHere } from './drawn.ts';
import { HELD, HeldLesson, LessonEditor } from './HeldLesson.tsx';
import { KeepLesson } from './KeepLesson.tsx';
import { LeftLesson } from './LeftLesson.tsx';
import { LessonView } from './LessonView.tsx';
import { OwnLesson } from './OwnLesson.tsx';
import { OwnPath } from './OwnPath.tsx';
import { CARRIED, carriedText, classOf, isKept, ownLesson } from './ownLessons.ts';
import { type Keeping, useProgress } from './useProgress.ts';
import { WorkSheet } from './WorkSheet.tsx';

const HERE = '#learn';
/** Behind it: the editor, with a lesson to begin from or none. */
const EDIT = 'edit';

export default function LearnScreen({ work }: { work: Work }) {
  const keeping = useProgress();
  const behind = useSyncExternalStore(heard, () => window.location.hash.slice(`${HERE}/`.length));
  const taken = useTaken(behind);
  const [opened, setOpened] = useState<Lesson | null>(null);
  const [id = '', what = '', seed = '', ...rest] = behind.split('/');
  const leave = () => {
    window.location.hash = HERE;
  };
  const openOwn = (lesson: Lesson) => {
    setOpened(lesson);
    window.location.hash = `${HERE}/${HELD}`;
  };
  return (
    <div className="learn">
      {taken && (
        <p role="status" className="taken">
          {taken.before ? 'This answer was counted before.' : 'One answer was counted.'}{' '}
          <a href={`${HERE}/${taken.lesson}/class/${taken.seed}`}>See the class</a>
        </p>
      )}
      {id === '' && <Path keeping={keeping} openOwn={openOwn} />}
      {id === HELD && <HeldLesson {...{ opened, work, leave }} />}
      {id !== '' && id !== HELD && taken === null && (
        // A sheet with other numbers is the same sheet.
        <Opened
          key={what === 'sheet' ? `${id}/${what}` : behind}
          {...{ id, what, seed: seedTyped(seed), rest, work, keeping, leave }}
        />
      )}
    </div>
  );
}

/** null: none stands there. */
const seedTyped = (text: string) => (/^[1-9]\d{0,8}$/.test(text) ? Number(text) : null);

/** The answer that the address carries, counted once on this device, and whether it was; null where it carries none. */
function useTaken(behind: string): (ClassAnswer & { before: boolean }) | null {
  const found = useMemo(() => {
    const one = classAnswerOf(behind);
    return one && { ...one, before: isAmong(answersHere(one.lesson, one.seed), one) };
  }, [behind]);
  useEffect(() => {
    if (!found) return;
    const { before: _, ...one } = found;
    keepAnswers(one.lesson, one.seed, withAnswer(answersHere(one.lesson, one.seed), one));
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

function Path({ keeping: { progress, begun, today, damaged, lasts }, openOwn }: PathProps) {
  const [kept, setKept] = useState(0);
  const standingOf = (id: string) => standing(progress.lessons[id], today, begun.has(id));
  const all = ENTRIES.map((entry) => ({ ...entry, ...standingOf(entry.id) }));
  const due = all.filter(({ is }) => is === 'due');
  const next = due[0] ?? all.find(({ is }) => is === 'begun') ?? all.find(({ is }) => is === 'new');
  return (
    <>
      <section className="verdict">
        <h2>
          <Headline due={due.length} next={next} />
        </h2>
        <p>
          Each lesson asks you first, then shows. Five to ten minutes. Say what you think, see it move, and find out
          why. It comes back after a day, three days and a week, with other numbers.
        </p>
        {damaged && (
          <p role="status">What was kept of your lessons could not be read. It lies aside; you begin anew.</p>
        )}
        {!lasts && <p role="status">This browser keeps nothing: what you learn is forgotten with the page.</p>}
      </section>
      <LeftLesson open={openOwn} kept={() => setKept(kept + 1)} />
      <ol className="path">
        {all.map(({ id, title, about, is, days }) => (
          <li key={id}>
            <a href={`${HERE}/${id}`} className={is}>
              <strong>{title}</strong>
              <span>{about}</span>
              <span className="standing">{standingText({ is, days })}</span>
            </a>
          </li>
        ))}
      </ol>
      <OwnPath key={kept} standingOf={(id) => standingText(standingOf(id))} />
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
        {ENTRIES.map(({ id, title }, i) => (
          <li key={id}>
            <span className="which">
              {i + 1}. {title}
            </span>
            <a href={`${HERE}/${id}/sheet`} aria-label={`${title}: work sheet and answers`}>
              Work sheet
            </a>
            <a href={`${HERE}/${id}/class`} aria-label={`${title}: before a class`}>
              Class
            </a>
            <a href={`${HERE}/${EDIT}/${id}`} aria-label={`${title}: change a copy`}>
              Change a copy
            </a>
          </li>
        ))}
      </ul>
      <p>
        <a href={`${HERE}/${EDIT}`}>Make a lesson of your own</a>
      </p>
      <OwnLesson open={openOwn} />
    </details>
  );
}

function Headline({ due, next }: { due: number; next: { id: string; title: string; is: string } | undefined }) {
  if (!next) return 'Nothing comes back today.';
  if (due > 1) return `${due} lessons come back today.`;
  return (
    <>
      {due === 1 ? 'One lesson comes back today: ' : next.is === 'begun' ? 'Begun: ' : 'Next: '}
      <a href={`${HERE}/${next.id}`}>{next.title}</a>
    </>
  );
}

function standingText({ is, days }: { is: string; days: number }): string {
  if (is === 'new' || is === 'begun') return is;
  if (is === 'due') return 'comes back today';
  if (is === 'done') return 'learnt';
  return days === 1 ? 'done; back tomorrow' : `done; back in ${days} days`;
}

interface OpenedProps {
  id: string;
  /** what of it: nothing, the lesson itself; sheet, class or answer */
  what: string;
  /** the numbers that the address names */
  seed: number | null;
  /** which class an answer is for */
  rest: readonly string[];
  work: Work;
  keeping: Keeping;
  leave(): void;
}

const nextOf = (id: string) => {
  const at = ENTRIES.findIndex((entry) => entry.id === id);
  return (at >= 0 && ENTRIES[at + 1]) || null;
};

/** null: it is learnt, and comes back no more. */
function daysTo({ progress, today }: Keeping, id: string): number | null | undefined {
  const learnt = progress.lessons[id];
  return learnt && (learnt.due === null ? null : Math.max(1, learnt.due - today));
}

/** One that came with the program, one of this device, or the one that the link carries. */
async function loadAny(id: string): Promise<Lesson> {
  if (isKept(id)) {
    const { lesson } = ownLesson(id);
    if (!lesson) throw new Error('this device has no such lesson, or it could not be read');
    return withItsDesign(lesson);
  }
  if (!id.startsWith(CARRIED)) return loadLesson(id);
  const text = carriedText(id);
  if (text === null) throw new Error('the link is not whole: it was cut off or altered on the way. Ask for it again');
  const read = parseLesson(text, exampleOf, false);
  if (!read.ok) throw new Error(read.errors.map(({ path, message }) => `${path}: ${message}`).join('; '));
  return withItsDesign(read.lesson);
}

/** A class or a sheet without numbers yet: they are drawn, and stand in its address from then on. */
function Drawn({ id, what }: { id: string; what: 'sheet' | 'class' }) {
  useEffect(() => {
    window.location.replace(`${HERE}/${id}/${what}/${what === 'class' ? classSeed(id) : drawnShort()}`);
  }, [id, what]);
  return <p className="loading">The numbers are being drawn.</p>;
}

function Opened({ id, what, seed, rest, work, keeping, leave }: OpenedProps) {
  const [turn, setTurn] = useState(0);
  const [found, setFound] = useState<{ lesson: Lesson | null; fault: string | null }>({ lesson: null, fault: null });
  // As it stood when the lesson was opened: to finish it is no other visit.
  const [visit] = useState<'first' | 'again'>(() => (keeping.progress.lessons[id] ? 'again' : 'first'));
  const lessonId = id === EDIT ? what : id;
  const [own] = useState(drawnSeed);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `turn` asks once more
  useEffect(() => {
    let here = true;
    if (id === EDIT && what === '') return;
    loadAny(lessonId).then(
      (lesson) => {
        if (!here) return;
        setFound({ lesson, fault: null });
        // Answered before it was kept, it is begun all the same.
        if (what === '' && isKept(id) && leftCourse(id, lesson)?.course.given) keeping.answer(id);
      },
      (error: unknown) => here && setFound({ lesson: null, fault: faultText(error) }),
    );
    return () => {
      here = false;
    };
  }, [id, lessonId, turn]);
  if (id === EDIT && what === '') return <LessonEditor {...{ work, leave }} from={null} />;
  if (found.fault !== null)
    return (
      <>
        <Fault what="The lesson" fault={found.fault} again={() => setTurn(turn + 1)} />
        <p className="buttons">
          <a className="button main" href={HERE}>
            All lessons
          </a>
        </p>
      </>
    );
  if (!found.lesson) return <p className="loading">The lesson is loading.</p>;
  const { lesson } = found;
  if (id === EDIT) return <LessonEditor {...{ work, leave }} from={lesson} />;
  if (what === 'sheet' || what === 'class') {
    if (seed === null) return <Drawn {...{ id, what }} />;
    const here = (next: number) => `${HERE}/${id}/${what}/${next}`;
    if (what === 'sheet')
      return <WorkSheet {...{ lesson, seed, work, leave }} put={(next) => window.location.replace(here(next))} />;
    // Back leads to the class before, and its answers.
    const put = (next: number) => window.location.assign(here(next));
    return <ClassView {...{ id, lesson, seed, put, work, leave }} />;
  }
  if (what === 'answer') return <AnswerView {...{ lesson, work }} seed={seed ?? 1} class={classOf(id, lesson, rest)} />;
  const carried = id.startsWith(CARRIED);
  return (
    <>
      {carried && <KeepLesson lesson={lesson} />}
      <LessonView
        lesson={lesson}
        work={work}
        visit={visit}
        seed={own}
        left={carried ? leftHere(lesson) : leftCourse(id, lesson)}
        keep={(left) => (carried ? keepHere(lesson, left) : keepCourse(id, lesson, left))}
        answered={() => keeping.answer(id)}
        finished={(last) => (carried ? undefined : keeping.visit(id, last))}
        leave={leave}
        next={nextOf(id)}
        days={carried ? undefined : daysTo(keeping, id)}
      />
    </>
  );
}
