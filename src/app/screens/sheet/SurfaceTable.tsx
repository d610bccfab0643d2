/** Every surface in figures, as the drawings dimension it. */
import type { ReactNode } from 'react';
import type { Design } from '../../../design/definition.ts';
import { lengthUnit, type System } from '../../../design/units.ts';
import type { CaseLeft } from '../../../report/cut/caseLeft.ts';
import { caseText } from '../../../report/cut/caseWords.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { NOTHING } from '../../../report/cut/listed.ts';
import type { DrawnParts } from '../../../report/sheet/drawnParts.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { ANGLE_TITLES, useAngles } from '../../state/angles.ts';
import { angleToleranceFigure, coneText, cutText } from './coneTexts.ts';
import { diameterText, endText, exactText, zoneText } from './figures.ts';
import { letterOf } from './PartDrawing.tsx';

type CaseAfter = Pick<NonNullable<CutReport['case']>[number], 'planned' | 'after'>;

interface Props {
  design: Design;
  surfaces: readonly TolerancedSurface[];
  /** of those that have a hard case */
  cases: readonly (CaseLeft & Partial<CaseAfter>)[];
  /** whether the cuts are what trials left of a plan */
  left: boolean;
  /** how much of them is safe to take now */
  target: DrawnParts['target'];
  system: System;
}

export function SurfaceTable({ design, surfaces, cases, left, target, system }: Props) {
  const way = useAngles();
  const isCut = surfaces.some(({ cut }) => cut !== null);
  const zone = (width: number | null) => (width === null ? '—' : zoneText(width, system));
  return (
    <div className="wide">
      <table className="surfaces">
        <thead>
          <tr>
            <th scope="col">Surface, {lengthUnit(system).name}</th>
            <th scope="col">⌀ in the gauge plane</th>
            <th scope="col">Plane at</th>
            <th scope="col">From, to</th>
            <th scope="col">{ANGLE_TITLES[way]}</th>
            <th scope="col">Form</th>
            <th scope="col">Run-out</th>
            {isCut && (
              <th scope="col">⌀, {target === 'whole' ? (left ? 'most likely left' : 'by the plan') : 'safe now'}</th>
            )}
            {cases.length > 0 && <th scope="col">Case left</th>}
          </tr>
        </thead>
        <tbody>
          {surfaces.map((surface) => (
            <tr key={`${surface.seat} ${surface.part}`} className={surface.cut === null ? undefined : 'is-cut'}>
              <th scope="row">
                {letterOf(design, surface.seat)} {surface.seat} {surface.part}
                {surface.asMeasured && ' *'}
              </th>
              <td>
                <Told assumed={surface.assumed.diameter}>
                  {diameterText(surface.diameter, surface.diameterTolerance, system)}
                </Told>
              </td>
              <td>
                <span className="exact">{exactText(surface.gaugePlane, system)}</span>
              </td>
              <td>
                <Told assumed={surface.assumed.from}>{endText(surface.from, system)}</Told>,{' '}
                <Told assumed={surface.assumed.to}>{endText(surface.to, system)}</Told>
              </td>
              <td className="angle">
                <Told assumed={surface.assumed.halfAngle}>
                  {angleToleranceFigure(surface, system, way)} {coneText(surface, system, way)}
                </Told>
              </td>
              <td>{zone(surface.form)}</td>
              <td>{zone(surface.runOut)}</td>
              {isCut && <td>{cutText(surface, system)}</td>}
              {cases.length > 0 && <td>{caseOf(cases, surface, system)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** What is assumed stands slanted within dashes, as on the drawings. */
function Told({ assumed, children }: { assumed: boolean; children: ReactNode }) {
  return assumed ? <span className="assumed">{children}</span> : children;
}

function caseOf(cases: Props['cases'], { seat, part }: TolerancedSurface, system: System) {
  const found = cases.find((one) => one.seat === seat && one.part === part);
  if (!found) return '—';
  const { left, planned = 0, after = left } = found;
  const now = caseText(left, system);
  if (planned < NOTHING) return now;
  const then = `then ${caseText(after, system)}`;
  return after < 0 ? (
    <strong>
      {now}, {then}: through
    </strong>
  ) : (
    `${now}, ${then}`
  );
}
