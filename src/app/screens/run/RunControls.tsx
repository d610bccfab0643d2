/** Every quantity of the run, explained from the definition. */
import { useRef } from 'react';
import { useStore } from 'zustand';
import type { Design, Part } from '../../../design/definition.ts';
import { MATERIALS, USUAL } from '../../../design/materials.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import { WorkContext } from '../../controls/context.ts';
import type { Control } from '../../controls/controls.tsx';
import type { Work } from '../../state/store.ts';
import { useLatest } from '../../state/useLatest.ts';
import {
  isPosed,
  type Loads,
  OILS,
  oilKind,
  STANDS,
  standKind,
  withFurtherLoad,
  withGroove,
  withOilKind,
  withoutEntry,
  withStand,
} from './runEdits.ts';

const quantity = (path: string, title?: string): Control => ({
  kind: 'quantity',
  path,
  ...(title !== undefined && { title }),
});
const under = (path: string, keys: readonly string[]): Control[] => keys.map((key) => quantity(`${path}.${key}`));

const OIL_ROWS: Record<string, Control[]> = {
  viscosity: [quantity('run.oil.viscosity')],
  grade: [quantity('run.oil.grade'), quantity('run.oil.index')],
  measured: [
    quantity('run.oil.measured[0][0]', 'One temperature'),
    quantity('run.oil.measured[0][1]', 'Viscosity there'),
    quantity('run.oil.measured[1][0]', 'The other'),
    quantity('run.oil.measured[1][1]', 'Viscosity there'),
  ],
};
const LOAD = ['x', 'y', 'z', 'station'];
const POSE = ['x', 'y', 'z', 'tiltX', 'tiltY'];
const BODY = ['mass', 'specificHeat', 'area', 'cooling', 'expansion', 'anchor'];
const GROOVE = ['angle', 'from', 'to', 'width', 'pressure'];

export default function RunControls({ work, fields }: { work: Work; fields: RunFields | null }) {
  const design = useStore(work.store, (state) => state.design);
  const run = design.run!;
  // A row is made once; what was found changes under it.
  const found = useLatest(fields);
  const posed = isPosed(run);
  // A file holds a load or a pose, never both: the load waits here while the spindle is held by hand.
  const before = useRef<Loads | null>(null);
  if (!posed) before.current = { ...(run.load && { load: run.load }), ...(run.loads && { loads: run.loads }) };
  const oil: Control[] = [
    {
      kind: 'choice',
      path: 'run.oil',
      title: 'Oil known',
      about: 'By its ISO grade, by two measured points, or as one viscosity.',
      options: OILS,
      read: oilKind,
      change: withOilKind,
    },
    ...OIL_ROWS[oilKind(design)]!,
    quantity('run.oil.density'),
  ];
  const stand: Control[] = [
    {
      kind: 'choice',
      path: 'run.pose',
      title: 'Spindle',
      about: 'The films are found for a load, or for a pose that you hold.',
      options: STANDS,
      read: standKind,
      change: (d, kind) =>
        withStand(d, kind, found.current?.pose ?? null, before.current, work.store.getState().system),
    },
    // Without one of its own the pose stands at the position of the design.
    ...(posed
      ? POSE.map(
          (key): Control => ({
            kind: 'quantity',
            path: `run.pose.${key}`,
            ...(key === 'z' && { otherwise: design.position ?? 0 }),
          }),
        )
      : under('run.load', LOAD)),
  ];
  return (
    <WorkContext value={work}>
      <section className="controls" aria-label="Controls">
        <div className="groups">
          <ControlGroup title="Running" rows={[quantity('run.speed'), quantity('run.ambient'), quantity('position')]} />
          <ControlGroup title="Oil" rows={oil} />
          <ControlGroup title={posed ? 'Pose' : 'Load'} rows={stand} />
        </div>
        <Grooves work={work} design={design} />
        {!posed && <FurtherLoads work={work} design={design} />}
        <details>
          <summary>What warms: masses, cooled surfaces, expansion, and where each part is held axially</summary>
          <div className="groups">
            <ControlGroup title="journal" rows={bodyRows('journal')} />
            <ControlGroup title="bush" rows={bodyRows('bush')} />
            <ControlGroup title="warm-up" rows={[quantity('run.heat.duration')]} />
          </div>
        </details>
        <details>
          <summary>Roughness of both surfaces: the film has to part them</summary>
          <div className="groups">
            <ControlGroup title="roughness" rows={under('run.roughness', ['journal', 'bush'])} />
          </div>
        </details>
      </section>
    </WorkContext>
  );
}

