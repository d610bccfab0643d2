/** The steps on paper: what to feed, what to read when to stop, and boxes for what was read. */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { CutReport, CutStepReport } from '../../report/cut/definition.ts';
import { offFaceText } from '../../report/cut/trialText.ts';
import { gaugeText, readText } from '../cut/gaugeText.ts';
import { divisionsText } from '../cut/Steps.tsx';

interface Props {
  design: Design;
  cut: CutReport;
  system: System;
}

type Row = { what: string; half: string; stop: string };

const told = (mm: number | null, text: (mm: number) => string) => (mm === null ? '—' : text(mm));

export function StepTable({ design, cut, system }: Props) {
  const fine = (mm: number) => fineText(mm, system);
  const dial = design.cut?.machine?.dial ?? 'radius';
  const feeds = (step: CutStepReport) => [
    `⌀ ${fine(Math.abs(step.diameter))} ${step.diameter < 0 ? 'less' : 'more'}`,
    `cross feed ${fine(dial === 'diameter' ? 2 * step.crossFeed : step.crossFeed)} on the ${dial} dial, ${divisionsText(step.crossDivisions)}`,
    ...(step.axialFeed === null || step.axialDivisions === null ? [] : [`or axial ${fine(step.axialFeed)}, ${divisionsText(step.axialDivisions)}`]),
    `or ${fine(step.tableFeed)} square to the table set over`,
    ...(step.slideFeed === null ? [] : [`or ${fine(step.slideFeed)} along the slide`]),
    step.passes.count === 1 ? 'one pass' : `${step.passes.count - 1} passes of ${fine(step.passes.depth)}, the last ${fine(step.passes.last)}`,
  ];
  const rows = (step: CutStepReport): Row[] => [
    ...step.gauges.map(({ reading, half, stop }) => ({ what: gaugeText(reading, system), half: told(half, (mm) => readText(mm, system)), stop: told(stop, (mm) => readText(mm, system)) })),
    { what: 'Stand-off of the journal', half: told(step.standOff.half, fine), stop: told(step.standOff.stop, fine) },
  ];
  return (
    <table className="sheet-steps">
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col" className="what">
            Reading
          </th>
          <th scope="col">Half way</th>
          <th scope="col">Stop at</th>
          <th scope="col">Read</th>
        </tr>
      </thead>
      {cut.steps.map((step, i) => (
        <StepBody key={`${step.seat} ${step.part}`} title={`${i + 1}. ${step.seat} ${step.part}: ${fine(step.normal)} square to it`} feeds={feeds(step)} rows={rows(step)} />
      ))}
      {cut.faces.map((face, k) => (
        <StepBody key={face.name} title={`${cut.steps.length + k + 1}. ${offFaceText(face, system)}`} feeds={[]} rows={[{ what: 'Stand-off of the journal', half: told(face.standOff.half, fine), stop: told(face.standOff.stop, fine) }]} />
      ))}
    </table>
  );
}

function StepBody({ title, feeds, rows }: { title: string; feeds: readonly string[]; rows: readonly Row[] }) {
  return (
    <tbody>
      {rows.map(({ what, half, stop }, i) => (
        <tr key={what}>
          {i === 0 && (
            <th scope="rowgroup" rowSpan={rows.length}>
              <strong>{title}</strong>
              {feeds.map((feed) => (
                <span key={feed}>{feed}</span>
              ))}
            </th>
          )}
          <td className="what">{what}</td>
          <td>{half}</td>
          <td>
            <strong>{stop}</strong>
          </td>
          <td>
            <span className="read-box" />
          </td>
        </tr>
      ))}
    </tbody>
  );
}
