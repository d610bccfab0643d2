/** One question in the editor: what is asked, what is right, what is let go, what may be seen, and the slips. */
import { useId } from 'react';
import { MOST_MISTAKES, type Question } from '../../../../lessons/definition.ts';
import { at, useEditing } from './editing.ts';
import { ChoiceField, Faults, FormulaField, ListOf, TextField } from './fields.tsx';
import { PictureForm } from './PictureForm.tsx';
import { AS, Put } from './Put.tsx';

const KINDS = [
  ['number', 'a number'],
  ['move', 'a place of the spindle'],
  ['choice', 'a choice'],
] as const;

/** An answer of another kind keeps what both have. */
function answerOf(kind: string, before: Question['answer']): Question['answer'] {
  const { label, right } = before;
  const within = before.kind === 'choice' ? '0.04 * abs(right)' : before.within;
  if (kind === 'move') return { kind, label, right, within };
  if (kind !== 'choice') return { kind: 'number', label, as: 'fine', right, within };
  const options = [
    { key: 'more', text: 'It gets more.' },
    { key: 'less', text: 'It gets less.' },
  ];
  return { kind, label, options, right: "'more'" };
}

const OTHER_SEEN = {
  ask: 'Which way did the spindle go?',
  options: [
    { text: 'Toward the nose.', is: 'after.fit.position > before.fit.position' },
    { text: 'Toward the rear.', is: 'after.fit.position < before.fit.position' },
    { text: 'It stayed.', is: 'after.fit.position == before.fit.position' },
  ],
};

/** What may have been seen, one of which must be so. */
const SeenOptions = ({ path }: { path: string }) => (
  <ListOf path={`${path}.options`} one="Seen" fresh={{ text: 'Something else.', is: 'false' }} least={2} most={5}>
    {(one) => (
      <>
        <FormulaField words path={`${one}.text`} label="Text" />
        <FormulaField path={`${one}.is`} label="It was so where" hint="One of them must be so" />
      </>
    )}
  </ListOf>
);

export function QuestionForm({ path }: { path: string }) {
  const { lesson, set } = useEditing();
  const { answer } = at(lesson, path) as Question;
  const id = useId();
  const choice = answer.kind === 'choice';
  return (
    <>
      <FormulaField words path={`${path}.ask`} label="The question" />
      <FormulaField
        words
        optional
        path={`${path}.onPaper`}
        label="The same on paper"
        hint="Where the question tells what the one before it asks for"
      />
      <ListOf
        path={`${path}.set`}
        one="Change before it is asked"
        fresh={{ path: 'position', is: 'design.position' }}
        most={8}
        optional
      >
        {(one) => <Put path={one} />}
      </ListOf>
      <PictureForm path={path} />
      <p className="edit-field short" data-path={`${path}.answer`}>
        <label>
          It is answered by{' '}
          <select value={answer.kind} onChange={({ target }) => set(`${path}.answer`, answerOf(target.value, answer))}>
            {KINDS.map(([kind, text]) => (
              <option key={kind} value={kind}>
                {text}
              </option>
            ))}
          </select>
        </label>
        <Faults path={`${path}.answer`} id={`${id}answer`} />
      </p>
      <TextField path={`${path}.answer.label`} label="Before the answer stands" />
      {answer.kind === 'number' && <ChoiceField path={`${path}.answer.as`} label="Told in" options={AS} />}
      {choice && (
        <ListOf
          path={`${path}.answer.options`}
          one="Choice"
          fresh={{ key: 'other', text: 'Something else.' }}
          least={2}
          most={6}
        >
          {(one) => (
            <>
              <TextField path={`${one}.key`} label="Its name in formulas" />
              <FormulaField words path={`${one}.text`} label="Text" />
            </>
          )}
        </ListOf>
      )}
      <FormulaField
        path={`${path}.answer.right`}
        label="What is right"
        hint={choice ? "The name of a choice in quotes: 'more'" : undefined}
      />
      {!choice && <FormulaField path={`${path}.answer.within`} label="How far off is still right" />}
      <h3>What is let go</h3>
      <ListOf
        path={`${path}.release`}
        one="Change"
        fresh={{ path: 'position', is: 'design.position' }}
        least={1}
        most={8}
      >
        {(one) => <Put path={one} />}
      </ListOf>
      {!choice && (
        <>
          <h3>What a wrong answer comes to</h3>
          <ListOf
            path={`${path}.try`}
            one="What the answer changes"
            fresh={{ path: 'position', is: 'design.position + answer' }}
            most={8}
            optional
          >
            {(one) => <Put path={one} />}
          </ListOf>
          <FormulaField
            words
            optional
            path={`${path}.cost`}
            label="What any wrong number costs"
            hint="Told with the number given: answer, and with what the engine makes of it: tried"
          />
        </>
      )}
      <h3>What did you see?</h3>
      <div data-path={`${path}.saw`}>
        <Faults path={`${path}.saw`} id={`${id}saw`} />
      </div>
      <FormulaField words path={`${path}.saw.ask`} label="Asked so" />
      <SeenOptions path={`${path}.saw`} />
      <ListOf path={`${path}.saw.other`} one="Another thing to ask" fresh={OTHER_SEEN} most={3} optional>
        {(one) => (
          <>
            <FormulaField
              words
              path={`${one}.ask`}
              label="Asked so"
              hint="Each round asks another, so that no answer is learnt by heart"
            />
            <SeenOptions path={one} />
          </>
        )}
      </ListOf>
      <h3>Why, and the slips</h3>
      <FormulaField words path={`${path}.because`} label="Why it is so" />
      <ListOf
        path={`${path}.mistakes`}
        one="Slip"
        fresh={{ name: 'diameter for radius', is: '2 * right', says: 'You counted both sides.', cost: 'It is scrap.' }}
        least={1}
        most={MOST_MISTAKES}
      >
        {(one) => (
          <>
            <TextField path={`${one}.name`} label="Its name" />
            <FormulaField path={`${one}.is`} label="The answer it gives" />
            <FormulaField optional path={`${one}.to`} label="Up to" hint="Where every number between is this slip" />
            <FormulaField
              optional
              path={`${one}.when`}
              label="Only where"
              hint="Where it cannot be told from another"
            />
            <FormulaField words path={`${one}.says`} label="What was done" />
            <FormulaField words path={`${one}.cost`} label="What it costs in metal" />
          </>
        )}
      </ListOf>
      <ListOf path={`${path}.help`} one="Help" fresh="The next step of the way." least={1} most={6}>
        {(one) => <FormulaField words path={one} label="A step of the way" />}
      </ListOf>
    </>
  );
}