const bodyRows = (part: Part): Control[] => [
  {
    kind: 'choice',
    path: `run.heat.${part}`,
    title: 'Material',
    about: `What the ${part} is made of: sets its expansion and specific heat; ${USUAL[part]} when nothing is said.`,
    options: [...MATERIALS.map(({ name }) => ({ value: name, text: name })), { value: '', text: 'other' }],
    read: (design) => materialOf(design, part),
    change: (design, name) => withMaterial(design, part, name),
  },
  ...under(`run.heat.${part}`, BODY),
];

function materialOf(design: Design, part: Part): string {
  const usual = MATERIALS.find(({ name }) => name === USUAL[part])!;
  const { expansion = usual.expansion, specificHeat = usual.specificHeat } = design.run?.heat?.[part] ?? {};
  return (
    MATERIALS.find((material) => material.expansion === expansion && material.specificHeat === specificHeat)?.name ?? ''
  );
}

function withMaterial(design: Design, part: Part, name: string): Design {
  const material = MATERIALS.find((one) => one.name === name);
  const run = design.run!;
  if (!material) return design;
  const { expansion, specificHeat } = material;
  return {
    ...design,
    run: { ...run, heat: { ...run.heat, [part]: { ...run.heat?.[part], expansion, specificHeat } } },
  };
}

function Grooves({ work, design }: { work: Work; design: Design }) {
  const grooves = design.run!.supply ?? [];
  const seats = design.seats.map(({ name }) => ({ value: name, text: name }));
  return (
    <details>
      <summary>
        Supply grooves:{' '}
        {grooves.length === 0
          ? 'none, every film fully supplied'
          : grooves.map(({ seat, angle }) => `${seat} at ${angle}°`).join(', ')}
      </summary>
      <div className="groups">
        {grooves.map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a groove is known by its place in the list
          <div key={i}>
            <ControlGroup
              title={`groove ${i + 1}`}
              rows={[
                {
                  kind: 'choice',
                  path: `run.supply[${i}].seat`,
                  title: 'Seat',
                  about: 'In whose bush the groove is cut.',
                  options: seats,
                },
                ...under(`run.supply[${i}]`, GROOVE),
              ]}
            />
            <button type="button" onClick={() => work.change((d) => withoutEntry(d, 'supply', i))}>
              Strike out groove {i + 1}
            </button>
          </div>
        ))}
      </div>
      <button type="button" onClick={() => work.change(withGroove)} disabled={grooves.length >= 32}>
        + Groove
      </button>
    </details>
  );
}

function FurtherLoads({ work, design }: { work: Work; design: Design }) {
  const loads = design.run!.loads ?? [];
  return (
    <details>
      <summary>
        Further loads at stations of their own, such as belt pull and weight:{' '}
        {loads.length === 0 ? 'none' : loads.length}
      </summary>
      <div className="groups">
        {loads.map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a load is known by its place in the list
          <div key={i}>
            <ControlGroup title={`load ${i + 2}`} rows={under(`run.loads[${i}]`, LOAD)} />
            <button type="button" onClick={() => work.change((d) => withoutEntry(d, 'loads', i))}>
              Strike out load {i + 2}
            </button>
          </div>
        ))}
      </div>
      <button type="button" onClick={() => work.change(withFurtherLoad)} disabled={loads.length >= 16}>
        + Load
      </button>
    </details>
  );
}
