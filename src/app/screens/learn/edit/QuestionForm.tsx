/** One question in the editor: what is asked, what is right, what is let go, what may be seen, and the slips. */
import type { Design } from '../../../../design/definition.ts';
import { type Question, TOLD_AS } from '../../../../lessons/definition.ts';
import { placeWords } from '../../../../lessons/offered.ts';
import { at, useEditing } from './editing.ts';
import { ChoiceField, FormulaField, ListOf, TextField, Tick } from './fields.tsx';

const AS_WORDS: Partial<Record<(typeof TOLD_AS)[number], string>> = {
  fine: 'µm or tenths',
  length: 'mm or inches',
  sided: 'a place along the axis',
  angle: 'a half angle',
  turn: 'a part of a turn',
  count: 'a whole number',
  number: 'a plain number',
  share: 'so many in 100',
};
export const AS = TOLD_AS.map((as) => [as, AS_WORDS[as] ?? as] as const);

const KINDS = [
  ['number', 'a number'],
  ['move', 'moving the spindle'],
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

export function Put({ path }: { path: string }) {
  const { places, lesson } = useEditing();
  const seats = (lesson.design as Partial<Design>).seats ?? [];
  const worded = places.map((one) => [one, placeWords({ seats }, one)] as const);
  // Those that have words first: they are what is mostly moved.
  const options = [
    ...worded.flatMap(([one, words]) => (words === null ? [] : [[one, words] as const])),
    ...worded.flatMap(([one, words]) => (words === null ? [[one, one] as const] : [])),
  ];
  return (
    <>
      <ChoiceField path={`${path}.path`} label="Place of the design" options={options} />
      <FormulaField path={`${path}.is`} label="What stands there (mm, degrees)" />
    </>
  );
}

export function QuestionForm({ path }: { path: string }) {
  const { lesson, set } = useEditing();
  const { answer } = at(lesson, path) as Question;
  const choice = answer.kind === 'choice';
  return (
    <>
      <FormulaField words path={`${path}.ask`} label="The question" />
      <p className="ticks">
        <Tick path={`${path}.view.section`} label="The section" off={false} />
        <Tick path={`${path}.view.lenses`} label="The seats magnified" off={false} />
        <Tick path={`${path}.view.figures`} label="No figures before the answer" on={false} off={undefined} />
      </p>
      <p className="edit-field short">
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
      <h3>What did you see?</h3>
      <FormulaField words path={`${path}.saw.ask`} label="Asked so" />
      <ListOf
        path={`${path}.saw.options`}
        one="Seen"
        fresh={{ text: 'Something else.', is: 'false' }}
        least={2}
        most={5}
      >
        {(one) => (
          <>
            <FormulaField words path={`${one}.text`} label="Text" />
            <FormulaField path={`${one}.is`} label="It was so where" hint="One of them must be so" />
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
        most={10}
      >
        {(one) => (
          <>
            <TextField path={`${one}.name`} label="Its name" />
            <FormulaField path={`${one}.is`} label="The answer it gives" />
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
