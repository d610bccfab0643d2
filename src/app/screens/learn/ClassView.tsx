/**
 * A lesson before a class: large, the picture frozen, the class's answers as a spread, and the instructor shows what
 * happens. Answers are typed in here, or come in a link that each learner's own device shows; nothing leaves a device
 * by itself.
 */
import { type FormEvent, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { type ClassAnswer, withAnswer } from '../../../lessons/classAnswer.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Lesson, Question } from '../../../lessons/definition.ts';
import { recognised } from '../../../lessons/recognise.ts';
import { answerSaid, said } from '../../../lessons/sheets.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { pageOf } from '../../takeAlong/link.ts';
import { ClassLink } from './ClassLink.tsx';
import { answersHere, keepAnswers } from './classStore.ts';
import { drawnShort, keepClassSeed } from './drawn.ts';
import { LessonPicture } from './LessonPicture.tsx';
import { classLink, formOf } from './ownLessons.ts';
import { Spread } from './Spread.tsx';
import { Story } from './Story.tsx';
import { Triangles } from './Triangle.tsx';
import { typedAnswer, unitHint } from './typed.ts';
import { useDealt } from './useDealt.ts';

interface Props {
  id: string;
  lesson: Lesson;
  seed: number;
  /** another class, with numbers of its own */
  put(seed: number): void;
  work: Work;
  leave(): void;
}

export function ClassView({ id, lesson, seed, put, work, leave }: Props) {
  const { dealt, fault, again } = useDealt(lesson, seed);
  const [at, setAt] = useState(0);
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const speech = useMemo<Speech>(() => ({ system, way }), [system, way]);
  const question = lesson.questions[at]!;
  useEffect(() => keepClassSeed(id, seed), [id, seed]);
  return (
    <article className="lesson class-view">
      <header className="lesson-head">
        <h2>{lesson.title}</h2>
        <p>
          <button type="button" onClick={() => put(drawnShort())}>
            Other numbers
          </button>
          <button type="button" onClick={leave}>
            All lessons
          </button>
        </p>
      </header>
      {fault !== null && <Fault what="This round" fault={fault} again={again} />}
      {fault === null && !dealt && <p className="loading">The numbers are being worked out.</p>}
      {dealt && (
        <Asked
          key={at}
          {...{ id, seed, at, lesson, question, speech }}
          dealt={dealt.questions[at]!}
          next={at + 1 < lesson.questions.length ? () => setAt(at + 1) : null}
        />
      )}
    </article>
  );
}

interface AskedProps {
  id: string;
  seed: number;
  at: number;
  lesson: Lesson;
  question: Question;
  dealt: DealtQuestion;
  speech: Speech;
  next: (() => void) | null;
}

function Asked({ id, seed, at, lesson, question, dealt, speech, next }: AskedProps) {
  const [open, setOpen] = useState(false);
  const [told, setTold] = useState(false);
  const [all, setAll] = useState(() => answersHere(id, seed));
  // A code that the camera read opened a window of its own.
  useEffect(() => {
    const heard = () => setAll(answersHere(id, seed));
    window.addEventListener('storage', heard);
    return () => window.removeEventListener('storage', heard);
  }, [id, seed]);
  const form = formOf(id, lesson);
  const here = all.filter(({ question: of }) => of === at);
  const mine = here.filter(({ of }) => of === form);
  const take = (answer: number | string) => {
    const one: ClassAnswer = { lesson: id, seed, question: at, answer, sure: 'think', mark: markNow() };
    if (form !== undefined) one.of = form;
    const more = withAnswer(all, one);
    setAll(more);
    keepAnswers(id, seed, more);
  };
  const words = (text: string) => said(text, dealt, speech);
  return (
    <div className="round">
      <div className="head">
        {at === 0 && !open && <Story told={lesson.story.map(words)} />}
        <h3>{words(question.ask)}</h3>
      </div>
      <LessonPicture
        question={question}
        dealt={dealt}
        phase={told ? 'free' : open ? 'released' : 'frozen'}
        again={0}
        speech={speech}
        times={LARGE}
      />
      <div className="body">
        <Spread question={question} dealt={dealt} answers={mine} open={told} speech={speech} />
        {!open && <Typed question={question} words={words} speech={speech} take={take} />}
        <p className="buttons">
          {!open && (
            <button type="button" className="main" onClick={() => setOpen(true)}>
              Show what happens
            </button>
          )}
          {open && !told && (
            <button type="button" className="main" onClick={() => setTold(true)}>
              Show what is right
            </button>
          )}
          {told && next && (
            <button type="button" className="main" onClick={next}>
              Next question
            </button>
          )}
        </p>
        {open && !told && (
          <p className="asked">
            <strong>Ask the class: what did you see?</strong> {words(dealt.look.ask)}
          </p>
        )}
        {told && (
          <>
            <p className="asked">
              <strong>{answerSaid(question.answer, dealt.right, dealt, speech)}.</strong> {words(question.because)}
            </p>
            <SlipsMade question={question} dealt={dealt} answers={mine} speech={speech} />
            <Triangles question={question} dealt={dealt} speech={speech} />
          </>
        )}
        {mine.length < here.length && (
          <p className="fine">
            {here.length - mine.length} given before this lesson was changed{' '}
            {here.length - mine.length === 1 ? 'is' : 'are'} left out.
          </p>
        )}
        {here.length > 0 && !open && (
          <p className="buttons">
            <button
              type="button"
              onClick={() => {
                keepAnswers(id, seed, []);
                setAll([]);
              }}
            >
              Forget these answers
            </button>
          </p>
        )}
        {!open && (
          <details>
            <summary>Answers from the learners’ own devices</summary>
            <ClassLink {...classLink(id, lesson, seed, pageOf(window.location))} carries={form !== undefined} />
          </details>
        )}
      </div>
    </div>
  );
}

/** Read from the last row. */
const LARGE = 1.35;
const RADIX = 36;
/** Tells one answer from another, and nothing of who gave it. */
export const markNow = (): string => Math.random().toString(RADIX).slice(2, 10);

/** What the learners said, as it is called out. */
function Typed({
  question: { answer },
  words,
  speech,
  take,
}: {
  question: Question;
  words(text: string): string;
  speech: Speech;
  take(answer: number | string): void;
}) {
  const [text, setText] = useState('');
  const [error, setError] = useState('');
  const [counted, setCounted] = useState('');
  if (answer.kind === 'choice')
    return (
      <fieldset className="class-typed">
        <legend>Count a hand for</legend>
        {answer.options.map(({ key, text: option }) => (
          <button key={key} type="button" onClick={() => take(key)}>
            {words(option)}
          </button>
        ))}
      </fieldset>
    );
  const as = answer.kind === 'move' ? 'fine' : answer.as;
  const unit = unitHint(as, speech);
  const send = (event: FormEvent) => {
    event.preventDefault();
    const typed = typedAnswer(text, as, speech);
    setError(typed.ok ? '' : typed.message);
    setCounted(typed.ok ? `Counted: ${told(typed.value, answer.kind === 'move' ? 'sided' : as, speech)}` : '');
    if (!typed.ok) return;
    take(typed.value);
    setText('');
  };
  return (
    <form className="class-typed" onSubmit={send}>
      <label>
        An answer{unit === '' ? '' : `, in ${unit}`}{' '}
        <input
          value={text}
          onChange={({ target }) => setText(target.value)}
          autoComplete="off"
          aria-invalid={error !== ''}
        />
      </label>
      <button type="submit">Count it</button>
      <span role="alert" className="error">
        {error}
      </span>
      <span role="status">{counted}</span>
    </form>
  );
}

interface SlipsProps {
  question: Question;
  dealt: DealtQuestion;
  answers: readonly ClassAnswer[];
  speech: Speech;
}

/** What the class did, the most frequent first, each slip with what was done and what it costs. */
function SlipsMade({ question: { mistakes }, dealt, answers, speech }: SlipsProps) {
  const made = new Map<number | 'right' | 'other', { count: number; answer: number | string }>();
  for (const { answer } of answers) {
    const found = recognised(answer, dealt);
    const key = found.kind === 'mistake' ? found.index : found.kind;
    // The explanation speaks of the first that was given so.
    made.set(key, { answer, ...made.get(key), count: (made.get(key)?.count ?? 0) + 1 });
  }
  if (made.size === 0) return null;
  return (
    <ul className="slips-made">
      {[...made]
        .sort(([, a], [, b]) => b.count - a.count)
        .map(([key, { count, answer }]) => {
          const words = (text: string) => said(text, { ...dealt, scope: { ...dealt.scope, answer } }, speech);
          const slip = typeof key === 'number' ? mistakes[key]! : null;
          return (
            <li key={key}>
              <strong>
                {count} of {answers.length}: {slip?.name ?? (key === 'right' ? 'right' : 'something else')}
              </strong>
              {slip && (
                <>
                  {' '}
                  {words(slip.says)} <strong>In metal:</strong> {words(slip.cost)}
                </>
              )}
            </li>
          );
        })}
    </ul>
  );
}
