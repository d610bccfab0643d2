/**
 * A learner's own device in a class: the question and the frozen picture, an answer, and then its code for the
 * instructor's camera. What is right is not told here.
 */
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { fragmentOf } from '../../../lessons/classAnswer.ts';
import type { Dealt } from '../../../lessons/deal.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { answerSaid, said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { pageOf } from '../../takeAlong/link.ts';
import { QrCode } from '../../takeAlong/QrCode.tsx';
import { Ask, type Draft } from './Ask.tsx';
import { markNow } from './ClassView.tsx';
import { LessonPicture } from './LessonPicture.tsx';
import type { OfClass } from './ownLessons.ts';
import { Story } from './Story.tsx';
import { useDealt } from './useDealt.ts';

interface Props {
  class: OfClass;
  lesson: Lesson;
  seed: number;
  work: Work;
}

export function AnswerView({ class: of, lesson, seed, work }: Props) {
  const { dealt, fault, again } = useDealt(lesson, seed);
  const [at, setAt] = useState(0);
  const [mark] = useState(markNow);
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const speech = useMemo<Speech>(() => ({ system, way }), [system, way]);
  const next = at + 1 < lesson.questions.length ? () => setAt(at + 1) : null;
  return (
    <article className="lesson">
      <header className="lesson-head">
        <h2>{lesson.title}</h2>
      </header>
      {fault !== null && <Fault what="This round" fault={fault} again={again} />}
      {fault === null && !dealt && <p className="loading">The numbers are being worked out.</p>}
      {dealt && <Question key={at} class={of} {...{ lesson, seed, at, mark, dealt, speech, next }} />}
    </article>
  );
}

interface QuestionProps extends Omit<Props, 'work'> {
  at: number;
  mark: string;
  dealt: Dealt;
  speech: Speech;
  next: (() => void) | null;
}

function Question({ class: { id, of }, lesson, seed, at, mark, dealt, speech, next }: QuestionProps) {
  const question = lesson.questions[at]!;
  const mine = dealt.questions[at]!;
  const [draft, setDraft] = useState<Draft>({ text: '', value: null, sure: null });
  const [given, setGiven] = useState<{ fragment: string; text: string } | null>(null);
  const fragment = given?.fragment ?? null;
  const words = (text: string) => said(text, mine, speech);
  const link = `${pageOf(window.location)}#learn/${fragment}`;
  return (
    <div className="round at-ask">
      <div className="head">
        {at === 0 && <Story told={lesson.story.map(words)} />}
        <h3>{words(question.ask)}</h3>
      </div>
      <LessonPicture question={question} dealt={mine} phase="frozen" again={0} speech={speech} />
      <div className="body">
        {fragment === null ? (
          <Ask
            answer={question.answer}
            dealt={mine}
            draft={draft}
            setDraft={setDraft}
            help={[]}
            words={words}
            speech={speech}
            commit={(answer, sure) =>
              setGiven({
                fragment: fragmentOf({ lesson: id, seed, question: at, answer, sure, mark, ...(of ? { of } : {}) }),
                text: answerSaid(question.answer, answer, mine, speech),
              })
            }
          />
        ) : (
          <section aria-label="Your answer for the class">
            <p role="status">
              Your answer: <strong>{given?.text}</strong>. Show this code to the instructor’s camera. Your name is not
              in it.
            </p>
            <QrCode link={link} side="14rem" label="Code for a camera: your answer" />
            <p className="class-link">{link}</p>
            {next && (
              <p className="buttons">
                <button type="button" className="main" onClick={next}>
                  Next question
                </button>
              </p>
            )}
          </section>
        )}
      </div>
    </div>
  );
}
