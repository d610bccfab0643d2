/** What is carried away, what one's own certainty was worth, and the slips that were made. */
import { useEffect, useRef } from 'react';
import type { Dealt } from '../../../lessons/deal.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { bySure, type Course, lastRound } from '../../../lessons/runner.ts';
import { said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { SURE_WORDS } from './Ask.tsx';

interface Props {
  lesson: Lesson;
  course: Course;
  dealt: Dealt;
  speech: Speech;
  leave(): void;
  /** the lesson from its beginning, with other numbers */
  onceMore(): void;
  /** what comes after it on the path */
  next?: { id: string; title: string } | null;
  /** in how many days it comes back; null: no more. Undefined: one that this device does not keep never does. */
  days?: number | null | undefined;
}

const backText = (days: number | null) =>
  days === null
    ? 'You have learnt it: it does not come back.'
    : `It comes back ${days === 1 ? 'tomorrow' : `in ${days} days`}, with other numbers.`;

export function Account({ lesson, course, dealt, speech, leave, onceMore, next = null, days }: Props) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const { right, of } = lastRound(course);
  const slips = [
    ...new Set(
      course.log.flatMap(({ found, question }) =>
        found.kind === 'mistake' ? [lesson.questions[question]!.mistakes[found.index]!.name] : [],
      ),
    ),
  ];
  return (
    <section className="account">
      <h3 ref={head} tabIndex={-1}>
        {said(lesson.carry, dealt.questions[0]!, speech)}
      </h3>
      <p>
        In the last round {right} of {of} {of === 1 ? 'was' : 'were'} right. {days !== undefined && backText(days)}
      </p>
      {slips.length > 0 && <p>Slips to know again: {slips.join('; ')}.</p>}
      <table>
        <caption className="fine">What being sure was worth</caption>
        <thead>
          <tr>
            <th scope="col">You said</th>
            <th scope="col">Right</th>
          </tr>
        </thead>
        <tbody>
          {bySure(course.log).map(({ sure, right: good, of: all }) => (
            <tr key={sure}>
              <th scope="row">{SURE_WORDS[sure]}</th>
              <td>
                {good} of {all}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {lesson.caution && <p className="caution">{lesson.caution}</p>}
      <p className="buttons">
        {right < of && (
          <button type="button" className="main" onClick={onceMore}>
            Once more, with other numbers
          </button>
        )}
        {next && (
          <a className={right < of ? 'button' : 'button main'} href={`#learn/${next.id}`}>
            Next: {next.title}
          </a>
        )}
        <button type="button" className={next || right < of ? '' : 'main'} onClick={leave}>
          All lessons
        </button>
      </p>
    </section>
  );
}
