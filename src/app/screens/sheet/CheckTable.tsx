/**
 * A record of what was measured, where nothing is to be cut: what every surface shall have, and boxes for what it has.
 */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { ANGLE_TITLES, useAngles } from '../../state/angles.ts';
import { angleToleranceFigure } from './coneTexts.ts';
import { diameterText, exactText } from './figures.ts';
import { letterOf } from './PartDrawing.tsx';

export function CheckTable({
  design,
  surfaces,
  system,
}: {
  design: Design;
  surfaces: readonly TolerancedSurface[];
  system: System;
}) {
  const way = useAngles();
  return (
    <table className="check-table">
      <thead>
        <tr>
          <th scope="col">What was measured</th>
          <th scope="col">⌀ in the gauge plane</th>
          <th scope="col">Read</th>
          <th scope="col">{ANGLE_TITLES[way]}</th>
          <th scope="col">Read</th>
          <th scope="col">Run-out read</th>
        </tr>
      </thead>
      <tbody>
        {surfaces.map((surface) => (
          <tr key={`${surface.seat} ${surface.part}`}>
            <th scope="row">
              {letterOf(design, surface.seat)} {surface.seat} {surface.part}
            </th>
            <td>
              {diameterText(surface.diameter, surface.diameterTolerance, system)} at{' '}
              {exactText(surface.gaugePlane, system)}
            </td>
            <td data-label="Read">
              <span className="read-box" />
            </td>
            <td>{angleToleranceFigure(surface, system, way)}</td>
            <td data-label="Read">
              <span className="read-box" />
            </td>
            <td data-label="Run-out">
              <span className="read-box" />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
