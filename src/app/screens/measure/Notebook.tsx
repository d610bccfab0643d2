/** The readings as a shop notebook holds them: one line each, opened to be changed, with the drawing of its set-up. */

import { type SyntheticEvent, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { valueAt, withValue } from '../../../design/place.ts';
import { fineText, lengthText, type System } from '../../../design/units.ts';
import { listed } from '../../../report/cut/listed.ts';
import type { MeasureReport } from '../../../report/measure/definition.ts';
import { farOffText } from '../../../report/measure/farOff.ts';
import { faultText } from '../../../report/measure/faultText.ts';
import { doneSoFar } from '../../../report/measure/metalBetween.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import { placeOf, setOpen } from '../../frame/openParts.ts';
import { Entered } from '../../record/Entered.tsx';
import { bare, withTold } from '../../record/entered.ts';
import { namesOf } from '../../state/sameSeats.ts';
import type { Work } from '../../state/store.ts';
import { newReading, withoutReading } from './entries.ts';
import { KIND_NAMES, KINDS, type Reading, readingText, saidOfAsked, tellsSize, whenText } from './kinds.ts';
import { NewEntry } from './NewEntry.tsx';
import { SetUp } from './SetUp.tsx';
import type { Asked } from './useAsked.ts';

interface Props {
  work: Work;
  measure: MeasureReport | undefined;
  /** Whether that is of a notebook before, and of this one is being worked out. */
  stale: boolean;
  /** The parts as the readings tell them. */
  fitted: Design | undefined;
  /** The system of the tools a new entry is proposed with. */
  tools: System;
  /** The readings that are being asked for; they are no entries yet. */
  asked: Asked;
}

/** More entries than this scroll in a box of their own. */
const LONG = 30;

export function Notebook({ work, measure, stale, fitted, tools, asked }: Props) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const readings = design.readings ?? [];
  const long = readings.length > LONG;
  return (
    <section className="notebook" aria-label="Notebook of readings">
      {readings.length > 0 && (
        <p className="entry head" aria-hidden="true">
          <span>Reading</span>
          <span>Read</span>
          <span>Uncertainty</span>
          <span>Fitted</span>
          <span>Off by</span>
        </p>
      )}
      <div
        className={`${long ? 'long' : ''}${stale ? ' stale-told' : ''}`}
        {...(long && { tabIndex: 0, role: 'region', 'aria-label': 'Readings' })}
      >
        {readings.map((reading, i) => (
          <Entry
            // biome-ignore lint/suspicious/noArrayIndexKey: known by its place in the notebook; another kind there is another entry
            key={`${i} ${reading.kind}`}
            index={i}
            reading={reading}
            design={design}
            system={system}
            work={work}
            measure={measure}
            stale={stale}
          />
        ))}
      </div>
      {asked.entry && (
        <NewEntry
          key={`${asked.name} ${namesOf(design)}`}
          work={work}
          design={design}
          fitted={fitted ?? null}
          entry={asked.entry}
          edit={asked.edit}
          system={system}
          tools={tools}
          close={asked.close}
        />
      )}
      <p className="buttons">
        {KIND_NAMES.map((kind) => (
          <button
            key={kind}
            type="button"
            title={KINDS[kind].how}
            onClick={() => asked.ask(kind, newReading(design, kind, tools))}
          >
            + {KINDS[kind].name}
            {asked.begun.includes(kind) && asked.name !== kind && ' (begun)'}
          </button>
        ))}
      </p>
    </section>
  );
}

const entryId = (index: number) => `reading-${index + 1}`;

/** Opens an entry of the notebook and brings it into sight, with the focus on its line. */
export function revealEntry(index: number): void {
  setOpen(placeOf('measure', 'notebook'), true, true);
  requestAnimationFrame(() => {
    const entry = document.getElementById(entryId(index));
    if (entry instanceof HTMLDetailsElement) entry.open = true;
    entry?.scrollIntoView({ block: 'center' });
    entry?.querySelector<HTMLElement>('summary')?.focus({ preventScroll: true });
  });
}

interface EntryProps {
  index: number;
  reading: Reading;
  design: Design;
  system: System;
  work: Work;
  measure: MeasureReport | undefined;
  stale: boolean;
}

