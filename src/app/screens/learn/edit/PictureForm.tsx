/** What is drawn of a question, in the editor: section and seats, a layer, triangles, a chart, the blue, a heap. */
import type { Design } from '../../../../design/definition.ts';
import type { Question } from '../../../../lessons/definition.ts';
import { at, useEditing } from './editing.ts';
import { ChoiceField, FormulaField, Group, ListOf, NumberField, TextField, Tick } from './fields.tsx';
import { AS, PlaceField } from './Put.tsx';

const MARKED = [
  ['film', 'the film'],
  ['growth', 'what it grew by'],
  ['across', 'twice the film, across'],
] as const;

export function PictureForm({ path }: { path: string }) {
  const { lesson } = useEditing();
  const { seats = [] } = lesson.design as Partial<Design>;
  const film = (side: string) => `${side}.fit.seats[0].leastFilm`;
  const view = `${path}.view`;
  return (
    <details className="picture-form">
      <summary>What is drawn</summary>
      <p className="ticks">
        <Tick path={`${view}.section`} label="The section" off={false} />
        <Tick path={`${view}.lenses`} label="The seats magnified" off={false} />
        <Tick path={`${view}.trueFirst`} label="Gaps not enlarged before the answer" off={undefined} />
        <Tick path={`${view}.figures`} label="No figures before the answer" on={false} off={undefined} />
        <Tick path={`${view}.figures`} label="No figures after it either" on="never" off={undefined} />
        <Tick path={`${view}.print`} label="Where marking blue prints, once it is let go" off={undefined} />
      </p>
      <ListOf
        path={`${view}.notes`}
        one="Figure written at a seat"
        fresh={{ seat: 0, text: 'gap {by|fine}' }}
        most={4}
        optional
      >
        {(one) => (
          <>
            <SeatField path={`${one}.seat`} />
            <FormulaField words path={`${one}.text`} label="What is written at the seat" />
            <FormulaField words optional path={`${one}.after`} label="Once it is let go" />
          </>
        )}
      </ListOf>
      <Group
        path={`${view}.layer`}
        label="One film as a layer of oil"
        fresh={{ title: 'Film', from: film('before'), to: film('after'), answer: 'film' }}
      >
        <TextField path={`${view}.layer.title`} label="What is drawn as a layer" />
        <FormulaField path={`${view}.layer.from`} label="How thick before the answer (mm)" />
        <FormulaField path={`${view}.layer.to`} label="How thick once it is let go (mm)" />
        <p className="ticks">
          <Tick path={`${view}.layer.both`} label="On both sides of the journal" off={undefined} />
        </p>
        <ChoiceField path={`${view}.layer.answer`} label="The answer is" options={MARKED} />
      </Group>
      <ListOf
        path={`${view}.triangles`}
        one="Triangle of travel, across and film"
        fresh={{
          of: `the ${seats[0]?.name ?? 'first'} cone`,
          angle: 'design.seats[0].journal.halfAngle',
          travel: '0.01',
        }}
        most={2}
        optional
      >
        {(one) => (
          <>
            <TextField path={`${one}.of`} label="Which cone" />
            <FormulaField path={`${one}.angle`} label="Its half angle, in degrees" />
            <FormulaField path={`${one}.travel`} label="The gap along the axis (mm)" />
          </>
        )}
      </ListOf>
      <Group
        path={`${view}.spread`}
        label="How wide parts of a heap vary"
        fresh={{
          title: 'How wide they vary: 19 in 20 lie between the two marks',
          parts: [{ of: 'bores, across', sd: '0.001' }],
          together: 'film',
          sd: '0.0005',
        }}
      >
        <TextField path={`${view}.spread.title`} label="What is drawn of the heap" />
        <ListOf
          path={`${view}.spread.parts`}
          one="Part"
          fresh={{ of: 'journals, across', sd: '0.001' }}
          least={1}
          most={4}
        >
          {(one) => (
            <>
              <TextField path={`${one}.of`} label="What varies" />
              <FormulaField path={`${one}.sd`} label="Half of what 19 in 20 lie within (mm)" />
            </>
          )}
        </ListOf>
        <TextField path={`${view}.spread.together`} label="What comes of all of them" />
        <FormulaField path={`${view}.spread.sd`} label="Half of what 19 in 20 of it lie within (mm)" />
        <FormulaField optional path={`${view}.spread.was`} label="The same before, where it is known (mm)" />
      </Group>
      <ChartForm path={path} />
    </details>
  );
}

function SeatField({ path }: { path: string }) {
  const { lesson, set } = useEditing();
  const { seats = [] } = lesson.design as Partial<Design>;
  return (
    <p className="edit-field short" data-path={path}>
      <label>
        Which seat{' '}
        <select value={String(at(lesson, path))} onChange={({ target }) => set(path, Number(target.value))}>
          {seats.map(({ name }, i) => (
            <option key={name} value={i}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}

/** Along the move that is let go, with the line at what is right where the answer is asked for. */
function freshChart({ release, answer }: Question) {
  const there = release.find((put) => put.path === 'position')?.is ?? 'design.position + 0.02';
  return {
    path: 'position',
    from: 'design.position',
    to: `design.position + 1.5 * ((${there}) - design.position)`,
    at: there,
    as: 'fine',
    title: 'where the spindle stands',
    up: /\bafter\./.test(answer.right) ? answer.right.replaceAll(/\bafter\./g, 'now.') : 'now.fit.seats[0].leastFilm',
    upTitle: 'what is asked for',
    points: 11,
  };
}

/** Only a number is marked on a chart. */
function ChartForm({ path }: { path: string }) {
  const { lesson } = useEditing();
  const { answer } = at(lesson, path) as Question;
  if (answer.kind !== 'number') return null;
  const chart = `${path}.answer.chart`;
  return (
    <Group path={chart} label="A chart on which the answer is marked" fresh={freshChart(at(lesson, path) as Question)}>
      <PlaceField path={`${chart}.path`} label="What goes along the chart" />
      <FormulaField path={`${chart}.from`} label="Where the chart begins" />
      <FormulaField path={`${chart}.to`} label="Where it ends" />
      <FormulaField path={`${chart}.at`} label="Where the answer is asked for" />
      <ChoiceField path={`${chart}.as`} label="What goes along is told in" options={AS} />
      <FormulaField path={`${chart}.times`} label="Its figures are multiplied by" hint="May stay empty." optional />
      <TextField path={`${chart}.title`} label="What goes along, in words" />
      <FormulaField path={`${chart}.up`} label="What goes up" hint="Over the report there: now" />
      <TextField path={`${chart}.upTitle`} label="What goes up, in words" />
      <NumberField path={`${chart}.points`} label="At how many places it is worked out" />
    </Group>
  );
}
