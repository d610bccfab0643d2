/** What happened to the job, in its order: readings, cuts and trials, notes. */
import type { ReactNode } from 'react';
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { beyondSafeText } from '../../report/cut/beyondSafe.ts';
import { trialText } from '../../report/cut/trialText.ts';
import { type Entry, storyOf } from '../../report/record/story.ts';
import { readingText } from '../screens/measure/kinds.ts';
import { stageText } from './stages.ts';

interface Props {
  design: Design;
  system: System;
  /** what belongs to an entry of the record besides its words */
  more(index: number): ReactNode;
}

/** Readings in a row, made alike and without a note, that fold into one line. */
const MANY = 4;

export function Story({ design, system, more }: Props) {
  return (
    <ol className="story">
      {folded(storyOf(design)).map((entries) => {
        const [first] = entries as [Entry];
        return (
          <li key={`${first.of} ${first.index}`} className={first.of}>
            <p className="when">
              <span className="day">{first.date === undefined ? 'no date' : dateText(first.date)}</span>
              {first.stage !== undefined && <span className="stage">{stageText(first.stage)}</span>}
              {first.by !== undefined && <span className="by">{first.by}</span>}
            </p>
            <div>
              {entries.length >= MANY ? (
                <details>
                  <summary>{entries.length} readings</summary>
                  {entries.map((entry) => (
                    <p key={entry.index}>{textOf(design, entry, system)}</p>
                  ))}
                </details>
              ) : (
                entries.map((entry) => <p key={entry.index}>{textOf(design, entry, system)}</p>)
              )}
              {first.of === 'record' && more(first.index)}
            </div>
          </li>
        );
      })}
    </ol>
  );
}

/** Readings that follow each other and were made alike stand together. */
function folded(story: readonly Entry[]): Entry[][] {
  const groups: Entry[][] = [];
  for (const entry of story) {
    const last = groups.at(-1)?.[0];
    if (last && isAlike(last, entry)) groups.at(-1)!.push(entry);
    else groups.push([entry]);
  }
  return groups;
}

const isAlike = (a: Entry, b: Entry) =>
  a.of === 'reading' &&
  b.of === 'reading' &&
  a.after === b.after &&
  a.date === b.date &&
  a.by === b.by &&
  a.stage === b.stage &&
  a.note === undefined &&
  b.note === undefined &&
  a.atOddsWith === undefined &&
  b.atOddsWith === undefined;

/** 31 March 2026, 14:30: with the day's own numbers, never moved by a zone. */
function dateText(date: string): string {
  const [year, month, day] = date.slice(0, 10).split('-').map(Number);
  const clock = /T(\d\d:\d\d)/.exec(date)?.[1];
  return `${day} ${MONTHS[month! - 1]} ${year}${clock === undefined ? '' : `, ${clock}`}`;
}
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

function textOf(design: Design, { of, index, note, after, atOddsWith }: Entry, system: System): ReactNode {
  const said = note === undefined || of === 'record' ? (note ?? '') : ` “${note}”`;
  const odds =
    atOddsWith === undefined
      ? null
      : ` Its day does not go with that of trial ${atOddsWith}: it counts as ${of === 'trial' ? 'in the order written down' : after >= atOddsWith ? 'made after it' : 'made before it'}.`;
  const beyond = of === 'trial' ? beyondSafeText(design.cut!.trials![index]!, system) : null;
  const plain =
    of === 'reading'
      ? `Reading ${index + 1}: ${readingText(design.readings![index]!, system)}.`
      : of === 'trial'
        ? `Trial ${index + 1}: ${trialText({ ...design.cut!.trials![index]!, note: undefined }, system)}.`
        : '';
  return (
    <>
      {of === 'trial' ? <strong>{plain}</strong> : plain}
      {said}
      {beyond !== null && <span className="odds"> {beyond}</span>}
      {odds !== null && <span className="odds">{odds}</span>}
    </>
  );
}
