/** What the learners of a class call out, typed in or counted by hands, and how sure they are. */
import { type FormEvent, useId, useState } from 'react';
import { CALLED_OUT, type CalledOut } from '../../../lessons/classAnswer.ts';
import type { Question } from '../../../lessons/definition.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { CALLED_WORDS } from './Made.tsx';
import { typedAnswer, unitHint } from './typed.ts';

/** What the learners said, as it is called out. */
export function CalledOutForm({
  question: { answer },
  words,
  speech,
  take,
}: {
  question: Question;
  words(text: string): string;
  speech: Speech;
  take(answer: number | string, sure: CalledOut): void;
}) {
  const [text, setText] = useState('');
  const [error, setError] = useState('');
  const [counted, setCounted] = useState('');
  const [sure, setSure] = useState<CalledOut>('unsaid');
  const how = <HowSure sure={sure} put={setSure} />;
  if (answer.kind === 'choice')
    return (
      <>
        {how}
        <fieldset className="class-typed">
          <legend>Count a hand for</legend>
          {answer.options.map(({ key, text: option }) => (
            <button key={key} type="button" onClick={() => take(key, sure)}>
              {words(option)}
            </button>
          ))}
        </fieldset>
      </>
    );
  const as = answer.kind === 'move' ? 'fine' : answer.as;
  const unit = unitHint(as, speech);
  const send = (event: FormEvent) => {
    event.preventDefault();
    const typed = typedAnswer(text, as, speech);
    setError(typed.ok ? '' : typed.message);
    setCounted(typed.ok ? `Counted: ${told(typed.value, answer.kind === 'move' ? 'sided' : as, speech)}` : '');
    if (!typed.ok) return;
    take(typed.value, sure);
    setText('');
  };
  return (
    <>
      {how}
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
    </>
  );
}

/** It stays for the next hand: those who are sure are counted together. */
function HowSure({ sure, put }: { sure: CalledOut; put(sure: CalledOut): void }) {
  const name = useId();
  return (
    <fieldset className="sure">
      <legend>How sure are they?</legend>
      {CALLED_OUT.map((one) => (
        <label key={one}>
          <input type="radio" name={name} checked={sure === one} onChange={() => put(one)} />
          <span>{CALLED_WORDS[one]}</span>
        </label>
      ))}
    </fieldset>
  );
}
