/** One lesson from its story to what is carried away: asks, lets go, asks what was seen, and only then explains. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Dealt } from '../../../lessons/deal.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { begun, type Course, lastRound, type Step, seedOf, stepped } from '../../../lessons/runner.ts';
import { said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { Account } from './Account.tsx';
import { Ask, type Draft } from './Ask.tsx';
import { LessonPicture, type Phase } from './LessonPicture.tsx';
import { MarkChart } from './MarkChart.tsx';
import { Story } from './Story.tsx';
import { useDealt } from './useDealt.ts';
import { Saw, Why } from './Why.tsx';

interface Props {
  lesson: Lesson;
  work: Work;
  visit: 'first' | 'again';
  /** where the numbers of the first round come from */
  seed: number;
  finished(last: { right: number; of: number }): void;
  leave(): void;
  next?: { id: string; title: string } | null;
}

export function LessonView({ lesson, work, visit, seed, finished, leave, next = null }: Props) {
  const [course, setCourse] = useState(() => begun(lesson, visit));
  const { dealt, fault, again } = useDealt(lesson, seedOf(seed, course.round));
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const speech = useMemo<Speech>(() => ({ system, way }), [system, way]);
  const step = (next: Step) => {
    if (!dealt) return;
    const after = stepped(course, next, dealt);
    setCourse(after);
    if (after.done && !course.done) finished(lastRound(after));
  };
  return (
    <article className="lesson">
      <header className="lesson-head">
        <h2>{lesson.title}</h2>
        <p className="fine">
          {course.done ? 'Done' : roundText(course, lesson)}
          <button type="button" onClick={leave}>
            All lessons
          </button>
        </p>
      </header>
      {fault !== null && <Fault what="This round" fault={fault} again={again} />}
      {fault === null && !dealt && <p className="loading">The numbers are being worked out.</p>}
      {dealt && course.done && <Account {...{ lesson, course, dealt, speech, leave, next }} />}
      {dealt && !course.done && (
        <Round key={`${course.round} ${course.question}`} {...{ lesson, course, dealt, speech, step }} />
      )}
    </article>
  );
}

function roundText({ round, help, question }: Course, { questions }: Lesson): string {
  const rounds =
    help.length === 1
      ? 'Once more, without help'
      : `Round ${round + 1} of ${help.length}: ${round === 0 ? 'try first, without help' : round === 1 ? 'the same with help' : 'one step less help'}`;
  return questions.length === 1 ? rounds : `${rounds} · question ${question + 1} of ${questions.length}`;
}

interface RoundProps {
  lesson: Lesson;
  course: Course;
  dealt: Dealt;
  speech: Speech;
  step(step: Step): void;
}

/** One question, from the frozen picture to why. */
function Round({ lesson, course, dealt, speech, step }: RoundProps) {
  const question = lesson.questions[course.question]!;
  const mine = dealt.questions[course.question]!;
  const [draft, setDraft] = useState<Draft>({ text: '', value: null, sure: null });
  const [seenAgain, setSeenAgain] = useState(0);
  const head = useRef<HTMLHeadingElement>(null);
  const words = (text: string) => said(text, { scope: { ...mine.scope, answer: course.given?.answer ?? 0 } }, speech);
  // The question, and later what is told, is read out: the focus goes with it.
  useEffect(() => {
    if (course.stage === 'told' || course.round > 0 || course.question > 0) head.current?.focus();
  }, [course.stage, course.round, course.question]);
  const { answer } = question;
  const phase: Phase =
    course.stage === 'ask'
      ? answer.kind === 'move'
        ? 'byHand'
        : 'frozen'
      : course.stage === 'released'
        ? 'released'
        : 'free';
  const steps = Math.min(course.help[course.round] ?? 0, question.help.length);
  const leftAt = answer.kind === 'move' && course.given ? Number(course.given.answer) : null;
  return (
    <div className="round">
      {course.stage !== 'told' && (
        <div className="head">
          {course.stage === 'ask' && course.question === 0 && <Story told={lesson.story.map(words)} />}
          <h3 ref={head} tabIndex={-1} className="asked">
            {words(question.ask)}
          </h3>
        </div>
      )}
      <LessonPicture
        question={question}
        dealt={mine}
        phase={phase}
        again={seenAgain}
        speech={speech}
        moved={(position) => setDraft((before) => ({ ...before, value: position }))}
        leftAt={leftAt}
      >
        {answer.kind === 'number' && answer.chart && mine.curve && (
          <MarkChart
            chart={answer.chart}
            dealt={mine}
            curve={mine.curve}
            as={answer.as}
            mark={course.given ? Number(course.given.answer) : draft.value}
            setMark={(value) => setDraft((before) => ({ ...before, value, text: null }))}
            open={course.stage !== 'ask'}
            speech={speech}
          />
        )}
      </LessonPicture>
      <div className="body">
        {course.stage === 'ask' && (
          <Ask
            answer={answer}
            draft={draft}
            setDraft={setDraft}
            help={question.help.slice(0, steps).map(words)}
            words={words}
            speech={speech}
            commit={(value, sure) => step({ do: 'commit', answer: value, sure })}
          />
        )}
        {course.stage === 'released' && (
          <Saw question={question} words={words} choose={(option) => step({ do: 'saw', option })} />
        )}
        {course.stage === 'told' && course.given && (
          <Why
            head={head}
            question={question}
            dealt={mine}
            given={course.given}
            words={words}
            speech={speech}
            lookAgain={() => setSeenAgain((times) => times + 1)}
            on={() => step({ do: 'on' })}
          />
        )}
      </div>
    </div>
  );
}
