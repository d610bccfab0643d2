/** A commitment: a number with its unit, a choice or a place, and how sure. Nothing is let go before. */
import { type FormEvent, useId, useState } from 'react';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Answer, ToldAs } from '../../../lessons/definition.ts';
import { SURE, type Sure } from '../../../lessons/runner.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { PlaceScale } from './PlaceScale.tsx';
import { answerText, typedAnswer, unitHint } from './typed.ts';

export interface Draft {
  /** as typed; null: what stands is the mark, told */
  text: string | null;
  /** where the mark or the part is, or what was chosen; null: not yet */
  value: number | null;
  sure: Sure | null;
  chosen?: string;
}

interface Props {
  answer: Answer;
  dealt: DealtQuestion;
  draft: Draft;
  setDraft(draft: Draft): void;
  help: readonly string[];
  words(text: string): string;
  speech: Speech;
  commit(answer: number | string, sure: Sure): void;
}

export const SURE_WORDS: Record<Sure, string> = { guess: 'A guess', think: 'I think so', sure: 'I am sure' };

export function Ask({ answer, dealt, draft, setDraft, help, words, speech, commit }: Props) {
  const id = useId();
  const [error, setError] = useState<Wrong | null>(null);
  const as = asOf(answer);
  const shown = draft.text ?? (draft.value !== null && as ? answerText(draft.value, as, speech) : '');
  const send = (event: FormEvent) => {
    event.preventDefault();
    const found = answered(answer, draft, shown, speech);
    if (!found.ok) return setError({ of: 'answer', message: found.message });
    if (draft.sure === null)
      return setError({ of: 'sure', message: 'Say how sure you are: that is part of the answer.' });
    setError(null);
    commit(found.value, draft.sure);
  };
  const type = (text: string) => {
    if (!as) return;
    const typed = typedAnswer(text, as, speech);
    setDraft({ ...draft, text, value: typed.ok ? typed.value : null });
    // What was wrong is being mended.
    if (error?.of === 'answer') setError(null);
  };
  return (
    <form className="ask" onSubmit={send} noValidate>
      {help.length > 0 && (
        <ol className="help" aria-label="Help">
          {help.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      {answer.kind === 'move' && (
        <PlaceScale
          label={words(answer.label)}
          dealt={dealt}
          at={draft.value}
          put={(value) => setDraft({ ...draft, value, text: null })}
          speech={speech}
        />
      )}
      {as && (
        <p className="answer-field">
          <label htmlFor={`${id}answer`}>{words(answer.label)}</label>
          <span className="with-unit">
            <input
              id={`${id}answer`}
              value={shown}
              onChange={(event) => type(event.target.value)}
              autoComplete="off"
              aria-invalid={error?.of === 'answer'}
              aria-describedby={`${id}unit ${id}error`}
            />
            <span id={`${id}unit`}>{readAs(shown, as, speech, answer.kind === 'move')}</span>
          </span>
          {answer.kind === 'move' && (
            <span className="fine">
              Drag the ring along the scale, or type a number. Toward the rear it has a minus.
            </span>
          )}
        </p>
      )}
      {answer.kind === 'choice' && (
        <fieldset className="choices">
          <legend>{words(answer.label)}</legend>
          {answer.options.map(({ key, text }) => (
            <label key={key}>
              <input
                type="radio"
                name={`${id}choice`}
                checked={draft.chosen === key}
                onChange={() => setDraft({ ...draft, chosen: key })}
              />
              <span>{words(text)}</span>
            </label>
          ))}
        </fieldset>
      )}
      <fieldset className="sure" aria-describedby={error?.of === 'sure' ? `${id}error` : undefined}>
        <legend>How sure are you?</legend>
        {SURE.map((sure) => (
          <label key={sure}>
            <input
              type="radio"
              name={`${id}sure`}
              checked={draft.sure === sure}
              onChange={() => {
                setDraft({ ...draft, sure });
                if (error?.of === 'sure') setError(null);
              }}
            />
            <span>{SURE_WORDS[sure]}</span>
          </label>
        ))}
      </fieldset>
      <p className="buttons">
        <button type="submit" className="main">
          That is my answer
        </button>
      </p>
      <p id={`${id}error`} role="alert" className="error">
        {error?.message}
      </p>
    </form>
  );
}

/** How a number is typed; null: a choice. */
const asOf = (answer: Answer): ToldAs | null =>
  answer.kind === 'choice' ? null : answer.kind === 'move' ? 'fine' : answer.as;

/** The unit that a number alone is taken in; once one is typed in another, what it comes to; of a place, which way. */
function readAs(text: string, as: ToldAs, speech: Speech, place: boolean): string {
  const unit = unitHint(as, speech);
  const typed = text.trim() === '' ? null : typedAnswer(text, as, speech);
  if (!typed?.ok || unit === '') return unit;
  if (place) return `= ${told(typed.value, 'sided', speech)}`;
  return /^[\s\d.,+−-]*$/.test(text) ? unit : `= ${told(typed.value, as, speech)}`;
}

/** What is missing or wrong: the answer itself, or how sure. */
interface Wrong {
  of: 'answer' | 'sure';
  message: string;
}

type Answered = { ok: true; value: number | string } | { ok: false; message: string };

function answered(answer: Answer, draft: Draft, shown: string, speech: Speech): Answered {
  if (answer.kind === 'choice')
    return draft.chosen === undefined ? { ok: false, message: 'Choose one first.' } : { ok: true, value: draft.chosen };
  // A mark is as it was drawn, not as it is rounded in the field.
  if (draft.text === null && draft.value !== null) return { ok: true, value: draft.value };
  return typedAnswer(shown, asOf(answer)!, speech);
}
