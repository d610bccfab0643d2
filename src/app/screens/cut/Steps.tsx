/** The cuts as a check list: every figure that is needed at the machine, and what the gauges must read when to stop. */

import type { CSSProperties } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { defaultAt } from '../../../design/place.ts';
import { divisionText } from '../../../design/tools.ts';
import { angleText, fineText, readingText, type System } from '../../../design/units.ts';
import type { CutReport, CutStepReport } from '../../../report/cut/definition.ts';
import { NOTHING } from '../../../report/cut/listed.ts';
import { offFaceText } from '../../../report/cut/trialText.ts';
import { filmsText, isReached } from '../../../report/cut/verdict.ts';
import type { Work } from '../../state/store.ts';
import { gaugeText } from '../measure/kinds.ts';
import { withTick } from './entries.ts';

interface Props {
  work: Work;
  /** the design the plan was made for */
  design: Design;
  cut: CutReport;
  system: System;
}

export function Steps({ work, design, cut, system }: Props) {
  const done = useStore(work.store, (state) => state.design.cut?.work?.done);
  const tick = (id: string) => ({
    id,
    checked: done?.includes(id) ?? false,
    onChange: (event: { target: HTMLInputElement }) => work.change((d) => withTick(d, id, event.target.checked)),
  });
  /** The item of the order of work that is this step. */
  const itemOf = (kind: 'cut' | 'face', step: number) =>
    cut.work.find((item) => item.step === step && item.id.startsWith(`${kind} `))?.id ?? `${kind} ${step}`;
  if (cut.steps.length + cut.faces.length === 0) return null;
  return (
    <section aria-label="Steps">
      {!isReached(cut) && !cut.inTolerance && (
        <p className="falls-short">
          These steps do not give the films that are wanted: after them {filmsText(design, cut.films, system)}
          {cut.uncut && `; uncut, at best ${filmsText(design, cut.uncut.films, system)}`}.
        </p>
      )}
      <ol className="steps">
        {cut.steps.map((step, i) => (
          <li key={`${step.seat} ${step.part}`} className={tick(itemOf('cut', i)).checked ? 'done' : ''}>
            <h3>
              <label>
                <input
                  type="checkbox"
                  checked={tick(itemOf('cut', i)).checked}
                  onChange={tick(itemOf('cut', i)).onChange}
                />{' '}
                {i + 1}. {fineText(step.normal, system)} off the {step.seat} {step.part}
              </label>
            </h3>
            <p>{step.reason}</p>
            {beforeTrial(step, system) && <p className="before-trial">{beforeTrial(step, system)}</p>}
            {step.first && (
              <p className="before-trial">First: {firstText(step.first, design.cut?.machine ?? {}, system)}.</p>
            )}
            <Feeds step={step} machine={design.cut?.machine ?? {}} system={system} />
            <Stops step={step} system={system} />
          </li>
        ))}
        {cut.faces.map((face, k) => {
          const i = cut.steps.length + k;
          return (
            <li key={face.name} className={tick(itemOf('face', i)).checked ? 'done' : ''}>
              <h3>
                <label>
                  <input
                    type="checkbox"
                    checked={tick(itemOf('face', i)).checked}
                    onChange={tick(itemOf('face', i)).onChange}
                  />{' '}
                  {i + 1}. {offFaceText(face, system)}
                </label>
              </h3>
              <p>{face.reason}</p>
              <Readings
                rows={[['Stand-off of the journal', face.standOff, (mm) => fineText(mm, system)]]}
                name={face.name}
              />
            </li>
          );
        })}
      </ol>
    </section>
  );
}

type Machine = NonNullable<NonNullable<Design['cut']>['machine']>;

/** Nobody sets a dial finer than half a division (common practice, no source). */
const SETTABLE = 0.5;

/** A number of divisions, told as far as a dial is read; what is less than can be set on it, as that. */
export const divisionsText = (count: number) =>
  count < SETTABLE
    ? 'less than half a division'
    : `${count.toFixed(1)} ${count.toFixed(1) === '1.0' ? 'division' : 'divisions'}`;

/**
 * The passes of a cross feed, as the dial counts them. `least`: the least change of the radius that can be set (mm).
 */
export function passesText(
  { count, depth, last }: CutStepReport['passes'],
  onDial: (radius: number) => string,
  least: number,
): string {
  // What cannot be set is left to the gauge.
  const rest = last < least ? `the last ${onDial(last)} by the gauge` : `one of ${onDial(last)}`;
  if (count === 1) return last < least ? `${onDial(last)}, by the gauge` : `one pass of ${onDial(last)}`;
  return `${count - 1} ${count === 2 ? 'pass' : 'passes'} of ${onDial(depth)} and ${rest}`;
}

/** The least change of the radius (mm) that can be set on the cross feed. */
export const leastSet = ({ dial = 'radius', division = defaultAt('cut.machine.division') }: Machine) =>
  (SETTABLE * division) / (dial === 'diameter' ? 2 : 1);

