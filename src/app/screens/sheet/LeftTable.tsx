/**
 * What the trials leave, on paper: what may be taken now and what is most likely left, by how much the gauges change
 * over each, and what to read next.
 */

import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { doubtedText, fineText, plusMinusText, readingText, type System } from '../../../design/units.ts';
import { lookBefore } from '../../../report/cut/advice.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { NOTHING } from '../../../report/cut/listed.ts';
import { type LeftStep, leftSteps } from '../../../report/sheet/leftSteps.ts';
import type { PartsAfterTrials } from '../../../report/sheet/partsAfterTrials.ts';
import { divisionsText } from '../cut/Steps.tsx';
import { gaugeText } from '../measure/kinds.ts';
import { crossText, otherTexts } from './feedText.ts';

interface Props {
  design: Design;
  cut: CutReport;
  after: PartsAfterTrials;
  system: System;
}

interface Row {
  what: string;
  /** null: to be read and written down before the cut */
  now: string | null;
  safe: string;
  all: string;
  read: boolean;
}

const NONE = '—';

/** Whether anything may be taken before the next trial. */
export const isAnySafe = ({ remaining }: CutReport) =>
  remaining !== undefined && [...remaining.steps, ...remaining.faces].some(({ safe }) => Math.abs(safe) >= NOTHING);

