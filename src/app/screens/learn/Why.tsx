/** What was seen, asked before any explanation; then why, by the learner's own answer. */
import { type RefObject, useEffect, useRef } from 'react';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import type { Given } from '../../../lessons/runner.ts';
import { answerSaid, costSaid, nearSaid } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import type { Tried } from '../../../lessons/tried.ts';
import { Explained } from '../../glossary/Explained.tsx';
import { Triangles } from './Triangle.tsx';
import { useShown } from './useShare.ts';

interface SawProps {
  /** the learner's own answer carried out, which is shown first; null: it is no act. Undefined: still worked out. */
  tried: Tried | null | undefined;
  dealt: DealtQuestion;
  words(text: string): string;
  choose(option: number): void;
}

export function Saw({ dealt: { look }, words, tried, choose }: SawProps) {
  const legend = useRef<HTMLParagraphElement>(null);
  const shown = useShown('released', 0, Boolean(tried));
  // What was seen is asked of what is so, and not of what was answered.
  const leg = tried === undefined ? 'yours' : shown.leg;
  // What moves is looked at, not what is asked.
  useEffect(() => legend.current?.focus({ preventScroll: true }), []);
  return (
    <div className="saw">
      <p ref={legend} tabIndex={-1} className="asked">
        {leg === 'yours' ? (
          'First your own answer is carried out, then what is so.'
        ) : (
          <>
            <strong>What did you see?</strong> {words(look.ask)}
          </>
        )}
      </p>
      {leg === 'right' && (
        <div className="saw-options">
          {look.options.map((text, i) => (
            <button key={text} type="button" onClick={() => choose(i)}>
              {words(text)}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}

interface WhyProps {
  head: RefObject<HTMLHeadingElement | null>;
  question: Question;
  dealt: DealtQuestion;
  given: Given;
  /** what was answered, carried out; null: it is no act. Undefined: it is being worked out. */
  tried: Tried | null | undefined;
  words(text: string): string;
  speech: Speech;
  lookAgain(): void;
  on(): void;
}

export function Why({ head, question, dealt, given, tried, words, speech, lookAgain, on }: WhyProps) {
  const { answer } = question;
  const mistake = given.found.kind === 'mistake' ? question.mistakes[given.found.index]! : null;
  const [yours, right] = [given.answer, dealt.right].map((value) => {
    const text = answerSaid(answer, value, dealt, speech).replace(/\.$/, '');
    return answer.kind === 'choice' ? `“${text}”` : text;
  });
  const isRight = given.found.kind === 'right';
  const own = isRight || tried === undefined ? '' : costSaid(question, dealt, given.answer, tried?.report, speech);
  return (
    <section className="why" aria-label="Why">
      <h3 ref={head} tabIndex={-1} className={isRight ? 'is-right' : 'is-off'}>
        {isRight ? `Right: ${right}.` : `You said ${yours}. Right is ${right}.`}
      </h3>
      {sureText(given) !== '' && <p>{sureText(given)}</p>}
      {mistake && (
        <div className="mistake">
          <h4>The slip has a name: {mistake.name}</h4>
          <p>
            <Explained>{words(mistake.says)}</Explained>
          </p>
          <Cost own={own} more={words(mistake.cost)} />
        </div>
      )}
      {given.found.kind === 'other' && typeof dealt.right === 'number' && typeof given.answer === 'number' && (
        <div className="mistake">
          <p>{otherText(given.answer, dealt.right)}</p>
          {own !== '' && <Cost own={own} more="" />}
        </div>
      )}
      {given.seen !== null && given.seen !== dealt.saw && (
        <p className="seen-wrong">
          You saw: “{words(dealt.look.options[given.seen]!)}” What happened: “{words(dealt.look.options[dealt.saw]!)}”{' '}
          <button type="button" onClick={lookAgain}>
            Look once more
          </button>
        </p>
      )}
      <p>
        <Explained>{words(question.because)}</Explained>
      </p>
      <Triangles question={question} dealt={dealt} speech={speech} />
      {!isRight && question.help.length > 0 && (
        <>
          <p className="fine">Step by step:</p>
          <ol className="help">
            {question.help.map((step) => (
              <li key={step}>{words(step)}</li>
            ))}
            <li>
              So: {right}. {nearSaid(answer, dealt, speech)}
            </li>
          </ol>
        </>
      )}
      <p className="buttons">
        <button type="button" className="main" onClick={on}>
          Go on
        </button>
        <button type="button" onClick={lookAgain}>
          Show it again
        </button>
      </p>
    </section>
  );
}

/** What it would have cost: by the number given, then what is so of the slip whatever the number. */
const Cost = ({ own, more }: { own: string; more: string }) => (
  <p className="cost">
    <strong>In metal:</strong> <Explained>{[own, more].filter((text) => text !== '').join(' ')}</Explained>
  </p>
);

/** What it is worth to be sure. */
function sureText({ sure, found }: Given): string {
  if (found.kind === 'right') return sure === 'guess' ? 'You called it a guess. It need be none: here is why.' : '';
  return sure === 'sure' ? 'You were sure. That makes this the one to remember.' : '';
}

const HUNDRED = 100;
/** In 100. */
const NEAR = 15;

function otherText(answer: number, right: number): string {
  if (answer * right < 0) return 'It goes the other way.';
  if (right === 0) return 'Nothing was right.';
  if (answer === 0) return 'There is something, not nothing.';
  const times = answer / right;
  if (times > 1.5)
    return `No slip that we know gives that: it is ${Number(times.toPrecision(2))} times what is right. Go by the steps below, and see where yours leave them.`;
  if (times < 0.67)
    return times < 0.01
      ? 'That is far too little.'
      : `No slip that we know gives that: right is ${Number((1 / times).toPrecision(2))} times as much. Go by the steps below, and see where yours leave them.`;
  const off = Math.round(Math.abs(times - 1) * HUNDRED);
  return `${off <= NEAR ? 'You are near' : 'No slip that we know gives that'}: it is ${off} in 100 too ${times > 1 ? 'much' : 'little'}.`;
}
