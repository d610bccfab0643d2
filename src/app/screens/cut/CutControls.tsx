/** What may be cut and what not, with what preferences, on what machine: controls made from the definition. */
import { useStore } from 'zustand';
import { without, withValue } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import { USUAL_LIMIT, USUAL_MACHINE } from '../../../design/usualMachine.ts';
import { BLOCK_SETS } from '../../../report/measure/bench.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import type { Work } from '../../state/store.ts';
import { toolsOf } from '../../state/tools.ts';
import { allowedAt, withAllowed, withFace, withFaceSeat, withoutFace } from './entries.ts';

type Options = readonly { value: string; text: string }[];

/** A choice of which none, the first, is as good as left out. */
const choice = (path: string, title: string, about: string, none: string, options: Options): Control => ({
  kind: 'choice',
  path,
  title,
  about,
  options: [{ value: '', text: none }, ...options],
  change: (design, value) => (value === '' ? without(design, path) : withValue(design, path, value)),
});

/** A yes or no of the definition. */
const flag = (path: string, title: string, about: string, no: string, yes: string): Control => ({
  kind: 'choice',
  path,
  title,
  about,
  options: [
    { value: '', text: no },
    { value: 'true', text: yes },
  ],
  change: (design, value) => (value === '' ? without(design, path) : withValue(design, path, true)),
});

const PREFERENCES: Control[] = [
  choice('cut.prefer.spare', 'Spare', 'Cut only for what the other cannot give', 'neither part', [
    { value: 'journal', text: 'the journal' },
    { value: 'bush', text: 'the bush' },
  ]),
  flag(
    'cut.prefer.oneSetUp',
    'Set-ups',
    'Whether only one of the two parts is cut',
    'both parts may be cut',
    'one part only',
  ),
  flag(
    'cut.prefer.keepPosition',
    'Nose',
    'Whether the journal stays where it is, as nearly as may be',
    'may move',
    'stays where it is',
  ),
  { kind: 'quantity', path: 'cut.reach.from', title: 'Rearmost position' },
  { kind: 'quantity', path: 'cut.reach.to', title: 'Foremost position' },
  { kind: 'quantity', path: 'cut.doubt' },
  { kind: 'quantity', path: 'cut.risk' },
];

/** Numbers of the machine, each with what it is taken to be where nothing is said. */
const quantities = (tools: System, ...keys: string[]): Control[] =>
  keys.map((key) => {
    const otherwise = (USUAL_MACHINE[tools] as unknown as Record<string, number | undefined>)[key];
    return {
      kind: 'quantity',
      path: `cut.machine.${key}`,
      ...(otherwise !== undefined && { otherwise }),
      ...(key === 'bar' && { tool: true }),
    };
  });

const dials = (tools: System): Control[] => [
  choice('cut.machine.dial', 'Cross-feed dial', 'What it counts', 'counts the radius', [
    { value: 'diameter', text: 'counts the diameter' },
  ]),
  ...quantities(tools, 'division', 'axialDivision', 'pass', 'slide'),
];

const angles = (tools: System): Control[] => [
  choice(
    'cut.machine.setBy',
    'Angle set by',
    'The way whose error counts in the budget',
    'whatever costs the film least',
    [
      { value: 'alongBar', text: 'slide run along a sine bar' },
      { value: 'sineBar', text: 'part held on a sine bar' },
      { value: 'alongSlide', text: 'indicator along the slide' },
      { value: 'alongAxis', text: 'indicator along the cone' },
      { value: 'table', text: 'indicator at the table' },
      { value: 'scale', text: 'scale of the table' },
      { value: 'tailstock', text: 'tailstock set over' },
    ],
  ),
  choice(
    'cut.machine.blocks',
    'Block set',
    'From which the stack is made',
    'as the tools: M112, or 81 inch',
    BLOCK_SETS.map(({ name, system }) => ({ value: name, text: system === 'inch' ? `${name} inch` : name })),
  ),
  ...quantities(tools, 'bar', 'travel', 'indicator', 'scaleRadius', 'scaleReading', 'centres'),
];

const errors = (tools: System): Control[] => quantities(tools, 'toolHeight', 'lean', 'warm', 'expansion', 'anchor');

