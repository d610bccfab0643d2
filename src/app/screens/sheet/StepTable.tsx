/** The steps on paper: what to feed, what to read when to stop, and boxes for what was read. */

import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { fineText, readingText, type System } from '../../../design/units.ts';
import type { CutReport, CutStepReport } from '../../../report/cut/definition.ts';
import { toleranceLeft } from '../../../report/cut/toleranceLeft.ts';
import { offFaceText } from '../../../report/cut/trialText.ts';
import { stopTolerance } from '../../../report/sheet/stopTolerance.ts';
import { beforeTrial } from '../cut/Steps.tsx';
import { gaugeText } from '../measure/kinds.ts';
import { crossText, otherTexts } from './feedText.ts';
import { stopText, zoneText } from './figures.ts';

interface Props {
  design: Design;
  cut: CutReport;
  system: System;
}

type Row = { what: string; before: string; first: string; isFirst: boolean; stop: string; within?: string };
type Stop = CutStepReport['touch'];

const told = (mm: Millimetres | null, text: (mm: Millimetres) => string) => (mm === null ? '—' : text(mm));

/** mm: a stand-off that moves by less is not seen to move. */
const UNSEEN = 1e-4;
export const isMoved = ({ before, stop }: Pick<Stop, 'before' | 'stop'>) =>
  before !== stop && (before === null || stop === null || Math.abs(stop - before) >= UNSEEN);

export function StepTable({ design, cut, system }: Props) {
  const fine = (mm: Millimetres) => fineText(mm, system);
  // Where the doubt leaves only a part of a step safe, its reading stands in the place of the one half way.
  const row = (what: string, { before, half, safe, stop }: Stop, text: (mm: Millimetres) => string): Row => ({
    what,
    before: told(before, text),
    first: told(safe === undefined ? half : safe, text),
    isFirst: safe !== undefined,
    stop: told(stop, text),
  });
  const standOff = (stop: Stop) => row('Stand-off: where the journal first touches', stop, fine);
  // A reading that the step does not change tells nothing of it.
  const standOffs = (stop: Stop) => (isMoved(stop) ? [standOff(stop)] : []);
  const rows = (step: CutStepReport): Row[] => [
    ...step.gauges.map(({ reading, ...stop }) => {
      const within = stopTolerance(step, stop, toleranceLeft(design, cut.films, step.seat));
      const told = row(gaugeText(reading, system), stop, (mm) => readingText(mm, system));
      return within === null || stop.stop === null
        ? told
        : { ...told, stop: stopText(stop.stop, within, system), within: `±${zoneText(within, system)}` };
    }),
    ...standOffs(step.standOff),
  ];
  const unsure = cut.steps.some((step) => beforeTrial(step, system) !== '');
  return (
    <table className="sheet-steps">
      <colgroup>
        {[1, 2, 3, 4, 5].map((column) => (
          <col key={column} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th scope="col">Steps, in this order</th>
          <th scope="col">Now</th>
          <th scope="col">{unsure ? 'Stop first, then try' : 'Half way'}</th>
          <th scope="col">{unsure ? 'Stop, if the trial agrees' : 'Stop at'}</th>
          <th scope="col">Read</th>
        </tr>
      </thead>
      {cut.steps.map((step, i) => (
        <StepBody
          key={`${step.seat} ${step.part}`}
          title={`${i + 1}. ${step.seat} ${step.part}: ⌀ ${fine(Math.abs(step.diameter))} ${step.diameter < 0 ? 'less' : 'more'}.`}
          unsure={beforeTrial(step, system) !== ''}
          feeds={feedTexts(step, design, system)}
          note={beforeTrial(step, system)}
          rows={rows(step)}
        />
      ))}
      {cut.faces.map((face, k) => (
        <StepBody
          key={face.name}
          title={`${cut.steps.length + k + 1}. ${offFaceText(face, system)}`}
          unsure={false}
          feeds={[]}
          note=""
          rows={standOffs(face.standOff)}
        />
      ))}
    </table>
  );
}

/** The cross feed by the person's own dial first, then the other ways to take the same. */
function feedTexts(step: CutStepReport, design: Design, system: System): string[] {
  // The other ways, and all of it, are told once a trial says so: the sheet is then printed anew.
  if (step.first) return [`${crossText(step.first, design, system)}; of ${fineText(step.deepest, system)} in all.`];
  return [
    `${crossText(step, design, system)}; ${step.deepest - step.normal < 1e-4 ? '' : 'up to '}${fineText(step.deepest, system)} square to the surface.`,
    ...otherTexts(step, design, system),
  ];
}

interface BodyProps {
  title: string;
  /** whether it may not all be taken before a trial */
  unsure: boolean;
  feeds: readonly string[];
  note: string;
  rows: readonly Row[];
}

function StepBody({ title, unsure, feeds: [first, ...others], note, rows }: BodyProps) {
  return (
    <tbody>
      <tr className="feeds-row">
        <th scope="rowgroup" colSpan={5}>
          <strong>{title}</strong>
          {note !== '' && <strong className="others">{note}</strong>}
          {first && <span className="first-way"> {first}</span>}
          {others.length > 0 && <span className="others">Or {others.join('; or ')}.</span>}
        </th>
      </tr>
      {rows.map(({ what, before, first: early, isFirst, stop, within }) => (
        <tr key={what}>
          <td className="what">{what}</td>
          <td data-label="Now">{before}</td>
          <td data-label={isFirst ? 'Stop first' : 'Half way'}>
            {isFirst ? <strong className="stop">{early}</strong> : unsure ? '—' : early}
          </td>
          <td data-label="Stop at">
            {unsure ? stop : <strong className="stop">{stop}</strong>}
            {within && <span className="within">{within}</span>}
          </td>
          <td data-label="Read">
            <span className="read-box" />
          </td>
        </tr>
      ))}
    </tbody>
  );
}
