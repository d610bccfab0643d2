/** A job from nothing: an arrangement, the sizes that are known written on its drawing, and the pair that they make. */
import { useMemo, useState } from 'react';
import type { System } from '../../../design/units.ts';
import { ANGLE_WAYS, type AngleWay } from '../../../design/units.ts';
import { validateDesign } from '../../../design/validate.ts';
import { assumedIn } from '../../../report/assumed.ts';
import { listed } from '../../../report/listed.ts';
import { ANGLE_NAMES, sayAngles, useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { ARRANGEMENTS, type Arrangement } from './arrangements.ts';
import { faultsOf } from './faults.ts';
import { type Form, givenOf, useForm, useFormSystem } from './form.ts';
import { LivePair } from './LivePair.tsx';
import { keepLengths } from './lengths.ts';
import { allSizes, newDesign, sizesOf, USUAL_FILM } from './newDesign.ts';
import { BesideDrawing, OnDrawing } from './OnDrawing.tsx';
import { Thumbnail } from './SketchParts.tsx';
import './newJob.css';

export default function NewJobScreen({ work }: { work: Work }) {
  const [form, setForm] = useForm(work);
  const system = useFormSystem(work);
  const plan = ARRANGEMENTS.find(({ id }) => id === form.arrangement);
  return (
    <div className="new-job">
      <section className="verdict mend" aria-live="polite">
        <h2>{plan ? countText(plan, form) : 'A new job: which of these is your spindle?'}</h2>
        <p>
          {plan
            ? 'Type what you know in any order, with a unit if you like. Dashed figures are assumed in proportion, until you type or measure them; Enter on one says that it is so, emptying one takes back what you typed. ' +
              followsText(plan, form, system)
            : 'A section of each; the nose is to the right. Seats can be added and taken away later.'}
        </p>
      </section>
      <Liking system={system} choose={(chosen) => setForm({ ...form, system: chosen })} />
      <fieldset className="arrangements">
        <legend>Arrangement</legend>
        {ARRANGEMENTS.map((one) => (
          <button
            key={one.id}
            type="button"
            aria-pressed={one.id === form.arrangement}
            onClick={() => setForm({ ...form, arrangement: one.id })}
          >
            <Thumbnail plan={one} />
            {one.title}
          </button>
        ))}
      </fieldset>
      {!plan && (
        <p className="fine">
          One cone and a flat thrust face is not among them: a flat face has a half angle of 90°, and this program
          carries cones up to 89°.
        </p>
      )}
      {plan && <Drawing key={plan.id} work={work} plan={plan} form={form} setForm={setForm} system={system} />}
    </div>
  );
}

function countText(plan: Arrangement, form: Form): string {
  const all = sizesOf(plan);
  const known = all.filter(({ id }) => form.sizes[id]?.value !== undefined).length;
  return known === all.length
    ? 'Every size on the drawing is yours.'
    : `${known} of ${all.length} sizes are yours, ${all.length - known} are assumed.`;
}

/** With what follows from the sizes on the drawing, as every other screen counts it. */
function followsText(plan: Arrangement, form: Form, system: System): string {
  const { length } = assumedIn(newDesign(plan, givenOf(plan, form), system), ['seats']);
  return `With what follows from the sizes (bush angles, ends, tolerances) ${length} numbers of the seats are assumed; the other screens count these.`;
}

/** Asked once: the units, and how angles are said. */
function Liking({ system, choose }: { system: System; choose(system: System): void }) {
  const way = useAngles();
  return (
    <div className="liking">
      <label>
        Units{' '}
        <select value={system} onChange={(event) => choose(event.target.value as System)}>
          <option value="metric">mm, µm</option>
          <option value="inch">inch, tenths</option>
        </select>
      </label>
      <label>
        Angles said as{' '}
        <select value={way} onChange={(event) => sayAngles(event.target.value as AngleWay)}>
          {ANGLE_WAYS.map((one) => (
            <option key={one} value={one}>
              {ANGLE_NAMES[one]}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

interface DrawingProps {
  work: Work;
  plan: Arrangement;
  form: Form;
  setForm(form: Form | null): void;
  system: System;
}

function Drawing({ work, plan, form, setForm, system }: DrawingProps) {
  const given = useMemo(() => givenOf(plan, form), [plan, form]);
  const design = useMemo(() => newDesign(plan, given, system), [plan, given, system]);
  const result = useMemo(() => validateDesign(design), [design]);
  const gave = new Set<string>();
  const sizes = allSizes(plan, given.typed, given.film ?? USUAL_FILM[system], system, (id) => gave.add(id));
  const gaveWay = sizesOf(plan).filter(({ id }) => gave.has(id));
  const faults = faultsOf(plan, sizes, result.ok ? null : { errors: result.errors, design }, system);
  const possible = result.ok && !faults.some(({ stops }) => stops);
  // What was whole last goes on being shown.
  const [whole, setWhole] = useState(possible ? design : null);
  if (possible && design !== whole) setWhole(design);
  const open = Object.values(form.sizes).some((entry) => entry?.text !== undefined);
  const ready = possible && !open;
  const start = () => {
    if (!ready) return;
    work.open(given.title, { ok: true, design: result.design }, system);
    keepLengths(work, plan, given.typed);
    setForm(null);
    window.location.hash = '#fit';
  };
  const giveUp = () => {
    work.begun.write(null, true);
    window.location.hash = '#jobs';
  };
  return (
    <>
      <OnDrawing plan={plan} form={form} setForm={setForm} sizes={sizes} faults={faults} system={system} />
      {gaveWay.length > 0 && (
        <p className="fine" role="status">
          Only assumed, so out of proportion to go with what is typed:{' '}
          {listed(gaveWay.map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1)))}.
        </p>
      )}
      {whole && <LivePair design={whole} plan={plan} typed={given.typed} stale={!possible} system={system} />}
      <BesideDrawing form={form} setForm={setForm} system={system} />
      <p className="buttons">
        <button type="button" className="main" aria-disabled={!ready} onClick={start}>
          Start the job
        </button>
        <button type="button" onClick={giveUp} title="Undo on this page brings it back">
          Give it up
        </button>
        {!ready && <span className="fine">First mend what is marked on the drawing.</span>}
      </p>
    </>
  );
}