export default function CutControls({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const tools = toolsOf(design, system);
  const { cut } = design;
  if (!cut) return null;
  return (
    <section className="controls" aria-label="What may be cut">
      <fieldset className="may-cut">
        <legend>surfaces; what is not ticked is forbidden</legend>
        {design.seats.flatMap(({ name }) =>
          (['journal', 'bush'] as const).map((part) => (
            <label key={`${name} ${part}`}>
              <input
                type="checkbox"
                checked={allowedAt(cut, name, part) >= 0}
                onChange={(event) => work.change((d) => withAllowed(d, name, part, event.target.checked, tools))}
              />{' '}
              {name} {part}
            </label>
          )),
        )}
      </fieldset>
      <div className="groups">
        {cut.allow.map(({ seat, part, renew }, i) => (
          <ControlGroup key={`${seat} ${part}`} title={`${seat} ${part}`} rows={allowRows(i, renew === true, tools)} />
        ))}
      </div>
      <div className="groups">
        {(cut.faces ?? []).map((face, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: its name is edited here
          <div key={i}>
            <ControlGroup title={`face or spacer ${i + 1}`} rows={faceRows(i, tools)} />
            <fieldset className="may-cut">
              <legend>seats it moves</legend>
              {design.seats.map(({ name }) => (
                <label key={name}>
                  <input
                    type="checkbox"
                    checked={face.seats.includes(name)}
                    onChange={(event) => work.change((d) => withFaceSeat(d, i, name, event.target.checked))}
                  />{' '}
                  {name}
                </label>
              ))}
            </fieldset>
            <button type="button" onClick={() => work.change((d) => withoutFace(d, i))}>
              Remove {face.name}
            </button>
          </div>
        ))}
      </div>
      <p className="buttons">
        <button
          type="button"
          onClick={() => work.change((d) => withFace(d, tools))}
          disabled={(cut.faces ?? []).length >= 8}
        >
          + Face or spacer
        </button>
      </p>
      <p className="fine">
        A field left empty counts as its default, which is told below its group while the field is entered.
      </p>
      <details>
        <summary>Preferences, reach of the adjuster, doubt</summary>
        <ControlGroup title="preferences" rows={PREFERENCES} />
      </details>
      <details>
        <summary>The machine: dials, angle, errors</summary>
        <div className="groups">
          <ControlGroup title="dials" rows={dials(tools)} />
          <ControlGroup title="setting the angle" rows={angles(tools)} />
          <ControlGroup title="errors to reckon with" rows={errors(tools)} />
        </div>
      </details>
    </section>
  );
}

const allowRows = (index: number, renew: boolean, tools: System): Control[] => {
  const path = `cut.allow[${index}]`;
  return [
    { kind: 'quantity', path: `${path}.cleanup` },
    { kind: 'quantity', path: `${path}.limit`, otherwise: USUAL_LIMIT[tools] },
    {
      kind: 'choice',
      path: `${path}.renew`,
      title: 'Cut',
      about: 'Along its old line, or to a straight new one; its profile is then gone',
      options: [
        { value: '', text: 'along the old line' },
        { value: 'true', text: 'to a straight new line' },
      ],
      change: (design, value) =>
        value === 'true'
          ? withValue(design, `${path}.renew`, true)
          : without(without(design, `${path}.halfAngle`), `${path}.renew`),
    },
    ...(renew ? [{ kind: 'quantity', path: `${path}.halfAngle` } as const] : []),
  ];
};

const faceRows = (index: number, tools: System): Control[] => {
  const path = `cut.faces[${index}]`;
  return [
    { kind: 'words', path: `${path}.name`, title: 'Name', about: 'What the face or spacer is called' },
    {
      kind: 'choice',
      path: `${path}.part`,
      title: 'Moves',
      about: 'Which part moves as metal comes off',
      options: [
        { value: 'journal', text: 'the journal' },
        { value: 'bush', text: 'the bush' },
      ],
    },
    {
      kind: 'choice',
      path: `${path}.moves`,
      title: 'Toward',
      about: 'Which way it moves as metal comes off',
      options: [
        { value: 'noseward', text: 'the nose' },
        { value: 'rearward', text: 'the rear' },
      ],
    },
    { kind: 'quantity', path: `${path}.cleanup` },
    { kind: 'quantity', path: `${path}.limit`, otherwise: USUAL_LIMIT[tools] },
    { kind: 'quantity', path: `${path}.add` },
  ];
};
