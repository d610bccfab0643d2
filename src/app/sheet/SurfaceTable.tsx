/** Every surface in figures, as the drawings dimension it. */
import { lengthText, lengthUnit, type System, TENTH } from '../../design/units.ts';
import type { TolerancedSurface } from '../../report/sheet/tolerancedSurfaces.ts';
import { readText } from '../cut/gaugeText.ts';
import { angleToleranceText, coneText, cutText, toleranceText } from './PartDrawing.tsx';

/** Without its unit, which the head of the table names. */
const bare = (text: string) => text.replace(/ .*$/, '');

/** Where a surface ends is told to a micrometre or a tenth. */
const endText = (mm: number, system: System) => {
  const step = system === 'metric' ? 0.001 : TENTH;
  return bare(lengthText(Math.round(mm / step) * step, system));
};

export function SurfaceTable({ surfaces, system }: { surfaces: readonly TolerancedSurface[]; system: System }) {
  const unit = lengthUnit(system).name;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Surface</th>
          <th scope="col">⌀ in the gauge plane, {unit}</th>
          <th scope="col">Plane at, {unit}</th>
          <th scope="col">Reaches, {unit}</th>
          <th scope="col">Cone</th>
          <th scope="col">Half angle</th>
          <th scope="col">Plan, ⌀</th>
        </tr>
      </thead>
      <tbody>
        {surfaces.map((surface) => (
          <tr key={`${surface.seat} ${surface.part}`}>
            <th scope="row">
              {surface.seat} {surface.part}
              {surface.asMeasured && ' *'}
            </th>
            <td>
              {bare(readText(surface.diameter, system))}
              {toleranceText(surface.diameterTolerance, system)}
            </td>
            <td>{bare(readText(surface.gaugePlane, system))}</td>
            <td>
              {endText(surface.from, system)} to {endText(surface.to, system)}
            </td>
            <td>{coneText(surface)}</td>
            <td>{angleToleranceText(surface)}</td>
            <td>{cutText(surface, system)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
