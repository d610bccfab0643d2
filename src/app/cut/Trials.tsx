/** Trial and correct: what every trial assembly told, what the films are believed to be since, and what is left to cut. */
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import { offFaceText, trialText } from '../../report/cut/trialText.ts';
import ControlGroup from '../controls/ControlGroup.tsx';
import type { Control } from '../controls/controls.tsx';
import type { Work } from '../store.ts';
import { type Trial, withBlue, withoutTrial, withShake, withStandOff, withTrial } from './entries.ts';

interface Props {
  work: Work;
  /** of the design it was made for; the trials shown are those of now */
  cut: CutReport;
  system: System;
}

export function Trials({ work, cut, system }: Props) {
  const design = useStore(work.store, (state) => state.design);
  const trials = design.cut?.trials ?? [];
  return (
    <section aria-label="Trial and correct">
      <h2>Trial and correct</h2>
      <p className="fine">Assemble dry and clean, with a little blue. What the trial tells is weighed against the doubt of the measurements; the design itself stays as it was measured.</p>
      {trials.map((trial, i) => (
        // Known by its place in the history.
        // biome-ignore lint/suspicious/noArrayIndexKey: trials have no other name
        <Entry key={i} index={i} trial={trial} result={cut.trials?.[i]} design={design} work={work} system={system} />
      ))}
      <p className="buttons">
        <button type="button" onClick={() => work.change((d) => withTrial(d, cut))}>
          Write down a trial
        </button>
      </p>
      {cut.remaining && trials.length > 0 && <Remaining remaining={cut.remaining} system={system} />}
    </section>
  );
}

type Result = NonNullable<CutReport['trials']>[number];

interface EntryProps {
  index: number;
  trial: Trial;
  result: Result | undefined;
  design: Design;
  work: Work;
  system: System;
}

function Entry({ index, trial, result, design, work, system }: EntryProps) {
  const path = `cut.trials[${index}]`;
  const read: Control[] = [
    { kind: 'words', path: `${path}.note`, title: 'Note', about: 'Anything worth remembering' },
    ...(trial.standOff ? [{ kind: 'quantity', path: `${path}.standOff.value`, title: 'Stand-off' } as const, { kind: 'quantity', path: `${path}.standOff.sigma`, title: 'Its uncertainty' } as const] : []),
    ...(trial.shake
      ? ([
          { kind: 'quantity', path: `${path}.shake.value`, title: 'Shake' },
          { kind: 'quantity', path: `${path}.shake.sigma`, title: 'Its uncertainty' },
          { kind: 'quantity', path: `${path}.shake.indicator` },
          { kind: 'quantity', path: `${path}.shake.position` },
          { kind: 'quantity', path: `${path}.shake.direction` },
        ] as const)
      : []),
  ];
  const taken: Control[] = [
    ...(trial.taken ?? []).map(({ seat, part }, k): Control => ({ kind: 'quantity', path: `${path}.taken[${k}].normal`, title: `Off the ${seat} ${part}` })),
    ...(trial.faces ?? []).map(({ name }, k): Control => ({ kind: 'quantity', path: `${path}.faces[${k}].off`, title: `Off ${name}` })),
  ];
  return (
    <details className={result && result.status !== 'updated' ? 'trial wrong' : 'trial'}>
      <summary>
        Trial {index + 1}: {trialText(trial, system)}
        {result && <span className="told-by">{resultText(result, system)}</span>}
      </summary>
      <div className="groups">
        {taken.length > 0 && <ControlGroup title="taken since the trial before, square to the surface" rows={taken} />}
        <ControlGroup title="what it told" rows={read} />
        <Blue index={index} trial={trial} design={design} work={work} />
      </div>
      <p className="buttons">
        <button type="button" onClick={() => work.change((d) => withStandOff(d, index, !trial.standOff))}>
          {trial.standOff ? 'No stand-off read' : '+ Stand-off'}
        </button>
        <button type="button" onClick={() => work.change((d) => withShake(d, index, !trial.shake))}>
          {trial.shake ? 'No shake read' : '+ Shake'}
        </button>
        <button type="button" onClick={() => work.change((d) => withoutTrial(d, index))}>
          Strike out this trial
        </button>
      </p>
    </details>
  );
}

function Blue({ index, trial, design, work }: { index: number; trial: Trial; design: Design; work: Work }) {
  return (
    <fieldset className="group">
      <legend>the blue, at first touch</legend>
      {design.seats.map(({ name }) => {
        const prints = trial.blue?.find(({ seat }) => seat === name)?.prints;
        return (
          <label key={name} className="blue-seen">
            <span>{name}</span>
            <select value={prints === undefined ? '' : `${prints}`} onChange={({ target }) => work.change((d) => withBlue(d, index, name, target.value === '' ? null : target.value === 'true'))}>
              <option value="">not looked at</option>
              <option value="true">prints</option>
              <option value="false">stays clean</option>
            </select>
          </label>
        );
      })}
    </fieldset>
  );
}

function resultText({ status, films, touched }: Result, system: System): string {
  if (status === 'contradiction') return 'Nothing the parts could be reads like this: look for grit, a burr, or a slip of the pen.';
  if (status === 'noModel') return 'The shake cannot be reckoned for these parts.';
  const seen = Object.entries(films ?? {}).map(([name, { more, sigma }]) => `${name} ${fineText(Math.abs(more), system)} ${more < 0 ? 'less' : 'more'} ± ${fineText(sigma, system)}`);
  const first = Object.entries(touched ?? {}).sort((a, b) => b[1] - a[1])[0];
  return `Films against the design: ${seen.join(', ')}.${first ? ` It was the ${first[0]} seat that touched, ${Math.round(100 * first[1])} in 100.` : ''}`;
}

function Remaining({ remaining, system }: { remaining: NonNullable<CutReport['remaining']>; system: System }) {
  const films = Object.entries(remaining.films).map(([name, film]) => `${name} ${film === null ? 'apart' : fineText(film, system)}`);
  return (
    <section className="remaining" aria-label="Left to cut">
      <h3>Left to cut, by the last trial</h3>
      {remaining.steps.length + remaining.faces.length === 0 ? (
        <p>Nothing.</p>
      ) : (
        <ul>
          {remaining.steps.map(({ seat, part, normal, diameter }) => (
            <li key={`${seat} ${part}`}>
              {fineText(normal, system)} off the {seat} {part}: {fineText(Math.abs(diameter), system)} {diameter < 0 ? 'less' : 'more'} in diameter
            </li>
          ))}
          {remaining.faces.map((face) => (
            <li key={face.name}>{offFaceText(face, system)}</li>
          ))}
        </ul>
      )}
      <p>
        {remaining.feasible ? 'The films are then as wanted' : 'The films wanted cannot be had any more within these limits; the nearest are'}: {films.join(', ')}, the journal at {fineText(remaining.position, system)}.
      </p>
      {remaining.steps.length + remaining.faces.length > 0 && <p className="fine">As likely too much as too little, and metal cannot be put back: stop short of it and try again (common practice).</p>}
    </section>
  );
}
