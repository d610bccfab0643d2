/** One lesson from its story to what is carried away: asks, lets go, asks what was seen, and only then explains. */
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { type Right, rightsOf } from '../../../lessons/apart.ts';
import type { Dealt } from '../../../lessons/deal.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import type { Left } from '../../../lessons/keptCourse.ts';
import { begun, type Course, lastRound, type Step, seedOf, stepped } from '../../../lessons/runner.ts';
import { said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { useLatest } from '../../state/useLatest.ts';
import { Account } from './Account.tsx';
import { Ask, type Draft } from './Ask.tsx';
import { LessonPicture } from './LessonPicture.tsx';
import { MarkChart } from './MarkChart.tsx';
import { Story } from './Story.tsx';
import { useDealt } from './useDealt.ts';
import type { Phase } from './useShare.ts';
import { useTried } from './useTried.ts';
import { Saw, Why } from './Why.tsx';

interface Props {
  lesson: Lesson;
  work: Work;
  visit: 'first' | 'again';
  /** where the numbers of the first round come from */
  seed: number;
  /** where it was left half way: it goes on there */
  left?: Left | null;
  /** how far it is by now; null: through */
  keep?: ((left: Left | null) => void) | undefined;
  /** something was answered */
  answered?(): void;
  finished(last: { right: number; of: number }): void;
  leave(): void;
  next?: { id: string; title: string } | null;
  /** in how many days it comes back, once it was gone through; null: no more. Undefined: it never does. */
  days?: number | null | undefined;
}

/** Seeds from one time through to the next. */
const OTHER = 7919;

export function LessonView(props: Props) {
  const { lesson, work, visit, left = null, keep, answered, finished, leave, next = null, days } = props;
  const [course, setCourse] = useState(() => left?.course ?? begun(lesson, visit));
  /** each time through on this page has other numbers */
  const [seed, setSeed] = useState(left?.seed ?? props.seed);
  /** what was right in the rounds that are over */
  const [gone, setGone] = useState<readonly Right[]>(left?.gone ?? []);
  const { dealt, fault, again } = useDealt(lesson, seedOf(seed, course.round), gone);
  /** it goes on from where it was left, and nothing was done since */
  const [goesOn, setGoesOn] = useState(left !== null && (left.course.log.length > 0 || left.course.given !== null));
  const keeps = useLatest(keep);
  useEffect(() => keeps.current?.(course.done ? null : { seed, gone: [...gone], course }), [seed, gone, course]);
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const speech = useMemo<Speech>(() => ({ system, way }), [system, way]);
  const onceMore = (visit: Props['visit'] = 'first') => {
    setSeed(seed + OTHER);
    setGone(dealt ? rightsOf(lesson, dealt) : []);
    setCourse(begun(lesson, visit));
    setGoesOn(false);
  };
  const step = (next: Step) => {
    if (!dealt) return;
    if (next.do === 'commit') answered?.();
    const after = stepped(course, next, dealt);
    setCourse(after);
    setGoesOn(false);
    if (after.round !== course.round) setGone([...gone, ...rightsOf(lesson, dealt)]);
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
      {goesOn && (
        <p className="goes-on">
          <span role="status">You go on where you left it.</span>
          <button type="button" onClick={() => onceMore(visit)}>
            From the start, with other numbers
          </button>
        </p>
      )}
      {fault !== null && <Fault what="This round" fault={fault} again={again} />}
      {fault === null && !dealt && <p className="loading">The numbers are being worked out.</p>}
      {dealt && course.done && (
        <Account {...{ lesson, course, dealt, speech, leave, next, days }} onceMore={() => onceMore()} />
      )}
      {dealt && !course.done && (
        <Round key={`${seed} ${course.round} ${course.question}`} {...{ lesson, course, dealt, speech, step }} />
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

const phaseOf = (stage: Course['stage']): Phase =>
  stage === 'ask' ? 'frozen' : stage === 'released' ? 'released' : 'free';

/** One question, from the frozen picture to why. What is asked stays in sight, and its picture beside it. */
function Round({ lesson, course, dealt, speech, step }: RoundProps) {
  const { stage, given } = course;
  const question = lesson.questions[course.question]!;
  const mine = dealt.questions[course.question]!;
  const [draft, setDraft] = useState<Draft>({ text: '', value: null, sure: null });
  const [seenAgain, setSeenAgain] = useState(0);
  const box = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLHeadingElement>(null);
  const tried = useTried(question, mine, given);
  const scope = { ...mine.scope, answer: given?.answer ?? 0, tried: tried?.report };
  const words = (text: string) => said(text, { ...mine, scope }, speech);
  useSightOf(box, head, course);
  const { answer } = question;
  // Until it is known what the answer makes of it nothing moves.
  const phase = tried === undefined ? 'frozen' : phaseOf(stage);
  const steps = Math.min(course.help[course.round] ?? 0, question.help.length);
  const lookAgain = () => {
    setSeenAgain((times) => times + 1);
    box.current?.scrollIntoView({ block: 'start' });
  };
  const told = lesson.story.map(storyWords(dealt, speech));
  const story = <Story shut={stage !== 'ask' || course.question > 0} told={told} />;
  const asked = (
    <div className="head">
      <h3 ref={stage === 'told' ? undefined : head} tabIndex={-1} className={`asked ${stage}`}>
        {words(question.ask)}
      </h3>
    </div>
  );
  const picture = (
    <LessonPicture
      question={question}
      dealt={mine}
      phase={phase}
      again={seenAgain}
      speech={speech}
      tried={tried ?? null}
      given={given && answer.kind !== 'choice' ? Number(given.answer) : null}
    />
  );
  const chart = answer.kind === 'number' && answer.chart && mine.curve && (
    <MarkChart
      chart={answer.chart}
      dealt={mine}
      curve={mine.curve}
      as={answer.as}
      mark={given ? Number(given.answer) : draft.value}
      setMark={(value) => setDraft((before) => ({ ...before, value, text: null }))}
      phase={phase}
      seed={dealt.seed + course.question}
      speech={speech}
    />
  );
  const body = (
    <div className="body">
      {stage === 'ask' && (
        <Ask
          answer={answer}
          dealt={mine}
          draft={draft}
          setDraft={setDraft}
          help={question.help.slice(0, steps).map(words)}
          words={words}
          speech={speech}
          commit={(value, sure) => step({ do: 'commit', answer: value, sure })}
        />
      )}
      {stage === 'released' && (
        <Saw dealt={mine} words={words} tried={tried} choose={(option) => step({ do: 'saw', option })} />
      )}
      {stage === 'told' && given && (
        <Why
          head={head}
          question={question}
          dealt={mine}
          given={given}
          tried={tried}
          words={words}
          speech={speech}
          lookAgain={lookAgain}
          on={() => step({ do: 'on' })}
        />
      )}
    </div>
  );
  // On a small page the picture stays at its head while the question and the answer go by (learn.css).
  return (
    <div ref={box} className={`round at-${stage} ${chart ? 'with-chart' : ''}`}>
      {story}
      <div className="sights">
        {picture}
        {chart}
      </div>
      {asked}
      {body}
    </div>
  );
}

/** The story is of what was so before any question. */
const storyWords = (dealt: Dealt, speech: Speech) => (text: string) => said(text, dealt.questions[0]!, speech);

/** The question, and later what is told, is read out: the focus goes with it. What moves is brought into sight. */
function useSightOf(
  box: RefObject<HTMLDivElement | null>,
  head: RefObject<HTMLHeadingElement | null>,
  { stage, round, question }: Course,
) {
  useEffect(() => {
    if (stage === 'told') {
      head.current?.focus({ preventScroll: true });
      head.current?.scrollIntoView({ block: 'nearest' });
    } else if (stage === 'released') box.current?.scrollIntoView({ block: 'start' });
    else if (round > 0 || question > 0) head.current?.focus();
    // As it is opened; beside the fields of one in the making the focus is left alone.
    else if (document.activeElement === document.body && !box.current?.closest('.edit-preview'))
      head.current?.focus({ preventScroll: true });
  }, [box, head, stage, round, question]);
}