/** Every way to feed the stock of a step; the defaults are those of the design file. */
function feedRows(
  step: CutStepReport,
  {
    dial = 'radius',
    division = defaultAt('cut.machine.division'),
    axialDivision = defaultAt('cut.machine.axialDivision'),
    slide,
  }: Machine,
  system: System,
): [name: string, value: string][] {
  const fine = (mm: Millimetres) => fineText(mm, system);
  const onDialOf = (radial: number) => (dial === 'diameter' ? 2 * radial : radial);
  const onDial = onDialOf(step.crossFeed);
  return [
    ['Stock, square to the surface', fine(step.normal)],
    ['Diameter', `${fine(Math.abs(step.diameter))} ${step.diameter < 0 ? 'less' : 'more'}`],
    [
      'Cross feed',
      `${fine(onDial)} on the ${dial} dial: ${divisionsText(step.crossDivisions)} of ${divisionText(division, system)}`,
    ],
    ...(step.axialFeed === null || step.axialDivisions === null
      ? []
      : [
          [
            'or axial feed',
            `${fine(step.axialFeed)}: ${divisionsText(step.axialDivisions)} of ${divisionText(axialDivision, system)}`,
          ] as [string, string],
        ]),
    [
      'or with the table set over',
      `${fine(onDialOf(step.tableFeed))} on the ${dial} dial, square to the ways: ${divisionsText(onDialOf(step.tableFeed) / division)}`,
    ],
    ...(step.slideFeed === null || slide === undefined
      ? []
      : [[`or along the slide at ${angleText(slide)}`, fine(step.slideFeed)] as [string, string]]),
    [
      `Passes, on the ${dial} dial`,
      passesText(step.passes, (radius) => fine(onDialOf(radius)), leastSet({ dial, division })),
    ],
    ['Touch of this seat moves', movedText(step, system)],
  ];
}

/** How the part of a step is fed that may be taken before a trial. */
function firstText(
  { crossFeed, crossDivisions, passes }: NonNullable<CutStepReport['first']>,
  machine: Machine,
  system: System,
): string {
  const onDial = (radius: number) => fineText(machine.dial === 'diameter' ? 2 * radius : radius, system);
  return `${onDial(crossFeed)} on the ${machine.dial ?? 'radius'} dial, ${divisionsText(crossDivisions)}, ${passesText(passes, onDial, leastSet(machine))}`;
}

function movedText({ touch: { before, stop } }: CutStepReport, system: System): string {
  if (before === null || stop === null) return 'it has none';
  const by = stop - before;
  return `${fineText(Math.abs(by), system)} ${by < 0 ? 'rearward' : 'noseward'}, to ${fineText(stop, system)}`;
}

function Feeds({ step, machine, system }: { step: CutStepReport; machine: Machine; system: System }) {
  return (
    <dl className="feeds">
      {feedRows(step, machine, system).map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Widths of the columns of figures on a phone. */
const THREE = { '--widths': '1fr 1fr 1fr' } as CSSProperties;

type Stop = CutStepReport['touch'];
type Row = [name: string, stop: Stop, text: (mm: Millimetres) => string];

/** What the doubt leaves to be taken before a trial assembly, where it is not all of a step. */
export function beforeTrial({ normal, safe }: Pick<CutStepReport, 'normal' | 'safe'>, system: System): string {
  if (safe === undefined || safe > normal - NOTHING) return '';
  return safe < NOTHING
    ? 'Take nothing of it before a trial assembly: it may be far less than this.'
    : `Stop first at ${fineText(safe, system)} off, and assemble for a trial: the rest may be less than this.`;
}

function Stops({ step, system }: { step: CutStepReport; system: System }) {
  const fine = (mm: Millimetres) => fineText(mm, system);
  const gauges = step.gauges.map(
    ({ reading, ...stop }): Row => [gaugeText(reading, system), stop, (mm) => readingText(mm, system)],
  );
  return (
    <Readings
      rows={[...gauges, ['Stand-off of the journal', step.standOff, fine]]}
      name={`${step.seat} ${step.part}`}
      unsure={beforeTrial(step, system) !== ''}
    />
  );
}

function Readings({ rows, name, unsure = false }: { rows: Row[]; name: string; unsure?: boolean }) {
  // The reading to stop at first is the one that counts.
  const first = rows.some(([, { safe }]) => safe !== undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table" aria-label={`What the gauges read, ${name}`} tabIndex={0}>
      <table className="readings stacked" style={THREE}>
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col">Now</th>
            <th scope="col">{first ? 'Stop first at' : 'Half way'}</th>
            <th scope="col">{unsure ? 'If the trial agrees' : 'Stop at'}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([what, { before, half, safe, stop }, text]) => {
            const told = (mm: Millimetres | null) => (mm === null ? '—' : text(mm));
            return (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td>{told(before)}</td>
                <td>{first ? <strong>{told(safe ?? null)}</strong> : told(half)}</td>
                <td>{unsure ? told(stop) : <strong>{told(stop)}</strong>}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
