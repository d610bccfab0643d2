/**
 * A lesson before a class: large, the picture frozen, the class's answers as a spread, and the instructor shows what
 * happens. Answers are typed in here, or come in a link that each learner's own device shows; nothing leaves a device
 * by itself.
 */
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { type CalledOut, type ClassAnswer, withAnswer } from '../../../lessons/classAnswer.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Lesson, Question } from '../../../lessons/definition.ts';
import { answerSaid, said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { pageOf } from '../../takeAlong/link.ts';
import { CalledOutForm } from './CalledOutForm.tsx';
import { ClassLink } from './ClassLink.tsx';
import { answersHere, keepAnswers } from './classStore.ts';
import { drawnShort, keepClassSeed } from './drawn.ts';
import { LessonPicture } from './LessonPicture.tsx';
import { SlipsMade, SureOf } from './Made.tsx';
import { classLink, formOf } from './ownLessons.ts';
import { Spread } from './Spread.tsx';
import { Story } from './Story.tsx';
import { Triangles } from './Triangle.tsx';
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
  const take = (answer: number | string, sure: CalledOut) => {
    const one: ClassAnswer = { lesson: id, seed, question: at, answer, sure, mark: markNow() };
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
        {!open && <CalledOutForm question={question} words={words} speech={speech} take={take} />}
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
              <strong>Right: {answerSaid(question.answer, dealt.right, dealt, speech)}.</strong>{' '}
              {words(question.because)}
            </p>
            <SureOf dealt={dealt} answers={mine} />
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