export function LeftTable({ design, cut, after, system }: Props) {
  const remaining = cut.remaining!;
  const steps = leftSteps(design, cut, after);
  const faces = remaining.faces.filter(({ off }) => Math.abs(off) >= NOTHING);
  const { now, safe, all } = remaining.standOff;
  const look = lookBefore(cut, system);
  const first = look?.when === 'first';
  const at = (mm: Millimetres | null) => (mm === null ? NONE : fineText(mm, system));
  return (
    <table className="sheet-steps left-steps">
      <colgroup>
        {[1, 2, 3, 4, 5].map((column) => (
          <col key={column} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th scope="col">Left, by the trials</th>
          <th scope="col">Read before</th>
          <th scope="col">{first ? 'Safe to take' : 'Take now, then try'}</th>
          <th scope="col">Most likely left</th>
          <th scope="col">Read after</th>
        </tr>
      </thead>
      {steps.map((step, i) => (
        <Body
          key={`${step.seat} ${step.part}`}
          title={`${i + 1}. ${step.seat} ${step.part}: ${doubtedText(step.all.normal, step.sigma, system, step.limits)} most likely left, square to the surface.`}
          feeds={feedTexts(step, design, system)}
          rows={rowsOf(step, system)}
        />
      ))}
      {faces.map((face, k) => (
        <Body
          key={face.name}
          title={`${steps.length + k + 1}. ${face.off > 0 ? `${doubtedText(face.off, face.sigma, system, face.limits)} most likely left to come off ${face.name}` : `${face.name} most likely ${plusMinusText(-face.off, face.sigma, system)} too thin`}.`}
          rows={[
            {
              what: `Thickness of ${face.name}, ${face.off > 0 ? 'less' : 'more'} by`,
              now: null,
              safe: Math.abs(face.safe) < NOTHING ? 'nothing yet' : fineText(Math.abs(face.safe), system),
              all: fineText(Math.abs(face.off), system),
              read: true,
            },
          ]}
        />
      ))}
      <Body
        title={first ? `But first ${look.doing}.` : 'Then assemble dry and read, below.'}
        rows={[
          {
            what: 'Stand-off: where the journal first touches, as now believed',
            now: at(now),
            safe: isAnySafe(cut) ? at(safe) : NONE,
            all: at(all),
            read: false,
          },
        ]}
      />
    </table>
  );
}

function rowsOf({ safe, all, gauges }: LeftStep, system: System): Row[] {
  const fine = (mm: Millimetres) => fineText(mm, system);
  const change = (mm: Millimetres | null) =>
    mm === null ? NONE : `${mm < 0 ? '−' : '+'}${readingText(Math.abs(mm), system)}`;
  return [
    {
      what: `⌀ ${all.diameter < 0 ? 'less' : 'more'} by`,
      now: '',
      safe: safe ? fine(Math.abs(safe.diameter)) : 'nothing yet',
      all: fine(Math.abs(all.diameter)),
      read: false,
    },
    {
      what: 'Cross feed, divisions',
      now: '',
      safe: safe ? divisionsText(safe.crossDivisions) : NONE,
      all: divisionsText(all.crossDivisions),
      read: false,
    },
    ...(all.axialFeed === null
      ? []
      : [
          {
            what: 'or axial feed',
            now: '',
            safe: safe?.axialFeed == null ? NONE : fine(safe.axialFeed),
            all: fine(all.axialFeed),
            read: false,
          },
        ]),
    ...gauges.map(
      ({ reading, ...by }): Row => ({
        what: `${gaugeText(reading, system)}: changes by`,
        now: safe ? null : '',
        safe: safe ? change(by.safe) : NONE,
        all: change(by.all),
        read: safe !== null,
      }),
    ),
  ];
}

/** How the safe amount is fed, by the person's own dial first; where there is none, how all of it would be. */
function feedTexts({ safe, all }: LeftStep, design: Design, system: System): [string, string] {
  if (safe)
    return [`Now: ${crossText(safe, design, system)}.`, `Or ${otherTexts(safe, design, system).join('; or ')}.`];
  return [
    'Nothing of it is safe to take yet.',
    `All of it, once a trial says so: ${[crossText(all, design, system), ...otherTexts(all, design, system)].join('; or ')}.`,
  ];
}

function Body({
  title,
  feeds: [first, others] = [],
  rows,
}: {
  title: string;
  feeds?: readonly string[];
  rows: readonly Row[];
}) {
  return (
    <tbody>
      <tr className="feeds-row">
        <th scope="rowgroup" colSpan={5}>
          <strong>{title}</strong>
          {first && <span className="first-way"> {first}</span>}
          {others && <span className="others">{others}</span>}
        </th>
      </tr>
      {rows.map(({ what, now, safe, all, read }) => (
        <tr key={what}>
          <td className="what">{what}</td>
          <td data-label="Read before">{now ?? <span className="read-box" />}</td>
          <td data-label="Take now, then try">
            <strong>{safe}</strong>
          </td>
          <td data-label="Most likely left">{all}</td>
          <td data-label="Read after">{read && <span className="read-box" />}</td>
        </tr>
      ))}
    </tbody>
  );
}

/** What the plan said before the trials, struck. */
export function StruckPlan({ design, cut, system }: Pick<Props, 'design' | 'cut' | 'system'>) {
  const told = cut.steps.flatMap(({ seat, part, normal, gauges }) => {
    const stops = gauges.flatMap(({ reading, stop }) =>
      stop === null ? [] : [`${readingText(stop, system)} (${gaugeText(reading, system).toLowerCase()})`],
    );
    return [
      `${fineText(normal, system)} off the ${seat} ${part}${stops.length > 0 ? `, stop at ${stops.join(' or ')}` : ''}`,
    ];
  });
  const next = `trial ${(design.cut?.trials?.length ?? 0) + 1}`;
  return (
    <div className="block struck">
      <p className="first-read">
        <strong>Gauges from before the trials no longer say when to stop.</strong> The trials told of the films, not of
        the diameters.{' '}
        {isAnySafe(cut)
          ? `Gauge each surface as it stands before the cut, and stop when the reading has changed by what may be taken now. Then assemble dry for ${next}, read the stand-off and enter it: only then is it known what is left.`
          : `Take nothing off yet: assemble dry again for ${next}, read the stand-off, the shake and the blue, and enter them; the sheet then says what may be taken.`}
      </p>
      {told.length > 0 && (
        <p className="small">
          The plan before the trials, not to be worked to: <s>{told.join('; ')}</s>.
        </p>
      )}
    </div>
  );
}