function Entry({ index, reading, design, system, work, measure, stale }: EntryProps) {
  const { how, formula, source } = KINDS[reading.kind];
  const told = measure?.readings.find((r) => r.index === index);
  // What is inside is made when it is looked at: a notebook may have hundreds of entries.
  const [opened, setOpened] = useState(false);
  const onToggle = (event: SyntheticEvent<HTMLDetailsElement>) => event.currentTarget.open && setOpened(true);
  const text = (mm: Millimetres) =>
    tellsSize(reading) ? lengthText(Number(mm.toFixed(5)), system) : fineText(mm, system);
  const fault = measure?.impossible.find((f) => f.index === index);
  const far = farOffText(design, reading, system);
  // No figure: none to be had, or none yet.
  const none = stale && !fault ? '…' : '—';
  const trials = doneSoFar(design);
  const old = measure?.overtaken.find((o) => o.index === index);
  const waits = measure?.aside.some((a) => a.index === index) ?? false;
  const doubtful = measure?.disagreeing.some((d) => d.index === index) ?? false;
  return (
    <details id={entryId(index)} onToggle={onToggle} className={fault ? 'wrong' : doubtful ? 'doubtful' : ''}>
      <summary className="entry">
        <span>
          {index + 1}. {readingText(reading, system)}
          {trials > 0 && <small className="when">, {whenText(reading)}</small>}
        </span>
        <span data-name="Read">{text(reading.value)}</span>
        <span data-name="Uncertain">{fineText(reading.sigma, system)}</span>
        <span data-name="Fitted">{told ? text(told.fitted) : none}</span>
        <span data-name="Off by">{told ? fineText(told.residual, system) : none}</span>
        {old && (
          <span className="remark">
            Of the old line of the {listed(old.surfaces.map(({ seat, part }) => `${seat} ${part}`))}, cut to a new one
            since: not used.
          </span>
        )}
        {waits && <span className="remark">Not used yet: which seat touched is not known. See above.</span>}
        {fault && <span className="remark">It cannot be read like this: {faultText(fault, system)}.</span>}
        {far && <span className="remark">{far}</span>}
        {doubtful && (
          <span className="remark">
            {measure!.disagreeing.length === 1
              ? 'It does not go with the others.'
              : 'It, or another that is marked, does not go with the others.'}
          </span>
        )}
      </summary>
      {opened && (
        <>
          <div className="groups">
            <ControlGroup title="as it was read" rows={rowsOf(reading, index, design)} />
            <figure>
              <SetUp design={design} reading={reading} system={system} />
              <figcaption>
                {how} <em>{formula}</em> <small>Source: {source}.</small>
              </figcaption>
            </figure>
          </div>
          <fieldset className="when-read">
            <legend>when, who, stage</legend>
            <Entered
              path={`readings[${index}]`}
              told={bare(reading)}
              change={(told) =>
                work.change((d) =>
                  withValue(d, `readings[${index}]`, withTold(valueAt(d, `readings[${index}]`) as Reading, told)),
                )
              }
              note
            />
          </fieldset>
          <p className="buttons">
            <button type="button" onClick={() => work.change((d) => withoutReading(d, index))}>
              Strike out this reading
            </button>
          </p>
        </>
      )}
    </details>
  );
}

function rowsOf(reading: Reading, index: number, design: Design): Control[] {
  const path = `readings[${index}]`;
  const { parts, asks } = KINDS[reading.kind];
  const on: Control[] =
    parts.length === 0
      ? []
      : [
          {
            kind: 'choice',
            path: `${path}.seat`,
            title: 'Seat',
            about: 'Which seat it was read on',
            options: design.seats.map(({ name }) => ({ value: name, text: name })),
          },
          {
            kind: 'choice',
            path: `${path}.part`,
            title: 'Part',
            about: 'Which of the two parts it was read on',
            options: parts.map((part) => ({ value: part, text: part })),
          },
        ];
  const when = doneSoFar(design) > 0 ? ['after'] : [];
  return [
    ...on,
    ...['value', 'sigma', ...asks, ...when].map((key): Control => {
      const { tool = false, sides = key === 'value' ? KINDS[reading.kind].sides : undefined } = saidOfAsked(key);
      return { kind: 'quantity', path: `${path}.${key}`, tool, ...(sides && { sides }) };
    }),
  ];
}
